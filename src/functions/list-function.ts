/**
 * Functions over whole lists, the second way to make a catalogue entry beside `perCell`: their arguments are columns of
 * one length whose rows belong together, such as the runs of a schedule, and the rows depend on one another.
 */
import { invalid, isRefusal, type Outcome } from '../core/outcome';
import { missingArgument, passedOn } from './arguments';
import { answerCell } from './broadcast';
import { CellError, isBlank, refusalCell, type Cell, type Matrix, type ResultCell } from './cell';
import { readGiven, type Given, type Parameter } from './parameter';
import type { Described, WorksheetFunction } from './worksheet-function';

/** A parameter that takes a column (or a row) of values, one for each row of the list. */
export interface ColumnWord<Name extends string = string, Value = unknown> extends Parameter<
  Name,
  Value
> {
  readonly column: {
    /** What a blank cell stands for. Without it a blank makes the row's answer empty. */
    readonly blankIs?: Value;
    /** The parameter is a text, so a number 0 is a blank that the spreadsheet handed over as 0. */
    readonly zeroIsBlank?: boolean;
  };
}

/** The same parameter as a column of the list. */
export function inColumn<Name extends string, Value>(
  parameter: Parameter<Name, Value>,
  column: ColumnWord<Name, Value>['column'] = {},
): ColumnWord<Name, Value> {
  return { ...parameter, column };
}

/**
 * A parameter that takes a list of its own, whose rows are not those of the other columns, such as the lengths of spools.
 * `readWhole` answers undefined where there is nothing in it; an error that came in is the function's answer.
 */
export interface WholeWord<Name extends string = string, Value = unknown> extends Parameter<
  Name,
  Value
> {
  readWhole(matrix: Matrix): Outcome<Value> | CellError | undefined;
}

/** The same parameter as a list of its own: every cell of its range that is not blank, in any shape. */
export function asOwnList<Name extends string, Value>(
  parameter: Parameter<Name, Value>,
): WholeWord<Name, readonly Value[]> {
  return {
    ...(parameter as Parameter<Name, never>),
    readWhole(matrix) {
      const values: Value[] = [];
      for (const cell of matrix.flat()) {
        if (cell instanceof CellError) return cell;
        if (isBlank(cell)) continue;
        const value = readGiven(parameter, cell);
        if (isRefusal(value)) return value;
        values.push(value);
      }
      return values.length === 0 ? undefined : values;
    },
  };
}

/**
 * What a list function receives: for a parameter in a column one entry a row (undefined where the cell is blank, a refusal
 * where it cannot be read), for any other parameter its one value.
 */
export type ListValuesOf<Parameters extends readonly Parameter[]> = {
  readonly [W in Parameters[number] as W['name']]: W extends ColumnWord<string, infer Value>
    ? readonly (Outcome<Value> | undefined)[]
    : W extends Parameter<string, infer Value>
      ? Value
      : never;
};

type ListEntry<Parameters extends readonly Parameter[], Answer> = Described & {
  readonly takes: Parameters;
  readonly compute: (values: ListValuesOf<Parameters>) => Answer;
};

interface Vector {
  readonly cells: readonly Cell[];
  readonly lies: boolean;
}

/** A range of one column or one row as a list; undefined where it is a block. */
function vectorOf(matrix: Matrix): Vector | undefined {
  const rows = matrix.length;
  const columns = matrix.reduce((most, row) => Math.max(most, row.length), 0);
  if (rows > 1 && columns > 1) return undefined;
  return rows > 1
    ? { cells: matrix.map((row) => row[0] ?? null), lies: false }
    : { cells: matrix[0] ?? [], lies: columns > 1 };
}

export interface ReadList {
  readonly values: Readonly<Record<string, unknown>>;
  /** By row, what its answer is whatever is computed: an error, or nothing for a blank. */
  readonly settled: readonly (ResultCell | undefined)[];
  readonly lies: boolean;
}

function isWhole(parameter: Parameter): parameter is WholeWord {
  return 'readWhole' in parameter;
}

function isColumn(parameter: Parameter): parameter is ColumnWord {
  return 'column' in parameter;
}

function emptyIn(parameter: Parameter, cell: Cell): boolean {
  return (
    isBlank(cell) || (isColumn(parameter) && parameter.column.zeroIsBlank === true && cell === 0)
  );
}

/** Reads one cell of a list; an error that came in is told to the computation as a refusal. */
function readCell(parameter: Parameter, cell: Cell, beside: (name: string) => unknown): unknown {
  if (cell instanceof CellError) return invalid(`the cell holds ${cell.code}`);
  if (emptyIn(parameter, cell))
    return isColumn(parameter) ? parameter.column.blankIs : parameter.fallback;
  const { besideName } = parameter;
  return readGiven(parameter, cell, besideName === undefined ? undefined : beside(besideName));
}

/** What the others say of a row, none of them by what is beside it. */
function besideIn(parameters: readonly Parameter[], cellAt: (index: number) => Cell) {
  const beside = (name: string): unknown => {
    const index = parameters.findIndex((parameter) => parameter.name === name);
    return index < 0 ? undefined : readCell(parameters[index]!, cellAt(index), beside);
  };
  return beside;
}

/** What a row answers because of one of its cells, errors that came in first, then blanks, then refusals. */
function settledBy(
  parameters: readonly Parameter[],
  cells: readonly Cell[],
): ResultCell | undefined {
  const wrong = cells.findIndex((cell) => cell instanceof CellError);
  if (wrong >= 0) return passedOn(cells[wrong] as CellError, parameters[wrong]!);
  const missing = (parameter: Parameter) =>
    isColumn(parameter) ? !('blankIs' in parameter.column) : parameter.fallbackText === undefined;
  if (
    parameters.some((parameter, index) => missing(parameter) && emptyIn(parameter, cells[index]!))
  )
    return '';
  const beside = besideIn(parameters, (index) => cells[index]!);
  for (const [index, parameter] of parameters.entries()) {
    const value = readCell(parameter, cells[index]!, beside);
    if (isRefusal(value)) return refusalCell(value, parameter.name);
  }
  return undefined;
}

/** Reads the lists that stand by themselves; an error in one, or a refusal, is an answer for all. */
function readWholes(
  parameters: readonly Parameter[],
  given: readonly (Matrix | undefined)[],
): Record<string, unknown> | CellError {
  const values: Record<string, unknown> = {};
  for (const [index, parameter] of parameters.entries()) {
    if (!isWhole(parameter)) continue;
    const value = parameter.readWhole(given[index] ?? [[null]]);
    if (value instanceof CellError) return value;
    if (isRefusal(value)) return refusalCell(value, parameter.name);
    values[parameter.name] = value ?? parameter.fallback;
  }
  return values;
}

/**
 * Reads the arguments of a list function. A single cell holds for every row; a column that is shorter than the longest
 * runs out, and its rows are #N/A; a block, or a range where one value belongs, is refused as a whole.
 */
export function readList(
  takes: readonly Parameter[],
  given: readonly (Matrix | undefined)[],
): ReadList | CellError {
  const missing = missingArgument(takes, given);
  if (missing !== undefined) return missing;
  const wholes = readWholes(takes, given);
  if (wholes instanceof CellError) return wholes;
  const parameters = takes.filter((parameter) => !isWhole(parameter));
  const vectors: Vector[] = [];
  for (const parameter of parameters) {
    const vector = vectorOf(given[takes.indexOf(parameter)] ?? [[null]]);
    if (vector === undefined) {
      return refusalCell(invalid('a block of cells; give one column or one row'), parameter.name);
    }
    if (!isColumn(parameter) && vector.cells.length > 1) {
      return refusalCell(
        invalid('a range; give one value, which holds for every row'),
        parameter.name,
      );
    }
    vectors.push(vector);
  }
  const length = Math.max(1, ...vectors.map(({ cells }) => cells.length));
  const long = parameters.findIndex((_, index) => vectors[index]!.cells.length > 1);

  const ranOut = (parameter: Parameter, cells: readonly Cell[]) =>
    new CellError(
      '#N/A',
      `${parameter.name}: its range has ${cells.length} cells and ran out here; make the ranges of one size`,
    );
  const columns = parameters.map((parameter, index): readonly Cell[] => {
    const { cells } = vectors[index]!;
    return cells.length <= 1
      ? new Array<Cell>(length).fill(cells[0] ?? null)
      : Array.from(
          { length },
          (_, row) => cells[row] ?? (row < cells.length ? null : ranOut(parameter, cells)),
        );
  });

  const values = wholes;
  const lacksWhole = takes.some(
    (parameter) => isWhole(parameter) && !('fallback' in parameter) && !wholes[parameter.name],
  );
  for (const [index, parameter] of parameters.entries()) {
    const read = (row: number) =>
      readCell(
        parameter,
        columns[index]![row]!,
        besideIn(parameters, (other) => columns[other]![row]!),
      );
    values[parameter.name] = isColumn(parameter)
      ? columns[index]!.map((_, row) => read(row))
      : read(0);
  }
  return {
    values,
    settled: Array.from({ length }, (_, row) => {
      const settled = settledBy(
        parameters,
        columns.map((cells) => cells[row]!),
      );
      return settled ?? (lacksWhole ? '' : undefined);
    }),
    lies: long >= 0 && vectors[long]!.lies,
  };
}

/** Whether a value that holds for every row is missing or refused, so that there is nothing to compute. */
export function lacksOne(parameters: readonly Parameter[], values: ReadList['values']): boolean {
  return parameters.some((parameter) => {
    const value = values[parameter.name];
    return (
      !isColumn(parameter) &&
      (isRefusal(value) || (value === undefined && !('fallback' in parameter)))
    );
  });
}

/**
 * A function that answers with a column, one cell for each row of its lists (a row of cells where the lists are rows).
 * A row with an error, a blank or a cell that cannot be read answers with that, whatever is computed; the computation
 * sees it, and says what it means for the others.
 */
export function perList<const Parameters extends readonly Parameter[]>(
  entry: ListEntry<Parameters, readonly Outcome<Given>[]>,
): WorksheetFunction {
  const compute = entry.compute as (values: ReadList['values']) => readonly Outcome<Given>[];
  return {
    ...entry,
    evaluate(given) {
      const list = readList(entry.takes, given);
      if (list instanceof CellError) return [[list]];
      const answers = lacksOne(entry.takes, list.values) ? [] : compute(list.values);
      const cells = list.settled.map((cell, row) => cell ?? answerCell(answers[row]!));
      return list.lies ? [cells] : cells.map((cell) => [cell]);
    },
  };
}

/**
 * A function that answers with one value from whole lists. Rows that are blank in every column are left out; a row that
 * is blank in one alone is an error, since leaving it out would change the answer; the first error of the list is the
 * answer. The computation receives whole rows only.
 */
export function overList<const Parameters extends readonly ColumnWord[]>(
  entry: Described & {
    readonly takes: Parameters;
    readonly compute: (rows: readonly RowOf<Parameters>[]) => Outcome<Given>;
  },
): WorksheetFunction {
  const compute = entry.compute as (rows: readonly Record<string, unknown>[]) => Outcome<Given>;
  return {
    ...entry,
    evaluate(given) {
      const list = readList(entry.takes, given);
      if (list instanceof CellError) return [[list]];
      const { settled } = list;
      const columns = entry.takes.map(
        ({ name }) => [name, list.values[name] as readonly unknown[]] as const,
      );
      const rows: Record<string, unknown>[] = [];
      for (const [row, cell] of settled.entries()) {
        if (cell instanceof CellError) return [[cell]];
        const filled = columns.filter(([, values]) => values[row] !== undefined);
        if (filled.length === 0) continue;
        const blank = columns.find(([, values]) => values[row] === undefined);
        if (blank !== undefined) {
          const why = `row ${row + 1} of the list is blank here and has ${filled[0]![0]}; fill it in, or clear both`;
          return [[refusalCell(invalid(why), blank[0])]];
        }
        rows.push(Object.fromEntries(columns.map(([name, values]) => [name, values[row]])));
      }
      return [[rows.length === 0 ? '' : answerCell(compute(rows))]];
    },
  };
}

/** A whole row of a list: a read value for each parameter. */
export type RowOf<Parameters extends readonly ColumnWord[]> = {
  readonly [W in Parameters[number] as W['name']]: W extends ColumnWord<string, infer Value>
    ? Value
    : never;
};
