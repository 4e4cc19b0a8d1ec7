/** What stands in a cell, for every spreadsheet that calls our functions: Excel, the workbench, the tests. */

import type { Refusal } from '../core/outcome';

/** The error values a spreadsheet knows. */
export const ERROR_CODES = [
  '#VALUE!',
  '#N/A',
  '#DIV/0!',
  '#NUM!',
  '#NULL!',
  '#NAME?',
  '#REF!',
] as const;
export type ErrorCode = (typeof ERROR_CODES)[number];

/** An error value with the sentence that explains it. */
export class CellError {
  constructor(
    readonly code: ErrorCode,
    readonly sentence: string,
  ) {}

  /** As the spreadsheet shows it. */
  toString(): string {
    return this.code;
  }
}

/** The error value for a refusal. */
export function refusalCell(refusal: Refusal, parameterName?: string): CellError {
  const sentence = parameterName === undefined ? refusal.why : `${parameterName}: ${refusal.why}`;
  return new CellError(refusal.refused === 'invalid' ? '#VALUE!' : '#N/A', sentence);
}

/** A cell as our functions see it; null is a blank. */
export type Cell = string | number | boolean | CellError | null;

/** Rows of cells. Every argument and every result is one, a single value being [[value]]. */
export type Matrix = readonly (readonly Cell[])[];

/** A cell that our functions answer with: never a blank null, which Excel would show as 0. */
export type ResultCell = string | number | boolean | CellError;
export type ResultMatrix = ResultCell[][];

/** Blank: nothing, or text with nothing to read in it. */
export function isBlank(cell: Cell): cell is null | string {
  return cell === null || (typeof cell === 'string' && cell.trim() === '');
}
