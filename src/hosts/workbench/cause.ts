/** Where an error comes from: the cell whose function gave the reason, behind cells that only compute with it. */
import {
  deserializeRangeWithSheetWithCache,
  sequenceNodeType,
  type ISequenceNode,
} from '@univerjs/engine-formula';
import type { FWorksheet } from '@univerjs/sheets/facade';
import type { Grid } from './grid';
import { readCell } from './read';

export interface Cause {
  readonly sheet: FWorksheet;
  readonly row: number;
  readonly column: number;
  readonly sentence: string;
}

/** Ranges longer than this are not searched; a person would not read on either. */
const MOST_CELLS = 2000;

interface Place {
  readonly sheet: FWorksheet;
  readonly row: number;
  readonly column: number;
}

/** The cells that a cell's formula names, in the order it names them. */
function precedents(grid: Grid, at: Place): Place[] {
  const formula = at.sheet.getRange(at.row, at.column).getFormula();
  if (formula === '') return [];
  const references = grid.api
    .getFormula()
    .sequenceNodesBuilder(formula)
    .filter((node): node is ISequenceNode => typeof node === 'object')
    .filter(({ nodeType }) => nodeType === sequenceNodeType.REFERENCE);
  return references.flatMap(({ token }) => {
    const { sheetName, range } = deserializeRangeWithSheetWithCache(token);
    const sheet = sheetName === '' ? at.sheet : grid.workbook.getSheetByName(sheetName);
    const rows = range.endRow - range.startRow + 1;
    const columns = range.endColumn - range.startColumn + 1;
    // A whole row or column has no such numbers.
    if (sheet === null || !(rows * columns <= MOST_CELLS)) return [];
    return Array.from({ length: rows * columns }, (_, index) => ({
      sheet,
      row: range.startRow + Math.floor(index / columns),
      column: range.startColumn + (index % columns),
    }));
  });
}

/** The nearest reason for an error code in a cell; null where none of our functions gave one. */
export function causeOf(grid: Grid, from: Place, code: string): Cause | null {
  const seen = new Set<string>();
  const waiting: Place[] = [from];
  for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
    const { sheet, row, column } = next;
    const key = `${sheet.getSheetId()} ${row} ${column}`;
    if (seen.has(key) || readCell(grid, sheet, row, column) !== code) continue;
    seen.add(key);
    const sentence = grid.sentences.find(sheet.getSheetId(), row, column, code);
    if (sentence !== null) return { sheet, row, column, sentence };
    waiting.push(...precedents(grid, next));
  }
  return null;
}
