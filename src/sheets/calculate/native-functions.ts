/** The spreadsheet's own functions that formulas here may use, as far as they use them. */
import { CellError, type Cell, type ErrorCode } from '../../functions/cell';
import {
  asNumber,
  asText,
  asTruth,
  ERRORS,
  fold,
  isCells,
  mapped,
  spread,
  type Cells,
  type Value,
} from './values';

/** As ERROR.TYPE numbers them, from 1. */
const ERROR_TYPES: readonly ErrorCode[] = [
  '#NULL!',
  '#DIV/0!',
  '#VALUE!',
  '#REF!',
  '#NAME?',
  '#NUM!',
  '#N/A',
];

/** Computes from evaluated arguments. */
export type NativeFunction = (args: readonly Value[]) => Value;

/** A function of one single cell, spread over arrays. */
const each =
  (compute: (cell: Cell) => Cell): NativeFunction =>
  ([value = null]) =>
    isCells(value) ? mapped(value, compute) : compute(value);

const ofNumber = (compute: (number: number) => Cell): NativeFunction =>
  each((cell) => {
    const number = asNumber(cell);
    return number instanceof CellError ? number : compute(number);
  });

const asFinite = (number: number): Cell => (Number.isFinite(number) ? number : ERRORS.tooLarge);

/** The cells that count for a sum or a greatest: of many that are alike one stands for all, but 0 adds nothing. */
function countingCells(value: Cells): readonly Cell[] {
  const { few } = value;
  if (few?.rest !== 0 && few?.rest !== false) return value.all();
  return few.places.length < value.rows * value.columns ? [...few.cells, few.rest] : few.cells;
}

/** Numbers among arguments, as sums take them: in ranges only what is a number, an error stops all. */
function numbersIn(args: readonly Value[]): readonly number[] | CellError {
  const numbers: number[] = [];
  for (const arg of args) {
    if (isCells(arg)) {
      for (const cell of countingCells(arg)) {
        if (cell instanceof CellError) return cell;
        if (typeof cell === 'number') numbers.push(cell);
      }
    } else {
      const number = asNumber(arg);
      if (number instanceof CellError) return number;
      numbers.push(number);
    }
  }
  return numbers;
}

const ofNumbers =
  (compute: (numbers: readonly number[]) => number): NativeFunction =>
  (args) => {
    const numbers = numbersIn(args);
    return numbers instanceof CellError ? numbers : asFinite(compute(numbers));
  };

/** AND and OR: text and nothing inside ranges do not count. */
const ofTruths =
  (compute: (truths: readonly boolean[]) => boolean): NativeFunction =>
  (args) => {
    const truths: boolean[] = [];
    for (const arg of args) {
      for (const cell of isCells(arg) ? arg.all() : [arg]) {
        if (isCells(arg) && (typeof cell === 'string' || cell === null)) continue;
        const truth = asTruth(cell);
        if (truth instanceof CellError) return truth;
        truths.push(truth);
      }
    }
    return truths.length === 0 ? ERRORS.badText : compute(truths);
  };

const sumProduct: NativeFunction = (args) => {
  const first = args[0] ?? null;
  if (args.length === 1 && isCells(first)) {
    let sum = 0;
    for (const cell of countingCells(first)) {
      if (cell instanceof CellError) return cell;
      sum += typeof cell === 'number' ? cell : 0;
    }
    return asFinite(sum);
  }
  const lists = args.map((arg) => (isCells(arg) ? arg.all() : [arg]));
  let sum = 0;
  for (let index = 0; index < (isCells(first) ? first.rows * first.columns : 1); index += 1) {
    let product = 1;
    for (const list of lists) {
      const cell = list[index] ?? null;
      if (cell instanceof CellError) return cell;
      // Truth is no number here: formulas write -- before a comparison.
      product *= typeof cell === 'number' ? cell : 0;
    }
    sum += product;
  }
  return asFinite(sum);
};

/** The cells of a range; a column of one row is written as a single cell. */
function listOf(value: Value): readonly Cell[] {
  return isCells(value) ? value.all() : [value];
}

/** What a look-up by equality goes by: the kind and the text without case. */
function keyOf(cell: Cell): string | undefined {
  if (typeof cell === 'string') return `s${fold(cell)}`;
  if (typeof cell === 'number') return `n${cell}`;
  if (typeof cell === 'boolean') return `b${String(cell)}`;
  return undefined;
}

/** Where each value of a list stands first; made once for a list, since thousands of rows look in the same. */
const firstPlaces = new WeakMap<readonly Cell[], ReadonlyMap<string, number>>();
function placesIn(list: readonly Cell[]): ReadonlyMap<string, number> {
  let places = firstPlaces.get(list);
  if (places === undefined) {
    const found = new Map<string, number>();
    for (const [index, cell] of list.entries()) {
      const key = keyOf(cell);
      if (key !== undefined && !found.has(key)) found.set(key, index);
    }
    firstPlaces.set(list, (places = found));
  }
  return places;
}

/** How often each value stands in a list. */
const counts = new WeakMap<readonly Cell[], ReadonlyMap<string, number>>();
function countsIn(list: readonly Cell[]): ReadonlyMap<string, number> {
  let known = counts.get(list);
  if (known === undefined) {
    const found = new Map<string, number>();
    for (const cell of list) {
      const key = keyOf(cell);
      if (key !== undefined) found.set(key, (found.get(key) ?? 0) + 1);
    }
    counts.set(list, (known = found));
  }
  return known;
}

/** The last place in an ascending list that is not above the number; -1 where all are. */
function lastNotAbove(list: readonly Cell[], wanted: number): number {
  let found = -1;
  for (const [index, cell] of list.entries()) {
    if (typeof cell === 'number' && cell <= wanted) found = index;
  }
  return found;
}

const match: NativeFunction = ([wanted = null, among = null, kind = 1]) => {
  if (isCells(wanted)) return ERRORS.badEntry;
  if (wanted instanceof CellError) return wanted;
  const list = listOf(among);
  if (kind === 0) {
    const place = placesIn(list).get(keyOf(wanted) ?? '');
    return place === undefined ? ERRORS.notThere : place + 1;
  }
  const number = asNumber(wanted);
  if (number instanceof CellError) return number;
  const place = lastNotAbove(list, number);
  return place < 0 ? ERRORS.notThere : place + 1;
};

const lookup: NativeFunction = ([wanted = null, among = null, results = null]) => {
  if (isCells(wanted)) return ERRORS.badEntry;
  const number = asNumber(wanted);
  if (number instanceof CellError) return number;
  const place = lastNotAbove(listOf(among), number);
  return place < 0 ? ERRORS.notThere : (listOf(results)[place] ?? null);
};

/** Sums by criterion over the same two lists, kept for the rows that ask for another criterion. */
const sums = new WeakMap<
  readonly Cell[],
  WeakMap<readonly Cell[], ReadonlyMap<string, number | CellError>>
>();
function sumsBy(
  criteria: readonly Cell[],
  summed: readonly Cell[],
): ReadonlyMap<string, number | CellError> {
  let ofCriteria = sums.get(criteria);
  if (ofCriteria === undefined) sums.set(criteria, (ofCriteria = new WeakMap()));
  let known = ofCriteria.get(summed);
  if (known === undefined) {
    const found = new Map<string, number | CellError>();
    for (const [index, criterion] of criteria.entries()) {
      const key = keyOf(criterion);
      const cell = summed[index] ?? null;
      if (key === undefined) continue;
      const before = found.get(key) ?? 0;
      if (before instanceof CellError) continue;
      if (cell instanceof CellError) found.set(key, cell);
      else found.set(key, before + (typeof cell === 'number' ? cell : 0));
    }
    ofCriteria.set(summed, (known = found));
  }
  return known;
}

const sumIf: NativeFunction = ([among = null, wanted = null, summed = null]) => {
  if (isCells(wanted)) return ERRORS.badEntry;
  if (wanted instanceof CellError) return 0;
  return sumsBy(listOf(among), listOf(summed)).get(keyOf(wanted) ?? '') ?? 0;
};

const countIf: NativeFunction = ([among = null, wanted = null]) => {
  if (isCells(wanted)) return ERRORS.badEntry;
  return countsIn(listOf(among)).get(keyOf(wanted) ?? '') ?? 0;
};

const mid: NativeFunction = (args) =>
  spread(([given, from, length]) => {
    const text = asText(given ?? null);
    if (text instanceof CellError) return text;
    const start = asNumber(from ?? null);
    if (start instanceof CellError) return start;
    const count = asNumber(length ?? null);
    return count instanceof CellError ? count : text.slice(start - 1, start - 1 + count);
  }, args);

const ofText = (compute: (text: string) => Cell): NativeFunction =>
  each((cell) => {
    const text = asText(cell);
    return text instanceof CellError ? text : compute(text);
  });

const isError = (cell: Cell) => cell instanceof CellError;

/** By name. IF, IFERROR, INDEX, ROW and COLUMN, which look at more than values, are compiled by themselves. */
export const NATIVE_FUNCTIONS: Readonly<Record<string, NativeFunction>> = {
  ABS: ofNumber(Math.abs),
  AND: ofTruths((truths) => truths.every(Boolean)),
  CHAR: ofNumber((number) => String.fromCharCode(number)),
  COUNT: (args) => {
    let count = 0;
    for (const arg of args) {
      for (const cell of isCells(arg) ? arg.all() : [arg]) {
        if (typeof cell === 'number') count += 1;
      }
    }
    return count;
  },
  COUNTIF: countIf,
  EXP: ofNumber((number) => asFinite(Math.exp(number))),
  INT: ofNumber(Math.floor),
  ISERROR: each(isError),
  'ERROR.TYPE': each((cell) =>
    cell instanceof CellError ? ERROR_TYPES.indexOf(cell.code) + 1 : ERRORS.notThere,
  ),
  ISNA: each((cell) => cell instanceof CellError && cell.code === '#N/A'),
  ISNUMBER: each((cell) => typeof cell === 'number'),
  ISTEXT: each((cell) => typeof cell === 'string'),
  LEFT: ([given = null, count = 1]) =>
    spread(
      ([text, length]) => {
        const [said, most] = [asText(text ?? null), asNumber(length ?? 1)];
        if (said instanceof CellError) return said;
        return most instanceof CellError ? most : said.slice(0, most);
      },
      [given, count],
    ),
  LEN: ofText((text) => text.length),
  LN: ofNumber((number) => (number > 0 ? Math.log(number) : ERRORS.tooLarge)),
  LOOKUP: lookup,
  LOWER: ofText((text) => text.toLowerCase()),
  MATCH: match,
  MAX: ofNumbers((numbers) =>
    numbers.length === 0 ? 0 : numbers.reduce((a, b) => (a > b ? a : b)),
  ),
  MID: mid,
  MIN: ofNumbers((numbers) =>
    numbers.length === 0 ? 0 : numbers.reduce((a, b) => (a < b ? a : b)),
  ),
  N: each((cell) =>
    typeof cell === 'number' || cell instanceof CellError ? cell : cell === true ? 1 : 0,
  ),
  NA: () => ERRORS.notThere,
  NOT: each((cell) => {
    const truth = asTruth(cell);
    return truth instanceof CellError ? truth : !truth;
  }),
  OR: ofTruths((truths) => truths.some(Boolean)),
  ROWS: ([value = null]) => (isCells(value) ? value.rows : 1),
  ROUND: ([given = null, digits = 0]) =>
    spread(
      ([cell, places]) => {
        const number = asNumber(cell ?? null);
        const count = asNumber(places ?? 0);
        if (number instanceof CellError) return number;
        if (count instanceof CellError) return count;
        // Half away from 0, by the digits that the number shows.
        const scale = 10 ** count;
        const scaled = Number((Math.abs(number) * scale).toPrecision(15));
        return (Math.sign(number) * Math.round(scaled)) / scale;
      },
      [given, digits],
    ),
  RIGHT: ([given = null, count = 1]) =>
    spread(
      ([text, length]) => {
        const [said, most] = [asText(text ?? null), asNumber(length ?? 1)];
        if (said instanceof CellError) return said;
        return most instanceof CellError ? most : said.slice(Math.max(0, said.length - most));
      },
      [given, count],
    ),
  SEARCH: ([wanted = null, within = null]) =>
    spread(
      ([cell, among]) => {
        const text = asText(cell ?? null);
        const all = asText(among ?? null);
        if (text instanceof CellError) return text;
        if (all instanceof CellError) return all;
        const place = fold(all).indexOf(fold(text));
        return place < 0 ? ERRORS.badEntry : place + 1;
      },
      [wanted, within],
    ),
  SQRT: ofNumber((number) => (number < 0 ? ERRORS.tooLarge : Math.sqrt(number))),
  SUBSTITUTE: (args) =>
    spread(([given, old, instead]) => {
      const texts = [given, old, instead].map((cell) => asText(cell ?? null));
      const error = texts.find(isError);
      if (error !== undefined) return error;
      const [said, from, to] = texts as readonly string[];
      return from === '' ? said! : said!.replaceAll(from!, () => to!);
    }, args),
  SUM: ofNumbers((numbers) => numbers.reduce((sum, number) => sum + number, 0)),
  SUMIF: sumIf,
  SUMPRODUCT: sumProduct,
  TRIM: ofText((text) => text.trim().replace(/ +/g, ' ')),
  VALUE: ofText((text) => asNumber(text)),
};
