/** The ways to fill one spool from what is left of the pieces. */

/** What a search may still spend, in steps; every one of them counts, so that the same list always ends the same way. */
export interface Budget {
  steps: number;
}

/** Pieces that are left: lengths longest first, in grains, and how many of each. */
export interface Left {
  readonly lengths: readonly number[];
  readonly counts: Int32Array;
}

/** First index from `from` on whose length is at most `space`. */
function firstThatFits(lengths: readonly number[], from: number, space: number): number {
  if (from >= lengths.length || lengths[from]! <= space) return from;
  let low = from;
  let high = lengths.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (lengths[middle]! <= space) high = middle;
    else low = middle;
  }
  return high;
}

/** Where to stop: after the last filling. */
export const ENOUGH = -1;

/**
 * Tells `visit` the fillings of a space that leave at most `mostSlack` grains of it and no room for any piece left out.
 * `visit` hears the slack and the pieces, as pairs of index and number, and says how much slack is still of interest, ENOUGH
 * to stop. The one that takes the longest each time comes first. True where all of them were told; false where the budget
 * ended it. An explicit stack: a spool may hold any number of pieces.
 */
export function eachFilling(
  left: Left,
  space: number,
  mostSlack: number,
  budget: Budget,
  visit: (slack: number, taken: readonly number[]) => number,
): boolean {
  const { lengths, counts } = left;
  const kinds = lengths.length;
  let index = firstThatFits(lengths, 0, space);
  /** Grains of all that is left from an index on, the shortest first, as far as they are not more than enough. */
  const fromShortest = [0];
  while (fromShortest.length <= kinds - index && fromShortest.at(-1)! < space) {
    const at = kinds - fromShortest.length;
    fromShortest.push(fromShortest.at(-1)! + lengths[at]! * counts[at]!);
  }
  const after = (at: number) => fromShortest[kinds - at] ?? Infinity;
  budget.steps -= fromShortest.length;

  /** Pairs of index and number; `skips` has beside each the shortest length that was left out before it. */
  const taken: number[] = [];
  const skips: number[] = [];
  let skipped = Infinity;
  let slack = mostSlack;

  for (;;) {
    // Down: of each length as many as fit.
    while (space - after(index) <= Math.min(slack, skipped - 1)) {
      index = firstThatFits(lengths, index, space);
      while (index < kinds && counts[index] === 0) index += 1;
      budget.steps -= 1;
      if (index >= kinds) break;
      const fit = Math.min(counts[index]!, Math.floor(space / lengths[index]!));
      if (fit > 0) {
        taken.push(index, fit);
        skips.push(skipped);
        space -= fit * lengths[index]!;
        index += 1;
      }
    }
    if (index >= kinds && space <= slack && space < skipped) {
      slack = visit(space, taken);
      if (slack === ENOUGH) return true;
    }
    if (budget.steps < 0) return false;
    if (skips.length === 0) return true;
    // Back: one less of the last length taken.
    const number = taken.pop()! - 1;
    index = taken.pop()!;
    skipped = skips.pop()!;
    space += lengths[index]!;
    if (number > 0) {
      taken.push(index, number);
      skips.push(skipped);
    }
    skipped = Math.min(skipped, lengths[index]!);
    index += 1;
  }
}
