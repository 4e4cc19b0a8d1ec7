/**
 * Functions over whole lists, the second way to make a catalogue entry beside `perCell`: their arguments are columns of
 * one length whose rows belong together, such as the runs of a schedule, and the rows depend on one another.
 */
import { invalid, isRefusal, type Outcome } from '../core/outcome';
import { missingArgument, passedOn } from './arguments';
import { answerCell } from './broadcast';
import { CellError, isBlank, refusalCell, type Cell, type Matrix, type ResultCell } from './cell';
import { Argument } from './argument-reader';
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

/** One argument of the list: a value for each row, or one for all. */
class ListArgument {
  /** Cells in its range. */
  readonly count: number;
  readonly lies: boolean;
  readonly isBlock: boolean;
  private readonly argument: Argument;
  private besideArgument: ListArgument | undefined;
  private readonly ranOut: CellError;

  constructor(
    readonly parameter: Parameter,
    given: Matrix | undefined,
  ) {
    this.argument = new Argument(parameter, given);
    const { rows, columns } = this.argument;
    this.count = rows > 1 ? rows : columns;
    this.lies = columns > 1;
    this.isBlock = rows > 1 && columns > 1;
    this.ranOut = new CellError(
      '#N/A',
      `${parameter.name}: its range has ${this.count} cells and ran out here; make the ranges of one size`,
    );
  }

  standBeside(all: readonly ListArgument[]): void {
    const { besideName } = this.parameter;
    if (besideName === undefined) return;
    this.besideArgument = all.find(({ parameter }) => parameter.name === besideName);
  }

  /** In a column the row counts, in a row the column, and in a single cell neither. */
  cellAt(row: number): Cell {
    const cell = this.argument.cellAt(row, row);
    return cell === undefined ? this.ranOut : cell;
  }

  /** What it says in a row; an error that came in is told to the computation as a refusal. */
  readAt(row: number): unknown {
    const { parameter } = this;
    const cell = this.cellAt(row);
    if (cell instanceof CellError) return invalid(`the cell holds ${cell.code}`);
    if (emptyIn(parameter, cell))
      return isColumn(parameter) ? parameter.column.blankIs : parameter.fallback;
    return this.argument.read(
      cell,
      typeof cell === 'string' ? this.besideArgument?.readAt(row) : undefined,
    );
  }

  /** The same for each of so many rows. */
  readAll(rows: number): readonly unknown[] {
    const read = new Array<unknown>(rows);
    if (this.count <= 1 && (this.besideArgument?.count ?? 1) <= 1) return read.fill(this.readAt(0));
    for (let row = 0; row < rows; row += 1) read[row] = this.readAt(row);
    return read;
  }
}

/** Whether a blank makes the row's answer empty. */
function isMissed(parameter: Parameter): boolean {
  return isColumn(parameter)
    ? !('blankIs' in parameter.column)
    : parameter.fallbackText === undefined;
}

/** What a row answers because of one of its cells, errors that came in first, then blanks, then refusals. */
function settledBy(
  all: readonly ListArgument[],
  row: number,
  saysIn: (index: number) => unknown,
): ResultCell | undefined {
  let isEmpty = false;
  for (const argument of all) {
    const { parameter } = argument;
    const cell = argument.cellAt(row);
    if (cell instanceof CellError) return passedOn(cell, parameter);
    isEmpty ||= isMissed(parameter) && emptyIn(parameter, cell);
  }
  if (isEmpty) return '';
  for (let index = 0; index < all.length; index += 1) {
    const value = saysIn(index);
    if (isRefusal(value)) return refusalCell(value, all[index]!.parameter.name);
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
  const all: ListArgument[] = [];
  for (const [index, parameter] of takes.entries()) {
    if (isWhole(parameter)) continue;
    const argument = new ListArgument(parameter, given[index]);
    if (argument.isBlock) {
      return refusalCell(invalid('a block of cells; give one column or one row'), parameter.name);
    }
    if (!isColumn(parameter) && argument.count > 1) {
      return refusalCell(
        invalid('a range; give one value, which holds for every row'),
        parameter.name,
      );
    }
    all.push(argument);
  }
  for (const argument of all) argument.standBeside(all);
  const length = Math.max(1, ...all.map(({ count }) => count));

  const lacksWhole = takes.some(
    (parameter) => isWhole(parameter) && !('fallback' in parameter) && !wholes[parameter.name],
  );
  const values = wholes;
  const columns = all.map((argument): readonly unknown[] | undefined => {
    const { name } = argument.parameter;
    if (!isColumn(argument.parameter)) {
      values[name] = argument.readAt(0);
      return undefined;
    }
    const read = argument.readAll(length);
    values[name] = read;
    return read;
  });
  const settled = new Array<ResultCell | undefined>(length);
  for (let row = 0; row < length; row += 1) {
    const saysIn = (index: number) => {
      const column = columns[index];
      return column === undefined ? values[all[index]!.parameter.name] : column[row];
    };
    settled[row] = settledBy(all, row, saysIn) ?? (lacksWhole ? '' : undefined);
  }
  return { values, settled, lies: all.find(({ count }) => count > 1)?.lies ?? false };
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
      const { settled, values } = list;
      const names = entry.takes.map(({ name }) => name);
      const columns = names.map((name) => values[name] as readonly unknown[]);
      const rows: Record<string, unknown>[] = [];
      for (const [row, cell] of settled.entries()) {
        if (cell instanceof CellError) return [[cell]];
        const inRow: Record<string, unknown> = {};
        let [filled, blank] = [-1, -1];
        for (let at = columns.length - 1; at >= 0; at -= 1) {
          const value = columns[at]![row];
          if (value === undefined) blank = at;
          else filled = at;
          inRow[names[at]!] = value;
        }
        if (filled < 0) continue;
        if (blank >= 0) {
          const why = `row ${row + 1} of the list is blank here and has ${names[filled]!}; fill it in, or clear both`;
          return [[refusalCell(invalid(why), names[blank])]];
        }
        rows.push(inRow);
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
