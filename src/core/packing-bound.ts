/** How few spools can possibly do: lower bounds of one-dimensional cutting stock. */

/** Pieces by length, in whole grains: `lengths` longest first, no two alike, and how many there are of each. */
export interface Pieces {
  readonly lengths: readonly number[];
  readonly counts: readonly number[];
}

/** Most parts that `roundedBound` tries; more of them raised no bound of the published instances. */
const MOST_PARTS = 40;

/** Sums of very long lists are off by a few grains in a thousand million; no bound may be one too many for that. */
const ROUNDING_SPOOLS = 1e-7;

function wholeSpools(grains: number, room: number): number {
  return Math.ceil(grains / room - ROUNDING_SPOOLS);
}

/** Grains of all pieces together. */
export function totalOf({ lengths, counts }: Pieces): number {
  return lengths.reduce((sum, length, index) => sum + length * counts[index]!, 0);
}

/**
 * Pieces longer than the spool less a threshold leave no room for one of the threshold; those longer than half a spool need
 * one each, and what they leave may hold those between threshold and half: the bound L2 of S. Martello, P. Toth, Discrete
 * Applied Mathematics 28 (1990) 59, the most over all thresholds. Two pointers, since thresholds only fall.
 */
function bigPiecesBound({ lengths, counts }: Pieces, room: number): number {
  const half = lengths.findIndex((length) => 2 * length <= room);
  const firstSmall = half < 0 ? lengths.length : half;
  let ownSpool = 0;
  let ownGrains = 0;
  for (let index = 0; index < firstSmall; index += 1) {
    ownSpool += counts[index]!;
    ownGrains += lengths[index]! * counts[index]!;
  }
  let best = ownSpool;
  let alone = 0;
  let aloneGrains = 0;
  let next = 0;
  let between = 0;
  // From the shortest threshold on: those alone with it are the longest pieces, and fewer as it falls.
  while (next < firstSmall) {
    alone += counts[next]!;
    aloneGrains += lengths[next]! * counts[next]!;
    next += 1;
  }
  for (let small = firstSmall; small < lengths.length; small += 1) {
    const threshold = lengths[small]!;
    between += threshold * counts[small]!;
    while (next > 0 && lengths[next - 1]! <= room - threshold) {
      next -= 1;
      alone -= counts[next]!;
      aloneGrains -= lengths[next]! * counts[next]!;
    }
    const left = (ownSpool - alone) * room - (ownGrains - aloneGrains);
    best = Math.max(best, ownSpool + Math.max(0, wholeSpools(between - left, room)));
  }
  return best;
}

/**
 * Each length rounded to parts of a spool so that what fits still fits: floor((k + 1) x) / k, and x itself where (k + 1) x is
 * whole (S. P. Fekete, J. Schepers, Mathematical Programming 91 (2001) 11).
 */
function roundedBound({ lengths, counts }: Pieces, room: number, parts: number): number {
  let wholeParts = 0;
  let exactGrains = 0;
  for (const [index, length] of lengths.entries()) {
    const scaled = (parts + 1) * length;
    if (scaled % room === 0) exactGrains += length * counts[index]!;
    else wholeParts += Math.floor(scaled / room) * counts[index]!;
  }
  // One fraction, so that nothing is lost by rounding: (wholeParts room + exactGrains parts) / (parts room).
  return wholeSpools(wholeParts * room + exactGrains * parts, parts * room);
}

/** So many spools of `room` grains are needed at least. */
export function leastSpoolsFor(pieces: Pieces, room: number): number {
  let best = Math.max(wholeSpools(totalOf(pieces), room), bigPiecesBound(pieces, room));
  for (let parts = 2; parts <= MOST_PARTS; parts += 1) {
    best = Math.max(best, roundedBound(pieces, room, parts));
  }
  return best;
}
