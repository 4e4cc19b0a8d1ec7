/** Values as formulas pass them along, and a spreadsheet's arithmetic and comparisons on single ones. */
import { CellError, type Cell } from '../../functions/cell';
import type { Operator } from './syntax';

/** Many cells at once: an area of a sheet, or what came of computing with one. */
export interface Cells {
  readonly rows: number;
  readonly columns: number;
  at(row: number, column: number): Cell;
  /** Every cell, row by row; the same list each time. */
  all(): readonly Cell[];
  /** Set where all cells but a few are alike: comparing a column with one of its values mostly answers FALSE. */
  readonly few?: Few;
}

/** The cells that differ from the rest, by their places in the list, in order. */
export interface Few {
  readonly places: readonly number[];
  readonly cells: readonly Cell[];
  readonly rest: Cell;
}

export type Value = Cell | Cells;

export function isCells(value: Value): value is Cells {
  return typeof value === 'object' && value !== null && !(value instanceof CellError);
}

/** A list of cells as an array value. */
export function cellsOf(rows: number, columns: number, all: readonly Cell[]): Cells {
  return {
    rows,
    columns,
    all: () => all,
    at: (row, column) => all[row * columns + column] ?? null,
  };
}

/** An array whose cells are alike but for a few. */
export function mostlyAlike(rows: number, columns: number, few: Few): Cells {
  let whole: Cell[] | undefined;
  const all = () => {
    if (whole === undefined) {
      whole = new Array<Cell>(rows * columns).fill(few.rest);
      for (const [index, place] of few.places.entries()) whole[place] = few.cells[index]!;
    }
    return whole;
  };
  return { rows, columns, few, all, at: (row, column) => all()[row * columns + column] ?? null };
}

const ERRORS = {
  badText: new CellError('#VALUE!', 'text where a number belongs'),
  divided: new CellError('#DIV/0!', 'a division by 0'),
  tooLarge: new CellError('#NUM!', 'the number is too large'),
  notThere: new CellError('#N/A', 'no answer'),
  badEntry: new CellError('#VALUE!', 'an entry that cannot be used'),
  outside: new CellError('#REF!', 'no such row or column'),
} as const;
export { ERRORS };

const NUMERAL = /^\s*[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?\s*$/;

/** The number that arithmetic takes a cell for: nothing is 0, text counts where it is a number. */
export function asNumber(cell: Cell): number | CellError {
  if (typeof cell === 'number') return cell;
  if (cell === null) return 0;
  if (typeof cell === 'boolean') return cell ? 1 : 0;
  if (cell instanceof CellError) return cell;
  return NUMERAL.test(cell) ? Number(cell) : ERRORS.badText;
}

/** A cell as text joins it; a number has at most the 15 figures that a spreadsheet keeps. */
export function asText(cell: Cell): string | CellError {
  if (typeof cell === 'string' || cell instanceof CellError) return cell;
  if (cell === null) return '';
  if (typeof cell === 'boolean') return cell ? 'TRUE' : 'FALSE';
  return String(Number(cell.toPrecision(15)));
}

/** What a condition takes a cell for. */
export function asTruth(cell: Cell): boolean | CellError {
  if (typeof cell === 'boolean') return cell;
  if (typeof cell === 'number') return cell !== 0;
  if (cell === null) return false;
  if (cell instanceof CellError) return cell;
  const text = cell.trim().toUpperCase();
  return text === 'TRUE' ? true : text === 'FALSE' ? false : ERRORS.badText;
}

/** Text as comparisons see it: upper and lower case are alike. */
const folded = new Map<string, string>();
const MOST_FOLDED = 20_000;
export function fold(text: string): string {
  let known = folded.get(text);
  if (known === undefined) {
    if (folded.size > MOST_FOLDED) folded.clear();
    folded.set(text, (known = text.toLowerCase()));
  }
  return known;
}

const RANK = { number: 0, string: 1, boolean: 2 } as const;

/** Below 0, 0 or above: numbers before text before truth, and nothing is like 0 or "". */
function order(left: Exclude<Cell, CellError>, right: Exclude<Cell, CellError>): number {
  if (left === null && right === null) return 0;
  const a = left ?? (typeof right === 'string' ? '' : typeof right === 'boolean' ? false : 0);
  const b = right ?? (typeof left === 'string' ? '' : typeof left === 'boolean' ? false : 0);
  if (typeof a === 'string' && typeof b === 'string') {
    const [x, y] = [fold(a), fold(b)];
    return x === y ? 0 : x < y ? -1 : 1;
  }
  if (typeof a !== typeof b) {
    return RANK[typeof a as keyof typeof RANK] - RANK[typeof b as keyof typeof RANK];
  }
  return Number(a) - Number(b);
}

/** Whether two cells that are no errors are the same to a spreadsheet. */
function isEqual(left: Exclude<Cell, CellError>, right: Exclude<Cell, CellError>): boolean {
  if (left === right) return true;
  // Most texts differ in length, which is cheaper to see than their letters without case.
  if (typeof left === 'string' && typeof right === 'string') {
    return left.length === right.length && fold(left) === fold(right);
  }
  if (typeof left === 'number' && typeof right === 'number') return false;
  return order(left, right) === 0;
}

/** Whether two cells are the same to a spreadsheet; errors are like nothing. */
export function isSame(left: Cell, right: Cell): boolean {
  return !(left instanceof CellError) && !(right instanceof CellError) && isEqual(left, right);
}

/** Whether a value stands as it did: alike in kind and content, an error with its reason. */
export function isUnchanged(before: Value | undefined, now: Value): boolean {
  if (before === now) return true;
  return (
    before instanceof CellError &&
    now instanceof CellError &&
    before.code === now.code &&
    before.sentence === now.sentence
  );
}

function finite(number: number): Cell {
  return Number.isFinite(number) ? number : ERRORS.tooLarge;
}

type Arithmetic = '+' | '-' | '*' | '/' | '^';
const ARITHMETIC: Readonly<Record<Arithmetic, (a: number, b: number) => Cell>> = {
  '+': (a, b) => finite(a + b),
  '-': (a, b) => finite(a - b),
  '*': (a, b) => finite(a * b),
  '/': (a, b) => (b === 0 ? ERRORS.divided : finite(a / b)),
  '^': (a, b) => finite(a ** b),
};

type Comparison = '=' | '<>' | '<' | '>' | '<=' | '>=';
type Content = Exclude<Cell, CellError>;
const COMPARISON: Readonly<Record<Comparison, (left: Content, right: Content) => boolean>> = {
  '=': isEqual,
  '<>': (left, right) => !isEqual(left, right),
  '<': (left, right) => order(left, right) < 0,
  '>': (left, right) => order(left, right) > 0,
  '<=': (left, right) => order(left, right) <= 0,
  '>=': (left, right) => order(left, right) >= 0,
};

type OnTwo = (left: Cell, right: Cell) => Cell;

function arithmetic(compute: (a: number, b: number) => Cell): OnTwo {
  return (left, right) => {
    if (typeof left === 'number' && typeof right === 'number') return compute(left, right);
    const a = asNumber(left);
    if (a instanceof CellError) return a;
    const b = asNumber(right);
    return b instanceof CellError ? b : compute(a, b);
  };
}

function comparison(holds: (left: Content, right: Content) => boolean): OnTwo {
  return (left, right) => {
    if (left instanceof CellError) return left;
    if (right instanceof CellError) return right;
    return holds(left, right);
  };
}

const joined: OnTwo = (left, right) => {
  const a = asText(left);
  if (a instanceof CellError) return a;
  const b = asText(right);
  return b instanceof CellError ? b : a + b;
};

/** An operator on two single cells; an error that comes in goes through, the left one first. */
export const OPERATIONS: Readonly<Record<Operator, OnTwo>> = {
  ...(Object.fromEntries(
    Object.entries(ARITHMETIC).map(([operator, compute]) => [operator, arithmetic(compute)]),
  ) as Record<Arithmetic, OnTwo>),
  ...(Object.fromEntries(
    Object.entries(COMPARISON).map(([operator, holds]) => [operator, comparison(holds)]),
  ) as Record<Comparison, OnTwo>),
  '&': joined,
};

/** A computation on single cells spread over arrays, as array arithmetic does it; too short an array runs out. */
export function spread(compute: (cells: readonly Cell[]) => Cell, values: readonly Value[]): Value {
  if (!values.some(isCells)) return compute(values as readonly Cell[]);
  let [rows, columns] = [1, 1];
  for (const value of values) {
    if (!isCells(value)) continue;
    rows = Math.max(rows, value.rows);
    columns = Math.max(columns, value.columns);
  }
  const pick = (value: Value, row: number, column: number): Cell => {
    if (!isCells(value)) return value;
    const useRow = value.rows === 1 ? 0 : row;
    const useColumn = value.columns === 1 ? 0 : column;
    return useRow < value.rows && useColumn < value.columns
      ? value.at(useRow, useColumn)
      : ERRORS.notThere;
  };
  const all: Cell[] = [];
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      all.push(compute(values.map((value) => pick(value, row, column))));
    }
  }
  return cellsOf(rows, columns, all);
}

/** A computation on each cell by itself. */
export function mapped(of: Cells, compute: (cell: Cell) => Cell): Cells {
  const { few } = of;
  if (few !== undefined) {
    const cells = few.cells.map((cell) => compute(cell));
    return mostlyAlike(of.rows, of.columns, { ...few, cells, rest: compute(few.rest) });
  }
  return mappedAll(of, compute);
}

function mappedAll(of: Cells, compute: (cell: Cell, index: number) => Cell): Cells {
  const cells = of.all();
  const all = new Array<Cell>(cells.length);
  for (let index = 0; index < cells.length; index += 1) all[index] = compute(cells[index]!, index);
  return cellsOf(of.rows, of.columns, all);
}

/** The same for two values, with the common shapes on a fast way. */
export function spreadTwo(compute: OnTwo, left: Value, right: Value): Value {
  if (!isCells(left)) {
    return isCells(right) ? mapped(right, (cell) => compute(left, cell)) : compute(left, right);
  }
  if (!isCells(right)) return mapped(left, (cell) => compute(cell, right));
  if (left.rows === right.rows && left.columns === right.columns) {
    const mostly = ofFew(compute, left, right);
    if (mostly !== undefined) return mostly;
    const others = right.all();
    return mappedAll(left, (cell, index) => compute(cell, others[index]!));
  }
  return spread(([a, b]) => compute(a!, b!), [left, right]);
}

/** Two arrays of one shape, where all that matters stands in a few places; undefined where it does not. */
function ofFew(compute: OnTwo, left: Cells, right: Cells): Cells | undefined {
  const { rows, columns } = left;
  if (left.few !== undefined && right.few !== undefined) {
    return mostlyAlike(rows, columns, together(compute, left.few, right.few));
  }
  const few = left.few ?? right.few;
  if (few === undefined || compute !== OPERATIONS['*'] || asNumber(few.rest) !== 0) {
    return undefined;
  }
  const others = (left.few === undefined ? left : right).all();
  if (!areFigures(others)) return undefined;
  const cells = few.places.map((place, index) =>
    left.few === undefined
      ? compute(others[place]!, few.cells[index]!)
      : compute(few.cells[index]!, others[place]!),
  );
  return mostlyAlike(rows, columns, { places: few.places, cells, rest: 0 });
}

function together(compute: OnTwo, left: Few, right: Few): Few {
  const [places, cells]: [number[], Cell[]] = [[], []];
  let [l, r] = [0, 0];
  while (l < left.places.length || r < right.places.length) {
    const [a, b] = [left.places[l] ?? Infinity, right.places[r] ?? Infinity];
    places.push(Math.min(a, b));
    cells.push(compute(a <= b ? left.cells[l]! : left.rest, b <= a ? right.cells[r]! : right.rest));
    if (a <= b) l += 1;
    if (b <= a) r += 1;
  }
  return { places, cells, rest: compute(left.rest, right.rest) };
}

/** Whether 0 times each cell of a list is 0: neither texts nor errors stand in it. Found out once for a list. */
const figures = new WeakMap<readonly Cell[], boolean>();
function areFigures(list: readonly Cell[]): boolean {
  let known = figures.get(list);
  if (known === undefined) {
    known = list.every((cell) => typeof cell !== 'string' && !(cell instanceof CellError));
    figures.set(list, known);
  }
  return known;
}
