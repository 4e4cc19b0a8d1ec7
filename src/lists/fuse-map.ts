/** What is typed on a Fuse map: positions, run by run. */
import { MAP_COLUMNS } from '../sheets/fuse-map/columns';
import type { FuseMapTyped } from '../sheets/station/fuse-map';
import { entriesByPlace, inPlaces, type ByPlace } from './by-place';
import { companion } from './labelled';
import type { RawTable } from './raw';

export const FUSE_MAP_SIGNS: readonly string[] = [
  MAP_COLUMNS.ofRun.heading,
  MAP_COLUMNS.own.heading,
];
export const POSITION_HEADINGS = { position: MAP_COLUMNS.own.heading } as const;

export type FuseMapRead = ByPlace<'position'>;

/** The Fuse map that belongs to the schedule on a sheet; undefined where there is none. */
export function readFuseMap(
  tables: readonly RawTable[],
  schedule: string,
): FuseMapRead | undefined {
  const table = companion(tables, schedule, FUSE_MAP_SIGNS);
  return table === undefined ? undefined : entriesByPlace(table, POSITION_HEADINGS);
}

/** The positions of the runs that were taken, in their order. */
export function withPositions(read: FuseMapRead, places: readonly number[]): FuseMapTyped {
  const runs = inPlaces(read, places);
  return runs === undefined ? {} : { runs };
}
