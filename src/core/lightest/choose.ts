/**
 * The sizes of a whole tree that cost least together. Fronts are merged from the ends to the source; what cannot lead to
 * anything better than the best sizes known so far is dropped on the way, by the bound that the prices of volts give. A
 * front that would still grow too long is thinned: its likeliest points stay, and the bound says how much better than the
 * result any sizes can be that were dropped.
 */
import { cheapestWith, meetingFront, runFront, type RunFront } from './front';
import { priceVolts, type VoltPrices } from './price-of-volts';
import { leastLost, type SizingTree } from './sizing-tree';

export interface Choice {
  /** By run, which of its options. */
  readonly chosen: readonly number[];
  readonly cost: number;
  /** No sizes cost less than this; the cost itself where they are proved the best. */
  readonly atLeast: number;
}

/** Points of a front in one round after another: most trees are proved with few ... */
const ROUNDS = [60, 300, 1500, 6000];
/** ... and once so many were looked at, the fronts of the rest are as short as in the first round, and it is the last. */
const MOST_LOOKED_AT = 6_000_000;

/** Costs that differ by less are one to the bound, which is computed with rounding errors. */
const ROUNDING_SHARE = 1e-10;
/** What the bounds may be off by, as a share of the figures that they are added up from. */
const BOUNDS_SHARE = 1e-12;
/** Volts that adding up in another order may make of none, for a run and each below it: a share of the greatest budget. */
const VOLTS_SHARE = 4e-16;

interface Round {
  /** Undefined where nothing was left that is better than the cost known. */
  readonly found: { readonly chosen: readonly number[]; readonly cost: number } | undefined;
  /** What was dropped for want of room costs at least this; all else that was dropped costs more than was known. */
  readonly droppedFrom: number;
  /** Points that were looked at in this round and before. */
  readonly lookedAt: number;
}

interface RoundLimits {
  /** Points of a front, as long as there may be more of them, and later. */
  readonly most: number;
  readonly mostLater: number;
  readonly knownCost: number;
  readonly lookedAt: number;
}

/** The sizes of the cheapest points, read off from the source on. */
function readOff({ feederAt }: SizingTree, fronts: readonly RunFront[]) {
  const chosen: number[] = [];
  const room: number[] = [];
  let cost = 0;
  for (const [at, feeder] of feederAt.entries()) {
    const front = fronts[at]!;
    const point = cheapestWith(front, feeder < 0 ? -Infinity : room[feeder]!);
    if (feeder < 0) cost += front.cost[point]!;
    chosen.push(front.option[point]!);
    room.push(front.roomAtEnd[point]!);
  }
  return { chosen, cost };
}

/** A round of fronts. */
function chooseOnce(tree: SizingTree, prices: VoltPrices, limits: RoundLimits): Round {
  const { feederAt, budgets, options } = tree;
  const lost = leastLost(tree);
  const slackV =
    VOLTS_SHARE *
    budgets.reduce((most, volts) => (volts < Infinity ? Math.max(most, volts) : most), 0);
  const roundingOfBounds = BOUNDS_SHARE * prices.scale;
  const margin = limits.knownCost * (1 + ROUNDING_SHARE) - prices.leastOfAll + roundingOfBounds;
  const below: number[][] = feederAt.map(() => []);
  const heights = feederAt.map(() => 1);
  const fronts = new Array<RunFront>(feederAt.length);
  let droppedFrom = Infinity;
  let { lookedAt } = limits;
  for (let at = feederAt.length - 1; at >= 0; at -= 1) {
    const fed = below[at]!.map((place) => fronts[place]!);
    const feeder = feederAt[at]!;
    const thinned = runFront(meetingFront(fed, budgets[at]!), options[at]!, {
      leastRoom: (feeder < 0 ? 0 : lost[feeder]!) - slackV * heights[at]!,
      price: prices.onRun[at]!,
      least: prices.least[at]!,
      margin,
      most: lookedAt < MOST_LOOKED_AT ? limits.most : limits.mostLater,
    });
    lookedAt += thinned.lookedAt;
    const dropped = prices.leastOfAll + thinned.droppedFrom - roundingOfBounds;
    droppedFrom = Math.min(droppedFrom, dropped);
    if (thinned.front.room.length === 0) return { found: undefined, droppedFrom, lookedAt };
    fronts[at] = thinned.front;
    if (feeder < 0) continue;
    below[feeder]!.push(at);
    heights[feeder] = Math.max(heights[feeder]!, heights[at]! + 1);
  }
  return { found: readOff(tree, fronts), droppedFrom, lookedAt };
}

/**
 * Chooses an option for each run so that every load keeps its budget and the costs add up to the least; undefined where
 * even the options that lose least do not keep them. Time and memory grow in proportion to the runs times the longest
 * front, which ROUNDS bound.
 */
export function chooseLeast(
  tree: SizingTree,
  rounds: readonly number[] = ROUNDS,
): Choice | undefined {
  if (leastLost(tree).some((volts, at) => volts > tree.budgets[at]!)) return undefined;
  const prices = priceVolts(tree);
  let best: Choice | undefined;
  let lookedAt = 0;
  for (const most of rounds) {
    const mostLater = Math.min(most, ROUNDS[0]!);
    const knownCost = best?.cost ?? Infinity;
    const round = chooseOnce(tree, prices, { most, mostLater, knownCost, lookedAt });
    const better = round.found !== undefined && round.found.cost < knownCost ? round.found : best;
    if (better === undefined) return undefined;
    const { chosen, cost } = better;
    const bound = Math.max(prices.leastOfAll, round.droppedFrom, best?.atLeast ?? -Infinity);
    const isProved = cost <= round.droppedFrom * (1 + ROUNDING_SHARE);
    best = { chosen, cost, atLeast: isProved ? cost : Math.min(cost, bound) };
    lookedAt = round.lookedAt;
    if (best.atLeast === best.cost || lookedAt >= MOST_LOOKED_AT) break;
  }
  return best;
}
