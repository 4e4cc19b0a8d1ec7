/** A sheet of an open workbook as rows. */
import type { ComputedGrid } from '../sheets/plan/grid';
import { isEmpty, type RawCell, type RawRow, type RawTable } from './raw';

/** A sheet of an open workbook as rows; empty ones are left out, as in a file. */
export function gridTable({ sheetName, values, computed }: ComputedGrid): RawTable {
  const rows = values.map((cells, row): RawRow => ({
    line: row + 1,
    cells: cells.map((value, column): RawCell =>
      computed[row]?.[column] === true ? { value, computed: true } : { value },
    ),
  }));
  return { sheetName, rows: rows.filter(({ cells }) => !cells.every(isEmpty)), broken: [] };
}
