/** How far two values are apart, the one measure for all comparisons of cells. */
import { CellError, type Cell } from '../src/functions/cell';

/**
 * The same arithmetic in another order or another engine: sums of some dozen doubles differ by a few parts in 1e15, and a
 * division by a small difference makes that a thousand times more.
 */
export const RELATIVE = 1e-9;

/** Volts and what is worked out from differences of volts near 0 may differ by rounding alone. */
const NEXT_TO_NOTHING = 1e-12;

/** 0 for the same, a share of the larger for numbers, infinite for different kinds; errors are alike where their kind is. */
export function distance(ours: Cell | undefined, theirs: Cell | undefined): number {
  const [a, b] = [ours ?? '', theirs ?? ''];
  if (a instanceof CellError || b instanceof CellError) {
    return a instanceof CellError && b instanceof CellError && a.code === b.code ? 0 : Infinity;
  }
  if (typeof a === 'number' && typeof b === 'number') {
    const size = Math.max(Math.abs(a), Math.abs(b));
    const apart = Math.abs(a - b);
    return apart <= NEXT_TO_NOTHING ? 0 : apart / size;
  }
  return a === b ? 0 : Infinity;
}

/** A value in a line for a failing test. */
export function told(value: Cell | undefined): string {
  return value instanceof CellError ? `${value.code} (${value.sentence})` : JSON.stringify(value);
}
