/** Adding the sheets beyond the sizing to a schedule that stands already. */
import type { SheetHost, TakenNames, Watch } from '../hosts/sheet-host';
import type { ToldInsertion } from './insertion';
import { extraSheets } from '../sheets/book';
import { withDiagrams } from '../sheets/station-diagram';
import { stationValues } from '../sheets/station-values';
import { ROW } from '../sheets/schedule/layout';
import type { ExtraKey } from '../sheets/station/extras';
import { scheduleNames, SCHEDULE_NAME_KEYS, type ScheduleNames } from '../sheets/station/naming';

const LIST = new Intl.ListFormat('en-GB');

export const NO_SCHEDULE_IN_VIEW =
  'The sheet in view is no run schedule. Select the sheet of one, then add to it.';
export const NONE_TICKED = 'Tick the sheets to add.';
export const ALL_THERE = 'The schedule in view has these sheets already.';
export const NOT_THIS_ONE =
  'Nothing was added: this schedule is of an older make, or cannot be told from the others of the workbook. Share a copy of it with these sheets instead.';

/** More schedules than anyone has in a workbook. */
const MOST_SCHEDULES = 200;

/** The names of the schedule on a sheet: by the sheet's own name, or because the workbook has one schedule only. */
function namesOf({ names }: TakenNames, sheetName: string): ScheduleNames | undefined {
  const numbered = Array.from({ length: MOST_SCHEDULES }, (_, index) => scheduleNames(index + 1));
  const defined = numbered.filter(({ schedule }) =>
    SCHEDULE_NAME_KEYS.every((key) => names.has(schedule[key].toLowerCase())),
  );
  return (
    defined.find(({ sheet }) => sheet === sheetName) ??
    (defined.length === 1 ? defined[0] : undefined)
  );
}

/** Adds those sheets to the schedule in view that it has not yet; rejects with a sentence. */
export async function addExtras(
  host: SheetHost,
  ticked: readonly ExtraKey[],
  watch?: Watch,
): Promise<ToldInsertion> {
  if (ticked.length === 0) throw new Error(NONE_TICKED);
  const { stationOf } = await import('../lists/grids');
  const { rowSpan } = await import('../lists/row-order');
  const { protectionOf } = await import('../lists/run-entries');
  const sheetName = (await host.activeGrid())?.sheetName;
  const grids = await host.allGrids();
  const grid = grids.find((one) => one.sheetName === sheetName);
  const content = sheetName === undefined ? undefined : stationOf(grids, sheetName);
  const span = grid === undefined ? undefined : rowSpan(grid);
  if (sheetName === undefined || content === undefined || span === undefined) {
    throw new Error(NO_SCHEDULE_IN_VIEW);
  }
  const extras = ticked.filter((key) => content.extras?.includes(key) !== true);
  if (extras.length === 0) throw new Error(ALL_THERE);
  const names = namesOf(await host.taken(), sheetName);
  const protectionSheet = protectionOf(grids, sheetName);
  if (names === undefined || protectionSheet === undefined || span.first !== ROW.first) {
    throw new Error(NOT_THIS_ONE);
  }
  const layout = {
    // A person may have called the sheets otherwise.
    names: { ...names, sheet: sheetName, protectionSheet },
    references: host.references,
    rows: span.rows,
  };
  const wanted = { ...content, extras: [...(content.extras ?? []), ...extras] };
  const bare = extraSheets(layout, content, extras);
  const plans = extras.includes('drawing')
    ? withDiagrams(bare, layout, wanted, stationValues(wanted, layout.names))
    : bare;
  const inserted = await host.insert(plans, watch);
  const named = LIST.format(plans.map(({ name }) => `“${name}”`));
  return { sentence: `Added ${named} to “${sheetName}”.`, inserted };
}
