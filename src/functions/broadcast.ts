/** Ranges anywhere: a cell-by-cell computation spread over the common shape of its arguments. */
import { isRefusal, type Outcome } from '../core/outcome';
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
import { readGiven, type Beside, type Given, type Parameter } from './parameter';

const LEFT_OUT: Matrix = [[null]];

interface Shape {
  readonly rows: number;
  readonly columns: number;
}

function shapeOf(matrix: Matrix): Shape {
  let columns = 1;
  for (const row of matrix) columns = Math.max(columns, row.length);
  return { rows: Math.max(1, matrix.length), columns };
}

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

/** The cell that counts at a place of the common shape; undefined where the matrix has no such row or column. */
function cellAt(matrix: Matrix, shape: Shape, row: number, column: number): Cell | undefined {
  const useRow = shape.rows === 1 ? 0 : row;
  const useColumn = shape.columns === 1 ? 0 : column;
  if (useRow >= shape.rows || useColumn >= shape.columns) return undefined;
  return matrix[useRow]?.[useColumn] ?? null;
}

/**
 * Computes over the common shape of the arguments, as a spreadsheet's own array arithmetic does: a single cell
 * extends to every row and column, a row against a column gives a grid, and where a range has no such row or column
 * the cell is #N/A. In each cell: an error that comes in is passed on; then a blank required argument makes the
 * answer empty text; then the first argument that cannot be read is refused. An argument left out that has no default
 * is refused for the whole call.
 */
export function broadcast(
  parameters: readonly Parameter[],
  given: readonly (Matrix | undefined)[],
  compute: (values: Readonly<Record<string, unknown>>) => Outcome<Given>,
): ResultMatrix {
  const missing = missingArgument(parameters, given);
  if (missing !== undefined) return [[missing]];
  const matrices = parameters.map((_, index) => given[index] ?? LEFT_OUT);
  const shapes = matrices.map(shapeOf);
  const rows = Math.max(1, ...shapes.map((shape) => shape.rows));
  const columns = Math.max(1, ...shapes.map((shape) => shape.columns));

  const one = (row: number, column: number): ResultCell => {
    const cells: Cell[] = [];
    for (const [index, parameter] of parameters.entries()) {
      const cell = cellAt(matrices[index]!, shapes[index]!, row, column);
      if (cell === undefined) {
        return new CellError(
          '#N/A',
          `${parameter.name}: its range has ${shapes[index]!.rows} by ${shapes[index]!.columns} cells and ran out here; make the ranges of one size`,
        );
      }
      cells.push(cell);
    }
    const wrong = cells.findIndex((cell) => cell instanceof CellError);
    if (wrong >= 0) return passedOn(cells[wrong] as CellError, parameters[wrong]!);
    if (
      parameters.some(
        (parameter, index) => parameter.fallbackText === undefined && isBlank(cells[index]!),
      )
    ) {
      return '';
    }
    const beside: Beside = (name) => {
      const index = parameters.findIndex((parameter) => parameter.name === name);
      const cell = cells[index] ?? null;
      return isBlank(cell) ? parameters[index]?.fallback : readGiven(parameters[index]!, cell);
    };
    const values: Record<string, unknown> = {};
    for (const [index, parameter] of parameters.entries()) {
      const cell = cells[index]!;
      const value = isBlank(cell) ? parameter.fallback : readGiven(parameter, cell, beside);
      if (isRefusal(value)) return refusalCell(value, parameter.name);
      values[parameter.name] = value;
    }
    return answerCell(compute(values));
  };

  return Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_, column) => one(row, column)),
  );
}
