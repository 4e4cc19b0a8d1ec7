/** What the pane changes in a sheet that stands already: entries, as a person types them, and formulas put back. */
import type { GridValue } from '../sheets/plan/grid';

/** A cell to be typed into, by its zero-based place. */
export interface TypedCell {
  readonly row: number;
  readonly column: number;
  /** Null empties it. */
  readonly content: GridValue;
}

/** Formulas of one row that are to stand in another as well, as a person copies them down. */
export interface RowFill {
  readonly from: number;
  readonly to: number;
  /** Whose formulas are copied; the looks of every column are. */
  readonly columns: readonly number[];
}

/** Entries and formulas of one sheet that change together. */
export interface SheetChange {
  readonly sheetName: string;
  readonly cells: readonly TypedCell[];
  readonly fills: readonly RowFill[];
}

/** The first selected cell. */
export interface Selected {
  readonly sheetName: string;
  readonly row: number;
  readonly column: number;
}

export interface SheetEdits {
  /** Types into cells of a sheet, all in one step that undo takes back. */
  type(sheetName: string, cells: readonly TypedCell[]): Promise<void>;
  /** Copies formulas and looks of rows into others; what is typed there stays. */
  fillRows(sheetName: string, fills: readonly RowFill[], columns: number): Promise<void>;
  /** Types and copies formulas on several sheets, all in one step that undo takes back; looks stay. */
  rearrange(changes: readonly SheetChange[]): Promise<void>;
  /**
   * Lays a schedule out for the runs that stand right below its last row; resolves to whether there were some. Rejects with
   * a sentence where that cannot be. Absent where the tables of the spreadsheet do so by themselves.
   */
  takeInBelow?(sheetName: string): Promise<boolean>;
  /** Columns of a sheet that are out of sight. */
  hiddenColumns(sheetName: string, columns: number): Promise<readonly number[]>;
  /** Shows or hides columns. */
  showColumns(sheetName: string, columns: readonly number[], isShown: boolean): Promise<void>;
  /** Null where nothing is selected. */
  selected(): Promise<Selected | null>;
  /** Calls back when other cells are selected; returns the way to stop. */
  onSelection(listener: () => void): () => void;
}
