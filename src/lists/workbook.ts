/** A workbook's sheets as rows, and the house rules in its named cells. */
import ExcelJS, { type Cell, type Workbook, type Worksheet } from 'exceljs';
import { unescapeText } from './escape';
import type { RawCell, RawRow, RawTable } from './raw';
import { quotedName, UnreadableFile } from './unreadable';

/** Opens the bytes of an .xlsx. Throws UnreadableFile where they are none. */
export async function openWorkbook(bytes: Uint8Array, fileName: string): Promise<Workbook> {
  const workbook = new ExcelJS.Workbook();
  try {
    // The library's own type for what it takes dates from an older Node.
    await workbook.xlsx.load(bytes as unknown as ExcelJS.Buffer);
  } catch (cause) {
    throw new UnreadableFile(
      `${quotedName(fileName)} is damaged, or no workbook: it could not be opened. Save it anew as .xlsx and try again.`,
      { cause },
    );
  }
  if (workbook.worksheets.length === 0) {
    throw new UnreadableFile(
      `${quotedName(fileName)} holds no sheets. If another program made it, save it there as .xlsx.`,
    );
  }
  return workbook;
}

/** Every sheet as rows; empty rows are left out. */
export function sheetTables(workbook: Workbook): readonly RawTable[] {
  return workbook.worksheets.map((sheet) => ({
    sheetName: sheet.name,
    rows: sheetRows(sheet),
    broken: [],
  }));
}

function sheetRows(sheet: Worksheet): readonly RawRow[] {
  const rows: RawRow[] = [];
  sheet.eachRow((row, line) => {
    const cells: RawCell[] = [];
    row.eachCell((cell, column) => {
      while (cells.length < column - 1) cells.push({ value: null });
      cells.push(rawCell(cell));
    });
    rows.push({ line, cells });
  });
  return rows;
}

/** What stands in a cell. */
export function rawCell(cell: Cell): RawCell {
  if (cell.type === ExcelJS.ValueType.Formula) {
    // The cell's value leaves out a result of 0, FALSE or nothing; the result itself does not.
    const result = cell.result as Plain | undefined;
    // The library takes escapes out of texts, but not out of the results of formulas.
    const plain = typeof result === 'string' ? unescapeText(result) : (result ?? null);
    return { ...plainValue(plain, cell), computed: true };
  }
  return plainValue(cell.value ?? null, cell);
}

type Plain = Exclude<Cell['value'], undefined>;

function plainValue(value: Plain, cell: Cell): RawCell {
  if (value === null || typeof value === 'boolean') return { value };
  if (typeof value === 'string') return { value };
  if (typeof value === 'number') return isPercent(cell) ? { value, percent: true } : { value };
  if (value instanceof Date) return { value: value.toISOString().slice(0, 10), date: true };
  if ('richText' in value) {
    return { value: value.richText.map(({ text }) => text).join('') };
  }
  if ('error' in value) return { value: value.error };
  if ('text' in value) {
    // A linked text may itself be rich, whatever the types say.
    const text: unknown = value.text;
    return typeof text === 'string' ? { value: text } : plainValue(text as Plain, cell);
  }
  return { value: null };
}

function isPercent(cell: Cell): boolean {
  // Quoted text in a number format is only shown.
  return typeof cell.numFmt === 'string' && cell.numFmt.replace(/"[^"]*"/g, '').includes('%');
}
