/** A fault of the grid's formula engine, put right before any formula is calculated. */
import { CELL_INVERTED_INDEX_CACHE } from '@univerjs/engine-formula';

/**
 * Makes the engine compare every cell afresh. From the second comparison of a cell on, the engine (0.25.1) looks the
 * answer up in an index of values, in which 0 and empty text are one entry: =A1="" is TRUE for a cell that holds 0,
 * and a formula guarded against blank rows then falls silent for an honest zero. Without the index it compares rightly.
 */
export function compareAfresh(): void {
  CELL_INVERTED_INDEX_CACHE.canUseCache = () => ({ rowsInCache: [], rowsNotInCache: [] });
}
