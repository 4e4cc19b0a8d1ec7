/** Reads what stands in the grid, calculated: numbers, text, truth, error texts, blanks. */
import { CellValueType, type ICellData, type Nullable } from '@univerjs/core';
import { FormulaDataModel } from '@univerjs/engine-formula';
import type { FWorksheet } from '@univerjs/sheets/facade';
import type { GridValue, SheetGrid } from '../../sheets/plan/grid';
import type { Grid } from './grid';

function gridValue(cell: Nullable<ICellData>): GridValue {
  const value = cell?.v ?? '';
  if (value === '') return null;
  return cell?.t === CellValueType.BOOLEAN ? Boolean(Number(value)) : value;
}

type CellMatrix = Readonly<Record<number, Readonly<Record<number, Nullable<ICellData>>>>>;

/** The cells that spilled formulas fill; the grid keeps them apart from what was typed. */
function spilled(grid: Grid, sheet: FWorksheet): CellMatrix | undefined {
  const all = grid.univer.__getInjector().get(FormulaDataModel).getArrayFormulaCellData();
  return all[grid.workbook.getId()]?.[sheet.getSheetId()];
}

/** One cell's value, by zero-based position. */
export function readCell(grid: Grid, sheet: FWorksheet, row: number, column: number): GridValue {
  const own = gridValue(sheet.getSheet().getCellRaw(row, column));
  return own ?? gridValue(spilled(grid, sheet)?.[row]?.[column]);
}

/** The used part of a sheet from A1 on, or null where nothing stands in it. */
export function readSheet(grid: Grid, sheet: FWorksheet): SheetGrid | null {
  const spill = spilled(grid, sheet) ?? {};
  const spillRows = Object.entries(spill).map(([row, cells]) => ({
    row: Number(row),
    columns: Object.keys(cells).map(Number),
  }));
  const matrix = sheet.getSheet().getCellMatrix();
  const rows = Math.max(matrix.getLength(), ...spillRows.map(({ row }) => row + 1));
  const columns = Math.max(
    (matrix.getRange()?.endColumn ?? -1) + 1,
    ...spillRows.flatMap((of) => of.columns.map((column) => column + 1)),
  );
  const values: GridValue[][] = [];
  let lastRow = -1;
  let lastColumn = -1;
  for (let row = 0; row < rows; row += 1) {
    const line: GridValue[] = [];
    for (let column = 0; column < columns; column += 1) {
      const own = gridValue(sheet.getSheet().getCellRaw(row, column));
      const value = own ?? gridValue(spill[row]?.[column]);
      line.push(value);
      if (value === null) continue;
      lastRow = row;
      lastColumn = Math.max(lastColumn, column);
    }
    values.push(line);
  }
  if (lastRow < 0) return null;
  return {
    sheetName: sheet.getSheetName(),
    values: values.slice(0, lastRow + 1).map((line) => line.slice(0, lastColumn + 1)),
  };
}

/** Which cells of a sheet's used part a formula computes, by itself or by spilling. */
export function readComputed(grid: Grid, sheet: FWorksheet, used: SheetGrid): boolean[][] {
  const spill = spilled(grid, sheet);
  return used.values.map((values, row) =>
    values.map((_, column) => {
      const cell = sheet.getSheet().getCellRaw(row, column);
      const hasFormula = (cell?.f ?? cell?.si ?? '') !== '';
      return hasFormula || (gridValue(cell) === null && spill?.[row]?.[column] !== undefined);
    }),
  );
}
