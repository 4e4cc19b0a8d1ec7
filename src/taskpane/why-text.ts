/** "Why?" of the selected run, over the spreadsheet and nothing of the page. */
import type { SheetHost } from '../hosts/sheet-host';
import { readSchedule } from '../sheets/schedule/reading';
import { whyOfRun, type RunWhy } from '../sheets/run-why';
import { sizesInView } from './open-sizes';

export const STILL_CALCULATING =
  'The schedule is still being calculated. The reasons follow when its figures stand.';
export const OTHER_FIGURES =
  'What the sheet shows is not what its entries come to: let it calculate, or put missing formulas back. Until then no figures are told.';
const NO_RUN = 'No run is selected.';

/** Why the schedule in view says what it says of the selected run; rejects with a sentence where it cannot be told. */
export async function whySelected(host: SheetHost): Promise<RunWhy> {
  const selected = await host.edits.selected();
  const { grid, calculation } = await host.view();
  if (selected === null || grid?.sheetName !== selected.sheetName) throw new Error(NO_RUN);
  const row = readSchedule(grid.values)?.rows.find((one) => one.row === selected.row);
  if (row === undefined) throw new Error(NO_RUN);
  if (calculation !== 'done') throw new Error(STILL_CALCULATING);
  const { station } = await sizesInView(host);
  const run = station.rows.indexOf(selected.row);
  const why =
    run < 0 ? undefined : whyOfRun(station.content, run, String(row.values.verdict ?? ''));
  if (why === undefined) throw new Error(OTHER_FIGURES);
  return why;
}
