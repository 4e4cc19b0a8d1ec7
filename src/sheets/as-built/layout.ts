/** Where the parts of the As built sheet stand. */
import { area, areaAddress, cellAddress, type Area } from '../plan/area';
import { runsFollowed } from '../schedule/layout';
import { BUILT_CELL_KEYS, type BuiltCellKey } from '../station/as-built';
import { EXTRAS } from '../station/extras';
import type { Layout } from '../station/layout';
import { namedCellArea, type CellPlaces } from '../station/named-cells';
import type { ScheduleNames } from '../station/naming';

/** Zero-based rows of the sheet's parts. */
export const BUILT_ROW = {
  title: 0,
  about: 1,
  how: 2,
  cells: 3,
  summary: 8,
  header: 9,
  first: 10,
} as const;

export const CELL_PLACES: CellPlaces = { first: BUILT_ROW.cells, label: 0, value: 1, note: 2 };

export const BUILT_SHOWN_KEYS = [
  'run',
  'wire',
  'forRun',
  'voltsIn',
  'voltsOut',
  'amps',
  'date',
  'by',
  'drop',
  'expected',
  'beyond',
  'planned',
  'least',
  'most',
  'heat',
  'verdict',
] as const;
/** Workings: right of what is printed. */
export const BUILT_WORKING_KEYS = [
  'there',
  'name',
  'astray',
  'wireMilliohms',
  'limit',
  'wrong',
  'finding',
] as const;
export const BUILT_KEYS = [...BUILT_SHOWN_KEYS, ...BUILT_WORKING_KEYS] as const;
export type BuiltKey = (typeof BUILT_KEYS)[number];

export function asBuiltName(names: ScheduleNames): string {
  return names.sheetNamed(EXTRAS.asBuilt.sheetName);
}

export function builtCellArea(key: BuiltCellKey): Area {
  return namedCellArea(BUILT_CELL_KEYS, CELL_PLACES, key);
}

export function builtColumn(key: BuiltKey): number {
  return BUILT_KEYS.indexOf(key);
}

export function builtArea(key: BuiltKey, rows: number): Area {
  return area(BUILT_ROW.first, builtColumn(key), rows, 1);
}

export interface BuiltReferences {
  readonly cell: Readonly<Record<BuiltKey, string>>;
  readonly column: Readonly<Record<BuiltKey, string>>;
  readonly typed: Readonly<Record<BuiltCellKey, string>>;
  /** The row's number from 1. */
  readonly number: string;
}

function keyed<Key extends string>(keys: readonly Key[], point: (key: Key) => string) {
  return Object.fromEntries(keys.map((key) => [key, point(key)])) as Record<Key, string>;
}

export function builtReferences(layout: Layout): BuiltReferences {
  const rows = runsFollowed(layout);
  return {
    cell: keyed(BUILT_KEYS, (key) => cellAddress(BUILT_ROW.first, builtColumn(key), 'column')),
    column: keyed(BUILT_KEYS, (key) => areaAddress(builtArea(key, rows), 'both')),
    typed: keyed(BUILT_CELL_KEYS, (key) => areaAddress(builtCellArea(key), 'both')),
    number: `(ROW()-ROW(${cellAddress(BUILT_ROW.header, 0, 'both')}))`,
  };
}
