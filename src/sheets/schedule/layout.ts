/** Where the parts of the schedule stand on its sheet, and how formulas point at them. */
import { SOURCE_COLUMNS } from '../station/sources';
import { callAddIn, type Call } from '../plan/formula';
import { area, areaAddress, cellAddress, quotedSheetName, type Area } from '../plan/area';
import type { Layout } from '../station/layout';
import { FEED_KEYS, ofSource, type FeedKey, type RowReferences } from '../station/references';
import { SCHEDULE_COLUMNS } from './columns';
import { COLUMN_KEYS, type ColumnKey } from '../station/schedule-keys';

/** Zero-based rows of the sheet's parts. */
export const ROW = { title: 0, header: 1, first: 2 } as const;

/** Rows that the solved columns are looked for in, where a table may still grow. */
const SOLVED_ROWS = 2000;
const GAP_COLUMNS = 1;

export function columnOf(key: ColumnKey): number {
  return COLUMN_KEYS.indexOf(key);
}

export function columnArea(key: ColumnKey, rows: number): Area {
  return area(ROW.first, columnOf(key), rows, 1);
}

/** The column beside the table in which a list function answers for all runs. */
export function feedArea(feed: FeedKey, { references, rows }: Layout): Area {
  const column = COLUMN_KEYS.length + GAP_COLUMNS + FEED_KEYS.indexOf(feed);
  return area(ROW.first, column, references === 'table' ? SOLVED_ROWS : rows, 1);
}

/** Rows that a table may grow by before what follows its runs on other cells misses the new ones. */
export const TABLE_GROWTH = 25;

/** How many runs a sheet follows that has a row for each by its place. */
export function runsFollowed({ references, rows }: Layout): number {
  return references === 'table' ? rows + TABLE_GROWTH : rows;
}

/** What stands over them. */
export const FEEDER_CHOICES_HEADING = 'Feeders to choose';

/** The names that "Fed from" offers: those of the runs, then those of the sources. Out of sight, right of all else. */
export function feederChoicesArea({ references, rows }: Layout): Area {
  const column = COLUMN_KEYS.length + GAP_COLUMNS + FEED_KEYS.length;
  const growth = references === 'table' ? TABLE_GROWTH : 0;
  return area(ROW.first, column, rows + growth + SOURCE_COLUMNS, 1);
}

function keyed(point: (key: ColumnKey) => string): Readonly<Record<ColumnKey, string>> {
  return Object.fromEntries(COLUMN_KEYS.map((key) => [key, point(key)])) as Record<
    ColumnKey,
    string
  >;
}

/**
 * Columns of all runs; from another sheet where `elsewhere` is set. A structured reference has its heading in two pairs of
 * brackets, which Excel asks for where it holds a comma or a hyphen and takes everywhere.
 */
export function columnReferences(
  { names, references, rows }: Layout,
  elsewhere = false,
): Readonly<Record<ColumnKey, string>> {
  if (elsewhere && references === 'names') return names.column;
  const sheet = elsewhere ? `${quotedSheetName(names.sheet)}!` : '';
  return keyed((key) =>
    references === 'table'
      ? `${names.table}[[${SCHEDULE_COLUMNS[key].heading}]]`
      : sheet + areaAddress(columnArea(key, rows), 'both'),
  );
}

/** Where the number of the first row stands in a sheet without a table: over the places, out of sight. */
export const FIRST_ROW = area(ROW.title, columnOf('place'));

/** References of one zero-based sheet row: structured ones, or the addresses of its cells. */
export function rowReferences(layout: Layout, row: number, call: Call = callAddIn): RowReferences {
  const { names, references } = layout;
  const cell = keyed((key) =>
    references === 'table'
      ? `[@[${SCHEDULE_COLUMNS[key].heading}]]`
      : cellAddress(row, columnOf(key), 'column'),
  );
  return {
    call,
    cell,
    column: columnReferences(layout),
    rule: names.rule,
    feed: names.feed,
    supply: ofSource(names.supply, cell.source),
    sources: names.supply,
    protect: names.protect,
    verdicts: names.verdicts,
    notSettled: 'FALSE',
    // Counted from the first row that the formulas look at: of a row put in above that one they know nothing.
    place:
      references === 'table'
        ? `ROW()-ROW(${cellAddress(ROW.header, 0, 'both')})`
        : `ROW()-${areaAddress(FIRST_ROW, 'both')}+1`,
  };
}
