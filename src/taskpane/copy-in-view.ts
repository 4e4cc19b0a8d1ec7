/** The schedule in view as a file for others. */
import type { SheetHost } from '../hosts/sheet-host';
import type { StationContent } from '../sheets/station/content';
import type { ExtraKey } from '../sheets/station/extras';
import { fileNameOf } from './download';

const NO_SCHEDULE = 'The sheet in view is no run schedule. Select the sheet of one, then share it.';

export interface CopyInView {
  readonly file: Uint8Array;
  readonly name: string;
  /** What is in it, in words. */
  readonly counted: string;
}

/** The schedule in view with what feeds it. Rejects with a sentence where there is none. */
export async function stationInView(host: SheetHost): Promise<StationContent> {
  const { stationOf } = await import('../lists/grids');
  const inView = await host.activeGrid();
  const station = inView === null ? undefined : stationOf(await host.allGrids(), inView.sheetName);
  if (station === undefined) throw new Error(NO_SCHEDULE);
  return station;
}

/**
 * Writes the schedule in view as an .xlsx that computes without the add-in, with those of its further sheets that are
 * wanted, or else with those that it has; rejects with a sentence.
 */
export async function copyInView(
  host: SheetHost,
  extras?: readonly ExtraKey[],
): Promise<CopyInView> {
  const station = await stationInView(host);
  const { sharedFile } = await import('../hosts/xlsx/shared-file');
  const runs = station.runs.length;
  return {
    file: await sharedFile(extras === undefined ? station : { ...station, extras }),
    name: fileNameOf(station.title, 'xlsx'),
    counted: runs === 1 ? '1 run' : `${runs} runs`,
  };
}
