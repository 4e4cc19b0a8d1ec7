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
/** Volts, as a share of the greatest budget, that adding up in another order may make of none. */
const VOLTS_SHARE = 1e-13;

interface Round {
  readonly chosen: readonly number[];
  readonly cost: number;
  /** What was dropped costs at least this. */
  readonly droppedFrom: number;
  /** Points that were looked at in this round and before. */
  readonly lookedAt: number;
}

/** A round of fronts; undefined where none of what is left is better than the cost known. */
function chooseOnce(
  tree: SizingTree,
  prices: VoltPrices,
  most: number,
  mostLater: number,
  knownCost: number,
  lookedAtBefore: number,
): Round | undefined {
  const { feederAt, budgets, options } = tree;
  const lost = leastLost(tree);
  const slackV = VOLTS_SHARE * Math.max(0, ...budgets.filter(Number.isFinite));
  const roundingOfBounds = BOUNDS_SHARE * prices.scale;
  const margin = knownCost * (1 + ROUNDING_SHARE) - prices.leastOfAll + roundingOfBounds;
  const below: number[][] = feederAt.map(() => []);
  const fronts = new Array<RunFront>(feederAt.length);
  let droppedFrom = Infinity;
  let lookedAt = lookedAtBefore;
  for (let at = feederAt.length - 1; at >= 0; at -= 1) {
    const fed = below[at]!.map((place) => fronts[place]!);
    const feeder = feederAt[at]!;
    const thinned = runFront(meetingFront(fed, budgets[at]!), options[at]!, {
      leastRoom: (feeder < 0 ? 0 : lost[feeder]!) - slackV,
      price: prices.onRun[at]!,
      least: prices.least[at]!,
      margin,
      most: lookedAt < MOST_LOOKED_AT ? most : mostLater,
    });
    lookedAt += thinned.lookedAt;
    if (thinned.front.room.length === 0) return undefined;
    fronts[at] = thinned.front;
    const dropped = prices.leastOfAll + thinned.droppedFrom - roundingOfBounds;
    droppedFrom = Math.min(droppedFrom, dropped);
    if (feeder >= 0) below[feeder]!.push(at);
  }
  const chosen: number[] = [];
  const room: number[] = [];
  let cost = 0;
  for (const [at, feeder] of feederAt.entries()) {
    const front = fronts[at]!;
    const point = cheapestWith(front, feeder < 0 ? -slackV : room[feeder]!);
    if (feeder < 0) cost += front.cost[point]!;
    chosen.push(front.option[point]!);
    room.push(front.roomAtEnd[point]!);
  }
  return { chosen, cost, droppedFrom, lookedAt };
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
    const known = best?.cost ?? Infinity;
    const round = chooseOnce(tree, prices, most, Math.min(most, ROUNDS[0]!), known, lookedAt);
    if (round === undefined) return best && { ...best, atLeast: best.cost };
    const better = best === undefined || round.cost < best.cost ? round : best;
    const bound = Math.max(prices.leastOfAll, round.droppedFrom, best?.atLeast ?? -Infinity);
    const isProved = better.cost <= round.droppedFrom * (1 + ROUNDING_SHARE);
    best = {
      chosen: better.chosen,
      cost: better.cost,
      atLeast: isProved ? better.cost : Math.min(better.cost, bound),
    };
    lookedAt = round.lookedAt;
    if (best.atLeast === best.cost || lookedAt >= MOST_LOOKED_AT) break;
  }
  return best;
}
