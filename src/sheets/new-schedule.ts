/** A new schedule for a workbook: free names, and the demonstration, a list, or empty rows. */
import { addInSheets, BOOK } from './book';
import type { ReferenceStyle, SheetPlan } from './plan/plan';
import { withRowHeights } from './row-heights';
import { roomyRows } from './schedule/sheet';
import { withDiagrams } from './station-diagram';
import { stationValues } from './station-values';
import type { StationContent } from './station/content';
import type { ExtraKey } from './station/extras';
import { DEMO } from './station/demo';
import { freeScheduleNames, type NamesInUse } from './station/naming';

export type ScheduleFilling = 'demo' | 'empty';

/** The sheets to insert for a content, the schedule first. */
export function scheduleSheets(
  content: StationContent,
  references: ReferenceStyle,
  taken: NamesInUse,
): readonly SheetPlan[] {
  const names = freeScheduleNames(taken, BOOK);
  const layout = { names, references, rows: roomyRows(content.runs.length) };
  const station = stationValues(content, names);
  const plans = withRowHeights(addInSheets(layout, content), names, station);
  return withDiagrams(plans, layout, content, station);
}

/** The sheets of a new schedule, filled with the demonstration or left empty, with the sheets beyond the sizing that are wanted. */
export function newSchedule(
  filling: ScheduleFilling,
  references: ReferenceStyle,
  taken: NamesInUse,
  extras: readonly ExtraKey[] = [],
): readonly SheetPlan[] {
  const empty = { runs: [], title: freeScheduleNames(taken, BOOK).sheet };
  const content = filling === 'demo' ? DEMO : empty;
  return scheduleSheets({ ...content, extras }, references, taken);
}
