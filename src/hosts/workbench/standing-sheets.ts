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
import { GivenCell, Formula, SpilledCell, type Sheet } from '../../sheets/calculate/workbook';
import { hasFormula } from './relay';

/** The grid keeps this with a sheet that was laid out by a plan. */
export const PLANNED = { loomsheet: 'planned' } as const;

export const isPlanned = ({ custom }: Partial<Pick<IWorksheetData, 'custom'>>) =>
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

/** Where a formula stands, and what the grid has of it. */
interface FormulaAt {
  readonly row: number;
  readonly column: number;
  readonly text: ICellData['f'];
  readonly id: ICellData['si'];
}

/** A formula that is calculated here, in its cell. */
export interface OwnCell extends FormulaAt {
  /** What it came to before. */
  stands: ICellData;
  /** The list that it fills cells with, where it does. */
  spill: Spill | undefined;
}

/** Which formulas of a sheet are calculated here, and which the grid's engine calculates. */
export interface PutIn {
  readonly own: readonly OwnCell[];
  readonly left: readonly FormulaAt[];
  spills: readonly Spill[];
  /** How many cells hold something that was typed. */
  typed: number;
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

/** The cells that lists fill, with what stands there. */
function* cellsOfLists(spills: readonly Spill[]): Generator<readonly [number, number, ICellData]> {
  for (const { range, cells } of spills) {
    for (let row = range.startRow; row <= range.endRow; row += 1) {
      for (let column = range.startColumn; column <= range.endColumn; column += 1) {
        const cell = cells?.getValue(row, column);
        if (cell) yield [row, column, cell];
      }
    }
  }
}

/** What a formula of the engine's came to; empty text is text there, and no blank. */
const calculated = (stands: ICellData, { styles }: Reading) =>
  contentOf({ ...stands, f: '=' }, styles);

/** Puts what stands on a sheet of the grid into one of our evaluation. */
export function putStanding(sheet: Sheet, standing: StandingSheet, reading: Reading): PutIn {
  const { cells, came, spills } = standing;
  const { known, styles, shifted } = reading;
  for (const [row, column, cell] of cellsOfLists(spills)) {
    sheet.put(row, column, contentOf(cell, styles));
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
  const left: FormulaAt[] = [];
  let typed = 0;
  cells.forValue((row, column, cell) => {
    if (!cell) return;
    if (!hasFormula(cell)) {
      const content = contentOf(cell, styles);
      if (content === null) return;
      sheet.put(row, column, content);
      typed += 1;
      return;
    }
    const stands = came(row, column) ?? cell;
    const at: FormulaAt = { row, column, text: cell.f, id: cell.si };
    const spill = spills.length > 0 ? listFrom(standing, row, column) : undefined;
    const formula = standing.isPlanned ? formulaOf(cell, row, column, spill) : undefined;
    if (formula === undefined || !known.has(formula.text)) {
      sheet.put(row, column, new GivenCell(calculated(stands, reading), true));
      left.push(at);
      return;
    }
    sheet.put(row, column, formula);
    own.push({ ...at, stands, spill });
    for (let below = 1; below < formula.spillRows; below += 1) {
      sheet.put(row + below, column, new SpilledCell(row, below));
    }
  });
  return { own, left, spills, typed };
}

const isSameList = (one: Spill, other: Spill | undefined) =>
  one.range.startRow === other?.range.startRow &&
  one.range.endRow === other.range.endRow &&
  one.range.startColumn === other.range.startColumn &&
  one.range.endColumn === other.range.endColumn;

/**
 * Gives a sheet that was put in before what stands there now, in the revision that the evaluation is in. False where more
 * than values has become something else: then all has to be put in anew.
 */
export function takeChanges(
  sheet: Sheet,
  standing: StandingSheet,
  putIn: PutIn,
  reading: Reading,
): boolean {
  const { cells, came, spills } = standing;
  const { own, left, spills: before } = putIn;
  if (spills.length !== before.length) return false;
  if (!spills.every((spill, index) => isSameList(spill, before[index]))) return false;
  const filled = new Set<string>();
  for (const [row, column, cell] of cellsOfLists(spills)) {
    filled.add(`${row} ${column}`);
    if (sheet.givenAt(row, column) === undefined) continue;
    sheet.giveAnew(row, column, contentOf(cell, reading.styles));
  }
  let [nextOwn, nextLeft, typed, isOther] = [0, 0, 0, false];
  const give = (row: number, column: number, now: Cell) => {
    const was = sheet.givenAt(row, column);
    if (was === undefined) isOther = true;
    else sheet.giveAnew(row, column, now);
    if (now !== null) typed += 1;
    if (was === null && now !== null) putIn.typed += 1;
    if (was !== null && now === null) putIn.typed -= 1;
  };
  const isStill = ({ f, si }: ICellData, row: number, column: number, at: FormulaAt | undefined) =>
    at?.row === row && at.column === column && at.text === f && at.id === si;
  cells.forValue((row, column, cell) => {
    if (!cell || isOther) return;
    if (!hasFormula(cell)) {
      const content = contentOf(cell, reading.styles);
      const isOfList = content === null && filled.size > 0 && filled.has(`${row} ${column}`);
      if (!isOfList) give(row, column, content);
      return;
    }
    const stands = came(row, column) ?? cell;
    const [ours, theirs] = [own[nextOwn], left[nextLeft]];
    if (ours !== undefined && isStill(cell, row, column, ours)) {
      ours.stands = stands;
      if (ours.spill !== undefined) ours.spill = spills[before.indexOf(ours.spill)];
      nextOwn += 1;
    } else if (isStill(cell, row, column, theirs)) {
      sheet.giveAnew(row, column, calculated(stands, reading));
      nextLeft += 1;
    } else isOther = true;
  });
  putIn.spills = spills;
  return !isOther && nextOwn === own.length && nextLeft === left.length && typed === putIn.typed;
}
