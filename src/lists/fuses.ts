/** What a Protection sheet says of each run's fuse, and for which run it says so. */
import { nameKey } from '../core/feeder-tree';
import { PROTECTION_COLUMNS } from '../sheets/protection/columns';
import type { FuseEntries, ProtectionTyped } from '../sheets/station/protection';
import { FUSE_ENTRY_KEYS, type FuseEntryKey } from '../sheets/station/protection-keys';
import type { ScheduleRun } from '../sheets/station/run';
import { entriesByPlace, inPlaces } from './by-place';
import { cellText, type RawTable } from './raw';

export interface FusesByPlace {
  readonly entries: ReadonlyMap<number, FuseEntries>;
  /** The sheet says for which run its entries are; an old one does not. */
  readonly saysRuns: boolean;
}

export const NO_FUSES: FusesByPlace = { entries: new Map(), saysRuns: false };

const HEADINGS = Object.fromEntries(
  FUSE_ENTRY_KEYS.map((key) => [key, PROTECTION_COLUMNS[key].heading]),
) as Record<FuseEntryKey, string>;
const FOR_RUN = PROTECTION_COLUMNS.forRun.heading;

/** The fuses of a Protection sheet; what still follows from their kind is not among them. */
export function fusesIn(table: RawTable | undefined): FusesByPlace {
  const found = entriesByPlace(table, HEADINGS, { forRun: FOR_RUN });
  const saysRuns =
    table?.rows.some(({ cells }) => {
      const texts = cells.map(cellText);
      return [FOR_RUN, ...Object.values(HEADINGS)].every((heading) => texts.includes(heading));
    }) === true;
  const entries = [...found].map(([place, { forRun, ...typed }]): [number, FuseEntries] => [
    place,
    saysRuns ? { ...typed, forRun: String(forRun ?? '') } : typed,
  ]);
  return { entries: new Map(entries), saysRuns };
}

/**
 * The same with each row's entries at the place of the run that they are said to be for, where one run alone is called so
 * and nothing is said of it in its own row. What is not clear stays in its row with what it says, so that the run there is
 * not judged by it.
 */
function atTheirRuns(
  { entries }: FusesByPlace,
  places: readonly number[],
  runs: readonly ScheduleRun[],
): ReadonlyMap<number, FuseEntries> {
  const nameAt = new Map(places.map((place, index) => [place, nameKey(runs[index]?.run ?? '')]));
  const placesOf = new Map<string, number[]>();
  for (const [place, name] of nameAt) placesOf.set(name, [...(placesOf.get(name) ?? []), place]);
  // Where the entries of a row go: the run that they name, or where they are.
  const goals = new Map(
    [...entries].map(([place, { forRun = '' }]) => {
      const named = placesOf.get(nameKey(forRun)) ?? [];
      const isThere = nameAt.get(place) === nameKey(forRun);
      const isClear = forRun !== '' && named.length === 1;
      return [place, isThere || !isClear ? place : named[0]!] as const;
    }),
  );
  const counts = new Map<number, number>();
  for (const goal of goals.values()) counts.set(goal, (counts.get(goal) ?? 0) + 1);
  const moved = new Map<number, FuseEntries>();
  const isAlone = [...counts.values()].every((count) => count === 1);
  for (const [place, { forRun = '', ...typed }] of entries) {
    const goal = isAlone ? goals.get(place)! : place;
    const fits = forRun !== '' && nameAt.get(goal) === nameKey(forRun);
    moved.set(goal, fits ? typed : { ...typed, forRun });
  }
  return moved;
}

/** The protection with the fuses of the runs that were taken, in their order; a run without entries has none. */
export function withFuses(
  protection: ProtectionTyped,
  fuses: FusesByPlace,
  places: readonly number[],
  runs: readonly ScheduleRun[],
): ProtectionTyped {
  const entries = fuses.saysRuns ? atTheirRuns(fuses, places, runs) : fuses.entries;
  const listed = inPlaces<FuseEntryKey | 'forRun'>(entries, places);
  return listed === undefined
    ? protection
    : { ...protection, fuses: listed as readonly FuseEntries[] };
}
