/** Pieces of wire cut from spools: as few spools as can be, and of those the shortest. */
import type { Budget } from './fillings';
import {
  closePackings,
  fillClosely,
  packFewest,
  searchPacking,
  type Filled,
  type Spools,
} from './packing';
import { totalOf, type Pieces } from './packing-bound';

/**
 * Lengths are counted in whole grains, so many to the longest spool, that sums are exact; a number that most divisors
 * divide, so that what is a plain part of a spool stays one. A plan is off by a grain a piece at most, a thousandth of a
 * millimetre over kilometres.
 */
const GRAINS = 735_134_400;
/** Rounding of a quotient must not make a whole number of grains one less. */
const ROUNDING_GRAINS = 1e-5;
/** What is left over of a spool within this share of it is rounding. */
const NOTHING_SHARE = 1e-8;

/** Steps that a plan may take: a few tenths of a second. */
const STEPS = 2_000_000;
/** Mixes of spools of several lengths that are looked at. */
const MOST_MIXES = 2000;

export interface PlannedSpool {
  readonly length: number;
  /** Places of its pieces in the list, longest first. */
  readonly pieces: readonly number[];
  readonly leftOver: number;
}

/** All lengths in one unit, whichever. */
export interface SpoolPlan {
  /** Longest spools first, and of one length the fullest. */
  readonly spools: readonly PlannedSpool[];
  /** No plan has fewer spools. */
  readonly leastSpools: number;
  /** No plan of so many spools as this one has less wire on them. */
  readonly leastLength: number;
}

/** Whether a piece can be cut from a spool, rounding aside. */
export function fitsOn(pieceLength: number, spoolLength: number): boolean {
  return grainsOf(pieceLength, spoolLength) <= GRAINS;
}

function grainsOf(length: number, longest: number): number {
  return Math.floor((length / longest) * GRAINS + ROUNDING_GRAINS);
}

/** Where the pieces of each length in grains stand in the list; those of no grains are left to the end. */
function byGrains(lengths: readonly number[], longest: number) {
  const places = new Map<number, number[]>();
  for (const [place, length] of lengths.entries()) {
    const grains = grainsOf(length, longest);
    const alike = places.get(grains);
    if (alike === undefined) places.set(grains, [place]);
    else alike.push(place);
  }
  const nothing = places.get(0) ?? [];
  places.delete(0);
  const grains = [...places.keys()].sort((one, other) => other - one);
  const pieces: Pieces = {
    lengths: grains,
    counts: grains.map((each) => places.get(each)!.length),
  };
  return { pieces, placesOf: grains.map((each) => places.get(each)!), nothing };
}

function loadOf({ lengths }: Pieces, { taken }: Filled): number {
  let load = 0;
  for (let at = 0; at < taken.length; at += 2) load += lengths[taken[at]!]! * taken[at + 1]!;
  return load;
}

function roomOf(filled: readonly Filled[]): number {
  return filled.reduce((sum, { room }) => sum + room, 0);
}

/** The same pieces on the shortest spools that hold them. */
function onShortest(
  pieces: Pieces,
  rooms: readonly number[],
  filled: readonly Filled[],
): readonly Filled[] {
  return filled.map(({ taken, room }) => {
    const load = loadOf(pieces, { taken, room });
    return { taken, room: rooms.findLast((each) => each >= load)! };
  });
}

/**
 * The mixes of `spools` spools whose room is at least `least` and less than `below`, least room first; undefined where there
 * are too many to look at.
 */
function mixes(
  rooms: readonly number[],
  spools: number,
  least: number,
  below: number,
): readonly Spools[] | undefined {
  const shortest = rooms.at(-1)!;
  const found: { readonly counts: readonly number[]; readonly room: number }[] = [];
  let looks = 0;
  const extend = (counts: readonly number[], left: number, room: number): boolean => {
    looks += 1;
    if (looks > 20 * MOST_MIXES || found.length > MOST_MIXES) return false;
    const next = rooms[counts.length]!;
    if (room + left * next < least || room + left * shortest >= below) return true;
    if (counts.length === rooms.length - 1) {
      found.push({ counts: [...counts, left], room: room + left * next });
      return true;
    }
    for (let count = 0; count <= left; count += 1) {
      if (!extend([...counts, count], left - count, room + count * next)) return false;
    }
    return true;
  };
  if (!extend([], spools, 0)) return undefined;
  return found.sort((one, other) => one.room - other.room).map(({ counts }) => ({ rooms, counts }));
}

/** Fills a mix of spools by rules of thumb: longest spools first, then the shortest that the longest piece goes into. */
function fillMix(
  pieces: Pieces,
  { rooms, counts }: Spools,
  budget: Budget,
): readonly Filled[] | undefined {
  const inOrder = (kinds: readonly number[]) => {
    const left = [...counts];
    return fillClosely(
      pieces,
      (longest) => {
        const kind = kinds.find((each) => left[each]! > 0 && rooms[each]! >= longest);
        if (kind !== undefined) left[kind]! -= 1;
        return kind === undefined ? undefined : rooms[kind];
      },
      budget,
    );
  };
  const longestFirst = [...rooms.keys()];
  return inOrder(longestFirst) ?? inOrder(longestFirst.reverse());
}

/**
 * The same number of spools with less wire on them, where there are spools of several lengths: mix by mix of spools, the
 * shortest together first. The first that the pieces go into is the best, where those before it are proven not to do.
 */
function shorten(
  pieces: Pieces,
  rooms: readonly number[],
  start: readonly Filled[],
  budget: Budget,
): { readonly filled: readonly Filled[]; readonly leastRoom: number } {
  const spools = start.length;
  const total = totalOf(pieces);
  let filled = onShortest(pieces, rooms, start);
  for (const other of closePackings(pieces, rooms[0]!, spools, budget)) {
    if (other.length !== spools) continue;
    const shorter = onShortest(pieces, rooms, other);
    if (roomOf(shorter) < roomOf(filled)) filled = shorter;
  }
  const leastRoom = Math.max(total, spools * rooms.at(-1)!);
  const candidates = mixes(rooms, spools, total, roomOf(filled));
  if (candidates === undefined) return { filled, leastRoom };

  let proven: number | undefined;
  for (const mix of candidates) {
    if (budget.steps < 0) return { filled, leastRoom: proven ?? mixRoom(mix) };
    const own: Budget = { steps: Math.floor(budget.steps / 4) };
    budget.steps -= own.steps;
    const found = fillMix(pieces, mix, own) ?? searchPacking(pieces, mix, own);
    budget.steps += own.steps;
    if (found === 'impossible') continue;
    proven ??= mixRoom(mix);
    if (found !== 'unknown') return { filled: onShortest(pieces, rooms, found), leastRoom: proven };
  }
  return { filled, leastRoom: proven ?? roomOf(filled) };
}

function mixRoom({ rooms, counts }: Spools): number {
  return rooms.reduce((sum, room, kind) => sum + room * counts[kind]!, 0);
}

/**
 * Cuts pieces from spools, any number of each of the lengths that spools come in: as few spools as can be, then as little
 * wire on them as can be. Every piece must fit on the longest spool (see fitsOn), and there must be a spool length above 0.
 * Exact for short lists; for any other the plan stands beside the bounds that no plan can beat. The same list always gives
 * the same plan.
 */
export function planSpools(
  pieceLengths: readonly number[],
  spoolLengths: readonly number[],
): SpoolPlan {
  const offered = [...new Set(spoolLengths)].sort((one, other) => other - one);
  const longest = offered[0]!;
  const lengthOf = new Map(offered.map((length) => [grainsOf(length, longest), length]));
  lengthOf.delete(0);
  const rooms = [...lengthOf.keys()];
  const { pieces, placesOf, nothing } = byGrains(pieceLengths, longest);

  const budget: Budget = { steps: STEPS };
  const fewest = packFewest(pieces, GRAINS, budget);
  const { filled, leastRoom } =
    rooms.length === 1 || fewest.filled.length === 0
      ? { filled: fewest.filled, leastRoom: fewest.filled.length * GRAINS }
      : shorten(pieces, rooms, fewest.filled, budget);

  const unused = placesOf.map((places) => [...places].reverse());
  const sorted = [...filled]
    .map((spool) => ({ ...spool, load: loadOf(pieces, spool) }))
    .sort((one, other) => other.room - one.room || other.load - one.load);
  const cut = sorted.map(({ room, taken }) => {
    const places: number[] = [];
    for (let at = 0; at < taken.length; at += 2) {
      for (let piece = 0; piece < taken[at + 1]!; piece += 1) {
        places.push(unused[taken[at]!]!.pop()!);
      }
    }
    return { length: lengthOf.get(room)!, places };
  });
  if (nothing.length > 0) {
    if (cut.length === 0) cut.push({ length: offered.at(-1)!, places: [] });
    cut.at(-1)!.places.push(...nothing);
  }
  const wire = cut.reduce((sum, { length }) => sum + length, 0);
  const leastLength = (leastRoom / GRAINS) * longest;
  // Grains are rounded down, by less than one a spool.
  const rounding = (cut.length / GRAINS) * longest;
  return {
    spools: cut.map(({ length, places }) => {
      const left = places.reduce((rest, place) => rest - pieceLengths[place]!, length);
      return { length, pieces: places, leftOver: left > NOTHING_SHARE * length ? left : 0 };
    }),
    leastSpools: Math.max(fewest.least, cut.length > 0 ? 1 : 0),
    leastLength: wire - leastLength <= rounding ? wire : leastLength,
  };
}
