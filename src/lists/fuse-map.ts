/** What is typed on a Fuse map: positions, run by run. */
import { MAP_COLUMNS } from '../sheets/fuse-map/columns';
import {
  POSITION_KEYS,
  type FuseMapRun,
  type FuseMapTyped,
  type PositionKey,
} from '../sheets/station/fuse-map';
import { entriesByPlace, inPlaces, type ByPlace } from './by-place';
import { companion } from './labelled';
import type { RawTable } from './raw';

export const FUSE_MAP_SIGNS: readonly string[] = [
  MAP_COLUMNS.ofRun.heading,
  MAP_COLUMNS.own.heading,
];
export const POSITION_HEADINGS: Readonly<Record<PositionKey, string>> = {
  position: MAP_COLUMNS.own.heading,
  farPosition: MAP_COLUMNS.ownFar.heading,
};

export type FuseMapRead = ByPlace<PositionKey>;

/** The Fuse map that belongs to the schedule on a sheet; undefined where there is none. */
export function readFuseMap(
  tables: readonly RawTable[],
  schedule: string,
): FuseMapRead | undefined {
  const table = companion(tables, schedule, FUSE_MAP_SIGNS);
  if (table === undefined) return undefined;
  // Former maps have the first of these columns alone.
  const found = new Map<number, FuseMapRun>();
  for (const key of POSITION_KEYS) {
    for (const [place, typed] of entriesByPlace(table, { [key]: POSITION_HEADINGS[key] })) {
      found.set(place, { ...found.get(place), ...typed });
    }
  }
  return found;
}

/** The positions of the runs that were taken, in their order. */
export function withPositions(read: FuseMapRead, places: readonly number[]): FuseMapTyped {
  const runs = inPlaces(read, places);
  return runs === undefined ? {} : { runs };
}
