/** Reads sheets and names back. Two round trips at most, whatever the number of sheets. */
import type { TakenNames } from '../sheet-host';
import type { ComputedGrid, GridValue, SheetGrid } from '../../sheets/plan/grid';

/** Every sheet, table and defined name of the workbook, in lower case. */
export async function readTaken(context: Excel.RequestContext): Promise<TakenNames> {
  const { worksheets, names, tables } = context.workbook;
  worksheets.load('items/name');
  names.load('items/name');
  tables.load('items/name');
  await context.sync();
  const lower = (items: readonly { readonly name: string }[]) =>
    items.map((item) => item.name.toLowerCase());
  return {
    sheets: new Set(lower(worksheets.items)),
    names: new Set([...lower(names.items), ...lower(tables.items)]),
  };
}

/** The sheet in view, or null where no cell of it holds anything. */
export async function readActive(context: Excel.RequestContext): Promise<SheetGrid | null> {
  const sheet = context.workbook.worksheets.getActiveWorksheet();
  sheet.load('name');
  const used = sheet.getUsedRangeOrNullObject(true);
  used.load('values,rowIndex,columnIndex');
  await context.sync();
  return used.isNullObject ? null : gridOf(sheet.name, used);
}

/** Every sheet in its order; an empty one has no rows. */
export async function readAll(context: Excel.RequestContext): Promise<readonly ComputedGrid[]> {
  const { worksheets } = context.workbook;
  worksheets.load('items/name');
  await context.sync();
  const parts = worksheets.items.map((sheet) => {
    const used = sheet.getUsedRangeOrNullObject(true);
    used.load('values,formulas,rowIndex,columnIndex');
    return { name: sheet.name, used };
  });
  await context.sync();
  return parts.map(({ name, used }) =>
    used.isNullObject
      ? { sheetName: name, values: [], computed: [] }
      : { ...gridOf(name, used), computed: computedOf(used) },
  );
}

/** Which cells of a used range a formula computes, as a grid that starts at A1. */
function computedOf(used: Excel.Range): boolean[][] {
  const { rowIndex, columnIndex, values, formulas } = used;
  const rows = (formulas as unknown[][]).map((row, down) => [
    ...new Array<boolean>(columnIndex).fill(false),
    // Text that begins with "=" is its own value; a formula's value is what it comes to.
    ...row.map(
      (formula, across) =>
        typeof formula === 'string' &&
        formula.startsWith('=') &&
        formula !== (values as unknown[][])[down]?.[across],
    ),
  ]);
  return [...Array.from({ length: rowIndex }, () => [] as boolean[]), ...rows];
}

/** A used range that may start anywhere, as a grid that starts at A1. Throws where Excel withheld the values. */
export function gridOf(sheetName: string, used: Excel.Range): SheetGrid {
  const { rowIndex, columnIndex } = used;
  const values = used.values as GridValue[][] | null;
  // Above its cell limit Excel may answer with null rather than an error.
  if (values === null) {
    throw new Error(`the sheet "${sheetName}" has more cells than Excel hands over at once`);
  }
  const width = columnIndex + (values[0]?.length ?? 0);
  const above = Array.from({ length: rowIndex }, () => new Array<GridValue>(width).fill(null));
  const rows = values.map((row) => [
    ...new Array<GridValue>(columnIndex).fill(null),
    ...row.map((value) => (value === '' ? null : value)),
  ]);
  return { sheetName, values: [...above, ...rows] };
}
