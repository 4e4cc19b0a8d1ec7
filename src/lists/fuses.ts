/** What a Protection sheet says of each run's fuse. */
import { PROTECTION_COLUMNS } from '../sheets/protection/columns';
import type { ProtectionTyped } from '../sheets/station/protection';
import { FUSE_ENTRY_KEYS, type FuseEntryKey } from '../sheets/station/protection-keys';
import { entriesByPlace, inPlaces, type ByPlace } from './by-place';
import type { RawTable } from './raw';

export type FusesByPlace = ByPlace<FuseEntryKey>;

const HEADINGS = Object.fromEntries(
  FUSE_ENTRY_KEYS.map((key) => [key, PROTECTION_COLUMNS[key].heading]),
) as Record<FuseEntryKey, string>;

/** The fuses of a Protection sheet; what still follows from their kind is not among them. */
export function fusesIn(table: RawTable | undefined): FusesByPlace {
  return entriesByPlace(table, HEADINGS);
}

/** The protection with the fuses of the runs that were taken, in their order; a run without entries has none. */
export function withFuses(
  protection: ProtectionTyped,
  fuses: FusesByPlace,
  places: readonly number[],
): ProtectionTyped {
  const listed = inPlaces(fuses, places);
  return listed === undefined ? protection : { ...protection, fuses: listed };
}
