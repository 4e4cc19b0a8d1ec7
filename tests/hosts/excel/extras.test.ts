/** The sheets beyond the sizing, inserted into Excel with the schedule that they follow. */
import { expect, it } from 'vitest';
import { insertSchedule } from '../../../src/taskpane/insertion';
import { newSchedule } from '../../../src/sheets/new-schedule';
import { layBlocks } from '../../../src/sheets/plan/lay-blocks';
import { EXTRA_KEYS, EXTRAS } from '../../../src/sheets/station/extras';
import { patientHost, workbook } from './stand-in';

const SHEETS = EXTRA_KEYS.map((key) => EXTRAS[key].sheetName);
/** Excel's limit for a formula. */
const MOST_CHARACTERS = 8192;

it('are inserted with the schedule where they are ticked, complete', async () => {
  const excel = workbook();
  const { sentence, inserted } = await insertSchedule(patientHost(), 'demo', EXTRA_KEYS);
  expect(inserted.missing).toEqual([]);
  for (const sheet of SHEETS) {
    expect(excel.sheetNames).toContain(sheet);
    expect(sentence).toContain(`“${sheet}”`);
  }
});

it('are not inserted where they are not', async () => {
  const excel = workbook();
  await insertSchedule(patientHost(), 'demo');
  for (const sheet of SHEETS) expect(excel.sheetNames).not.toContain(sheet);
});

it('have the labels’ own paper and margins, and a break after each page', async () => {
  const excel = workbook();
  await insertSchedule(patientHost(), 'demo', ['labels']);
  const given = (ending: string) =>
    excel.done.filter(({ path }) => path.endsWith(ending)).map(({ given: values }) => values[0]);
  expect(given('pageLayout.paperSize')).toEqual(['A4']);
  // 8.5 mm in points.
  expect(given('pageLayout.topMargin')).toEqual([(8.5 / 25.4) * 72]);
  // 52 labels of 26 runs on three pages.
  expect(given('horizontalPageBreaks.add')).toHaveLength(2);
});

it('have no formula that Excel would refuse for its length', () => {
  const taken = { sheets: new Set<string>(), names: new Set<string>() };
  const plans = newSchedule('demo', 'table', taken, EXTRA_KEYS);
  let longest = 0;
  for (const { name, blocks } of plans) {
    if (!SHEETS.includes(name)) continue;
    for (const { content } of layBlocks(blocks)) {
      if (typeof content === 'object' && content !== null) {
        longest = Math.max(longest, content.formula.length);
      }
    }
  }
  console.info(`Longest formula of the sheets beyond the sizing: ${longest} characters`);
  expect(longest).toBeGreaterThan(200);
  expect(longest).toBeLessThan(MOST_CHARACTERS);
});
