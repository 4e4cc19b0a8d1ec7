/** The times inside a zip: set to one fixed moment, so that the same sheets give the same bytes. */

/** Offsets and marks of PKWARE's APPNOTE.TXT 6.3.10, sections 4.3.7, 4.3.12 and 4.3.16. */
const END = { mark: 0x06054b50, size: 22, entries: 10, directory: 16 } as const;
const ENTRY = { mark: 0x02014b50, time: 12, nameLength: 28, local: 42, size: 46 } as const;
const LOCAL = { mark: 0x04034b50, time: 10 } as const;

/** 1 January 1980, 00:00: the earliest that a zip can say. Time in the low half, date in the high. */
const EARLIEST = 0x00210000;

function expectMark(view: DataView, at: number, mark: number): void {
  if (view.getUint32(at, true) !== mark) throw new Error(`the zip is not as expected at ${at}`);
}

/** Sets the time of every entry, in place. For a zip without a comment, as the library writes it. */
export function fixZipTimes(zip: Uint8Array): void {
  const view = new DataView(zip.buffer, zip.byteOffset, zip.byteLength);
  const end = zip.byteLength - END.size;
  expectMark(view, end, END.mark);
  let at = view.getUint32(end + END.directory, true);
  for (let left = view.getUint16(end + END.entries, true); left > 0; left -= 1) {
    expectMark(view, at, ENTRY.mark);
    const local = view.getUint32(at + ENTRY.local, true);
    expectMark(view, local, LOCAL.mark);
    view.setUint32(at + ENTRY.time, EARLIEST, true);
    view.setUint32(local + LOCAL.time, EARLIEST, true);
    // Name, extra field and comment follow the fixed part; their three lengths stand side by side.
    const lengths = [0, 2, 4].map((offset) => view.getUint16(at + ENTRY.nameLength + offset, true));
    at += ENTRY.size + lengths.reduce((sum, length) => sum + length, 0);
  }
}
