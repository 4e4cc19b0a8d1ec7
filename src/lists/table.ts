/** Finding the list in rows: where its headings are, and which column is which. */
import {
  hintFor,
  LASTING_KEYS,
  readHeading,
  RUN_KEYS,
  type HeadingMeaning,
  type RunKey,
} from './headings';
import { cellText, isEmpty, type RawRow, type RawTable } from './raw';
import type { Unit } from '../core/units';

/** Headings stand near the top; rows below this many are not looked at for them. */
const HEADINGS_WITHIN = 100;

export interface TypedColumn {
  readonly index: number;
  readonly heading: string;
  readonly key: RunKey;
  readonly unit?: Unit;
  readonly bothWays: boolean;
  /** Some of its bare numbers are shares and others percent. */
  readonly mixed?: boolean;
}

export interface FoundList {
  readonly table: RawTable;
  /** Place of the heading row among the table's rows. */
  readonly headerIndex: number;
  readonly columns: readonly TypedColumn[];
  /** Our own computed columns. */
  readonly computed: readonly string[];
  readonly leftOver: readonly { readonly heading: string; readonly why: string }[];
  /** Every heading of ours is there, word for word. */
  readonly ours: boolean;
}

/** The likeliest list of these tables; undefined where none has headings of one. */
export function findList(tables: readonly RawTable[]): FoundList | undefined {
  let best: FoundList | undefined;
  for (const table of tables) {
    for (const [index, row] of table.rows.slice(0, HEADINGS_WITHIN).entries()) {
      const found = readHeadings(table, index, row);
      if (found !== undefined && worth(found) > (best === undefined ? 0 : worth(best)))
        best = found;
    }
  }
  return best;
}

/** More columns are likelier; ours beats any other. */
function worth({ columns, ours }: FoundList): number {
  return columns.length + (ours ? RUN_KEYS.length : 0);
}

/** The row as headings; undefined where it names neither load nor length, without which there is no run. */
function readHeadings(table: RawTable, headerIndex: number, row: RawRow): FoundList | undefined {
  const meanings: { index: number; heading: string; meaning: HeadingMeaning }[] = [];
  for (const [index, cell] of row.cells.entries()) {
    if (typeof cell.value !== 'string' || isEmpty(cell)) continue;
    const heading = cellText(cell);
    meanings.push({ index, heading, meaning: readHeading(heading) });
  }
  const ours = LASTING_KEYS.every((key) =>
    meanings.some(({ meaning }) => isOurs(meaning) && meaning.key === key),
  );
  if (!ours) for (const found of meanings) found.meaning = foreign(found.heading, found.meaning);
  // Our own headings first, so that "Own size" is not outdone by a column called "Size".
  const inOrder = [...meanings].sort(
    (a, b) => Number(isOurs(b.meaning)) - Number(isOurs(a.meaning)),
  );
  const columns: TypedColumn[] = [];
  const leftOver: { index: number; heading: string; why: string }[] = [];
  for (const { index, heading, meaning } of inOrder) {
    if (meaning.is === 'unknown') leftOver.push({ index, heading, why: meaning.why });
    if (meaning.is !== 'typed') continue;
    const { key, unit, bothWays } = meaning;
    const rival = columns.find(
      (column) =>
        column.key === key && !complement(column, { heading, ...(unit && { unit }) }, key),
    );
    if (rival === undefined) {
      columns.push({ index, heading, key, bothWays, ...(unit === undefined ? {} : { unit }) });
    } else {
      leftOver.push({ index, heading, why: `"${rival.heading}" says the same` });
    }
  }
  if (!columns.some(({ key }) => key === 'peak' || key === 'length')) return undefined;
  const rankOf = (column: TypedColumn) => Number(column.key === 'fedFrom' && isOfSources(column));
  const byPlace = (a: { index: number }, b: { index: number }) => a.index - b.index;
  return {
    table,
    headerIndex,
    // What a run is fed from comes before its source, which counts where no run feeds it.
    columns: columns.sort((a, b) => rankOf(a) - rankOf(b) || byPlace(a, b)),
    computed: meanings
      .filter(({ meaning }) => meaning.is === 'computed')
      .map(({ heading }) => heading),
    leftOver: leftOver.sort(byPlace).map(({ heading, why }) => ({ heading, why })),
    ours,
  };
}

/** In a list that is no schedule of ours, a heading like one of our computed columns is somebody's own. */
function foreign(heading: string, meaning: HeadingMeaning): HeadingMeaning {
  if (meaning.is !== 'computed') return meaning;
  return meaning.also === undefined
    ? { is: 'unknown', why: `the schedule computes it${hintFor(heading)}` }
    : { is: 'typed', key: meaning.also, bothWays: false, ours: false };
}

function isOurs(meaning: HeadingMeaning): meaning is HeadingMeaning & { readonly is: 'typed' } {
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
 * column, its source in another.
 */
function complement(a: Headed, b: Headed, key: RunKey): boolean {
  if (key === 'fedFrom') return isOfSources(a) !== isOfSources(b);
  return key === 'peak' && (a.unit?.quantity === 'power') !== (b.unit?.quantity === 'power');
}
