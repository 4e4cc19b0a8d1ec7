import type { Area } from '../../sheets/plan/area';

/** The range of an area on a sheet. */
export function rangeOf(sheet: Excel.Worksheet, of: Area): Excel.Range {
  return sheet.getRangeByIndexes(of.row, of.column, of.rows, of.columns);
}
