/** How large the requests of an insertion are: Excel on the web refuses those of 5 MB. */
import { expect, it } from 'vitest';
import { scheduleSheets } from '../../../src/sheets/new-schedule';
import type { StationContent } from '../../../src/sheets/station/content';
import { columnOf } from '../../../src/sheets/schedule/layout';
import { DEMO } from '../../../src/sheets/station/demo';
import { patientHost, workbook } from './stand-in';

const MOST_BYTES = 1_000_000;
const SLOW_MS = 240_000;

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

it.each([200, 1000, 5000])(
  'asks for at most 1 MB at a time for %i runs, and for every cell of them',
  async (runs) => {
    const excel = workbook();
    const host = patientHost();
    const plans = scheduleSheets(longList(runs), host.references, await host.taken());
    const { missing } = await host.insert(plans);
    expect(missing).toEqual([]);
    expect(Math.max(...excel.requests)).toBeLessThan(MOST_BYTES);
    const [schedule] = plans;
    const first = schedule!.table!.area.row + 1;
    const sheet = excel.sheetNamed(schedule!.name)!;
    for (const row of [first, first + runs - 1]) {
      expect(sheet.at(row, 0)?.value, `row ${row}`).toMatch(/^Hut/);
      expect(sheet.at(row, columnOf('runAmps'))?.formula, `row ${row}`).toMatch(/^=/);
    }
  },
  SLOW_MS,
);
