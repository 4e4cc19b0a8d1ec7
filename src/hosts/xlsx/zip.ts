/**
 * The zip of a workbook, packed anew by the platform's own compression: the library's, in JavaScript, takes most of the
 * time of a file with megabytes of formulas. Times inside are one fixed moment, so that the same sheets give the same bytes.
 */
import type { Bytes } from './xml';

/** Offsets and marks of PKWARE's APPNOTE.TXT 6.3.10, sections 4.3.7, 4.3.12 and 4.3.16. */
const END = {
  mark: 0x06054b50,
  size: 22,
  onDisk: 8,
  entries: 10,
  bytes: 12,
  directory: 16,
} as const;
const ENTRY = {
  ...{ mark: 0x02014b50, made: 4, method: 10, crc: 16, packed: 20, unpacked: 24 },
  ...{ nameLength: 28, local: 42, size: 46 },
} as const;
const LOCAL = { mark: 0x04034b50, nameLength: 26, size: 30 } as const;
/** Both kinds of head go on alike from the version that a reader needs: flags, method, time, date, sum, sizes, length. */
const SHARED = { method: 4, time: 6, crc: 10, packed: 14, unpacked: 18, nameLength: 22 } as const;
const NEEDS = { local: 4, entry: 6 } as const;
/** Version 2.0 knows folders and deflated files. */
const VERSION = 20;
const METHOD = { stored: 0, deflated: 8 } as const;

/** 1 January 1980, 00:00: the earliest that a zip can say. Time in the low half, date in the high. */
const EARLIEST = 0x00210000;

/** RFC 1952, 2.3: without a name or a comment the head has 10 bytes, and the sum and the length follow the data. */
const GZIP = { mark: 0x8b1f, flags: 3, head: 10, foot: 8 } as const;

function expectMark(view: DataView, at: number, mark: number): void {
  if (view.getUint32(at, true) !== mark) throw new Error(`the zip is not as expected at ${at}`);
}

interface Unpacked {
  readonly name: Bytes;
  /** Piece by piece. */
  readonly content: readonly Bytes[];
}

interface Packed {
  readonly name: Bytes;
  readonly crc: number;
  readonly unpacked: number;
  readonly content: Bytes;
}

/** The files of a zip without a comment that stores them unpacked. */
function storedFiles(zip: Bytes): readonly Unpacked[] {
  const view = new DataView(zip.buffer, zip.byteOffset, zip.byteLength);
  const end = zip.byteLength - END.size;
  expectMark(view, end, END.mark);
  const files: Unpacked[] = [];
  let at = view.getUint32(end + END.directory, true);
  for (let left = view.getUint16(end + END.entries, true); left > 0; left -= 1) {
    expectMark(view, at, ENTRY.mark);
    if (view.getUint16(at + ENTRY.method, true) !== METHOD.stored) {
      throw new Error('the zip holds packed files');
    }
    // Name, extra field and comment follow the fixed part; their three lengths stand side by side.
    const [nameLength = 0, extra = 0, comment = 0] = [0, 2, 4].map((offset) =>
      view.getUint16(at + ENTRY.nameLength + offset, true),
    );
    const local = view.getUint32(at + ENTRY.local, true);
    expectMark(view, local, LOCAL.mark);
    const from =
      local +
      LOCAL.size +
      view.getUint16(local + LOCAL.nameLength, true) +
      view.getUint16(local + LOCAL.nameLength + 2, true);
    files.push({
      name: zip.subarray(at + ENTRY.size, at + ENTRY.size + nameLength),
      content: [zip.subarray(from, from + view.getUint32(at + ENTRY.packed, true))],
    });
    at += ENTRY.size + nameLength + extra + comment;
  }
  return files;
}

/** Deflated; gzip brings the sum of the content along. */
async function packed({ name, content }: Unpacked): Promise<Packed> {
  const stream = new Blob([...content]).stream().pipeThrough(new CompressionStream('gzip'));
  const bytes = new Uint8Array(await new Response(stream).arrayBuffer());
  const view = new DataView(bytes.buffer);
  if (view.getUint16(0, true) !== GZIP.mark || view.getUint8(GZIP.flags) !== 0) {
    throw new Error('the compression has another head than expected');
  }
  const foot = bytes.byteLength - GZIP.foot;
  return {
    name,
    crc: view.getUint32(foot, true),
    unpacked: view.getUint32(foot + 4, true),
    content: bytes.subarray(GZIP.head, foot),
  };
}

function fillHead(view: DataView, at: number, { name, crc, unpacked, content }: Packed): void {
  view.setUint16(at, VERSION, true);
  view.setUint16(at + SHARED.method, METHOD.deflated, true);
  view.setUint32(at + SHARED.time, EARLIEST, true);
  view.setUint32(at + SHARED.crc, crc, true);
  view.setUint32(at + SHARED.packed, content.byteLength, true);
  view.setUint32(at + SHARED.unpacked, unpacked, true);
  view.setUint16(at + SHARED.nameLength, name.byteLength, true);
}

function zipOf(files: readonly Packed[]): Bytes {
  const directoryAt = files.reduce(
    (sum, { name, content }) => sum + LOCAL.size + name.byteLength + content.byteLength,
    0,
  );
  const end = files.reduce((sum, { name }) => sum + ENTRY.size + name.byteLength, directoryAt);
  const zip = new Uint8Array(end + END.size);
  const view = new DataView(zip.buffer);
  let [at, entryAt] = [0, directoryAt];
  for (const file of files) {
    view.setUint32(at, LOCAL.mark, true);
    fillHead(view, at + NEEDS.local, file);
    view.setUint32(entryAt, ENTRY.mark, true);
    view.setUint16(entryAt + ENTRY.made, VERSION, true);
    fillHead(view, entryAt + NEEDS.entry, file);
    view.setUint32(entryAt + ENTRY.local, at, true);
    zip.set(file.name, at + LOCAL.size);
    zip.set(file.name, entryAt + ENTRY.size);
    zip.set(file.content, at + LOCAL.size + file.name.byteLength);
    at += LOCAL.size + file.name.byteLength + file.content.byteLength;
    entryAt += ENTRY.size + file.name.byteLength;
  }
  view.setUint32(end, END.mark, true);
  view.setUint16(end + END.onDisk, files.length, true);
  view.setUint16(end + END.entries, files.length, true);
  view.setUint32(end + END.bytes, end - directoryAt, true);
  view.setUint32(end + END.directory, directoryAt, true);
  return zip;
}

/** The zip packed, given one that stores its files, with the content of some of them, by their names. */
export async function repacked(
  zip: Bytes,
  instead: ReadonlyMap<string, readonly Bytes[]>,
): Promise<Bytes> {
  const files = storedFiles(zip).map(({ name, content }) => ({
    name,
    content: instead.get(new TextDecoder().decode(name)) ?? content,
  }));
  return zipOf(await Promise.all(files.map(packed)));
}
