/** What stands in the sheets of a workbook, read back from whichever spreadsheet has it open. */

/** A value as read back from a cell: errors come as their text, such as "#N/A"; an empty cell is null. */
export type GridValue = string | number | boolean | null;

/** The used part of one sheet, from its first cell A1 on. */
export interface SheetGrid {
  readonly sheetName: string;
  readonly values: readonly (readonly GridValue[])[];
}

/** A sheet, and which of its cells a formula computes. */
export interface ComputedGrid extends SheetGrid {
  readonly computed: readonly (readonly boolean[])[];
}

/** Whether nothing but blanks stands in a cell. */
export function isBlank(value: GridValue | undefined): boolean {
  return String(value ?? '').trim() === '';
}
