/** The zip of a workbook, packed anew: times inside are one fixed moment, so that the same sheets give the same bytes. */
import { unzipSync, zipSync } from 'fflate';
import { withDrawings, type SheetDrawings } from './drawings';
import type { Bytes } from './xml';

/** 1 January 1980, 00:00: the earliest that a zip can say, which knows no time zone. */
const EARLIEST = new Date(1980, 0, 1);

function together(pieces: readonly Bytes[]): Bytes {
  const whole = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

/**
 * The zip packed, with the content of some of its files, piece by piece, by their names, and with drawings. The pieces are
 * taken out of their map one after the other: of a long list they are a hundred megabytes, and need not stand twice.
 */
export function repacked(
  zip: Uint8Array,
  instead: Map<string, readonly Bytes[]>,
  drawings: SheetDrawings = new Map(),
): Uint8Array {
  const files = Object.entries(unzipSync(zip)).map(([name, content]) => {
    const pieces = instead.get(name);
    instead.delete(name);
    return [name, pieces === undefined ? content : together(pieces)] as const;
  });
  return zipSync(withDrawings(Object.fromEntries(files), drawings), { mtime: EARLIEST });
}
