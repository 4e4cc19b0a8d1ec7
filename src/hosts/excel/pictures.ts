/** Pictures over the cells of a workbook open in Excel. They go in as PNG: its call for SVG is a preview only. */
import { area } from '../../sheets/plan/area';
import type { SheetPlan } from '../../sheets/plan/plan';
import { stretches } from '../../sheets/plan/stretches';
import type { Queue } from '../one-at-a-time';
import type { Picture, SheetPictures } from '../sheet-host';
import { told, type Failing } from './failure';
import { setUpPage } from './page';
import { rangeOf } from './range-of';
import { request } from './request';

const PUTTING: Failing = {
  refused: 'The picture could not be put into the sheet',
  unknown: 'Excel did not say whether it put the picture into the sheet',
};

function setHeights(sheet: Excel.Worksheet, { rowHeightsPt = {} }: SheetPlan): void {
  const rows = Object.entries(rowHeightsPt).map(([row, height]) => [Number(row), height] as const);
  for (const { first, count, measure } of stretches(rows.sort(([one], [other]) => one - other))) {
    rangeOf(sheet, area(first, 0, count, 1)).format.rowHeight = measure;
  }
}

/** Of the head over the picture; a cell's own place is told by later versions of Excel alone. */
function heightAbove({ picture, rowHeightsPt = {} }: SheetPlan): number {
  const rows = Array.from({ length: picture?.first.row ?? 0 }, (_, row) => rowHeightsPt[row] ?? 0);
  return rows.reduce((sum, heightPt) => sum + heightPt, 0);
}

async function put(plan: SheetPlan, picture: Picture): Promise<void> {
  await request(async (context) => {
    const sheet = context.workbook.worksheets.getItem(plan.name);
    const { shapes } = sheet;
    shapes.load('items/name');
    setHeights(sheet, plan);
    await context.sync();
    for (const shape of shapes.items) if (shape.name === picture.name) shape.delete();
    const image = shapes.addImage(picture.pngBase64);
    image.name = picture.name;
    image.lockAspectRatio = false;
    image.left = 0;
    image.top = heightAbove(plan);
    image.width = picture.widthPt;
    image.height = picture.heightPt;
    image.lockAspectRatio = true;
    image.altTextTitle = picture.title;
    image.altTextDescription = picture.description;
    // Those of a picture that was there before may stand elsewhere.
    sheet.horizontalPageBreaks.removePageBreaks();
    setUpPage(sheet, plan);
    await context.sync();
  });
}

export function excelPictures(writing: Queue): SheetPictures {
  return { put: (plan, picture) => writing(() => told(PUTTING, () => put(plan, picture))) };
}
