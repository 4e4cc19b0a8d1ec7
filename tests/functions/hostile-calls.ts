/** Calls of a function with what it is meant for and with harm, and what may come out of any of them. */
import fc from 'fast-check';
import { CellError, type Cell, type Matrix } from '../../src/functions/cell';
import type { WorksheetFunction } from '../../src/functions/worksheet-function';
import { mixedCell, mixedRange } from './arbitrary-cells';

/** An error's sentence is read in a small box over a cell. */
const LONGEST_SENTENCE = 400;

/** Whether something came in that a sentence may quote as not being a number. */
function hasNoNumber(cameIn: ReadonlySet<unknown>): boolean {
  return [...cameIn].some(
    (cell) =>
      (typeof cell === 'number' && !Number.isFinite(cell)) ||
      (typeof cell === 'string' && /Infinity|NaN/.test(cell)),
  );
}

/** What is wrong with a cell that came out; undefined where nothing is. Plain code, since it runs a million times. */
function faultOf(cell: unknown, cameIn: ReadonlySet<unknown>): string | undefined {
  if (Object.is(cell, -0)) return 'the number -0';
  if (typeof cell === 'number') return Number.isFinite(cell) ? undefined : `the number ${cell}`;
  if (typeof cell === 'string' || typeof cell === 'boolean') return undefined;
  if (!(cell instanceof CellError)) return `no cell at all, a ${typeof cell}`;
  if (cameIn.has(cell)) return undefined;
  // Passed on, with a sentence of ours on the quotes that a text lacks.
  const isPassedOn =
    cell.code === '#NAME?' &&
    [...cameIn].some((came) => came instanceof CellError && came.code === '#NAME?');
  if (!isPassedOn && cell.code !== '#VALUE!' && cell.code !== '#N/A')
    return `an error of ours of kind ${cell.code}`;
  if (cell.sentence.trim() === '') return 'an error without a sentence';
  if (cell.sentence.length > LONGEST_SENTENCE) return 'an error with too long a sentence';
  if (/Infinity|NaN/.test(cell.sentence) && !hasNoNumber(cameIn)) {
    return `a number that is none in the sentence ${cell.sentence}`;
  }
  if (/undefined|\[object|\bnull\b/.test(cell.sentence)) return `the sentence ${cell.sentence}`;
  return undefined;
}

/** What came out of calls so far, counted cell by cell. */
export interface Tally {
  answers: number;
  errors: number;
  blanks: number;
}
export const emptyTally = (): Tally => ({ answers: 0, errors: 0, blanks: 0 });

type Given = readonly (Matrix | undefined)[];

/** Calls a function and counts what comes out. Throws where that is none of values, blanks and errors with a sentence. */
export function checkCall(entry: WorksheetFunction, given: Given, tally: Tally): Matrix {
  const cameIn = new Set<unknown>(given.flatMap((matrix) => matrix?.flat() ?? []));
  const result = entry.evaluate(given);
  const columns = result[0]?.length ?? 0;
  if (columns === 0) throw new Error('an empty result');
  for (const row of result) {
    if (row.length !== columns) throw new Error('a ragged result');
    for (const cell of row) {
      const fault = faultOf(cell, cameIn);
      if (fault !== undefined) throw new Error(`out came ${fault}`);
      if (cell instanceof CellError) tally.errors += 1;
      else if (cell === '') tally.blanks += 1;
      else tally.answers += 1;
    }
  }
  return result;
}

/** A cell as what can be compared: an error by its kind and its sentence. */
const told = (cell: Cell) =>
  cell instanceof CellError ? `${cell.code} ${cell.sentence}` : (cell as unknown);

/** Calls it once more. Throws where anything else comes out. */
export function checkSame(entry: WorksheetFunction, given: Given, first: Matrix): void {
  const second = entry.evaluate(given);
  const isSame =
    second.length === first.length &&
    second.every((row, down) =>
      row.every((cell, across) => Object.is(told(cell), told(first[down]![across]!))),
    );
  if (!isSame) throw new Error('the same call gave another result');
}

/** Arguments left off the end as well, as callers do. */
function givenSome<T>(all: fc.Arbitrary<T[]>, count: number): fc.Arbitrary<T[]> {
  return fc
    .tuple(all, fc.oneof({ weight: 9, arbitrary: fc.constant(count) }, fc.nat(count)))
    .map(([cells, given]) => cells.slice(0, given));
}

/** Calls with one cell for each argument. */
export function cellCalls({ takes }: WorksheetFunction): fc.Arbitrary<Matrix[]> {
  const cells = fc.tuple<Cell[]>(...takes.map(mixedCell));
  return givenSome(cells, takes.length).map((given) => given.map((cell) => [[cell]]));
}

/** Calls with a small range for each argument, ragged at times. */
export function rangeCalls({ takes }: WorksheetFunction): fc.Arbitrary<Matrix[]> {
  const ranges = fc.tuple<Cell[][][]>(...takes.map((parameter) => mixedRange(parameter, takes)));
  return givenSome(ranges, takes.length);
}

/** Calls with so many rows for each argument, all mixed: far more than anyone fills in. */
export function longCalls({ takes }: WorksheetFunction, rows: number): fc.Arbitrary<Matrix[]> {
  const columns = takes.map((parameter) =>
    fc.array(fc.tuple<Cell[]>(mixedCell(parameter)), {
      minLength: 1,
      maxLength: rows,
      size: 'max',
    }),
  );
  return givenSome(fc.tuple<Cell[][][]>(...columns), takes.length);
}
