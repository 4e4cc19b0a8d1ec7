/** Trees of runs that wait for their sizes, drawn at random, and the least cost of small ones by trying everything. */
import fc from 'fast-check';
import { ohmsPerM } from '../../../src/core/conductor';
import { leastLost, type SizingTree } from '../../../src/core/lightest/sizing-tree';
import { SERIES_SIZES, sizeAreaMm2 } from '../../../src/core/size';

interface DrawnRun {
  readonly feeder: number;
  readonly amps: number;
  readonly lengthM: number;
  /** Its budget lies so far from the least to the most that can be lost on the way to it. */
  readonly share: number;
  readonly isLoaded: boolean;
  /** Prices instead of metal: what the sizes cost for a metre, in any order. */
  readonly prices: readonly number[];
}

const parts = (most: number) =>
  fc.integer({ min: 1, max: 1000 }).map((part) => (part / 1000) * most);

const SIZES = SERIES_SIZES.mm2;

function runOf(isPriced: boolean): fc.Arbitrary<DrawnRun> {
  return fc.record({
    feeder: fc.nat(999),
    amps: parts(12),
    lengthM: fc.oneof({ weight: 20, arbitrary: parts(8) }, fc.constant(0)),
    share: fc.nat(500).map((part) => part / 1000),
    isLoaded: fc.boolean(),
    prices: isPriced
      ? fc.array(parts(10), { minLength: SIZES.length, maxLength: SIZES.length })
      : fc.constant([]),
  });
}

/** A run's sizes from some on that carry it, without any that another beats. */
function optionsOf({ lengthM, prices }: DrawnRun, amps: number, sizes: number) {
  const carrying = SIZES.filter((size) => sizeAreaMm2(size) >= amps / 8).slice(0, sizes);
  const listed = (carrying.length > 0 ? carrying : SIZES.slice(-1)).map((size, index) => ({
    drop: amps * 2 * lengthM * ohmsPerM(size, 'copper', 20),
    cost: lengthM * (prices[index] ?? sizeAreaMm2(size)),
  }));
  const kept = listed.filter(
    (one, index) =>
      !listed.some(
        (other, at) =>
          at !== index &&
          other.drop <= one.drop &&
          other.cost <= one.cost &&
          (other.drop < one.drop || other.cost < one.cost || at < index),
      ),
  );
  kept.sort((a, b) => a.cost - b.cost);
  return { drops: kept.map(({ drop }) => drop), costs: kept.map(({ cost }) => cost) };
}

/**
 * Trees of so many runs with so many sizes each, deep ones among them; each run hangs on one of the `within` before it.
 * Loads can be served and mostly not by the thinnest sizes; `isPriced` draws costs that follow no area.
 */
export function sizingTree(
  { least, most, sizes }: { readonly least: number; readonly most: number; readonly sizes: number },
  isPriced = false,
  within?: number,
): fc.Arbitrary<SizingTree> {
  const drawn = fc.array(runOf(isPriced), { minLength: least, maxLength: most, size: 'max' });
  const nearest = within === undefined ? fc.integer({ min: 1, max: 12 }) : fc.constant(within);
  return fc.tuple(drawn, nearest).map(([runs, near]): SizingTree => {
    // A feeder is one of the last few runs before: few make a deep tree, many a shallow one.
    const feederAt = runs.map(({ feeder }, at) =>
      at === 0 ? -1 : at - 1 - (feeder % Math.min(at, near)),
    );
    const feeds = new Set(feederAt);
    const isLoad = runs.map(({ isLoaded }, at) => isLoaded || !feeds.has(at));
    const amps = runs.map((run, at) => (isLoad[at] ? run.amps : 0));
    for (let at = runs.length - 1; at > 0; at -= 1) amps[feederAt[at]!]! += amps[at]!;
    const options = runs.map((run, at) => optionsOf(run, amps[at]!, sizes));
    const free = { feederAt, options, budgets: runs.map(() => Infinity) };
    const leastV = leastLost(free);
    const mostV: number[] = [];
    for (const [at, feeder] of feederAt.entries()) {
      mostV.push((feeder < 0 ? 0 : mostV[feeder]!) + options[at]!.drops[0]!);
    }
    const budgets = runs.map(({ share }, at) =>
      isLoad[at] ? leastV[at]! + share * (mostV[at]! - leastV[at]!) : Infinity,
    );
    return { ...free, budgets };
  });
}

/** What a choice of options comes to, and whether every load keeps its budget; by adding up, no more. */
export function addedUp({ feederAt, options, budgets }: SizingTree, chosen: readonly number[]) {
  const lost: number[] = [];
  let cost = 0;
  for (const [at, feeder] of feederAt.entries()) {
    lost.push((feeder < 0 ? 0 : lost[feeder]!) + options[at]!.drops[chosen[at]!]!);
    cost += options[at]!.costs[chosen[at]!]!;
  }
  return { cost, keeps: lost.every((volts, at) => volts <= budgets[at]! * (1 + 1e-12)) };
}

/** The least cost of all choices; Infinity where none keeps the budgets. */
export function leastByTrying({ feederAt, options, budgets }: SizingTree): number {
  const lost: number[] = [];
  const from = (at: number): number => {
    const feeder = feederAt[at];
    if (feeder === undefined) return 0;
    let least = Infinity;
    for (const [option, drop] of options[at]!.drops.entries()) {
      lost[at] = (feeder < 0 ? 0 : lost[feeder]!) + drop;
      if (lost[at] > budgets[at]! * (1 + 1e-12)) continue;
      least = Math.min(least, options[at]!.costs[option]! + from(at + 1));
    }
    return least;
  };
  return from(0);
}
