/** A picture over the cells of Excel: once, with its words, on a page set up for it. */
import { expect, it } from 'vitest';
import { onPaper } from '../../../src/drawing/on-paper';
import { drawnSheet } from '../../../src/sheets/station-diagram';
import { DEMO } from '../../../src/sheets/station/demo';
import { patientHost, workbook } from './stand-in';

const { plan, figure } = onPaper(drawnSheet(DEMO));
const PICTURE = {
  name: 'Loom one-line diagram',
  title: figure!.title,
  description: figure!.description,
  pngBase64: 'iVBORw0KGgo=',
  widthPt: figure!.widthPt,
  heightPt: figure!.heightPt,
};

it('is put below the head of its sheet, with words for whoever cannot see it', async () => {
  const excel = workbook({ Drawing: null });
  await patientHost().pictures.put(plan, PICTURE);
  const [sheet] = excel.sheets;
  expect(sheet!.shapes.map(({ base64 }) => base64)).toEqual([PICTURE.pngBase64]);
  expect(Object.fromEntries(sheet!.shapes[0]!.set)).toEqual({
    name: PICTURE.name,
    left: 0,
    // Four rows of 15 pt.
    top: 60,
    width: PICTURE.widthPt,
    height: PICTURE.heightPt,
    lockAspectRatio: true,
    altTextTitle: PICTURE.title,
    altTextDescription: PICTURE.description,
  });
});

it('takes the place of the one before, and of no other', async () => {
  const excel = workbook({ Drawing: null });
  const { pictures } = patientHost();
  await pictures.put(plan, { ...PICTURE, name: 'A photograph' });
  await pictures.put(plan, PICTURE);
  await pictures.put(plan, { ...PICTURE, pngBase64: 'bmV3' });
  expect(excel.sheets[0]!.shapes.map(({ base64, set }) => [set.get('name'), base64])).toEqual([
    ['A photograph', PICTURE.pngBase64],
    [PICTURE.name, 'bmV3'],
  ]);
});

it('is printed at its full size, with a break after each page and all of the sheet', async () => {
  const excel = workbook({ Drawing: null });
  await patientHost().pictures.put(plan, PICTURE);
  const given = (ending: string) =>
    excel.done.filter(({ path }) => path.endsWith(ending)).map(({ given: values }) => values[0]);
  expect(given('pageLayout.orientation')).toEqual(['Landscape']);
  expect(given('pageLayout.zoom')).toEqual([{ scale: 100 }]);
  expect(given('pageLayout.setPrintArea')).toEqual([]);
  // Two pages.
  expect(given('horizontalPageBreaks.add')).toHaveLength(1);
  const breaks = excel.done.findIndex(({ path }) => path.endsWith('removePageBreaks'));
  expect(breaks).toBeGreaterThan(-1);
});

it('is refused with a sentence, and leaves what was there', async () => {
  const excel = workbook({ Drawing: null });
  const { pictures } = patientHost();
  excel.refuse = ({ path }) => (path.includes('addImage') ? 'AccessDenied' : undefined);
  await expect(pictures.put(plan, PICTURE)).rejects.toThrow(
    'The picture could not be put into the sheet',
  );
});
