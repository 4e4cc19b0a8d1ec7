/** XML as the bytes of a file. */

const encoder = new TextEncoder();

export type Bytes = Uint8Array<ArrayBuffer>;

/** The bytes of a text; of megabytes of it only these stay in memory, where it is written piece by piece. */
export const bytesOf = (text: string): Bytes => encoder.encode(text);
