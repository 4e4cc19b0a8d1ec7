/** What is typed on an As built sheet: limit and meter, and the readings of runs. */
import { BUILT_LABELS } from '../sheets/as-built/cells';
import { BUILT_COLUMNS } from '../sheets/as-built/columns';
import { CELL_PLACES } from '../sheets/as-built/layout';
import {
  BUILT_CELL_KEYS,
  READING_KEYS,
  type AsBuiltTyped,
  type ReadingKey,
} from '../sheets/station/as-built';
import type { ScheduleRun } from '../sheets/station/run';
import { entriesByRun, entriesOfRuns, type EntriesByRun } from './by-run';
import { companion, typedBeside } from './labelled';
import type { RawTable } from './raw';

export const BUILT_SIGNS: readonly string[] = BUILT_CELL_KEYS.map((key) => BUILT_LABELS[key]);
export const READING_HEADINGS = Object.fromEntries(
  READING_KEYS.map((key) => [key, BUILT_COLUMNS[key].heading]),
) as Record<ReadingKey, string>;

export interface AsBuiltRead {
  readonly typed: AsBuiltTyped;
  readonly readings: EntriesByRun<ReadingKey>;
}

/** The As built sheet that belongs to the schedule on a sheet; undefined where there is none. */
export function readAsBuilt(
  tables: readonly RawTable[],
  schedule: string,
): AsBuiltRead | undefined {
  const table = companion(tables, schedule, BUILT_SIGNS);
  if (table === undefined) return undefined;
  const right = CELL_PLACES.value - CELL_PLACES.label;
  const cells = typedBeside(
    table.rows,
    BUILT_CELL_KEYS.map((key) => ({ key, label: BUILT_LABELS[key], right })),
  );
  return { typed: { cells }, readings: entriesByRun(table, READING_HEADINGS) };
}

/** With the readings of the runs that were taken, in their order: of each the ones that are said to be for it. */
export function withReadings(
  { typed, readings }: AsBuiltRead,
  places: readonly number[],
  runs: readonly ScheduleRun[],
): AsBuiltTyped {
  const measured = entriesOfRuns(readings, places, runs);
  return measured === undefined ? typed : { ...typed, runs: measured };
}
