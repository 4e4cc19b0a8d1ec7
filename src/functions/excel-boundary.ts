/**
 * The one place that knows how Excel hands arguments to a function and what it takes back. Excel's typings promise
 * nothing here, so everything is unknown until it was looked at; nothing in this module throws.
 */
import { CellError, ERROR_CODES, type Cell, type ErrorCode, type Matrix } from './cell';
import type { ResultCell, ResultMatrix } from './cell';
import type { WorksheetFunction } from './worksheet-function';

/** What Excel calls for one function: arguments in their order, and possibly an invocation object after them. */
export type ExcelFunction = (...given: unknown[]) => unknown[][];

/**
 * How error values leave. Names as in CustomFunctions.ErrorCode; invalidName and invalidReference may come in but
 * cannot go out (@types/custom-functions-runtime 1.6), so they leave as invalidValue with a sentence.
 */
const LEAVES_AS = {
  '#VALUE!': 'invalidValue',
  '#N/A': 'notAvailable',
  '#DIV/0!': 'divisionByZero',
  '#NUM!': 'invalidNumber',
  '#NULL!': 'nullReference',
  '#NAME?': 'invalidValue',
  '#REF!': 'invalidValue',
} as const satisfies Readonly<Record<ErrorCode, keyof typeof CustomFunctions.ErrorCode>>;

/** The codes whose message Excel shows; with the others none may be given. */
const SHOWS_SENTENCE: ReadonlySet<string> = new Set(['invalidValue', 'notAvailable']);

/** An argument as Excel delivers it; undefined where it was left out. */
export function matrixFromExcel(given: unknown): Matrix | undefined {
  if (given === null || given === undefined) return undefined;
  if (!Array.isArray(given)) return [[cellFromExcel(given)]];
  const rows: readonly unknown[] = given;
  if (!rows.some(Array.isArray)) return [rows.map(cellFromExcel)];
  // Most ranges come as they are needed; a copy of a long one would double the memory of the call.
  if (rows.every(isPlainRow)) return rows;
  return rows.map((row) => (Array.isArray(row) ? row.map(cellFromExcel) : [cellFromExcel(row)]));
}

function isPlainRow(row: unknown): row is readonly Cell[] {
  if (!Array.isArray(row)) return false;
  for (const cell of row as readonly unknown[]) {
    if (
      typeof cell !== 'number' &&
      typeof cell !== 'string' &&
      typeof cell !== 'boolean' &&
      cell !== null
    )
      return false;
  }
  return true;
}

/** One cell as Excel delivers it; a cell of an unknown kind becomes #VALUE! with a sentence. */
export function cellFromExcel(given: unknown): Cell {
  try {
    switch (typeof given) {
      case 'string':
      case 'number':
      case 'boolean':
        return given;
      case 'undefined':
        return null;
      case 'object':
        return given === null ? null : cellFromObject(given);
      default:
        return unreadable(`a ${typeof given}`);
    }
  } catch {
    return unreadable('a value that cannot be looked into');
  }
}

/** A result as Excel takes it: rows of cells, errors as its own error objects. */
export function matrixToExcel(result: ResultMatrix): unknown[][] {
  // In place: the result is ours, and hardly any of its cells is an error.
  for (const row of result) {
    for (let column = 0; column < row.length; column += 1) {
      const cell = row[column]!;
      const taken = cellToExcel(cell);
      if (taken !== cell) (row as unknown[])[column] = taken;
    }
  }
  return result;
}

/** A catalogue entry as the function that Excel calls. */
export function excelFunction(entry: WorksheetFunction): ExcelFunction {
  return (...given) => {
    try {
      const arguments_ = given.slice(0, entry.takes.length).map(matrixFromExcel);
      return matrixToExcel(entry.evaluate(arguments_));
    } catch {
      const sentence = `${entry.id} failed on these arguments, which is a fault of the add-in; please report it`;
      return [[cellToExcel(new CellError('#VALUE!', sentence))]];
    }
  };
}

function cellFromObject(given: object): Cell {
  if (given instanceof Date) return unreadable('a date');
  const { type, code, message, basicValue } = given as Partial<
    Record<'type' | 'code' | 'message' | 'basicValue', unknown>
  >;
  if (type === undefined && typeof code === 'string') return errorFrom(code, message);
  if (type === 'Error') return errorFrom(basicValue, undefined);
  if (type === 'Empty') return null;
  if (typeof basicValue === 'number' || typeof basicValue === 'boolean') return basicValue;
  // Entities, pictures and the like have #VALUE! where they have no plain value; in a text it is what somebody wrote.
  if (typeof basicValue === 'string' && (type === 'String' || !isErrorCode(basicValue))) {
    return basicValue;
  }
  return unreadable(
    typeof type === 'string' ? `a cell of the kind ${type}` : 'a cell of an unknown kind',
  );
}

function isErrorCode(text: unknown): text is ErrorCode {
  return ERROR_CODES.some((code) => code === text);
}

function errorFrom(code: unknown, message: unknown): CellError {
  const sentence = typeof message === 'string' && message.trim() !== '' ? message : undefined;
  if (isErrorCode(code)) return new CellError(code, sentence ?? `${code} came in`);
  const name = typeof code === 'string' && code !== '' ? code : 'an error of an unknown kind';
  return new CellError('#VALUE!', sentence ?? `${name} came in`);
}

function unreadable(what: string): CellError {
  return new CellError(
    '#VALUE!',
    `${what} came in; a number, text, TRUE, FALSE or nothing is needed`,
  );
}

function cellToExcel(cell: ResultCell): unknown {
  // Excel's messages are JSON, where a number that is not finite turns into nothing and is then shown as 0.
  if (typeof cell === 'number' && !Number.isFinite(cell)) {
    return cellToExcel(
      new CellError('#N/A', 'the numbers are too large or too small to compute with'),
    );
  }
  if (!(cell instanceof CellError)) return cell;
  const name = LEAVES_AS[cell.code];
  const code = CustomFunctions.ErrorCode[name];
  return SHOWS_SENTENCE.has(name)
    ? new CustomFunctions.Error(code, cell.sentence)
    : new CustomFunctions.Error(code);
}
