/** Where the parts of the Parts sheet stand: fuses to buy beside the contacts, the runs below, workings out of sight. */
import { listedSizes, formatSize } from '../../core/size';
import { area, areaAddress, cellAddress, type Area } from '../plan/area';
import { runsFollowed } from '../schedule/layout';
import { EXTRAS } from '../station/extras';
import type { Layout } from '../station/layout';
import { namedCellArea, type CellPlaces } from '../station/named-cells';
import type { ScheduleNames } from '../station/naming';
import { CONTACT_KEYS, PARTS_CELL_KEYS, type PartsCellKey } from '../station/parts';
import { SOURCE_COLUMNS } from '../station/sources';

/** Lines of fuses, and contacts, that the sheet has room for. */
export const LINES = 20;

/** Zero-based rows of the sheet's parts. */
export const PARTS_ROW = {
  title: 0,
  about: 1,
  cells: 2,
  missing: 5,
  header: 6,
  firstLine: 7,
  runHeader: 8 + LINES,
  firstRun: 9 + LINES,
} as const;

export const CELL_PLACES: CellPlaces = { first: PARTS_ROW.cells, label: 0, value: 1, note: 2 };

export const FUSE_KEYS = ['kind', 'rating', 'fitted', 'spare', 'toBuy', 'holders'] as const;
export type FuseKey = (typeof FUSE_KEYS)[number];

/** Of the table of contacts: what is typed, and what is found of it. */
export const CONTACT_COLUMN_KEYS = [...CONTACT_KEYS, 'used', 'says'] as const;
export type ContactColumnKey = (typeof CONTACT_COLUMN_KEYS)[number];

export const PART_RUN_KEYS = [
  'run',
  'wire',
  'amps',
  'fuse',
  'kind',
  'pieces',
  'mine',
  'taken',
  'farMine',
  'farTaken',
  'sum',
  'planned',
  'heat',
  'says',
] as const;
export type PartRunKey = (typeof PART_RUN_KEYS)[number];

/** The contact of an end: typed, the one taken by its line of the table, what is wrong with it, its milliohms. */
export const ENDS = {
  source: {
    mine: 'mine',
    taken: 'taken',
    mineAt: 'mineAt',
    contact: 'contact',
    wrong: 'endWrong',
    each: 'each',
  },
  far: {
    mine: 'farMine',
    taken: 'farTaken',
    mineAt: 'farMineAt',
    contact: 'farContact',
    wrong: 'farWrong',
    each: 'farEach',
  },
} as const satisfies Record<string, Readonly<Record<string, PartRunKey | PartsWorkingKey>>>;
export type EndKeys = (typeof ENDS)[keyof typeof ENDS];

/** By the row of the schedule. */
const BY_RUN = [
  'there',
  'areaMm2',
  'first',
  'fuses',
  'mineAt',
  'contact',
  'endWrong',
  'each',
  'farMineAt',
  'farContact',
  'farWrong',
  'farEach',
  'wrong',
] as const;
/** By the run: its fuses. */
const BY_FUSE = ['fuseKey', 'fuseCount'] as const;
/** By the source: its main fuse. */
const BY_SOURCE = ['mainKey'] as const;
/** By the line of fuses. */
const BY_LINE = ['lineKey'] as const;
/** By the contact. */
const BY_CONTACT = ['thinMm2', 'thickMm2', 'good'] as const;
/** Published sizes, and those that runs and contacts have of their own. */
const BY_SIZE = ['sizeName', 'sizeMm2'] as const;

export const PARTS_WORKING_KEYS = [
  ...BY_RUN,
  ...BY_FUSE,
  ...BY_SOURCE,
  ...BY_LINE,
  ...BY_CONTACT,
  ...BY_SIZE,
] as const;
export type PartsWorkingKey = (typeof PARTS_WORKING_KEYS)[number];

const WORKINGS_FROM = PART_RUN_KEYS.length + 1;
export const PARTS_WORKING_COLUMNS: readonly number[] = PARTS_WORKING_KEYS.map(
  (_, index) => WORKINGS_FROM + index,
);

export function partsName(names: ScheduleNames): string {
  return names.sheetNamed(EXTRAS.parts.sheetName);
}

export function partsCellArea(key: PartsCellKey): Area {
  return namedCellArea(PARTS_CELL_KEYS, CELL_PLACES, key);
}

export function fuseColumn(key: FuseKey): number {
  return FUSE_KEYS.indexOf(key);
}

/** A column is free between them: what is said of a contact stands below one another with what is said of a run. */
const CONTACTS_FROM = PART_RUN_KEYS.length - CONTACT_COLUMN_KEYS.length;

export function contactArea(key: ContactColumnKey): Area {
  const column = CONTACTS_FROM + CONTACT_COLUMN_KEYS.indexOf(key);
  return area(PARTS_ROW.firstLine, column, LINES, 1);
}

export function partRunColumn(key: PartRunKey): number {
  return PART_RUN_KEYS.indexOf(key);
}

export function partRunArea(key: PartRunKey, rows: number): Area {
  return area(PARTS_ROW.firstRun, partRunColumn(key), rows, 1);
}

/** Sizes whose metal the sheet knows. */
export function knownSizes(others: readonly string[]) {
  return listedSizes(others).map((size) => ({ size, name: formatSize(size) }));
}

export function partsWorkingArea(key: PartsWorkingKey, layout: Layout, sizes: number): Area {
  const column = WORKINGS_FROM + PARTS_WORKING_KEYS.indexOf(key);
  const runs = runsFollowed(layout);
  const isOf = (keys: readonly string[]) => keys.includes(key);
  if (isOf(BY_LINE) || isOf(BY_CONTACT)) return area(PARTS_ROW.firstLine, column, LINES, 1);
  if (isOf(BY_SIZE)) return area(PARTS_ROW.firstLine, column, sizes, 1);
  if (isOf(BY_SOURCE)) return area(PARTS_ROW.firstLine, column, SOURCE_COLUMNS, 1);
  return area(PARTS_ROW.firstRun, column, runs, 1);
}

export interface PartsReferences {
  readonly cell: Readonly<Record<PartsWorkingKey, string>>;
  readonly above: Readonly<Record<PartsWorkingKey, string>>;
  readonly column: Readonly<Record<PartsWorkingKey, string>>;
  readonly typed: Readonly<Record<PartsCellKey, string>>;
  readonly fuse: Readonly<Record<FuseKey, string>>;
  readonly contact: Readonly<Record<ContactColumnKey, string>>;
  readonly contactColumn: Readonly<Record<ContactColumnKey, string>>;
  readonly run: Readonly<Record<PartRunKey, string>>;
  readonly runColumn: Readonly<Record<PartRunKey, string>>;
  /** The row's number from 1, among runs or fuses, and among lines or contacts. */
  readonly number: string;
  readonly lineNumber: string;
  /** Numbers of all contacts. */
  readonly contactNumbers: string;
}

function keyed<Key extends string>(keys: readonly Key[], point: (key: Key) => string) {
  return Object.fromEntries(keys.map((key) => [key, point(key)])) as Record<Key, string>;
}

export function partsReferences(layout: Layout, sizes: number): PartsReferences {
  const { firstRun, firstLine, runHeader, header } = PARTS_ROW;
  const rows = runsFollowed(layout);
  const working = (point: (of: Area) => string) =>
    keyed(PARTS_WORKING_KEYS, (key) => point(partsWorkingArea(key, layout, sizes)));
  const below = (row: number) => `(ROW()-ROW(${cellAddress(row, 0, 'both')}))`;
  const headerRow = cellAddress(header, 0, 'both');
  return {
    cell: working(({ row, column }) => cellAddress(row, column, 'column')),
    above: working(({ row, column }) => cellAddress(row - 1, column, 'column')),
    column: working((of) => areaAddress(of, 'both')),
    typed: keyed(PARTS_CELL_KEYS, (key) => areaAddress(partsCellArea(key), 'both')),
    fuse: keyed(FUSE_KEYS, (key) => cellAddress(firstLine, fuseColumn(key), 'column')),
    contact: keyed(CONTACT_COLUMN_KEYS, (key) =>
      cellAddress(firstLine, contactArea(key).column, 'column'),
    ),
    contactColumn: keyed(CONTACT_COLUMN_KEYS, (key) => areaAddress(contactArea(key), 'both')),
    run: keyed(PART_RUN_KEYS, (key) => cellAddress(firstRun, partRunColumn(key), 'column')),
    runColumn: keyed(PART_RUN_KEYS, (key) => areaAddress(partRunArea(key, rows), 'both')),
    number: below(runHeader),
    lineNumber: below(header),
    contactNumbers: `(ROW(${areaAddress(contactArea('name'), 'both')})-ROW(${headerRow}))`,
  };
}
