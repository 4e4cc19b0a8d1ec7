/** Where the parts of the Labels sheet stand: the stock on top, not printed, the labels below, workings out of sight. */
import { area, areaAddress, cellAddress, type Area } from '../plan/area';
import { runsFollowed } from '../schedule/layout';
import { EXTRAS } from '../station/extras';
import type { Layout } from '../station/layout';
import { LABEL_CELL_KEYS, type LabelCellKey } from '../station/labels';
import { namedCellArea, type CellPlaces } from '../station/named-cells';
import type { ScheduleNames } from '../station/naming';
import type { Stock } from './stock';

/** Zero-based rows of the sheet's parts. */
export const LABEL_ROW = {
  title: 0,
  about: 1,
  cells: 2,
  warning: 2 + LABEL_CELL_KEYS.length,
  first: 4 + LABEL_CELL_KEYS.length,
} as const;

/** Values stand left of their labels: a column may be as narrow as a gap between labels, and texts run on to the right. */
export const CELL_PLACES: CellPlaces = { first: LABEL_ROW.cells, label: 1, value: 0 };

/** Ends of a run, each with a label of its own. */
export const ENDS = 2;

export interface Slots {
  /** Sheet rows of one label, its gap included, and of one sheet of stock, on which no gap comes last. */
  readonly rowsEach: number;
  readonly rowsPerPage: number;
  readonly columnsEach: number;
  /** Columns that the labels take. */
  readonly columns: number;
  readonly perPage: number;
  readonly pages: number;
}

/** Places for two labels of each run that the sheet follows, and a page more for those already used. */
export function slotsOf(stock: Stock, layout: Layout): Slots {
  const rowsEach = stock.down > 0 ? 3 : 2;
  const columnsEach = stock.across > 0 ? 2 : 1;
  const perPage = stock.columns * stock.rows;
  return {
    rowsEach,
    rowsPerPage: rowsEach * stock.rows - (rowsEach - 2),
    columnsEach,
    columns: columnsEach * (stock.columns - 1) + 1,
    perPage,
    pages: Math.ceil((ENDS * runsFollowed(layout)) / perPage) + 1,
  };
}

/** The two cells of a label, by its place from 0 as one reads. */
export function slotCells(slots: Slots, columns: number, slot: number) {
  const { rowsEach, rowsPerPage, columnsEach, perPage } = slots;
  const onPage = slot % perPage;
  const page = Math.floor(slot / perPage);
  const row = LABEL_ROW.first + page * rowsPerPage + rowsEach * Math.floor(onPage / columns);
  const column = columnsEach * (onPage % columns);
  return { name: area(row, column), text: area(row + 1, column) };
}

const BY_RUN = ['there', 'upTo', 'name', 'near', 'far', 'wire', 'fuse', 'length', 'level'] as const;
const BY_LABEL = ['ofRun', 'labelName', 'labelText'] as const;
export type LabelWorkingKey = (typeof BY_RUN)[number] | (typeof BY_LABEL)[number];
export const LABEL_WORKING_KEYS: readonly LabelWorkingKey[] = [...BY_RUN, ...BY_LABEL];

export type LabelHeadKey = 'labels' | 'used';
const HEAD_KEYS: readonly LabelHeadKey[] = ['labels', 'used'];

/** Head texts run over these columns, past the labels if need be. */
const LEAST_COLUMNS = 4;

export function labelsName(names: ScheduleNames): string {
  return names.sheetNamed(EXTRAS.labels.sheetName);
}

export function labelCellArea(key: LabelCellKey): Area {
  return namedCellArea(LABEL_CELL_KEYS, CELL_PLACES, key);
}

export function workingsFrom({ columns }: Slots): number {
  return Math.max(columns, LEAST_COLUMNS) + 1;
}

export interface LabelReferences {
  readonly cell: Readonly<Record<LabelWorkingKey, string>>;
  readonly above: Readonly<Record<LabelWorkingKey, string>>;
  readonly column: Readonly<Record<LabelWorkingKey, string>>;
  readonly head: Readonly<Record<LabelHeadKey, string>>;
  readonly typed: Readonly<Record<LabelCellKey, string>>;
  /** The row's number from 1, among runs or labels. */
  readonly number: string;
}

export function labelWorkingArea(key: LabelWorkingKey, layout: Layout, slots: Slots): Area {
  const runs = runsFollowed(layout);
  const rows = (BY_RUN as readonly string[]).includes(key) ? runs : ENDS * runs;
  return area(LABEL_ROW.first, workingsFrom(slots) + LABEL_WORKING_KEYS.indexOf(key), rows, 1);
}

export function labelHeadArea(key: LabelHeadKey, slots: Slots): Area {
  return area(0, workingsFrom(slots) + HEAD_KEYS.indexOf(key));
}

function keyed<Key extends string>(keys: readonly Key[], point: (key: Key) => string) {
  return Object.fromEntries(keys.map((key) => [key, point(key)])) as Record<Key, string>;
}

export function labelReferences(layout: Layout, slots: Slots): LabelReferences {
  const working = (point: (of: Area) => string) =>
    keyed(LABEL_WORKING_KEYS, (key) => point(labelWorkingArea(key, layout, slots)));
  return {
    cell: working(({ row, column }) => cellAddress(row, column, 'column')),
    above: working(({ row, column }) => cellAddress(row - 1, column, 'column')),
    column: working((of) => areaAddress(of, 'both')),
    head: keyed(HEAD_KEYS, (key) => areaAddress(labelHeadArea(key, slots), 'both')),
    typed: keyed(LABEL_CELL_KEYS, (key) => areaAddress(labelCellArea(key), 'both')),
    number: `(ROW()-ROW(${cellAddress(LABEL_ROW.first - 1, 0, 'both')}))`,
  };
}
