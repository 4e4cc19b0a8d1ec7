/** What is asked of a list's columns that are not read: some of their values, what they may be, and what they look like. */
import { nameKey } from '../core/feeder-tree';
import { shortened } from '../core/sentence';
import { choiceOf, choicesFor } from './column-map';
import { likelyKeys, RUN_COLUMNS, saysBothWays, unitFor, type RunKey } from './headings';
import { cellText, type RawRow } from './raw';
import { isNumbered, valuesOf } from './run-names';
import { bodyOf, type FoundList } from './table';
import type { UnreadColumn } from './list-columns';
import { readValue, type ListHabits } from './values';
import { SOURCES } from './words';

const MOST_VALUES = 3;

export interface ColumnQuestion {
  readonly heading: string;
  /** Up to three of its values, each once and short. */
  readonly values: readonly string[];
  /** Why it is not read. */
  readonly why: string;
  /** What it may be said to be, as `readColumnMap` reads it. */
  readonly choices: readonly string[];
  /** The choice that its heading or its values speak for. */
  readonly suggested?: string;
  /** It could say what feeds the runs: it names one of them, or a source, or nothing names them. */
  readonly mayFeed: boolean;
}

/** Up to three values of a column. */
export function someValues(index: number, body: readonly RawRow[]): readonly string[] {
  return [...new Set(valuesOf(index, body))].slice(0, MOST_VALUES).map(shortened);
}

/** How cells are read to see what a column may be; a figure of two meanings speaks for nothing. */
const HABITS: ListHabits = {
  numerals: { decimalComma: false, decimalPoint: true },
  givenLength: 'm',
  wantedLength: 'm',
  keepsLengths: false,
  isText: true,
};

/** The columns that are asked for: those that would be lost with something in them. */
export function questionsOf(list: FoundList): readonly ColumnQuestion[] {
  const body = bodyOf(list);
  const asked = list.leftOver.filter(
    ({ needless, index }) => !needless && valuesOf(index, body).length > 0,
  );
  const suggestions = suggestionsFor(asked, list, body);
  const known = list.columns.filter(({ key }) => key === 'run' || key === 'load');
  const names = new Set([
    ...SOURCES,
    ...known.flatMap(({ index }) => valuesOf(index, body).map(nameKey)),
  ]);
  return asked.map(({ index, heading, why }): ColumnQuestion => {
    const key = suggestions.get(index);
    return {
      heading,
      values: someValues(index, body),
      why,
      choices: choicesFor(heading),
      mayFeed:
        known.length === 0 ||
        key === 'fedFrom' ||
        valuesOf(index, body).some((value) => names.has(nameKey(value))),
      ...(key !== undefined && { suggested: choiceOf(key, saysBothWays(heading)) }),
    };
  });
}

/** By column, what it looks like; of two that look like the same column neither is suggested. */
function suggestionsFor(
  asked: readonly UnreadColumn[],
  list: FoundList,
  body: readonly RawRow[],
): ReadonlyMap<number, RunKey> {
  const taken = new Set(list.columns.map(({ key }) => key));
  const free = (key: RunKey) => key === 'notes' || !taken.has(key);
  const names = namesAmong(asked, list, body);
  const found = asked.flatMap((column): { index: number; key: RunKey }[] => {
    if (column.rival !== undefined) return [];
    const keys: readonly RunKey[] = [
      ...(column.index === names?.feeders ? (['fedFrom'] as const) : []),
      ...(column.index === names?.names ? (['run'] as const) : []),
      ...likelyKeys(column.heading),
      ...(likelyKeys(column.heading).length === 0 ? keysByUnit(column.index, body) : []),
    ];
    const key = keys.find(
      (one) =>
        free(one) &&
        (one === 'fedFrom' && names !== undefined
          ? column.index === names.feeders
          : fits(one, column, body)),
    );
    return key === undefined ? [] : [{ index: column.index, key }];
  });
  const isAlone = (key: RunKey) =>
    key === 'notes' || found.filter((one) => one.key === key).length === 1;
  return new Map(found.flatMap(({ index, key }) => (isAlone(key) ? [[index, key] as const] : [])));
}

/** Most of its values can be read as that column's. */
function fits(key: RunKey, { index, heading }: UnreadColumn, body: readonly RawRow[]): boolean {
  const unit = unitFor(heading, key);
  const cells = body.flatMap(({ cells: all }) => all[index] ?? []);
  const values = valuesOf(index, body);
  const isFigure = RUN_COLUMNS[key].quantities.length > 0;
  const read = cells.filter((cell) => {
    const { value, doubt } = readValue(
      cell,
      { key, bothWays: false, ...(unit && { unit }) },
      HABITS,
    );
    return value !== undefined && doubt === undefined;
  });
  const hasWords = values.some((value) => /\p{L}/u.test(value));
  return read.length * 2 > values.length && (isFigure || key === 'run' || hasWords);
}

/** Figures that all say their unit tell what they measure. */
function keysByUnit(index: number, body: readonly RawRow[]): readonly RunKey[] {
  const values = valuesOf(index, body);
  return (['length', 'peak'] as const).filter((key) =>
    values.every(
      (value) =>
        /\d\s*\D+$/.test(value) &&
        readValue({ value }, { key, bothWays: false }, HABITS).doubt === undefined,
    ),
  );
}

interface NamesAndFeeders {
  /** The column that looks like the names, where none is known. */
  readonly names?: number;
  /** The column of which most values are such names. */
  readonly feeders?: number;
}

/** Which columns name the runs and what feeds them, by their values; undefined where nothing names the runs. */
function namesAmong(
  asked: readonly UnreadColumn[],
  list: FoundList,
  body: readonly RawRow[],
): NamesAndFeeders | undefined {
  const known = list.columns.filter(({ key }) => key === 'run' || key === 'load');
  const numbers = list.leftOver.filter(({ needless }) => needless);
  for (const { index } of [...known, ...numbers]) {
    const feeders = feedersBy(index, asked, body);
    if (feeders !== undefined) return { feeders };
  }
  if (known.some(({ key }) => key === 'run')) return {};
  for (const { index } of asked) {
    const values = valuesOf(index, body).map(nameKey);
    if (values.length < 2 || new Set(values).size < values.length) continue;
    const feeders = feedersBy(index, asked, body);
    if (feeders !== undefined) return { names: index, feeders };
  }
  return undefined;
}

/** The column of which most values are names of another, or sources, and none its own row's name. */
function feedersBy(
  nameIndex: number,
  asked: readonly UnreadColumn[],
  body: readonly RawRow[],
): number | undefined {
  const names = new Set(valuesOf(nameIndex, body).map(nameKey));
  const key = (row: RawRow, index: number) => nameKey(cellText(row.cells[index]));
  // Numbers of rows are too like any other small numbers, unless a source stands among them.
  const areNumbers = isNumbered(nameIndex, body);
  return asked.find(({ index }) => {
    const values = valuesOf(index, body).map(nameKey);
    const isItself = body.some(
      (row) => key(row, index) !== '' && key(row, index) === key(row, nameIndex),
    );
    if (index === nameIndex || isItself) return false;
    const named = values.filter((value) => names.has(value)).length;
    const sources = values.filter((value) => !names.has(value) && SOURCES.includes(value)).length;
    const isLikely = named > 0 && (named + sources) * 2 >= values.length;
    return isLikely && (!areNumbers || sources > 0);
  })?.index;
}

/** How far two figures may be apart that were rounded, or written in two units. */
const APART = 0.03;

/** Whether a column says row by row what the one says that is read in its place. */
export function agrees({ rival }: UnreadColumn, list: FoundList): boolean {
  const other = list.columns.find(({ key }) => key === rival?.key);
  if (rival === undefined || other === undefined) return false;
  const body = bodyOf(list);
  const numbers = (column: typeof rival) =>
    body.map(({ cells }) => readValue(cells[column.index], column, HABITS).value);
  const [ones, others] = [numbers(rival), numbers(other)];
  return ones.every((one, row) => {
    const beside = others[row];
    if (one === undefined || typeof one === 'string') return one === beside || one === undefined;
    return typeof beside === 'number' && Math.abs(one - beside) <= APART * Math.abs(beside);
  });
}
