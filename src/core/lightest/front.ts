/**
 * Fronts: of all the sizes that the runs from a place on may have, those that no others beat in both cost and the volts
 * that they leave to be lost above. Kept from the most volts left, which cost most, to the fewest.
 */
import type { SizeOptions } from './sizing-tree';

export interface Front {
  /** Volts that may be lost above, so that every load here still has its own; Infinity where no load asks. */
  readonly room: Float64Array;
  readonly cost: Float64Array;
}

/** A front with a run at its head: how it came about, so that the sizes can be read off in the end. */
export interface RunFront extends Front {
  readonly option: Uint8Array;
  /** Volts left at the far end of the run. */
  readonly roomAtEnd: Float64Array;
}

/** A rule for what of a front is worth keeping. */
export interface Keeping {
  /** Least room that the runs above can do with. */
  readonly leastRoom: number;
  /** What a volt of room is worth in the rest of the tree, and what the runs here cost at least at that price. */
  readonly price: number;
  readonly least: number;
  /** How far above that a front's point may be, or it is no part of anything better than what is already known. */
  readonly margin: number;
  /** Points that are kept at most. */
  readonly most: number;
}

/** A front that was thinned, with how far above its least the best of what was dropped is; Infinity where nothing was. */
export interface Thinned {
  readonly front: RunFront;
  readonly droppedFrom: number;
  /** Points that were looked at for it. */
  readonly lookedAt: number;
}

/** How far a point is above the least: what it costs more than the cheapest sizes would at the price of a volt. */
function excess({ price, least }: Keeping, room: number, cost: number): number {
  return (price > 0 ? cost - price * room : cost) - least;
}

/** Which points to keep of so many: all, or those of the least excess. */
function keptOf({ room, cost }: Front, keeping: Keeping): { kept: number[]; droppedFrom: number } {
  const over = Float64Array.from(room, (left, index) => excess(keeping, left, cost[index]!));
  const kept: number[] = [];
  for (let index = 0; index < over.length; index += 1) {
    if (over[index]! <= keeping.margin) kept.push(index);
  }
  if (kept.length <= keeping.most) return { kept, droppedFrom: Infinity };
  const sorted = Float64Array.from(kept, (index) => over[index]!).sort();
  const droppedFrom = sorted[keeping.most]!;
  const best = kept.filter((index) => over[index]! < droppedFrom);
  return { kept: best.length > 0 ? best : kept.slice(0, keeping.most), droppedFrom };
}

/** All of a list joined two by two, so that none is gone through more often than it has to be. */
function joinedInPairs<Part>(parts: readonly Part[], join: (one: Part, other: Part) => Part) {
  let left = parts;
  while (left.length > 1) {
    left = Array.from({ length: Math.ceil(left.length / 2) }, (_, pair) => {
      const [one, other] = [left[2 * pair]!, left[2 * pair + 1]];
      return other === undefined ? one : join(one, other);
    });
  }
  return left[0]!;
}

/** What hangs at the far end of a run: its own load, then the fronts of the runs that it feeds, each to leave enough. */
export function meetingFront(fed: readonly Front[], budget: number): Front {
  const own = { room: Float64Array.of(budget), cost: Float64Array.of(0) };
  return joinedInPairs([own, ...fed], meetTwo);
}

function meetTwo(one: Front, other: Front): Front {
  const room: number[] = [];
  const cost: number[] = [];
  let [i, j] = [0, 0];
  // The cheapest of each that leaves as much as the best of the other can.
  const least = Math.min(one.room[0]!, other.room[0]!);
  while (i + 1 < one.room.length && one.room[i + 1]! >= least) i += 1;
  while (j + 1 < other.room.length && other.room[j + 1]! >= least) j += 1;
  for (;;) {
    const left = Math.min(one.room[i]!, other.room[j]!);
    room.push(left);
    cost.push(one.cost[i]! + other.cost[j]!);
    const [next, nextOther] = [one.room[i + 1] ?? -Infinity, other.room[j + 1] ?? -Infinity];
    if (next === -Infinity && nextOther === -Infinity) break;
    if (next >= nextOther) i += 1;
    if (nextOther >= next) j += 1;
  }
  return { room: Float64Array.from(room), cost: Float64Array.from(cost) };
}

/** Points in the making. */
interface Points {
  readonly room: number[];
  readonly cost: number[];
  readonly option: number[];
  readonly from: number[];
}

/** A front behind one option of a run, without what cannot be of use. */
function behind(end: Front, option: number, sizes: SizeOptions, keeping: Keeping): Points {
  const points: Points = { room: [], cost: [], option: [], from: [] };
  const [drop, more] = [sizes.drops[option]!, sizes.costs[option]!];
  for (let index = 0; index < end.room.length; index += 1) {
    const room = end.room[index]! - drop;
    if (room < keeping.leastRoom) break;
    const cost = end.cost[index]! + more;
    if (excess(keeping, room, cost) > keeping.margin) continue;
    points.room.push(room);
    points.cost.push(cost);
    points.option.push(option);
    points.from.push(index);
  }
  return points;
}

/** The points of both that no other beats. */
function better(one: Points, other: Points): Points {
  const points: Points = { room: [], cost: [], option: [], from: [] };
  let [i, j, least] = [0, 0, Infinity];
  while (i < one.room.length || j < other.room.length) {
    const [a, b] = [one.room[i] ?? -Infinity, other.room[j] ?? -Infinity];
    const first = a > b || (a === b && one.cost[i]! <= other.cost[j]!);
    const [from, at] = first ? [one, i++] : [other, j++];
    if (!(from.cost[at]! < least)) continue;
    least = from.cost[at]!;
    points.room.push(from.room[at]!);
    points.cost.push(least);
    points.option.push(from.option[at]!);
    points.from.push(from.from[at]!);
  }
  return points;
}

/** The front of a run over that of its far end: each of its sizes before each point, and of all these the best. */
export function runFront(end: Front, sizes: SizeOptions, keeping: Keeping): Thinned {
  const atPrice = sizes.costs.map((cost, option) =>
    keeping.price > 0 ? cost + keeping.price * sizes.drops[option]! : cost,
  );
  const most = Math.min(...atPrice) + keeping.margin;
  const options = [...sizes.drops.keys()].filter((option) => atPrice[option]! <= most);
  const points = joinedInPairs(
    options.map((option) => behind(end, option, sizes, keeping)),
    better,
  );
  const all = { room: Float64Array.from(points.room), cost: Float64Array.from(points.cost) };
  const { kept, droppedFrom } = keptOf(all, keeping);
  const front: RunFront = {
    room: Float64Array.from(kept, (index) => all.room[index]!),
    cost: Float64Array.from(kept, (index) => all.cost[index]!),
    option: Uint8Array.from(kept, (index) => points.option[index]!),
    roomAtEnd: Float64Array.from(kept, (index) => end.room[points.from[index]!]!),
  };
  return { front, droppedFrom, lookedAt: options.length * end.room.length };
}

/** The cheapest point of a front that leaves at least so much: the last, since both fall. */
export function cheapestWith({ room }: Front, least: number): number {
  let [low, high] = [0, room.length - 1];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (room[middle]! >= least) low = middle;
    else high = middle - 1;
  }
  return low;
}
