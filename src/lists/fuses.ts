/** What a Protection sheet says of each run's fuse, and for which run it says so. */
import { PROTECTION_COLUMNS } from '../sheets/protection/columns';
import type { ProtectionTyped } from '../sheets/station/protection';
import { FUSE_ENTRY_KEYS, type FuseEntryKey } from '../sheets/station/protection-keys';
import type { ScheduleRun } from '../sheets/station/run';
import { entriesByRun, entriesOfRuns, type EntriesByRun } from './by-run';
import type { RawTable } from './raw';

export type FusesByPlace = EntriesByRun<FuseEntryKey>;

export const NO_FUSES: FusesByPlace = { entries: new Map(), saysRuns: false };

const HEADINGS = Object.fromEntries(
  FUSE_ENTRY_KEYS.map((key) => [key, PROTECTION_COLUMNS[key].heading]),
) as Record<FuseEntryKey, string>;

/** The fuses of a Protection sheet; what still follows from their kind is not among them. */
export function fusesIn(table: RawTable | undefined): FusesByPlace {
  return entriesByRun(table, HEADINGS);
}

/** The protection with the fuses of the runs that were taken, in their order; a run without entries has none. */
export function withFuses(
  protection: ProtectionTyped,
  fuses: FusesByPlace,
  places: readonly number[],
  runs: readonly ScheduleRun[],
): ProtectionTyped {
  const listed = entriesOfRuns(fuses, places, runs);
  return listed === undefined ? protection : { ...protection, fuses: listed };
}
