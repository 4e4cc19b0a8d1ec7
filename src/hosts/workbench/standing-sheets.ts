/**
 * The sheets of the grid as our evaluation takes them: those that were laid out by a plan with their formulas, the others
 * with what their cells came to.
 */
import {
  BuildTextUtils,
  CellValueType,
  isTextFormat,
  type ICellData,
  type IRange,
  type IWorksheetData,
  type Nullable,
  type Styles,
} from '@univerjs/core';
import { CellError, ERROR_CODES, type Cell, type ErrorCode } from '../../functions/cell';
import { compileFormula } from '../../sheets/calculate/compile';
import { FormulaSyntaxError } from '../../sheets/calculate/syntax';
import { CalculatedCell, Formula, SpilledCell, type Sheet } from '../../sheets/calculate/workbook';
import { hasFormula } from './relay';

/** The grid keeps this with a sheet that was laid out by a plan. */
export const PLANNED = { loomsheet: 'planned' } as const;

export const isPlanned = ({ custom }: Pick<IWorksheetData, 'custom'>) =>
  custom?.['loomsheet'] === PLANNED.loomsheet;

/** Cells by place, as the grid has them in several forms. */
export interface Matrix<T> {
  forValue(visit: (row: number, column: number, value: Nullable<T>) => void): void;
  getValue(row: number, column: number): Nullable<T>;
}

/** A list that a formula fills cells with, from its own on. */
export interface Spill {
  readonly range: IRange;
  readonly cells: Matrix<ICellData> | undefined;
}

/** A sheet of the grid as it stands while its engine calculates. */
export interface StandingSheet {
  readonly isPlanned: boolean;
  readonly cells: Matrix<ICellData>;
  /** What a formula has come to in this calculation, where it has. */
  readonly came: (row: number, column: number) => Nullable<ICellData>;
  readonly spills: readonly Spill[];
}

/** A formula that is calculated here, in its cell. */
export interface OwnCell {
  readonly row: number;
  readonly column: number;
  readonly stands: ICellData;
  /** The list that it fills cells with, where it does. */
  readonly spill: Spill | undefined;
}

/** Which formulas of a sheet are calculated here, and which the grid's engine calculates. */
export interface PutIn {
  readonly own: readonly OwnCell[];
  readonly left: readonly { readonly row: number; readonly column: number }[];
}

const CODES = new Set<unknown>(ERROR_CODES);
const TYPED = 'an error that stands in a cell; fix it there';

/** A cell's content as the engine reads it. */
export function contentOf(cell: ICellData, styles: Styles | undefined): Cell {
  const text = cell.p?.body?.dataStream;
  const value = text === undefined ? cell.v : BuildTextUtils.transform.getPlainText(text);
  if (value === null || value === undefined) return null;
  if (CODES.has(value)) return new CellError(value as ErrorCode, TYPED);
  if (cell.t === CellValueType.BOOLEAN) return Boolean(Number(value));
  if (value === '') return hasFormula(cell) ? '' : null;
  if (cell.t === CellValueType.NUMBER || typeof value === 'number') {
    // A figure in a cell of text is read as text.
    return isTextFormat(styles?.getStyleByCell(cell)?.n?.pattern) ? String(value) : Number(value);
  }
  return value;
}

/** The formulas that our evaluation has the language for, but for those that turned out to ask for more. */
export class KnownFormulas {
  private readonly known = new Map<string, boolean>();

  has(formula: string): boolean {
    let known = this.known.get(formula);
    if (known === undefined) this.known.set(formula, (known = compiles(formula)));
    return known;
  }

  /** Leaves a formula to the grid's engine from now on. */
  leave(formula: string): void {
    this.known.set(formula, false);
  }

  /** Tries all again: what a formula asked for may be there by now. */
  forget(): void {
    this.known.clear();
  }
}

function compiles(formula: string): boolean {
  try {
    compileFormula(formula);
    return true;
  } catch (fault) {
    if (fault instanceof FormulaSyntaxError) return false;
    throw fault;
  }
}

/** A formula where it is written; the cells that share it know it by its id. */
interface Written {
  readonly formula: Formula;
  readonly column: number;
}

/** The formulas of a sheet that several cells share, by their id. */
function sharedFormulas(cells: Matrix<ICellData>): ReadonlyMap<string, Written> {
  const found = new Map<string, Written>();
  cells.forValue((row, column, cell) => {
    if (cell?.f && cell.si) found.set(cell.si, { formula: new Formula(cell.f, row), column });
  });
  return found;
}

/** The list that a formula fills one column with, where nothing that was typed stands in its way. */
function listFrom(
  { spills, cells }: StandingSheet,
  row: number,
  column: number,
): Spill | undefined {
  const spill = spills.find(({ range }) => range.startRow === row && range.startColumn === column);
  if (spill?.range.endColumn !== column) return undefined;
  for (let below = row + 1; below <= spill.range.endRow; below += 1) {
    const cell = cells.getValue(below, column);
    if ((cell?.v ?? '') !== '' || hasFormula(cell)) return undefined;
  }
  return spill;
}

/** How the grid's cells are to be read. */
export interface Reading {
  readonly known: KnownFormulas;
  readonly styles: Styles | undefined;
  /** What a formula becomes so many columns further on. */
  readonly shifted: (formula: string, columns: number) => string;
}

/** Puts what stands on a sheet of the grid into one of our evaluation. */
export function putStanding(
  sheet: Sheet,
  standing: StandingSheet,
  { known, styles, shifted }: Reading,
): PutIn {
  const { cells, came, spills } = standing;
  for (const spill of spills) {
    spill.cells?.forValue((row, column, cell) => {
      const { startRow, endRow, startColumn, endColumn } = spill.range;
      const isOfList =
        row >= startRow && row <= endRow && column >= startColumn && column <= endColumn;
      if (cell && isOfList) sheet.put(row, column, contentOf(cell, styles));
    });
  }
  const shared = standing.isPlanned ? sharedFormulas(cells) : new Map<string, Written>();
  const formulaOf = (cell: ICellData, row: number, column: number, spill: Spill | undefined) => {
    if (!cell.si) {
      const rows = spill === undefined ? 1 : spill.range.endRow - row + 1;
      return new Formula(cell.f!, row, rows);
    }
    const written = shared.get(cell.si);
    if (written === undefined || column === written.column) return written?.formula;
    const { text, firstRow } = written.formula;
    return new Formula(shifted(text, column - written.column), firstRow);
  };
  const own: OwnCell[] = [];
  const left: { row: number; column: number }[] = [];
  cells.forValue((row, column, cell) => {
    if (!cell) return;
    if (!hasFormula(cell)) {
      const content = contentOf(cell, styles);
      if (content !== null) sheet.put(row, column, content);
      return;
    }
    const stands = came(row, column) ?? cell;
    const spill = spills.length > 0 ? listFrom(standing, row, column) : undefined;
    const formula = standing.isPlanned ? formulaOf(cell, row, column, spill) : undefined;
    if (formula !== undefined && known.has(formula.text)) {
      sheet.put(row, column, formula);
      own.push({ row, column, stands, spill });
      for (let below = 1; below < formula.spillRows; below += 1) {
        sheet.put(row + below, column, new SpilledCell(row, below));
      }
      return;
    }
    // Empty text that a formula came to is text, and no blank.
    sheet.put(row, column, new CalculatedCell(contentOf({ ...stands, f: '=' }, styles)));
    left.push({ row, column });
  });
  return { own, left };
}
