/** The one thing the pane knows of a spreadsheet: it can be asked what is there, drawn into, and read back. */
import type { Area } from '../sheets/plan/area';
import type { ComputedGrid, SheetGrid } from '../sheets/plan/grid';
import type { ReferenceStyle, SheetPlan } from '../sheets/plan/plan';

/** Names already used in the workbook, in lower case, since a spreadsheet does not tell case apart. */
export interface TakenNames {
  readonly sheets: ReadonlySet<string>;
  /** Tables and defined names share one name space in Excel. */
  readonly names: ReadonlySet<string>;
}

export interface SheetHost {
  /** How this host wants the formulas of a table written. */
  readonly references: ReferenceStyle;
  /** Every name that a new sheet, table or defined name must not take. */
  taken(): Promise<TakenNames>;
  /**
   * Adds the sheets in order and brings the first into view. All or nothing: where one fails, those already
   * added are removed and the promise is rejected with an Error whose message is a sentence for the user.
   */
  insert(plans: readonly SheetPlan[]): Promise<void>;
  /** The sheet in view, or null where it is empty. */
  activeGrid(): Promise<SheetGrid | null>;
  /** Every sheet of the workbook, in order. */
  allGrids(): Promise<readonly ComputedGrid[]>;
  /** Opens an .xlsx file as a new workbook beside this one; absent where the platform cannot. */
  readonly openWorkbook?: ((file: Uint8Array) => Promise<void>) | undefined;
  /** Brings a sheet into view and selects cells in it. */
  select(sheetName: string, area: Area): Promise<void>;
  /** Calls back after cells were edited or calculated, or another sheet came into view; returns the way to stop. */
  onChange(listener: () => void): () => void;
}
