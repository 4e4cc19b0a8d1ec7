/**
 * The parts of a zip archive, unpacked bit by bit with all that comes out counted. The library that unpacks has a reader of
 * archives too: it makes each part at once in the size that the file claims, and holds no checksum.
 */
import { Inflate } from 'fflate';
import { MOST, TooMuch } from '../bounds';

/** What is wrong with an archive. */
export class BadArchive extends Error {}

interface Entry {
  readonly method: number;
  readonly checksum: number;
  readonly packedBytes: number;
  readonly headerAt: number;
  readonly isEncrypted: boolean;
}

// PKWARE APPNOTE.TXT 6.3.10: 4.3.16 (end of the directory), 4.3.12 (directory), 4.3.7 (local header), 4.5.3 (zip64).
const END = { mark: 0x06054b50, bytes: 22, entries: 10, directoryAt: 16 } as const;
const LISTED = {
  mark: 0x02014b50,
  bytes: 46,
  flags: 8,
  method: 10,
  checksum: 16,
  packed: 20,
  unpacked: 24,
  nameBytes: 28,
  extraBytes: 30,
  noteBytes: 32,
  headerAt: 42,
} as const;
const LOCAL = { mark: 0x04034b50, bytes: 30, nameBytes: 26, extraBytes: 28 } as const;
const ZIP64 = { extra: 1, instead: 0xffffffff } as const;
const STORED = 0;
const DEFLATED = 8;
/** Longest note behind the directory. */
const MOST_NOTE = 0xffff;
/** Unpacked at a time, so that little more than the bound is ever made. */
const STEP = 16_384;

/** One spelling for a part's name: writers differ in slashes and case. */
export const partName = (name: string) =>
  name.replaceAll('\\', '/').replace(/^\/+/, '').toLowerCase();

function endOf(view: DataView): number {
  const first = Math.max(0, view.byteLength - END.bytes - MOST_NOTE);
  for (let at = view.byteLength - END.bytes; at >= first; at -= 1) {
    if (view.getUint32(at, true) === END.mark) return at;
  }
  throw new BadArchive('no directory');
}

/** The sizes and the place of an entry; where they do not fit, they stand in an extra field, in the order of their need. */
function places(view: DataView, at: number): { packedBytes: number; headerAt: number } {
  let packedBytes = view.getUint32(at + LISTED.packed, true);
  let headerAt = view.getUint32(at + LISTED.headerAt, true);
  let extraAt = at + LISTED.bytes + view.getUint16(at + LISTED.nameBytes, true);
  const extraEnd = extraAt + view.getUint16(at + LISTED.extraBytes, true);
  while (extraAt + 4 <= extraEnd) {
    const id = view.getUint16(extraAt, true);
    if (id === ZIP64.extra) {
      let place = extraAt + 4;
      const next = () => {
        place += 8;
        return Number(view.getBigUint64(place - 8, true));
      };
      if (view.getUint32(at + LISTED.unpacked, true) === ZIP64.instead) next();
      if (packedBytes === ZIP64.instead) packedBytes = next();
      if (headerAt === ZIP64.instead) headerAt = next();
    }
    extraAt += 4 + view.getUint16(extraAt + 2, true);
  }
  return { packedBytes, headerAt };
}

function directory(bytes: Uint8Array, view: DataView): Map<string, Entry> {
  const end = endOf(view);
  const entries = new Map<string, Entry>();
  const names = new TextDecoder();
  let at = view.getUint32(end + END.directoryAt, true);
  for (let left = view.getUint16(end + END.entries, true); left > 0; left -= 1) {
    if (view.getUint32(at, true) !== LISTED.mark) throw new BadArchive('a broken directory');
    if (entries.size >= MOST.parts) throw new TooMuch('parts');
    const nameAt = at + LISTED.bytes;
    const nameEnd = nameAt + view.getUint16(at + LISTED.nameBytes, true);
    entries.set(partName(names.decode(bytes.subarray(nameAt, nameEnd))), {
      method: view.getUint16(at + LISTED.method, true),
      checksum: view.getUint32(at + LISTED.checksum, true),
      isEncrypted: (view.getUint16(at + LISTED.flags, true) & 1) === 1,
      ...places(view, at),
    });
    at =
      nameEnd +
      view.getUint16(at + LISTED.extraBytes, true) +
      view.getUint16(at + LISTED.noteBytes, true);
  }
  return entries;
}

/** CRC-32 as 4.4.7 has it: reversed polynomial, all bits of the start and the end turned. */
const POLYNOMIAL = 0xedb88320;
const NO_BYTES = 0xffffffff;
const OF_BYTE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let sum = byte;
  for (let bit = 0; bit < 8; bit += 1) sum = (sum >>> 1) ^ (sum & 1 ? POLYNOMIAL : 0);
  return sum;
});

function summed(before: number, bytes: Uint8Array): number {
  let sum = before;
  for (const byte of bytes) sum = (sum >>> 8) ^ OF_BYTE[(sum ^ byte) & 0xff]!;
  return sum;
}

export interface Archive {
  /** What of its parts may still be read. */
  readonly left: { elements: number };
  has(name: string): boolean;
  /** Unpacks a part and hands it over piece by piece. Throws BadArchive, TooMuch, and what `take` throws. */
  unpack(name: string, take: (piece: Uint8Array) => void): void;
}

/** Opens an archive. Throws BadArchive where it is none, TooMuch where it has too many parts. */
export function openArchive(bytes: Uint8Array): Archive {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const entries = outOfBounds(() => directory(bytes, view));
  let inflated = 0;

  const packed = ({ headerAt, packedBytes }: Entry) =>
    outOfBounds(() => {
      if (view.getUint32(headerAt, true) !== LOCAL.mark) throw new BadArchive('a part is missing');
      const from =
        headerAt +
        LOCAL.bytes +
        view.getUint16(headerAt + LOCAL.nameBytes, true) +
        view.getUint16(headerAt + LOCAL.extraBytes, true);
      if (from + packedBytes > bytes.length) throw new BadArchive('a part is cut off');
      return bytes.subarray(from, from + packedBytes);
    });

  return {
    left: { elements: MOST.elements },
    has: (name) => entries.has(partName(name)),
    unpack(name, take) {
      const entry = entries.get(partName(name));
      if (entry === undefined) throw new BadArchive(`no part ${name}`);
      if (entry.isEncrypted) throw new BadArchive('a part is locked');
      let sum = NO_BYTES;
      const counted = (piece: Uint8Array) => {
        inflated += piece.length;
        if (inflated > MOST.inflatedBytes) throw new TooMuch('inflatedBytes');
        sum = summed(sum, piece);
        take(piece);
      };
      const from = packed(entry);
      if (entry.method !== STORED && entry.method !== DEFLATED) {
        throw new BadArchive('a part is packed in an unknown way');
      }
      let isWhole = entry.method === STORED;
      const inflate = new Inflate((piece, isLast) => {
        counted(piece);
        isWhole ||= isLast;
      });
      for (let at = 0; at < from.length; at += STEP) {
        const piece = from.subarray(at, at + STEP);
        if (entry.method === STORED) counted(piece);
        else push(inflate, piece, at + STEP >= from.length);
      }
      if (!isWhole || (sum ^ NO_BYTES) >>> 0 !== entry.checksum) {
        throw new BadArchive('a part is damaged');
      }
    },
  };
}

/** Unpacks a piece. The library's own faults are told by their numbers; whatever the taker throws is passed on. */
function push(inflate: Inflate, piece: Uint8Array, isLast: boolean): void {
  try {
    inflate.push(piece, isLast);
  } catch (fault) {
    if (fault instanceof Error && 'code' in fault) {
      throw new BadArchive('a part is damaged', { cause: fault });
    }
    throw fault;
  }
}

/** Reading outside the file means that it is broken. */
function outOfBounds<Result>(read: () => Result): Result {
  try {
    return read();
  } catch (fault) {
    if (fault instanceof RangeError) throw new BadArchive('it is cut off', { cause: fault });
    throw fault;
  }
}
