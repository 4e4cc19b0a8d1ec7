/**
 * Comparing a computed number with a limit it may equal exactly: the longest run within a target, put back into the
 * drop, differs from the target in the last binary digit. The slack is far below anything a meter can see.
 */
export const RELATIVE_SLACK = 1e-9;

/** Whether `value` is at most `limit`, rounding errors aside; both in the same unit. */
export function atMost(value: number, limit: number): boolean {
  return value <= limit + RELATIVE_SLACK * Math.abs(limit);
}

/** No target of drop reaches this share of the source volts: half of them lost is no cable, and 3 is meant as 3 %. */
export const MOST_DROP_SHARE = 0.5;
