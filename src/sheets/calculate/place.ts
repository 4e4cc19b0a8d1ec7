/** Where formulas stand, and what they read from. */
import type { Cell } from '../../functions/cell';
import type { Cells, Value } from './values';

/** Something that a value may hang on. */
export interface Source {
  /** Brings itself up to date; the revision in which it last became something else. */
  refresh(): number;
}

/** Values are kept from one revision of the cells to the next, with what they hang on. */
export interface Keeping {
  readonly revision: number;
  /** Whether they are kept at all. */
  readonly keeps: boolean;
  /** Takes note of what is read, for the value that is being worked out. */
  noted: Source[] | undefined;
}

/** Where a formula stands when it is computed, and what it reads from. */
export interface Place {
  readonly reader: Reader;
  readonly sheet: SheetReader;
  readonly row: number;
  readonly column: number;
  /** Rows below the one that the formula is written for. */
  readonly down: number;
}

/** Cells of one sheet as formulas read them. */
export interface SheetReader {
  cell(row: number, column: number): Cell;
  cells(row: number, column: number, rows: number, columns: number): Cells;
  hasFormula(row: number, column: number): boolean;
  /** A cell as something that a value may hang on, where values are kept. */
  source(row: number, column: number): Source | undefined;
}

/** What formulas read beyond their own sheet. */
export interface Reader extends Keeping {
  /** A sheet by its name; one without cells where there is none. */
  sheet(name: string): SheetReader;
  /** What a defined name (in lower case) stands for. */
  named(name: string): NamedArea | undefined;
}

export interface NamedArea {
  readonly sheet: SheetReader;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

export type Compiled = (place: Place) => Value;
