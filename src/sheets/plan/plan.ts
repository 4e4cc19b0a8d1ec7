/**
 * What a sheet is, as data. Builders in this folder make plans; hosts draw them.
 * A plan holds no spreadsheet object, so Excel, the workbench and a file all draw the same one.
 */
import type { Area } from './area';
import type { ChartPlan } from './chart';
import type { Diagram } from './diagram';

/**
 * One cell's content: a value, a formula (with its leading "="), or nothing (null leaves the cell empty).
 * A string is text whatever it begins with; only `formula` computes.
 */
export type CellContent = string | number | boolean | null | Formula;

/** A formula with its leading "=". */
export interface Formula {
  readonly formula: string;
}

/** How cells look. Colours are "#rrggbb"; a field left out leaves the host's default. */
export interface CellStyle {
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly fontColour?: string;
  readonly fontSizePt?: number;
  readonly fill?: string;
  readonly numberFormat?: string;
  readonly align?: 'left' | 'centre' | 'right';
  readonly wrap?: boolean;
  /** The first line at the top of its cell, where it stays whole however low the row is. */
  readonly atTop?: boolean;
  /** Type as small as it takes for a line to fit its cell, where the host can. */
  readonly shrink?: boolean;
  /** A thin line under (and for "all" around) every cell. */
  readonly border?: 'below' | 'all';
}

/** A rectangle of contents and the style of all its cells. Later blocks lie over earlier ones. */
export interface Block {
  readonly area: Area;
  /** Row by row; absent where the block only styles cells. */
  readonly cells?: readonly (readonly CellContent[])[];
  /**
   * A formula for each column, with its leading "=", written for the first row and filled down: it stands in every cell
   * of the column that `cells` leaves empty. Null for a column without one.
   */
  readonly fill?: readonly (string | null)[];
  /** How many rows the one formula of this cell answers for: it spills so far down. */
  readonly spillRows?: number;
  readonly style?: CellStyle;
  /** Its formulas name the table, so a host with real tables draws it after the table. */
  readonly afterTable?: boolean;
}

/** A column of a table. A formula here is written in structured references ([@[Peak amps]]). */
export interface TableColumn {
  readonly heading: string;
  readonly formula?: string;
}

/** A spreadsheet table: its area includes the header row. */
export interface TablePlan {
  readonly name: string;
  readonly area: Area;
  readonly columns: readonly TableColumn[];
}

/** A name of the whole workbook for one cell or area of this sheet. */
export interface NamePlan {
  readonly name: string;
  readonly area: Area;
}

/** What may be typed into cells, and what the spreadsheet says when they are selected or refuse. */
export interface EntryPlan {
  readonly area: Area;
  /** A drop-down list; other text is refused unless `othersAllowed`. */
  readonly choices?: readonly string[];
  readonly othersAllowed?: boolean;
  /** A drop-down list of what stands in cells of the same sheet; other text is taken as well. */
  readonly choicesFrom?: Area;
  /** A number within bounds (either may be left out). */
  readonly number?: { readonly least?: number; readonly most?: number };
  /** Cells of formulas, in which nothing is to be typed: where a host can refuse that, it does, and shows no prompt before. */
  readonly workedOut?: true;
  /** Shown while the cell is selected: at most 32 and 255 characters, Excel's limits. */
  readonly promptTitle: string;
  readonly prompt: string;
}

/** A conditional format. The formula (no leading "=") is relative to the area's first cell. */
export interface HighlightPlan {
  readonly area: Area;
  readonly formula: string;
  readonly style: CellStyle;
  /** In words, for legends and tests. */
  readonly meaning: string;
}

/** A note at a heading: what the column holds and what to type. */
export interface NotePlan {
  readonly area: Area;
  readonly text: string;
}

/** Paper that is printed at its full size: a page break after every so many rows. */
export interface StockPrint {
  readonly paper: 'A4' | 'Letter';
  readonly marginsMm: Readonly<Record<'top' | 'bottom' | 'left' | 'right', number>>;
  readonly rowsPerPage: number;
}

/** A picture over empty cells, from its first cell on: a diagram, laid out by whoever draws it. */
export interface PicturePlan {
  readonly first: Area;
  readonly diagram: Diagram;
}

/** Print set-up: one page wide, but for stock. */
export interface PrintPlan {
  readonly landscape: boolean;
  readonly area: Area;
  /** All that stands on the sheet is printed, a picture included, however wide a spreadsheet draws columns. */
  readonly isWhole?: boolean;
  /** Zero-based rows repeated on every page. */
  readonly repeatRows?: { readonly first: number; readonly last: number };
  readonly footer: string;
  readonly stock?: StockPrint;
  /** At most so many pages high, in smaller print where it takes that; as many as it takes otherwise. */
  readonly pagesHigh?: number;
}

/** One sheet, ready to be drawn. */
export interface SheetPlan {
  readonly name: string;
  /** Widths in characters from column A on. */
  readonly columnWidths: readonly number[];
  /** Zero-based columns out of sight, as a person may hide and show them. */
  readonly hiddenColumns?: readonly number[];
  readonly blocks: readonly Block[];
  readonly table?: TablePlan;
  readonly names: readonly NamePlan[];
  readonly entries: readonly EntryPlan[];
  readonly highlights: readonly HighlightPlan[];
  readonly notes: readonly NotePlan[];
  readonly frozenRows: number;
  readonly frozenColumns: number;
  /** Heights in points for zero-based rows that need more than the default. */
  readonly rowHeightsPt?: Readonly<Record<number, number>>;
  readonly print: PrintPlan;
  readonly picture?: PicturePlan;
  readonly chart?: ChartPlan;
  /** Out of sight and never printed, as a person may show it: there to be looked up by formulas. */
  readonly hidden?: boolean;
}

/**
 * How formulas point at a row's own cells: by structured references, where the host has real tables
 * that fill formulas down by themselves, or by cell addresses, written out in every row.
 */
export type ReferenceStyle = 'table' | 'cells';
