/** Cells of a workbook as plain values, for comparing. */
import ExcelJS from 'exceljs';
import { CellError, type Cell, type ErrorCode } from '../../src/functions/cell';

export interface WorkbookCells {
  /** A cell by its sheet and zero-based place; null where nothing stands. */
  at(sheet: string, row: number, column: number): Cell;
}

/** Reads a workbook's values; a formula counts for what it came to. */
export async function cellsOf(bytes: Uint8Array): Promise<WorkbookCells> {
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.load(bytes as unknown as ExcelJS.Buffer);
  return {
    at(sheetName, row, column) {
      const sheet = workbook.getWorksheet(sheetName);
      if (sheet === undefined) throw new Error(`no sheet "${sheetName}"`);
      const cell = sheet.findCell(row + 1, column + 1);
      // A formula's value leaves out a result of 0, FALSE or nothing; the result itself does not.
      const isFormula = cell?.type === ExcelJS.ValueType.Formula;
      return plain((isFormula ? cell.result : cell?.value) ?? null);
    },
  };
}

function plain(value: ExcelJS.CellValue): Cell {
  if (value === null || value === undefined) return null;
  if (typeof value !== 'object') return value;
  if (value instanceof Date) throw new Error(`a date where none belongs: ${value.toISOString()}`);
  if ('error' in value) return new CellError(value.error as ErrorCode, 'in the file');
  if ('formula' in value || 'sharedFormula' in value) throw new Error('a formula within a value');
  if ('richText' in value) return value.richText.map(({ text }) => text).join('');
  return value.text;
}
