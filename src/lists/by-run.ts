/** What a sheet says of each run in a row of its own, beside the name of the run that it is said for. */
import { nameKey } from '../core/feeder-tree';
import { FOR_RUN, type ForRun } from '../sheets/station/for-run';
import type { ScheduleRun } from '../sheets/station/run';
import { entriesByPlace, inPlaces, type Entries } from './by-place';
import { cellText, type RawTable } from './raw';

export type NamedEntries<Key extends string> = Entries<Key> & ForRun;

export interface EntriesByRun<Key extends string> {
  readonly entries: ReadonlyMap<number, NamedEntries<Key>>;
  /** The sheet says for which run its entries are; an old one does not. */
  readonly saysRuns: boolean;
}

/** Entries of the rows below these headings, each with what is said of its run where the sheet has that column. */
export function entriesByRun<Key extends string>(
  table: RawTable | undefined,
  headings: Readonly<Record<Key, string>>,
): EntriesByRun<Key> {
  const found = entriesByPlace<Key, 'forRun'>(table, headings, { forRun: FOR_RUN.heading });
  const wanted = [FOR_RUN.heading, ...Object.values<string>(headings)];
  const saysRuns =
    table?.rows.some(({ cells }) => {
      const texts = cells.map(cellText);
      return wanted.every((heading) => texts.includes(heading));
    }) === true;
  const entries = [...found].map(([place, { forRun, ...typed }]) => {
    const named = saysRuns ? { ...typed, forRun: String(forRun ?? '') } : typed;
    return [place, named as NamedEntries<Key>] as const;
  });
  return { entries: new Map(entries), saysRuns };
}

/** Where the entries of each row go: to the run that they name, or where they are. No two go to one place. */
function goalsOf<Key extends string>(
  entries: EntriesByRun<Key>['entries'],
  nameAt: ReadonlyMap<number, string>,
): ReadonlyMap<number, number> {
  const placesOf = new Map<string, number[]>();
  for (const [place, name] of nameAt) placesOf.set(name, [...(placesOf.get(name) ?? []), place]);
  const goals = new Map(
    [...entries].map(([place, { forRun = '' }]) => {
      const named = placesOf.get(nameKey(forRun)) ?? [];
      const isThere = nameAt.get(place) === nameKey(forRun);
      const isClear = forRun !== '' && named.length === 1;
      return [place, isThere || !isClear ? place : named[0]!] as const;
    }),
  );
  // Where one of them stays, another cannot come; that one stays then, too.
  for (;;) {
    const counts = new Map<number, number>();
    for (const goal of goals.values()) counts.set(goal, (counts.get(goal) ?? 0) + 1);
    const staying = [...goals].filter(([place, goal]) => place !== goal && counts.get(goal)! > 1);
    if (staying.length === 0) return goals;
    for (const [place] of staying) goals.set(place, place);
  }
}

/**
 * The entries at the places of the runs that they are said to be for, where one run alone is called so and nothing else is
 * said of it. What is not clear stays in its row with what it says, so that the run there is not judged by it.
 */
function atTheirRuns<Key extends string>(
  { entries }: EntriesByRun<Key>,
  places: readonly number[],
  runs: readonly ScheduleRun[],
): EntriesByRun<Key>['entries'] {
  const nameAt = new Map(places.map((place, index) => [place, nameKey(runs[index]?.run ?? '')]));
  const goals = goalsOf(entries, nameAt);
  return new Map(
    [...entries].map(([place, { forRun = '', ...typed }]) => {
      const goal = goals.get(place)!;
      const fits = forRun !== '' && nameAt.get(goal) === nameKey(forRun);
      return [goal, (fits ? typed : { ...typed, forRun }) as NamedEntries<Key>] as const;
    }),
  );
}

/** The entries of the runs that were taken, in their order, down to the last that has some; undefined where none has. */
export function entriesOfRuns<Key extends string>(
  found: EntriesByRun<Key>,
  places: readonly number[],
  runs: readonly ScheduleRun[],
): readonly NamedEntries<Key>[] | undefined {
  const entries = found.saysRuns ? atTheirRuns(found, places, runs) : found.entries;
  return inPlaces(entries, places);
}
