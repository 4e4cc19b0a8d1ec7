/** The one-line diagram of the schedule in view, and the way into the sheet for it. The layout is loaded when it is wanted. */
import type { Picture, SheetHost, SheetPictures } from '../hosts/sheet-host';
import type { OneLine } from '../drawing/one-line';
import type { SheetPlan } from '../sheets/plan/plan';
import { addExtras } from './add-extras';
import { stationInView } from './copy-in-view';
import { fileNameOf } from './download';
import { pngOf } from './png';

export interface DrawnInView {
  readonly oneLine: OneLine;
  readonly plan: SheetPlan;
  readonly fileName: string;
  readonly svg: (dark: boolean) => string;
}

/** Draws the schedule in view. Rejects with a sentence where there is none. */
export async function drawInView(host: SheetHost): Promise<DrawnInView> {
  const station = await stationInView(host);
  const [{ oneLine }, { onPaper }, { ON_DARK, ON_PAPER, svgOf }, { drawnSheet }] =
    await Promise.all([
      import('../drawing/one-line'),
      import('../drawing/on-paper'),
      import('../drawing/svg'),
      import('../sheets/station-diagram'),
    ]);
  const sheet = drawnSheet(station);
  const drawn = oneLine(sheet.picture.diagram);
  return {
    oneLine: drawn,
    plan: onPaper(sheet).plan,
    fileName: fileNameOf(station.title, 'svg'),
    svg: (dark) => svgOf(drawn.figure, dark ? ON_DARK : ON_PAPER),
  };
}

/** How it prints, in a sentence. */
export function printSentence({ pages, typePt, isShrunk, paper }: OneLine): string {
  const way = paper.landscape ? 'lying' : 'upright';
  const count = pages === 1 ? 'one A4 page' : `${pages} A4 pages`;
  return isShrunk
    ? `On A4 its type would be ${typePt.toFixed(1)} pt: print it on A3, or join runs that have no branch between them.`
    : `It prints on ${count}, ${way}.`;
}

const PICTURE_NAME = 'Loom one-line diagram';
/** Longer ones are no help to anyone who hears them read out. */
const MOST_SAID = 2000;

function pictureOf({ figure }: OneLine, pngBase64: string): Picture {
  const { title, description, widthPt, heightPt } = figure;
  const summary = `${description.split('. ')[0] ?? ''}. Too many to be told here: the schedule says each.`;
  return {
    name: PICTURE_NAME,
    title,
    description: description.length <= MOST_SAID ? description : summary,
    pngBase64,
    widthPt,
    heightPt,
  };
}

/** Puts the diagram on the Drawing sheet of the schedule in view, which is added where it is missing. */
export async function putInSheet(
  host: SheetHost,
  pictures: SheetPictures,
  raster: typeof pngOf = pngOf,
): Promise<string> {
  const sheetName = (await host.activeGrid())?.sheetName;
  const { plan, oneLine: drawn, svg } = await drawInView(host);
  const png = await raster(svg(false), drawn.figure);
  const { drawingIn } = await import('../lists/drawing');
  const standing =
    sheetName === undefined ? undefined : drawingIn(await host.allGrids(), sheetName);
  const added = standing === undefined ? await addExtras(host, ['drawing']) : undefined;
  const name =
    standing?.sheetName ??
    (sheetName === undefined ? undefined : drawingIn(await host.allGrids(), sheetName)?.sheetName);
  if (name === undefined) throw new Error('The sheet for the picture could not be found again.');
  await pictures.put({ ...plan, name }, pictureOf(drawn, png));
  if (standing !== undefined) await host.edits.type(standing.sheetName, standing.drawn);
  const pages = printSentence(drawn);
  return added === undefined
    ? `The picture on “${name}” was drawn anew. ${pages}`
    : `The picture is on “${name}”. ${pages}`;
}
