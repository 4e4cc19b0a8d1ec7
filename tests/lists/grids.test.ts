import { describe, expect, it } from 'vitest';
import type { ComputedGrid } from '../../src/sheets/plan/grid';
import { stationOf } from '../../src/lists/grids';
import { writeWorkbook } from '../../src/hosts/xlsx/write';
import { DEMO } from '../../src/sheets/station/demo';
import type { NamesInUse } from '../../src/sheets/station/naming';
import { scheduleSheets } from '../../src/sheets/new-schedule';
import type { StationContent } from '../../src/sheets/station/content';
import { fileGrids } from './file-grids';

const FREE: NamesInUse = { sheets: new Set(), names: new Set() };
const FIRST_TAKEN: NamesInUse = { sheets: new Set(['run schedule']), names: new Set() };

/** The sheets of these contents as a spreadsheet would hand them over. */
async function gridsOf(...sheets: Parameters<typeof writeWorkbook>[0][]): Promise<ComputedGrid[]> {
  return fileGrids(await writeWorkbook(sheets.flat()));
}

const OTHER: StationContent = {
  title: 'Another',
  rules: { unit: 'm', volts: 24, installed: 'air', ambientC: 55 },
  supply: { chemistry: 'Li-ion', ampHours: 55, milliohms: 3 },
  protection: { startC: 85, limitC: 250 },
  duty: [{ load: 'Pump', amps: [5, null, 0.1], shares: [0.2, null, 0.8] }],
  runs: [
    { run: 'One', peak: 5, length: 10, target: 0.02, ownSize: '4 mm2' },
    { run: 'Two', peak: 'abc', length: 3 },
  ],
};

describe('the schedule of an open workbook', () => {
  it.each([
    ['the demonstration', DEMO],
    ['another', OTHER],
  ])('is read as it was typed: %s', async (_, content) => {
    const grids = await gridsOf(scheduleSheets(content, 'cells', FREE));
    const station = stationOf(grids, 'Run schedule');
    expect(station?.runs).toEqual(content.runs);
    expect(station?.title).toBe(content.title);
    expect(station?.rules).toMatchObject(content.rules ?? {});
    expect(station?.supply).toMatchObject(content.supply ?? {});
    expect(station?.protection).toMatchObject(content.protection ?? {});
    expect(station?.duty).toEqual(content.duty);
    expect(Object.keys(station?.supply ?? {})).not.toContain('peakAmps');
  });

  it('takes the supply that belongs to it, where a workbook has two', async () => {
    const grids = await gridsOf(
      scheduleSheets(DEMO, 'cells', FREE),
      scheduleSheets(OTHER, 'cells', FIRST_TAKEN),
    );
    expect(stationOf(grids, 'Run schedule 2')?.supply).toMatchObject(OTHER.supply ?? {});
    expect(stationOf(grids, 'Run schedule 2')?.runs).toEqual(OTHER.runs);
    expect(stationOf(grids, 'Run schedule')?.sources).toEqual(DEMO.sources);
  });

  it('is found when its sheet was renamed and rows were put above it', async () => {
    const [schedule, ...others] = await gridsOf(scheduleSheets(OTHER, 'cells', FREE));
    const moved: ComputedGrid = {
      sheetName: 'Hut',
      values: [['Note to self'], [], ...schedule!.values],
      computed: [[], [], ...schedule!.computed],
    };
    const station = stationOf([moved, ...others], 'Hut');
    expect(station?.runs).toEqual(OTHER.runs);
    expect(station?.rules).toMatchObject(OTHER.rules ?? {});
    expect(station?.supply).toMatchObject(OTHER.supply ?? {});
  });

  it('is none where the sheet holds something else', async () => {
    const grids = await gridsOf(scheduleSheets(DEMO, 'cells', FREE));
    expect(stationOf(grids, 'Supply')).toBeUndefined();
    expect(stationOf(grids, 'Nowhere')).toBeUndefined();
    expect(
      stationOf(
        [
          {
            sheetName: 'List',
            values: [
              ['Amps', 'Length'],
              [5, 3],
            ],
            computed: [],
          },
        ],
        'List',
      ),
    ).toBeUndefined();
  });
});
