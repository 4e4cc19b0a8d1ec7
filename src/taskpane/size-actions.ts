/** What the pane does about the sizes of the schedule in view, over the spreadsheet and nothing of the page. */
import type { SheetHost } from '../hosts/sheet-host';
import { comparing, type SizeComparison } from '../sheets/compare-sizes';
import { lightening, type Lightened } from '../sheets/lighten';
import { sizesInView, stepByStep, typeSizes, type OpenSizes } from './open-sizes';

export const NO_RUN_SELECTED = 'Select a cell in the row of a run first.';
export const NOTHING_TO_COMPARE =
  'The selected run has no load or no length that can be read; fix its row first.';

export interface Offer {
  readonly judged: OpenSizes;
  readonly found: Lightened;
}

/** Looks for the lightest sizes of the schedule in view; rejects with a sentence. */
export async function findLightest(
  host: SheetHost,
  mayChangeTyped: boolean,
  heard?: (round: number) => void,
): Promise<Offer> {
  const judged = await sizesInView(host);
  const search = lightening(judged.station.content, { mayChangeTyped });
  const found = await stepByStep(search, ({ round }) => heard?.(round));
  return { judged, found };
}

/** Writes the sizes that were found; rejects with a sentence. */
export async function takeLightest(host: SheetHost, { judged, found }: Offer): Promise<string> {
  await typeSizes(host, judged, found.typed);
  const cells = found.typed.length === 1 ? '1 cell' : `${found.typed.length} cells`;
  return `Written into ${cells} of “My wire” on “${judged.sheetName}”. Undo takes them back.`;
}

export interface Compared {
  readonly judged: OpenSizes;
  readonly run: number;
  readonly found: SizeComparison;
}

/** Compares the sizes of the selected run; rejects with a sentence. */
export async function compareSelected(
  host: SheetHost,
  heard?: (tried: number) => void,
): Promise<Compared> {
  const judged = await sizesInView(host);
  const selected = await host.edits.selected();
  const run = selected === null ? -1 : judged.station.rows.indexOf(selected.row);
  if (selected?.sheetName !== judged.sheetName || run < 0) throw new Error(NO_RUN_SELECTED);
  const found = await stepByStep(comparing(judged.station.content, run), heard);
  if (found === undefined) throw new Error(NOTHING_TO_COMPARE);
  return { judged, run, found };
}

/** Writes a size into "My wire" of the run; rejects with a sentence. */
export async function takeSize(
  host: SheetHost,
  { judged, run, found }: Compared,
  size: string,
): Promise<string> {
  await typeSizes(host, judged, [{ run, size }]);
  return `“${found.called}” has ${size} in “My wire” now. Undo takes it back.`;
}
