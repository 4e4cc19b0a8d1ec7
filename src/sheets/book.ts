/** A new schedule for a workbook: free names, and the demonstration or empty rows. */
import { DEMO } from './station/demo';
import { freeScheduleNames, type NamesInUse } from './station/naming';
import type { ReferenceStyle, SheetPlan } from './plan/plan';
import { roomyRows, scheduleSheet, type ScheduleContent } from './schedule/sheet';
import { protectionSheet, type ProtectionContent } from './protection/sheet';
import { supplySheet, type SupplyContent } from './supply/sheet';

export type ScheduleFilling = 'demo' | 'empty';

/** A schedule, what feeds it, and what its protection is judged by. */
export type StationContent = ScheduleContent & SupplyContent & ProtectionContent;

/** The sheets to insert for a content, the schedule first. */
export function scheduleSheets(
  content: StationContent,
  references: ReferenceStyle,
  taken: NamesInUse,
): readonly SheetPlan[] {
  const layout = {
    names: freeScheduleNames(taken),
    references,
    rows: roomyRows(content.runs.length),
  };
  return [
    scheduleSheet(layout, content),
    supplySheet(layout, content),
    protectionSheet(layout, content),
  ];
}

/** The sheets of a new schedule, filled with the demonstration or left empty. */
export function newSchedule(
  filling: ScheduleFilling,
  references: ReferenceStyle,
  taken: NamesInUse,
): readonly SheetPlan[] {
  const empty = { runs: [], title: freeScheduleNames(taken).sheet };
  return scheduleSheets(filling === 'demo' ? DEMO : empty, references, taken);
}
