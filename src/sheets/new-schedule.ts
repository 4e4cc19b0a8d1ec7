/** A new schedule for a workbook: free names, and the demonstration or empty rows. */
import { DEMO_RULES, DEMO_RUNS, DEMO_TITLE } from './demo';
import { freeScheduleNames } from './naming';
import type { ReferenceStyle, SheetPlan } from './plan';
import { scheduleSheet } from './schedule';

export type ScheduleFilling = 'demo' | 'empty';

/** The sheets to insert, the schedule first; `taken` holds lower-case names already in the workbook. */
export function newSchedule(
  filling: ScheduleFilling,
  references: ReferenceStyle,
  taken: { readonly sheets: ReadonlySet<string>; readonly names: ReadonlySet<string> },
): readonly SheetPlan[] {
  const names = freeScheduleNames(taken);
  const content =
    filling === 'demo'
      ? { runs: DEMO_RUNS, rules: DEMO_RULES, title: DEMO_TITLE }
      : { runs: [], title: names.sheet };
  return [scheduleSheet({ names, references, ...content })];
}
