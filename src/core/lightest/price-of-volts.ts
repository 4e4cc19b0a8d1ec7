/**
 * What a volt is worth: the sizing of a tree with sizes that may be mixed along a run, solved exactly, and the price that
 * the volts lost on the way to each load have in it (its dual). From it follow bounds on what any sizes can come to.
 *
 * With mixed sizes a run's least cost over its drop is convex and made of straight pieces, and so is the least cost of all
 * that hangs at a place over the volts that may be lost above it. A run joins the pieces of both in the order of their
 * slopes; where runs meet the slopes add up.
 */
import type { SizeOptions, SizingTree } from './sizing-tree';

/** A convex function of the volts left for the runs above: level up to `from`, then pieces of rising slopes, then no more. */
interface Pieces {
  readonly from: number;
  readonly slopes: readonly number[];
  readonly widths: readonly number[];
}

/** Nothing below asks for volts. */
const FREE: Pieces = { from: Infinity, slopes: [], widths: [] };

/** The lower hull of a run's options; slopes rise as the drop falls. */
function hullOf({ drops, costs }: SizeOptions): Pieces {
  const kept: number[] = [];
  const slope = (from: number, to: number) =>
    (costs[to]! - costs[from]!) / (drops[from]! - drops[to]!);
  for (let option = 0; option < drops.length; option += 1) {
    while (kept.length > 1 && slope(kept.at(-2)!, kept.at(-1)!) >= slope(kept.at(-1)!, option)) {
      kept.pop();
    }
    kept.push(option);
  }
  return {
    from: -drops[0]!,
    slopes: kept.slice(1).map((option, index) => slope(kept[index]!, option)),
    widths: kept.slice(1).map((option, index) => drops[kept[index]!]! - drops[option]!),
  };
}

/** The pieces of both in the order of their slopes. */
function joined(one: Pieces, other: Pieces, most: number): Pieces {
  const slopes: number[] = [];
  const widths: number[] = [];
  let [i, j] = [0, 0];
  while (i < one.slopes.length || j < other.slopes.length) {
    const first = j >= other.slopes.length || one.slopes[i]! <= other.slopes[j]!;
    slopes.push(first ? one.slopes[i]! : other.slopes[j]!);
    widths.push(first ? one.widths[i++]! : other.widths[j++]!);
  }
  return { from: one.from + other.from, ...shortened(slopes, widths, most) };
}

/** Pieces that are told apart, for all runs together about so many; prices need not be exact for the bounds to hold. */
const PIECES = { ofAll: 10_000_000, least: 500, most: 5000 } as const;

/** The same in half as many pieces where there are too many, two neighbours as one. */
function shortened(slopes: readonly number[], widths: readonly number[], most: number) {
  if (slopes.length <= most) return { slopes, widths };
  const starts = Array.from({ length: Math.ceil(slopes.length / 2) }, (_, pair) => 2 * pair);
  const wide = starts.map((at) => widths[at]! + (widths[at + 1] ?? 0));
  const rise = (at: number) => (slopes[at] ?? 0) * (widths[at] ?? 0);
  return {
    slopes: starts.map((at, pair) => (rise(at) + rise(at + 1)) / wide[pair]!),
    widths: wide,
  };
}

function endOf({ from, widths }: Pieces): number {
  return widths.reduce((sum, width) => sum + width, from);
}

/** The sum of what hangs at one place, up to the volts that its own load allows. */
function meeting(fed: readonly Pieces[], budget: number): Pieces {
  const end = fed.reduce((least, pieces) => Math.min(least, endOf(pieces)), budget);
  const steps: { readonly at: number; readonly rise: number }[] = [];
  for (const { from, slopes, widths } of fed) {
    let at = from;
    for (const [index, slope] of slopes.entries()) {
      steps.push({ at, rise: slope - (slopes[index - 1] ?? 0) });
      at += widths[index]!;
    }
  }
  steps.sort((a, b) => a.at - b.at);
  const from = Math.min(end, steps[0]?.at ?? end);
  const slopes: number[] = [];
  const widths: number[] = [];
  let slope = 0;
  for (const [index, { at, rise }] of steps.entries()) {
    if (at >= end) break;
    slope += rise;
    const width = Math.min(end, steps[index + 1]?.at ?? end) - at;
    if (width > 0) {
      slopes.push(slope);
      widths.push(width);
    }
  }
  return { from, slopes, widths };
}

/** Where the pieces below a slope end, and where those up to it do. */
function endsAtSlope({ from, slopes, widths }: Pieces, slope: number): readonly [number, number] {
  let below = from;
  let upTo = from;
  for (const [index, own] of slopes.entries()) {
    if (own > slope) break;
    upTo += widths[index]!;
    if (own < slope) below = upTo;
  }
  return [below, upTo];
}

/** Slopes left and right of a place, which may lie a rounding error off a corner. */
function slopesAround({ from, slopes, widths }: Pieces, place: number): readonly [number, number] {
  const slack = 1e-9 * Math.abs(place);
  let at = from;
  let left = 0;
  for (const [index, slope] of slopes.entries()) {
    if (place <= at + slack) return [left, place < at - slack ? left : slope];
    left = slope;
    at += widths[index]!;
  }
  return [left, place < at - slack ? left : Infinity];
}

/**
 * Shares the price of a volt on a run among its own load and the runs that it feeds: each takes at least what the volts
 * left of its place are worth to it, and no more than those right of it.
 */
function shared(
  fed: readonly Pieces[],
  place: number,
  price: number,
): { readonly fed: readonly number[]; readonly rest: number } {
  const around = fed.map((pieces) => slopesAround(pieces, place));
  let rest = Math.max(0, price - around.reduce((sum, [left]) => sum + left, 0));
  const prices = around.map(([left, right]) => {
    const more = Math.min(rest, right - left);
    rest -= more;
    return left + more;
  });
  return { fed: prices, rest };
}

/** Prices of volts, and the bounds that they give. */
export interface VoltPrices {
  /** By run, what a volt lost on it is worth to all that hangs there. */
  readonly onRun: readonly number[];
  /** By run, what it and all that it feeds cost at least, less what the volts that are left above are worth to them. */
  readonly least: readonly number[];
  /** No sizes of the whole tree cost less. */
  readonly leastOfAll: number;
  /** The greatest figure that the bounds were added up from, against which their rounding errors are small. */
  readonly scale: number;
}

function ownPrices(tree: SizingTree): number[] {
  const { feederAt, budgets, options } = tree;
  const count = feederAt.length;
  const hulls = options.map(hullOf);
  const most = Math.min(PIECES.most, Math.max(PIECES.least, Math.floor(PIECES.ofAll / count)));
  const below: number[][] = feederAt.map(() => []);
  const ends = new Array<Pieces>(count);
  const wholes = new Array<Pieces>(count);
  const roots: number[] = [];
  for (let at = count - 1; at >= 0; at -= 1) {
    const fed = below[at]!.map((place) => wholes[place]!).filter(({ from }) => from < Infinity);
    const isFree = fed.length === 0 && budgets[at] === Infinity;
    ends[at] = isFree ? FREE : meeting(fed, budgets[at]!);
    wholes[at] = isFree ? FREE : joined(ends[at]!, hulls[at]!, most);
    if (feederAt[at]! >= 0) below[feederAt[at]!]!.push(at);
    else roots.push(at);
  }
  const prices = new Array<number>(count).fill(0);
  const room = new Array<number>(count).fill(0);
  for (const root of roots) prices[root] = slopesAround(wholes[root]!, 0)[0];
  const own = new Array<number>(count).fill(0);
  for (let at = 0; at < count; at += 1) {
    const price = prices[at]!;
    if (!(price > 0)) continue;
    const [endBelow, endUpTo] = endsAtSlope(ends[at]!, price);
    const [hullBelow] = endsAtSlope(hulls[at]!, price);
    const place = Math.max(endBelow, Math.min(endUpTo, room[at]! - hullBelow));
    const fed = below[at]!.filter((child) => wholes[child]!.from < Infinity);
    const { fed: shares, rest } = shared(
      fed.map((child) => wholes[child]!),
      place,
      price,
    );
    for (const [index, child] of fed.entries()) {
      prices[child] = shares[index]!;
      room[child] = place;
    }
    if (budgets[at]! < Infinity) own[at] = rest;
  }
  return own;
}

/** The bounds of any prices that are not negative, by weak duality. */
function boundsOf({ feederAt, budgets, options }: SizingTree, own: readonly number[]): VoltPrices {
  const onRun = [...own];
  const least = own.map((price, at) => (price > 0 ? -price * budgets[at]! : 0));
  let leastOfAll = 0;
  let scale = -least.reduce((sum, worth) => sum + worth, 0);
  for (let at = own.length - 1; at >= 0; at -= 1) {
    const { drops, costs } = options[at]!;
    const price = onRun[at]!;
    const cheapest = costs.reduce(
      (most, cost, option) => Math.min(most, cost + price * drops[option]!),
      Infinity,
    );
    least[at]! += cheapest;
    scale += cheapest;
    const feeder = feederAt[at]!;
    if (feeder < 0) {
      leastOfAll += least[at]!;
    } else {
      onRun[feeder]! += price;
      least[feeder]! += least[at]!;
    }
  }
  return { onRun, least, leastOfAll, scale };
}

/**
 * Prices of volts for a tree whose loads all can be served. The bounds hold for any prices that are not negative, so that
 * rounding can weaken them but not make them wrong; where figures are too small or large for any, they are 0.
 */
export function priceVolts(tree: SizingTree): VoltPrices {
  const bounds = boundsOf(tree, ownPrices(tree));
  return bounds.least.every(Number.isFinite) && Number.isFinite(bounds.scale)
    ? bounds
    : boundsOf(
        tree,
        tree.budgets.map(() => 0),
      );
}
