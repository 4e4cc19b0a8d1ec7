/** Merged areas: what stands in their first cell counts for all of them, such as a heading over several columns. */
import type { RawCell } from '../raw';
import { MOST, TooMuch } from '../bounds';
import type { Place } from './place';

export interface Merged {
  readonly from: Place;
  readonly to: Place;
}

interface Row {
  readonly line: number;
  readonly cells: RawCell[];
}

/** The first of the rows, which stand in order, that is at a line or behind it. */
function firstFrom(rows: readonly Row[], line: number): number {
  let [low, high] = [0, rows.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (rows[middle]!.line < line) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Fills the cells of merged areas, among the rows and columns that have anything in them. Throws TooMuch. */
export function spreadMerged(rows: readonly Row[], merged: readonly Merged[]): void {
  const columns = rows.reduce((most, { cells }) => Math.max(most, cells.length), 0);
  let left: number = MOST.spread;
  for (const { from, to } of merged) {
    const first = firstFrom(rows, from.row + 1);
    const cell = rows[first]?.line === from.row + 1 ? rows[first].cells[from.column] : undefined;
    if (cell === undefined || cell.value === null) continue;
    for (let index = first; index < rows.length && rows[index]!.line <= to.row + 1; index += 1) {
      const { cells } = rows[index]!;
      for (let column = from.column; column <= Math.min(to.column, columns - 1); column += 1) {
        if ((left -= 1) < 0) throw new TooMuch('spread');
        while (cells.length < column) cells.push({ value: null });
        if ((cells[column]?.value ?? null) === null) cells[column] = cell;
      }
    }
  }
}
