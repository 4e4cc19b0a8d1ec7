/** How large the requests of an insertion are: Excel on the web refuses those of 5 MB. */
import { expect, it } from 'vitest';
import { addInSheets, BOOK } from '../../../src/sheets/book';
import type { SheetPlan } from '../../../src/sheets/plan/plan';
import { columnOf, ROW } from '../../../src/sheets/schedule/layout';
import { roomyRows } from '../../../src/sheets/schedule/sheet';
import type { StationContent } from '../../../src/sheets/station/content';
import { DEMO } from '../../../src/sheets/station/demo';
import { freeScheduleNames } from '../../../src/sheets/station/naming';
import { EVERY_STEP } from './every-step';
import { patientHost, workbook } from './stand-in';

const MOST_BYTES = 1_000_000;
const SLOW_MS = 240_000;
/** Two heights by turns, since rows of one height are set together: so each row asks for a step of its own. */
const HEIGHTS_PT = [30, 45] as const;

/** The demonstration's runs over and over, under names of their own. */
function longList(runs: number): StationContent {
  return {
    ...DEMO,
    runs: Array.from({ length: runs }, (_, index) => ({
      ...DEMO.runs[index % DEMO.runs.length]!,
      run: `Hut ${index + 1}, gauge on the north bank`,
      fedFrom: index % 4 === 0 ? '' : `Hut ${index - (index % 4) + 1}, gauge on the north bank`,
    })),
  };
}

/**
 * The sheets as they are inserted. What the rows come to decides their heights and nothing else of the drawing; heights
 * that ask for more than any list can are given instead of half a minute's evaluation.
 */
function longPlans(runs: number): readonly SheetPlan[] {
  const names = freeScheduleNames({ sheets: new Set(), names: new Set() }, BOOK);
  const layout = { names, references: 'table' as const, rows: roomyRows(runs) };
  const heights = Array.from(
    { length: runs },
    (_, row) => [ROW.first + row, HEIGHTS_PT[row % HEIGHTS_PT.length]!] as const,
  );
  return addInSheets(layout, longList(runs)).map((plan) => ({
    ...plan,
    rowHeightsPt: { ...plan.rowHeightsPt, ...Object.fromEntries(heights) },
  }));
}

it.each([DEMO.runs.length, 200, 1000, 5000])(
  'asks for at most 1 MB at a time for %i runs, and for every cell of them',
  async (runs) => {
    const excel = workbook();
    const plans = longPlans(runs);
    const { missing } = await patientHost().insert(plans);
    expect(missing).toEqual([]);
    const largest = Math.max(...excel.requests);
    if (EVERY_STEP)
      console.log(`${runs} runs: ${excel.requests.length} requests, ${largest} bytes`);
    expect(largest).toBeLessThan(MOST_BYTES);
    // A dozen for any list, and more only for what no longer fits into them.
    expect(excel.requests.length).toBeLessThanOrEqual(12 + runs / 125);
    const [schedule] = plans;
    const first = schedule!.table!.area.row + 1;
    const sheet = excel.sheetNamed(schedule!.name)!;
    for (let row = first; row < first + runs; row += 1) {
      expect(sheet.at(row, 0)?.value, `row ${row}`).toMatch(/^Hut/);
      expect(sheet.at(row, columnOf('runAmps'))?.formula, `row ${row}`).toMatch(/^=/);
    }
    expect(sheet.looks.get(`getRangeByIndexes(${first + runs - 1},0,1,1).format.rowHeight`)).toBe(
      HEIGHTS_PT[(runs - 1) % HEIGHTS_PT.length],
    );
  },
  SLOW_MS,
);
