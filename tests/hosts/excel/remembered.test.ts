/** What is remembered of a workbook tells every change that the texts of its state and looks tell, and no other. */
import { expect, it } from 'vitest';
import type { RecordingExcel } from './recording-excel';
import { RememberedContent, RememberedLooks } from './remembered';
import { samplePlan } from './sample-plan';
import { looksOf, patientHost, stateOf, workbook } from './stand-in';

const sheetOf = (excel: RecordingExcel) => excel.sheetNamed('Runs')!;
const firstKey = <Key>(map: ReadonlyMap<Key, unknown>) => [...map.keys()][0]!;

/** Each changes one thing. */
const CHANGES: Readonly<Record<string, (excel: RecordingExcel) => void>> = {
  'a cell more': (excel) => sheetOf(excel).cells.set(999_999, { value: 1 }),
  'a cell less': (excel) => sheetOf(excel).cells.delete(firstKey(sheetOf(excel).cells)),
  'another value': (excel) => {
    const { cells } = sheetOf(excel);
    cells.set(firstKey(cells), { ...cells.get(firstKey(cells))!, value: 'other' });
  },
  'another formula': (excel) => {
    const { cells } = sheetOf(excel);
    const [key] = [...cells].find(([, { formula }]) => formula !== undefined)!;
    cells.set(key, { value: '', formula: '=1+1' });
  },
  'the same cell elsewhere': (excel) => {
    const { cells } = sheetOf(excel);
    const key = firstKey(cells);
    cells.set(999_999, cells.get(key)!);
    cells.delete(key);
  },
  'another name of a sheet': (excel) => (sheetOf(excel).name = 'Runs 2'),
  'a sheet protected': (excel) => (sheetOf(excel).isProtected = true),
  'a sheet more': (excel) => excel.newSheet('More'),
  'sheets in another order': (excel) => excel.sheets.reverse(),
  'another name of a table': (excel) => (sheetOf(excel).tables[0]!.name = 'Other'),
  'a larger table': (excel) => {
    const [table] = sheetOf(excel).tables;
    table!.area = { ...table!.area, rows: table!.area.rows + 1 };
  },
  'a name more': (excel) =>
    excel.define('More', excel.sheets[0]!, { row: 0, column: 0, rows: 1, columns: 1 }),
  'a name less': (excel) => excel.names.delete(firstKey(excel.names)),
  'another look': (excel) => sheetOf(excel).looks.set(firstKey(sheetOf(excel).looks), 'other'),
  'a look more': (excel) => sheetOf(excel).looks.set('more', true),
  'a look less': (excel) => sheetOf(excel).looks.delete(firstKey(sheetOf(excel).looks)),
  'highlights in another order': (excel) => sheetOf(excel).highlights.reverse(),
  'another formula of a highlight': (excel) => (sheetOf(excel).highlights[0]!.formula = 'TRUE'),
  'another format of a highlight': (excel) =>
    sheetOf(excel).highlights[0]!.format.set('more', true),
  'a chart less': (excel) => sheetOf(excel).charts.pop(),
  'another name of a chart': (excel) => (sheetOf(excel).charts[0]!.name = 'Chart 1'),
  'another look of a chart': (excel) => sheetOf(excel).charts[0]!.set.set('title.text', 'More'),
  'another series': (excel) => sheetOf(excel).charts[0]!.series.pop(),
  'another figure of a series': (excel) =>
    (sheetOf(excel).charts[0]!.series[0]!.values = undefined),
  'another sheet in view': (excel) => (excel.active = sheetOf(excel)),
  'nothing at all': () => undefined,
  'what no text tells of': (excel) => (excel.cellsRead += 1),
};

it.each(Object.entries(CHANGES))('%s', async (_, change) => {
  const excel = workbook();
  await patientHost().insert([samplePlan('Runs'), samplePlan('Data')]);
  excel.active = excel.sheetNamed('Notes')!;
  const [state, looks] = [stateOf(excel), looksOf(excel)];
  const remembered = [new RememberedContent(excel), new RememberedLooks(excel)] as const;
  expect(remembered.map((one) => one.isThat(excel))).toEqual([true, true]);
  change(excel);
  expect(remembered.map((one) => one.isThat(excel))).toEqual([
    stateOf(excel) === state,
    looksOf(excel) === looks,
  ]);
});
