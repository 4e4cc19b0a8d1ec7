/** The sizes of the schedule in view: read with the rows that they stand in, and typed into "My wire". */
import type { SheetHost } from '../hosts/sheet-host';
import type { OpenStation } from '../lists/grids';
import { readSchedule } from '../sheets/schedule/reading';

export const NO_SCHEDULE_IN_VIEW =
  'The sheet in view is no run schedule. Select the sheet of one first.';
export const CHANGED_SINCE =
  'Nothing was written: the schedule was changed since these sizes were judged. Look again, and take them then.';

/** A schedule as it stood when its sizes were judged. */
export interface OpenSizes {
  readonly sheetName: string;
  readonly station: OpenStation;
  /** Column of "My wire" on the sheet. */
  readonly column: number;
}

/** The schedule in view; rejects with a sentence where there is none. */
export async function sizesInView(host: SheetHost): Promise<OpenSizes> {
  const { openStation } = await import('../lists/grids');
  const inView = await host.activeGrid();
  const grids = inView === null ? [] : await host.allGrids();
  const grid = grids.find(({ sheetName }) => sheetName === inView?.sheetName);
  const reading = grid === undefined ? undefined : readSchedule(grid.values);
  const station = grid === undefined ? undefined : openStation(grids, grid.sheetName);
  if (grid === undefined || reading === undefined || station === undefined) {
    throw new Error(NO_SCHEDULE_IN_VIEW);
  }
  return { sheetName: grid.sheetName, station, column: reading.columnOf.ownSize };
}

/** Everything that the verdicts of a schedule hang on. */
const stateOf = ({ sheetName, station, column }: OpenSizes) =>
  JSON.stringify([sheetName, column, station]);

/**
 * Types sizes into "My wire", all in one step that undo takes back. Rejects, with nothing written, where the schedule is
 * not the one any more that they were judged in.
 */
export async function typeSizes(
  host: SheetHost,
  judged: OpenSizes,
  sizes: readonly { readonly run: number; readonly size: string }[],
): Promise<void> {
  const now = await sizesInView(host);
  if (stateOf(now) !== stateOf(judged)) throw new Error(CHANGED_SINCE);
  const { rows } = judged.station;
  await host.edits.type(
    judged.sheetName,
    sizes.map(({ run, size }) => ({ row: rows[run]!, column: judged.column, content: size })),
  );
}

/** Takes the steps of a search one by one, and lets the page and the spreadsheet work in between. */
export async function stepByStep<Step, Result>(
  search: Generator<Step, Result>,
  heard: (step: Step) => void = () => undefined,
): Promise<Result> {
  for (;;) {
    const next = search.next();
    if (next.done === true) return next.value;
    heard(next.value);
    await new Promise((resolve) => setTimeout(resolve));
  }
}
