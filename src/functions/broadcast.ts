/** Ranges anywhere: a cell-by-cell computation spread over the common shape of its arguments. */
import { isRefusal, type Outcome } from '../core/outcome';
import { Argument, NO_VALUE } from './argument-reader';
import { missingArgument, passedOn } from './arguments';
import {
  CellError,
  isBlank,
  refusalCell,
  type Cell,
  type Matrix,
  type ResultCell,
  type ResultMatrix,
} from './cell';
import { readGiven, type Given, type Parameter } from './parameter';

/**
 * A computed answer as a cell. A number that is not finite is a fault of ours, told as such rather than shown; the 0 that
 * is less than nothing is 0.
 */
export function answerCell(answer: Outcome<Given>): ResultCell {
  if (isRefusal(answer)) return refusalCell(answer);
  if (typeof answer === 'number' && !Number.isFinite(answer)) {
    return new CellError('#N/A', 'the numbers are too large or too small to compute with');
  }
  return answer === 0 ? 0 : answer;
}

/** A function's own few lines: values in the order of its parameters. */
export type Compute = (...values: readonly unknown[]) => Outcome<Given>;

/**
 * What a row of cells answers whatever is computed: an error that came in, passed on; then empty text for a blank that is
 * required; then the first refusal. Undefined where there is none: `values` is then what is computed with.
 */
function settleRow(
  parameters: readonly Parameter[],
  cells: readonly Cell[],
  read: (index: number, cell: Cell) => unknown,
  values: unknown[],
): ResultCell | undefined {
  let isEmpty = false;
  for (let index = 0; index < cells.length; index += 1) {
    const cell = cells[index]!;
    if (cell instanceof CellError) return passedOn(cell, parameters[index]!);
    isEmpty ||= parameters[index]!.fallbackText === undefined && isBlank(cell);
  }
  if (isEmpty) return '';
  for (let index = 0; index < cells.length; index += 1) {
    const cell = cells[index]!;
    const parameter = parameters[index]!;
    const value = isBlank(cell) ? parameter.fallback : read(index, cell);
    if (isRefusal(value)) return refusalCell(value, parameter.name);
    values[index] = value;
  }
  return undefined;
}

/** The one cell that a matrix has; null where it has none, undefined where it has more. */
function onlyCell(matrix: Matrix | undefined): Cell | undefined {
  if (matrix === undefined) return null;
  if (matrix.length > 1 || (matrix[0]?.length ?? 0) > 1) return undefined;
  return matrix[0]?.[0] ?? null;
}

/** The call of single cells, which a filled-down formula makes thousands of times. */
function answerOne(
  parameters: readonly Parameter[],
  cells: readonly Cell[],
  compute: Compute,
): ResultCell {
  const saysBeside = (name: string): unknown => {
    const index = parameters.findIndex((parameter) => parameter.name === name);
    const cell = cells[index] ?? null;
    return isBlank(cell) ? parameters[index]?.fallback : readGiven(parameters[index]!, cell);
  };
  const values: unknown[] = [];
  const read = (index: number, cell: Cell) => {
    const parameter = parameters[index]!;
    const { besideName } = parameter;
    return readGiven(
      parameter,
      cell,
      besideName !== undefined && typeof cell === 'string' ? saysBeside(besideName) : undefined,
    );
  };
  return settleRow(parameters, cells, read, values) ?? answerCell(compute(...values));
}

/** Where the row or column of a place is not in a range that has several. */
function ranOut({ parameter, rows, columns }: Argument): CellError {
  return new CellError(
    '#N/A',
    `${parameter.name}: its range has ${rows} by ${columns} cells and ran out here; make the ranges of one size`,
  );
}

/** One place of the common shape, with all that may be wrong there. */
function answerAt(
  parameters: readonly Parameter[],
  given: readonly Argument[],
  compute: Compute,
  row: number,
  column: number,
): ResultCell {
  const cells: Cell[] = [];
  for (const argument of given) {
    const cell = argument.cellAt(row, column);
    if (cell === undefined) return ranOut(argument);
    cells.push(cell);
  }
  const values: unknown[] = [];
  const read = (index: number, cell: Cell) => given[index]!.readAt(cell, row, column);
  return settleRow(parameters, cells, read, values) ?? answerCell(compute(...values));
}

/**
 * Computes over the common shape of the arguments, as a spreadsheet's own array arithmetic does: a single cell
 * extends to every row and column, a row against a column gives a grid, and where a range has no such row or column
 * the cell is #N/A. In each cell: an error that comes in is passed on; then a blank required argument makes the
 * answer empty text; then the first argument that cannot be read is refused. An argument left out that has no default
 * is refused for the whole call.
 *
 * Single cells are read once. Where every argument of a place has a value, nothing but that value is looked at; all that
 * can be wrong is looked into only where one has none.
 */
export function broadcast(
  parameters: readonly Parameter[],
  given: readonly (Matrix | undefined)[],
  compute: Compute,
): ResultMatrix {
  const missing = missingArgument(parameters, given);
  if (missing !== undefined) return [[missing]];
  const only: Cell[] = [];
  for (let index = 0; index < parameters.length; index += 1) {
    const cell = onlyCell(given[index]);
    if (cell === undefined) return spread(parameters, given, compute);
    only.push(cell);
  }
  return [[answerOne(parameters, only, compute)]];
}

function spread(
  parameters: readonly Parameter[],
  given: readonly (Matrix | undefined)[],
  compute: Compute,
): ResultMatrix {
  const all = parameters.map((parameter, index) => new Argument(parameter, given[index]));
  for (const argument of all) argument.standBeside(all);
  let [rows, columns] = [1, 1];
  for (const argument of all) {
    rows = Math.max(rows, argument.rows);
    columns = Math.max(columns, argument.columns);
  }

  const varying = all.filter((argument) => !argument.isFixed);
  const places = varying.map((argument) => all.indexOf(argument));
  const values = all.map((argument) => (argument.isFixed ? argument.valueAt(0, 0) : undefined));
  const neverWhole = values.includes(NO_VALUE);
  const answer = (row: number, column: number): ResultCell => {
    if (neverWhole) return answerAt(parameters, all, compute, row, column);
    for (let at = 0; at < varying.length; at += 1) {
      const value = varying[at]!.valueAt(row, column);
      if (value === NO_VALUE) return answerAt(parameters, all, compute, row, column);
      values[places[at]!] = value;
    }
    return answerCell(compute(...values));
  };

  const result = new Array<ResultCell[]>(rows);
  for (let row = 0; row < rows; row += 1) {
    // A list of one is made at its size; one that grows makes room for seventeen.
    const line: ResultCell[] = [answer(row, 0)];
    for (let column = 1; column < columns; column += 1) line.push(answer(row, column));
    result[row] = line;
  }
  return result;
}
