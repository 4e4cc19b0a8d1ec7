/** Calling our worksheet functions and doing a sheet's arithmetic outside any spreadsheet. */
import { findFunction } from '../functions/catalogue';
import { CellError, type Cell, type Matrix, type ResultCell } from '../functions/cell';
import type { Formula } from './plan/plan';

/** An error value on its way through a computation, as it passes through a spreadsheet's formulas. */
class Passing extends Error {
  constructor(readonly cell: CellError) {
    super(cell.sentence);
  }
}

/** The value that a computation comes to, or the error it met. */
export function attempt<Value extends ResultCell>(compute: () => Value): Value | CellError {
  try {
    return compute();
  } catch (error) {
    if (error instanceof Passing) return error.cell;
    throw error;
  }
}

/** Stops a computation with an error value. */
export function fail(code: '#VALUE!' | '#N/A' | '#DIV/0!', sentence: string): never {
  throw new Passing(new CellError(code, sentence));
}

/** A cell's number, as a formula's arithmetic takes it: text that is a number counts, other text is an error. */
export function numberIn(cell: Cell): number {
  if (cell instanceof CellError) throw new Passing(cell);
  const number = typeof cell === 'string' && cell.trim() !== '' ? Number(cell) : cell;
  if (typeof number === 'number' && Number.isFinite(number)) return number;
  return fail('#VALUE!', `${JSON.stringify(cell)} is not a number`);
}

/** A column's answer for each row of a list function. */
export function callList(
  id: string,
  rows: number,
  ...columns: readonly (readonly Cell[])[]
): ResultCell[] {
  const answer = evaluate(
    id,
    columns.map((cells) => cells.map((cell) => [cell])),
  );
  return Array.from({ length: rows }, (_, row) => answer[row]![0]!);
}

/** The one cell that a call of single cells answers with. */
export function callCell(id: string, ...cells: readonly Cell[]): ResultCell {
  return evaluate(
    id,
    cells.map((cell) => [[cell]]),
  )[0]![0]!;
}

/** What a call answers with; arguments are matrices as a spreadsheet hands them over. */
export function evaluate(id: string, given: readonly Matrix[]): ResultCell[][] {
  return findFunction(id)!.evaluate(given);
}

/** A formula (without its leading "=") with the value that a file keeps beside it, where that is known. */
export function formulaOf(formula: string, value?: ResultCell): Formula {
  return value === undefined
    ? { formula: `=${formula}` }
    : {
        formula: `=${formula}`,
        cached: value instanceof CellError ? { error: value.code } : value,
      };
}
