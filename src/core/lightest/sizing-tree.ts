/** A tree of runs that wait for their sizes, as numbers alone: what each size of a run loses and what it costs. */

/** The sizes that a run may have: each loses less than the one before it, and costs more. */
export interface SizeOptions {
  /** Volts that the run loses. */
  readonly drops: readonly number[];
  /** Whatever is to be least: kilograms, money. */
  readonly costs: readonly number[];
}

/** A tree that hangs on one source, its runs in an order where a feeder stands before all that it feeds. */
export interface SizingTree {
  /** Place of the feeder of each run; -1 is the source. */
  readonly feederAt: readonly number[];
  /** Volts that may be lost from the source to the far end of each run; Infinity where nobody asks. */
  readonly budgets: readonly number[];
  readonly options: readonly SizeOptions[];
}

/** The best options for a run out of many: those that no other beats in both drop and cost, thriftiest first. */
export function worthwhile<Option extends { readonly drop: number; readonly cost: number }>(
  options: readonly Option[],
): readonly Option[] {
  const byCost = [...options].sort((a, b) => a.cost - b.cost || a.drop - b.drop);
  let leastDrop = Infinity;
  return byCost.filter(({ drop }) => {
    if (drop >= leastDrop) return false;
    leastDrop = drop;
    return true;
  });
}

/** Least volts that each run and the runs above it can lose together. */
export function leastLost({ feederAt, options }: SizingTree): readonly number[] {
  const lost: number[] = [];
  for (const [at, feeder] of feederAt.entries()) {
    lost.push((feeder < 0 ? 0 : lost[feeder]!) + options[at]!.drops.at(-1)!);
  }
  return lost;
}
