/** Finding the list in rows: where its headings are, and which column is which. */
import { LEAVE_OUT, UnusableMap, type ColumnMap } from './column-map';
import {
  hintFor,
  LASTING_KEYS,
  likelyKeys,
  readHeading,
  RUN_KEYS,
  unitFor,
  type HeadingMeaning,
  type RunKey,
} from './headings';
import { cellText, isEmpty, type RawRow, type RawTable } from './raw';
import { columnLetters } from '../sheets/plan/area';
import { SCHEDULE_COLUMNS } from '../sheets/schedule/columns';
import { joinedHeadings, type Heading } from './heading-rows';
import type { TypedColumn, UnreadColumn } from './list-columns';
import { withRunNames } from './run-names';
import { plain, type Unit } from '../core/units';

/** Headings stand near the top; rows below this many are not looked at for them. */
const HEADINGS_WITHIN = 100;

export interface FoundList {
  readonly table: RawTable;
  /** Place of the heading row among the table's rows. */
  readonly headerIndex: number;
  /** Place of the first row under the headings. */
  readonly bodyIndex: number;
  readonly headings: readonly Heading[];
  readonly columns: readonly TypedColumn[];
  /** Our own computed columns. */
  readonly computed: readonly string[];
  readonly leftOver: readonly UnreadColumn[];
  /** Every heading of ours is there, word for word. */
  readonly ours: boolean;
  /** What was made of its columns that their headings do not say. */
  readonly remarks: readonly string[];
}

/** The rows of a list under its headings. */
export function bodyOf({ table, bodyIndex }: FoundList): readonly RawRow[] {
  return table.rows.slice(bodyIndex);
}

/** A list without a load or a length has no runs. */
export function hasRuns({ columns }: FoundList): boolean {
  return columns.some(({ key }) => key === 'peak' || key === 'length');
}

const NOTHING_SAID: ColumnMap = new Map();

/** The likeliest list of these tables; undefined where none has headings of one. */
export function findList(tables: readonly RawTable[]): FoundList | undefined {
  const list = likeliestList(tables);
  return list !== undefined && hasRuns(list) ? list : undefined;
}

/**
 * The likeliest list of these tables, as a person says of its columns. None of them may be a load or a length: then it may
 * still be a list, whose headings are not understood. Undefined where nothing looks like headings.
 */
export function likeliestList(
  tables: readonly RawTable[],
  said: ColumnMap = NOTHING_SAID,
): FoundList | undefined {
  const found = tables.flatMap((table) =>
    table.rows
      .slice(0, HEADINGS_WITHIN)
      .flatMap((row, index) => readHeadings(table, index, row, said) ?? []),
  );
  const best = likeliest(found.filter(hasRuns), worth);
  const isSure = best !== undefined && worth(best) > 1;
  // One heading alone may be a word among the runs; a row of headings that are nearly understood is likelier.
  const near = isSure ? undefined : likeliest(found.filter(isWorded), guessed);
  const isNearer = near !== undefined && guessed(near) > (best === undefined ? 0 : worth(best));
  const list = isNearer
    ? near
    : (best ?? found.find((one) => isWorded(one) && bodyOf(one).some(hasFigures)));
  return list && withBody(list, said);
}

function likeliest(
  lists: readonly FoundList[],
  by: (list: FoundList) => number,
): FoundList | undefined {
  let best: FoundList | undefined;
  for (const list of lists) if (best === undefined || by(list) > by(best)) best = list;
  return best;
}

/** More columns are likelier; ours beats any other. */
function worth({ columns, ours }: FoundList): number {
  return columns.length + (ours ? RUN_KEYS.length : 0);
}

/** Headings that are nearly understood count as well. */
function guessed(list: FoundList): number {
  const near = list.leftOver.filter(({ heading }) => likelyKeys(heading).length > 0);
  return worth(list) + near.length;
}

const hasFigures = ({ cells }: RawRow) => cells.some((cell) => /^\d/.test(cellText(cell)));

/** Several cells of words and none of figures, as headings are. */
function isWorded({ table, headerIndex }: FoundList): boolean {
  const cells = table.rows[headerIndex]!.cells.filter((cell) => !isEmpty(cell));
  return (
    cells.length > 1 &&
    cells.every(({ value }) => typeof value === 'string' && !/^[\d.,]+$/.test(value.trim()))
  );
}

type Meaning = HeadingMeaning | { readonly is: 'left out' };

interface Meant extends Heading {
  readonly meaning: Meaning;
  readonly said?: true;
}

/** The row as headings; undefined where no cell of it has a text. */
function readHeadings(
  table: RawTable,
  headerIndex: number,
  row: RawRow,
  said: ColumnMap,
): FoundList | undefined {
  const { headings, rows } = joinedHeadings(row, table.rows[headerIndex + 1]);
  if (headings.length === 0) return undefined;
  return { table, headerIndex, bodyIndex: headerIndex + rows, ...readColumns(headings, said) };
}

/** The list with what its rows say of its columns. */
function withBody(list: FoundList, said: ColumnMap): FoundList {
  const body = bodyOf(list);
  const bare = unheaded(list, body);
  const whole =
    bare.length === 0 ? list : { ...list, ...readColumns([...list.headings, ...bare], said) };
  if (whole.ours) return whole;
  const named = withRunNames(whole.columns, whole.leftOver, body);
  return { ...whole, ...named, columns: inOrder(named.columns), leftOver: byPlace(named.leftOver) };
}

function byPlace<Column extends { readonly index: number }>(columns: readonly Column[]) {
  return [...columns].sort((a, b) => a.index - b.index);
}

/** What a run is fed from comes before its source, which counts where no run feeds it. */
function inOrder(columns: readonly TypedColumn[]): readonly TypedColumn[] {
  const rank = (column: TypedColumn) => Number(column.key === 'fedFrom' && isOfSources(column));
  return byPlace(columns).sort((a, b) => rank(a) - rank(b));
}

/** The headings as columns of ours. */
function readColumns(
  headings: readonly Heading[],
  said: ColumnMap,
): Omit<FoundList, 'table' | 'headerIndex' | 'bodyIndex'> {
  const asOurs = headings.map((heading) => meant(heading, said));
  const ours = LASTING_KEYS.every((key) =>
    asOurs.some(({ meaning }) => isOurs(meaning) && meaning.key === key),
  );
  const meanings = ours
    ? asOurs
    : asOurs.map((one) => ({ ...one, meaning: foreign(one.text, one.meaning) }));
  // What was said first, then our own headings, so that "Own size" is not outdone by a column called "Size".
  const rank = ({ said: isSaid, meaning }: Meant) => (isSaid ? 2 : Number(isOurs(meaning)));
  const columns: TypedColumn[] = [];
  const leftOver: UnreadColumn[] = [];
  for (const one of [...meanings].sort((a, b) => rank(b) - rank(a))) {
    const { index, heading, meaning, said: isSaid } = one;
    if (meaning.is === 'left out') {
      leftOver.push({ index, heading, why: 'left out, as was said', needless: true });
    }
    if (meaning.is === 'unknown') {
      leftOver.push({ index, heading, why: meaning.why, needless: meaning.computed === true });
    }
    if (meaning.is !== 'typed') continue;
    const { key, unit, bothWays } = meaning;
    const column = {
      ...{ index, heading, key, bothWays },
      ...(unit && { unit }),
      ...(isSaid && { said: isSaid }),
    };
    const rival = columns.find((other) => other.key === key && !complement(other, column, key));
    if (rival === undefined) {
      columns.push(column);
      continue;
    }
    if (rival.said === true && isSaid === true) throw new UnusableMap(bothSaid(rival, column));
    const why = `"${rival.heading}" ${rival.said === true ? 'was chosen for it' : 'says the same'}`;
    leftOver.push({ index, heading, why, needless: false, rival: column });
  }
  return {
    headings,
    columns: inOrder(columns),
    computed: meanings
      .filter(({ meaning }) => meaning.is === 'computed')
      .map(({ heading }) => heading),
    leftOver: byPlace(leftOver),
    ours,
    remarks: [],
  };
}

function bothSaid(one: TypedColumn, other: TypedColumn): string {
  const as = SCHEDULE_COLUMNS[one.key].heading;
  return `"${one.heading}" and "${other.heading}" cannot both be "${as}"; choose one of them and leave the other out.`;
}

/** What a column means: what was said of it, or what its heading says. */
function meant(heading: Heading, said: ColumnMap): Meant {
  const chosen = said.get(plain(heading.heading)) ?? said.get(plain(heading.above ?? ''));
  if (chosen === undefined) {
    const meaning: HeadingMeaning =
      heading.unheaded === true
        ? { is: 'unknown', why: 'it has no heading' }
        : readHeading(heading.text);
    return { ...heading, meaning };
  }
  if (chosen === LEAVE_OUT) return { ...heading, meaning: { is: 'left out' }, said: true };
  const unit = chosen.unit ?? unitFor(heading.heading, chosen.key);
  return {
    ...heading,
    said: true,
    meaning: { is: 'typed', ...chosen, ours: false, ...(unit && { unit }) },
  };
}

/** Columns with something typed under no heading. A text has none beyond its last, where a row with a comma too many ends. */
function unheaded({ table, headerIndex }: FoundList, body: readonly RawRow[]): readonly Heading[] {
  const headed = table.rows[headerIndex]!.cells;
  const last = headed.findLastIndex((cell) => !isEmpty(cell));
  const widest = Math.max(0, ...body.map(({ cells }) => cells.length));
  const columns = table.separator === undefined ? widest : Math.min(widest, last);
  return Array.from({ length: columns }, (_, index) => index)
    .filter(
      (index) =>
        isEmpty(headed[index]) &&
        body.some(({ cells }) => !isEmpty(cells[index]) && cells[index]?.computed !== true),
    )
    .map((index) => {
      const heading = `column ${columnLetters(index)}`;
      return { index, heading, text: heading, unheaded: true };
    });
}

/** In a list that is no schedule of ours, a heading like one of our computed columns is somebody's own. */
function foreign(heading: string, meaning: Meaning): Meaning {
  if (meaning.is !== 'computed') return meaning;
  return meaning.also === undefined
    ? { is: 'unknown', why: `the schedule computes it${hintFor(heading)}`, computed: true }
    : { is: 'typed', key: meaning.also, bothWays: false, ours: false };
}

function isOurs(meaning: Meaning): meaning is HeadingMeaning & { readonly is: 'typed' } {
  return meaning.is === 'typed' && meaning.ours;
}

interface Headed {
  readonly heading: string;
  readonly unit?: Unit;
}

/** A column of sources beside one of feeders. */
export const isOfSources = ({ heading }: Headed) =>
  /\b(?:source|supply|battery)\b/i.test(heading) && !/\b(?:from|by)\b/i.test(heading);

/**
 * A list may give some loads in amps and others in watts, each in its own column; and the run that feeds a run in one
 * column, its source in another. Notes there may be any number of.
 */
function complement(a: Headed, b: Headed, key: RunKey): boolean {
  if (key === 'notes') return true;
  if (key === 'fedFrom') return isOfSources(a) !== isOfSources(b);
  return key === 'peak' && (a.unit?.quantity === 'power') !== (b.unit?.quantity === 'power');
}
