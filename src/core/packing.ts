/**
 * One-dimensional cutting stock in whole grains: pieces into spools, by rules of thumb that are quick for any number of
 * pieces and by a complete search that a budget of steps bounds.
 */
import { eachFilling, ENOUGH, type Budget, type Left } from './fillings';
import { leastSpoolsFor, totalOf, type Pieces } from './packing-bound';

/** A filled spool: its room in grains, and the pieces as pairs of index into the lengths and number. */
export interface Filled {
  readonly room: number;
  readonly taken: readonly number[];
}

/** Spools to fill: rooms in grains, longest first, no two alike, and how many of each. */
export interface Spools {
  readonly rooms: readonly number[];
  readonly counts: readonly number[];
}

/**
 * First fit decreasing: each piece, longest first, into the first spool that still has room for it. Never more than 11/9 of
 * the fewest and 6/9 of a spool (G. Dosa, 2007). A tree over the spools' room finds the first in a logarithm of steps.
 */
export function firstFit({ lengths, counts }: Pieces, room: number): Filled[] {
  const pieces = counts.reduce((sum, count) => sum + count, 0);
  let leaves = 1;
  while (leaves < pieces) leaves *= 2;
  /** Most room under each node; every spool is there from the start, and opened by its first piece. */
  const most = new Float64Array(2 * leaves).fill(room);
  const taken: number[][] = [];
  for (const [index, length] of lengths.entries()) {
    for (let piece = 0; piece < counts[index]!; piece += 1) {
      let node = 1;
      while (node < leaves) node = most[2 * node]! >= length ? 2 * node : 2 * node + 1;
      (taken[node - leaves] ??= []).push(index, 1);
      most[node]! -= length;
      for (node >>= 1; node >= 1; node >>= 1) {
        most[node] = Math.max(most[2 * node]!, most[2 * node + 1]!);
      }
    }
  }
  return taken.map((parts) => ({ room, taken: parts }));
}

function allOf({ lengths, counts }: Pieces): Left {
  return { lengths, counts: Int32Array.from(counts) };
}

function takeOut(left: Left, taken: readonly number[], times: 1 | -1): void {
  for (let at = 0; at < taken.length; at += 2) left.counts[taken[at]!]! -= times * taken[at + 1]!;
}

function firstLeft({ counts }: Left, from: number): number {
  let index = from;
  while (index < counts.length && counts[index] === 0) index += 1;
  return index;
}

/** Steps that the filling of one spool may take; a filling that leaves nothing ends it sooner. */
const FEWEST_STEPS_A_SPOOL = 60;
const MOST_STEPS_A_SPOOL = 4000;
/** Of the steps there are, one packing may take so much. */
const SHARE_A_PACKING = 0.1;

/** The same, without the lengths of which none is left; `places` says where each stood. */
function withoutEmpty({ lengths, counts }: Left, places: readonly number[]) {
  const kept = [...lengths.keys()].filter((at) => counts[at]! > 0);
  return {
    left: {
      lengths: kept.map((at) => lengths[at]!),
      counts: Int32Array.from(kept, (at) => counts[at]!),
    },
    places: kept.map((at) => places[at]!),
  };
}

/**
 * Each spool, in the order given, around the longest piece left and so that the least is left over (minimum bin slack,
 * J. N. D. Gupta, J. C. Ho, Production Planning and Control 10 (1999) 598, with the longest piece fixed as K. Fleszar and
 * K. S. Hindi, Computers and Operations Research 29 (2002) 821, do). A slack that is close enough ends the filling of a
 * spool; since long pieces are tried first, the short ones that fit anywhere are left to the end. `roomFor` says what room
 * the next spool has, by the longest piece left. Undefined where there is none, or the budget ran out.
 */
export function fillClosely(
  pieces: Pieces,
  roomFor: (longest: number) => number | undefined,
  budget: Budget,
  closeEnough = 0,
): Filled[] | undefined {
  let left = allOf(pieces);
  let places: readonly number[] = [...pieces.lengths.keys()];
  let empty = 0;
  const stepsAtStart = SHARE_A_PACKING * budget.steps;
  const grains = totalOf(pieces);
  const filled: Filled[] = [];
  for (let first = 0; ;) {
    if (2 * empty > places.length) {
      ({ left, places } = withoutEmpty(left, places));
      empty = 0;
      first = 0;
    }
    first = firstLeft(left, first);
    if (first >= places.length) return filled;
    const room = roomFor(left.lengths[first]!);
    if (room === undefined || budget.steps < 0) return undefined;
    const share = (stepsAtStart * room) / grains;
    const steps = Math.round(Math.min(MOST_STEPS_A_SPOOL, Math.max(FEWEST_STEPS_A_SPOOL, share)));
    const own: Budget = { steps };
    left.counts[first]! -= 1;
    let rest: readonly number[] = [];
    eachFilling(left, room - left.lengths[first]!, room, own, (slack, taken) => {
      rest = [...taken];
      return slack <= closeEnough ? ENOUGH : slack - 1;
    });
    budget.steps -= steps - own.steps;
    takeOut(left, rest, 1);
    const taken = [first, 1, ...rest];
    for (let at = 0; at < taken.length; at += 2) {
      if (left.counts[taken[at]!] === 0) empty += 1;
    }
    filled.push({ room, taken: taken.map((part, at) => (at % 2 === 0 ? places[part]! : part)) });
  }
}

export type Found = readonly Filled[] | 'impossible' | 'unknown';

/** So many fillings of one spool are looked at in the order of what they leave over; more, and the search is not complete. */
const MOST_FILLINGS = 2000;
/** States that are remembered as hopeless. */
const MOST_REMEMBERED = 200_000;
/** A recursion of so many spools is no strain on any machine's stack. */
const DEEPEST = 500;

interface Filling {
  readonly slack: number;
  readonly room: number;
  readonly taken: readonly number[];
}

/** A complete search, spool by spool, for a packing into given spools. */
class Search {
  private readonly left: Left;
  private readonly roomsLeft: number[];
  private readonly hopeless = new Set<string>();
  private readonly filled: Filled[] = [];
  private complete = true;

  constructor(
    private readonly pieces: Pieces,
    private readonly spools: Spools,
    private readonly budget: Budget,
  ) {
    this.left = allOf(pieces);
    this.roomsLeft = [...spools.counts];
  }

  run(): Found {
    const { rooms } = this.spools;
    const room = rooms.reduce((sum, each, index) => sum + each * this.roomsLeft[index]!, 0);
    const spare = room - totalOf(this.pieces);
    if (spare < 0) return 'impossible';
    if (this.roomsLeft.reduce((sum, count) => sum + count, 0) > DEEPEST) return 'unknown';
    if (this.place(0, spare)) return this.filled;
    return this.complete ? 'impossible' : 'unknown';
  }

  /** Whether what is left goes into the spools that are left, of whose room `spare` grains may stay empty. */
  private place(from: number, spare: number): boolean {
    const first = firstLeft(this.left, from);
    if (first >= this.left.counts.length) return true;
    const state = `${this.roomsLeft.join()}/${this.left.counts.subarray(first).join()}`;
    if (this.hopeless.has(state)) return false;
    for (const { slack, room, taken } of this.fillings(first, spare)) {
      // The fillings that it ended have said that the search is not complete.
      if (this.budget.steps < 0) return false;
      const kind = this.spools.rooms.indexOf(room);
      takeOut(this.left, taken, 1);
      this.roomsLeft[kind]! -= 1;
      this.filled.push({ room, taken });
      if (this.place(first, spare - slack)) return true;
      this.filled.pop();
      this.roomsLeft[kind]! += 1;
      takeOut(this.left, taken, -1);
    }
    if (this.hopeless.size < MOST_REMEMBERED) this.hopeless.add(state);
    return false;
  }

  /** The fillings around the longest piece left, of every room there is, the closest first. */
  private fillings(first: number, spare: number): Filling[] {
    const found: Filling[] = [];
    for (const [kind, room] of this.spools.rooms.entries()) {
      if (this.roomsLeft[kind] === 0 || room < this.left.lengths[first]!) continue;
      const space = room - this.left.lengths[first]!;
      this.left.counts[first]! -= 1;
      const whole = eachFilling(this.left, space, spare, this.budget, (slack, taken) => {
        found.push({ slack, room, taken: [first, 1, ...taken] });
        return found.length < MOST_FILLINGS ? spare : ENOUGH;
      });
      this.left.counts[first]! += 1;
      if (!whole || found.length >= MOST_FILLINGS) this.complete = false;
    }
    return found.sort((one, other) => one.slack - other.slack);
  }
}

/** Looks for a packing into the spools given; "impossible" is proven, "unknown" is where the budget ended the search. */
export function searchPacking(pieces: Pieces, spools: Spools, budget: Budget): Found {
  return new Search(pieces, spools, budget).run();
}

export interface FewestSpools {
  readonly filled: readonly Filled[];
  /** No packing has fewer. */
  readonly least: number;
}

/** Slacks that count as close enough, in parts of what each spool may leave over where the fewest do; see fillClosely. */
const CLOSE_ENOUGH = [0, 0.5, 1, 1.5, 2, 3];

/** Packings by fillClosely that differ in what counts as close enough, where `spools` spools might do. */
export function* closePackings(
  pieces: Pieces,
  room: number,
  spools: number,
  budget: Budget,
): Generator<readonly Filled[]> {
  const spareEach = room - totalOf(pieces) / spools;
  for (const share of CLOSE_ENOUGH) {
    const close = fillClosely(pieces, () => room, budget, share * spareEach);
    if (close === undefined) return;
    yield close;
  }
}

/** The fewest spools of one room: rules of thumb first, and the search where they do not meet the bound. */
export function packFewest(pieces: Pieces, room: number, budget: Budget): FewestSpools {
  let least = leastSpoolsFor(pieces, room);
  let filled: readonly Filled[] = firstFit(pieces, room);
  const better = (candidate: readonly Filled[] | undefined) => {
    if (candidate !== undefined && candidate.length < filled.length) filled = candidate;
  };
  if (filled.length > least) {
    for (const close of closePackings(pieces, room, least, budget)) {
      better(close);
      if (filled.length === least) break;
    }
  }
  // Upwards, since what is impossible raises the bound; each target may spend half of what is left.
  for (let target = least; target < filled.length; target += 1) {
    const own: Budget = { steps: Math.floor(budget.steps / 2) };
    budget.steps -= own.steps;
    const found = searchPacking(pieces, { rooms: [room], counts: [target] }, own);
    budget.steps += Math.max(0, own.steps);
    if (found === 'impossible') least = target + 1;
    else if (found !== 'unknown') better(found);
  }
  return { filled, least };
}
