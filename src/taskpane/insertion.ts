/** Inserting a new schedule, empty or filled, and the sentence that says what came of it. */
import { InsertionFault, type Inserted, type SheetHost, type Watch } from '../hosts/sheet-host';
import type { RunsReport } from '../lists/read-runs';
import { newSchedule, scheduleSheets, type ScheduleFilling } from '../sheets/new-schedule';
import type { SheetPlan } from '../sheets/plan/plan';
import { columnArea } from '../sheets/schedule/layout';
import { extrasOf } from '../sheets/station/content';
import type { ExtraKey } from '../sheets/station/extras';
import type { NamesInUse } from '../sheets/station/naming';

const OUTCOMES: Readonly<Record<ScheduleFilling, string>> = {
  demo: 'with the demonstration: a volunteer river flood watch, some of its runs deliberately bad',
  empty: 'empty: fill in the green cells, and each row computes',
};

const LIST = new Intl.ListFormat('en-GB');
const MOST_TRIES = 3;

export interface InsertedPlans {
  readonly plans: readonly SheetPlan[];
  readonly inserted: Inserted;
}

export interface ToldInsertion {
  readonly sentence: string;
  readonly inserted: Inserted;
}

/**
 * Inserts plans under free names. A name may be taken though nobody lists it, as by a chart sheet, or be taken by another
 * person a moment before: then others are tried.
 */
export async function insertUnderFreeNames(
  host: SheetHost,
  planFor: (taken: NamesInUse) => readonly SheetPlan[],
  watch: Watch = {},
): Promise<InsertedPlans> {
  const refused = new Set<string>();
  for (let tries = 1; ; tries += 1) {
    const taken = await host.taken();
    const plans = planFor({ ...taken, sheets: new Set([...taken.sheets, ...refused]) });
    try {
      return { plans, inserted: await host.insert(plans, watch) };
    } catch (fault) {
      const others = fault instanceof InsertionFault && fault.namesTaken && tries < MOST_TRIES;
      if (!others) throw fault;
      for (const { name } of plans) refused.add(name.toLowerCase());
    }
  }
}

/** Selects the name of a new schedule's first run, for typing to begin. The insertion stands whether or not that works. */
async function goToFirstRun(host: SheetHost, [schedule]: readonly SheetPlan[]): Promise<void> {
  if (schedule === undefined) return;
  try {
    await host.select(schedule.name, columnArea('run', 1));
    host.takeKeys?.();
  } catch {
    // Another sheet may have come into view meanwhile, or a cell be edited.
  }
}

/** Adds a schedule under names that are free; rejects with the host's sentence. */
export async function insertSchedule(
  host: SheetHost,
  filling: ScheduleFilling,
  extras: readonly ExtraKey[] = [],
  watch?: Watch,
): Promise<ToldInsertion> {
  const { plans, inserted } = await insertUnderFreeNames(
    host,
    (taken) => newSchedule(filling, host.references, taken, extras),
    watch,
  );
  await goToFirstRun(host, plans);
  const named = LIST.format(plans.map(({ name }) => `“${name}”`));
  return { sentence: `Inserted ${named}, ${OUTCOMES[filling]}.`, inserted };
}

/** Inserts what a file held as a new schedule; rejects with the host's sentence. */
export async function insertReport(
  host: SheetHost,
  fileName: string,
  report: RunsReport,
  watch?: Watch,
): Promise<ToldInsertion> {
  const { runs, rules, supply, sources, duty, protection } = report;
  const title = report.title ?? fileName.replace(/\.[^.]*$/, '');
  const content = {
    runs,
    rules,
    supply,
    ...(sources && { sources }),
    duty,
    protection,
    ...extrasOf(report),
    title,
  };
  const { plans, inserted } = await insertUnderFreeNames(
    host,
    (taken) => scheduleSheets(content, host.references, taken),
    watch,
  );
  await goToFirstRun(host, plans);
  const counted = runs.length === 1 ? '1 run' : `${runs.length} runs`;
  return { sentence: `Inserted “${plans[0]?.name ?? title}” with ${counted}.`, inserted };
}

const LACKING = 'Refused or not confirmed';

/** What an insertion lacks, in a sentence; nothing where it lacks nothing. */
export function missingSentence({ missing }: Inserted): string {
  return missing.length === 0
    ? ''
    : ` All entries and formulas were written. ${LACKING}: ${missing.join('; ')}. “Repair the sheet” tries again.`;
}

/** What came of a repair. */
export function repairedSentence({ missing }: Inserted): string {
  return missing.length === 0
    ? 'Repaired: everything is confirmed.'
    : `Not all of it yet. ${LACKING}: ${missing.join('; ')}. “Repair the sheet” tries again.`;
}
