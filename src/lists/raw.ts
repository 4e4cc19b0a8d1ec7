/** Rows as a file holds them, before anything is made of them. */

export interface RawCell {
  readonly value: string | number | boolean | null;
  /** Shown as a percentage, so that 0.03 is 3 %. */
  readonly percent?: boolean;
  /** Computed by a formula of the sheet; the value is what it came to. */
  readonly computed?: boolean;
  /** A spreadsheet took it for a date. */
  readonly date?: boolean;
}

export interface RawRow {
  /** Line of the file or row of the sheet, from 1. */
  readonly line: number;
  readonly cells: readonly RawCell[];
}

export interface RawTable {
  /** The sheet's name; none for a file without sheets. */
  readonly sheetName?: string;
  readonly rows: readonly RawRow[];
  /** Lines that hold no row at all, and why. */
  readonly broken: readonly {
    readonly line: number;
    readonly text: string;
    readonly why: string;
  }[];
  /** Text between cells where the file is text. */
  readonly separator?: string;
}

export function isEmpty(cell: RawCell | undefined): boolean {
  const value = cell?.value ?? null;
  return value === null || (typeof value === 'string' && value.trim() === '');
}

/** A cell as text in one line. */
export function cellText(cell: RawCell | undefined): string {
  const value = cell?.value ?? '';
  return String(value).replace(/\s+/g, ' ').trim();
}

/** A row as a person would recognise it. */
export function rowText(row: RawRow): string {
  const texts = row.cells.map(cellText);
  while (texts.at(-1) === '') texts.pop();
  return texts.join(' | ').trim();
}
