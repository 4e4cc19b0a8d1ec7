/** The columns that say which run feeds which, as the functions of whole lists take them. */
import { buildFeederTree, SOURCE, type FeederTree } from '../../core/feeder-tree';
import type { Outcome } from '../../core/outcome';
import { inColumn } from '../list-function';
import * as supply from '../parameters/supply';

export const RUNS = inColumn(supply.runs, { zeroIsBlank: true });
export const FED_FROM = inColumn(supply.fedFrom, { blankIs: SOURCE, zeroIsBlank: true });

/** A column as a list function receives it. */
type Column<Value> = readonly (Outcome<Value> | undefined)[];

export function feederTreeOf(names: Column<string>, feeders: Column<string>): FeederTree {
  return buildFeederTree(
    names.map((name) => (typeof name === 'string' ? name : undefined)),
    feeders.map((feeder) => feeder ?? SOURCE),
  );
}

/** The numbers of a column; NaN where a cell is blank or cannot be read. */
export function numbers(column: Column<number | undefined>): Float64Array {
  // Filled in a loop, here and in the core: `from` goes by an iterator and takes several times as long.
  const found = new Float64Array(column.length);
  for (let row = 0; row < column.length; row += 1) {
    const value = column[row];
    found[row] = typeof value === 'number' ? value : NaN;
  }
  return found;
}
