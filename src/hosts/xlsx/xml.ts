/** XML as the bytes of a file. */

const encoder = new TextEncoder();

export type Bytes = Uint8Array<ArrayBuffer>;

export const bytesOf = (text: string): Bytes => encoder.encode(text);

/** A character takes at most so many bytes of UTF-8. */
const MOST_BYTES = 3;
const FIRST_SIZE = 2 ** 16;

/** Bytes as they are written, one behind the other; of megabytes of text only these stay in memory. */
export class XmlBytes {
  private bytes: Bytes = new Uint8Array(FIRST_SIZE);
  private length = 0;

  private room(more: number): void {
    if (this.length + more <= this.bytes.length) return;
    const larger = new Uint8Array(Math.max(2 * this.bytes.length, this.length + more));
    larger.set(this.bytes.subarray(0, this.length));
    this.bytes = larger;
  }

  text(text: string): void {
    this.room(text.length * MOST_BYTES);
    this.length += encoder.encodeInto(text, this.bytes.subarray(this.length)).written;
  }

  get written(): Bytes {
    return this.bytes.subarray(0, this.length);
  }
}
