/** Where the parts of the Fuse map stand: the map, positions run by run beside it, workings out of sight. */
import { area, areaAddress, cellAddress, type Area } from '../plan/area';
import { runsFollowed } from '../schedule/layout';
import { EXTRAS } from '../station/extras';
import type { Layout } from '../station/layout';
import type { ScheduleNames } from '../station/naming';

/** Zero-based rows of the sheet's parts. */
export const MAP_ROW = { title: 0, about: 1, warning: 2, header: 3, first: 4 } as const;

/** What is printed of a fuse. */
export const MAP_KEYS = ['block', 'position', 'rating', 'kind', 'run', 'load', 'says'] as const;
export type MapKey = (typeof MAP_KEYS)[number];

/** By the row of the schedule: a run, and where a person says that its fuses sit. */
export const PLACE_KEYS = ['ofRun', 'own', 'ownFar'] as const;
export type PlaceKey = (typeof PLACE_KEYS)[number];

/** By the fuse: that at the source end of a run, and in the next row that at its far end. */
const BY_FUSE = ['runAt', 'has', 'near', 'blockOf', 'typed', 'typedIn', 'sortBy', 'order'] as const;
/** By the line of the map. */
const BY_LINE = ['place', 'runOf', 'blockAt', 'rank', 'blockNumber'] as const;
export type MapWorkingKey = (typeof BY_FUSE)[number] | (typeof BY_LINE)[number];
export const MAP_WORKING_KEYS: readonly MapWorkingKey[] = [...BY_FUSE, ...BY_LINE];
/** A run may have a fuse at either end. */
const ENDS = 2;

const PLACES_FROM = MAP_KEYS.length + 1;
const WORKINGS_FROM = PLACES_FROM + PLACE_KEYS.length + 1;
export const MAP_WORKING_COLUMNS: readonly number[] = MAP_WORKING_KEYS.map(
  (_, index) => WORKINGS_FROM + index,
);

export function fuseMapName(names: ScheduleNames): string {
  return names.sheetNamed(EXTRAS.fuseMap.sheetName);
}

export function mapColumn(key: MapKey | PlaceKey | MapWorkingKey): number {
  const shown = (MAP_KEYS as readonly string[]).indexOf(key);
  if (shown >= 0) return shown;
  const place = (PLACE_KEYS as readonly string[]).indexOf(key);
  return place >= 0
    ? PLACES_FROM + place
    : WORKINGS_FROM + (MAP_WORKING_KEYS as readonly string[]).indexOf(key);
}

export function mapArea(key: MapKey | PlaceKey | MapWorkingKey, layout: Layout): Area {
  const ofRuns = (PLACE_KEYS as readonly string[]).includes(key);
  return area(MAP_ROW.first, mapColumn(key), (ofRuns ? 1 : ENDS) * runsFollowed(layout), 1);
}

type AnyKey = MapKey | PlaceKey | MapWorkingKey;
const ALL_KEYS: readonly AnyKey[] = [...MAP_KEYS, ...PLACE_KEYS, ...MAP_WORKING_KEYS];

export interface MapReferences {
  readonly cell: Readonly<Record<AnyKey, string>>;
  readonly above: Readonly<Record<AnyKey, string>>;
  readonly column: Readonly<Record<AnyKey, string>>;
  /** The row's number from 1: of a run, a fuse, or a line. */
  readonly number: string;
}

export function mapReferences(layout: Layout): MapReferences {
  const keyed = (point: (key: AnyKey) => string) =>
    Object.fromEntries(ALL_KEYS.map((key) => [key, point(key)])) as Record<AnyKey, string>;
  return {
    cell: keyed((key) => cellAddress(MAP_ROW.first, mapColumn(key), 'column')),
    above: keyed((key) => cellAddress(MAP_ROW.header, mapColumn(key), 'column')),
    column: keyed((key) => areaAddress(mapArea(key, layout), 'both')),
    number: `(ROW()-ROW(${cellAddress(MAP_ROW.header, 0, 'both')}))`,
  };
}
