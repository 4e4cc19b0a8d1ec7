/** Reading sheets and names back, selecting cells, hearing of changes. */
import { describe, expect, it } from 'vitest';
import { area } from '../../../src/sheets/plan/area';
import type { Used } from './recording-excel';
import { patientHost, workbook } from './stand-in';

const faults: Error[] = [];
const host = patientHost(faults);

describe('reading', () => {
  const used: Used = {
    rowIndex: 1,
    columnIndex: 2,
    values: [
      ['a', '', '#N/A'],
      [1, true, 0],
    ],
    formulas: [
      ['a', '', '=NA()'],
      [1, true, '=1-1'],
    ],
  };

  it('gives every sheet from A1 on, in two round trips', async () => {
    const excel = workbook({ Runs: used, Empty: null, Data: used });
    const grids = await host.allGrids();
    expect(grids.map((grid) => grid.sheetName)).toEqual(['Runs', 'Empty', 'Data']);
    expect(grids[0]?.values).toEqual([
      [null, null, null, null, null],
      [null, null, 'a', null, '#N/A'],
      [null, null, 1, true, 0],
    ]);
    expect(grids[1]?.values).toEqual([]);
    expect(grids[0]?.computed).toEqual([
      [],
      [false, false, false, false, true],
      [false, false, false, false, true],
    ]);
    expect(excel.syncs).toBe(2);
  });

  it('says so where a sheet is too large for Excel to hand over', async () => {
    workbook({ Huge: { rowIndex: 0, columnIndex: 0, values: null } });
    await expect(host.allGrids()).rejects.toThrow(/"Huge" has more cells than Excel hands over/);
    await expect(host.activeGrid()).rejects.toThrow(/"Huge" has more cells than Excel hands over/);
  });

  it('lists every name in lower case', async () => {
    const excel = workbook({ Runs: null });
    excel.define('Volts', excel.active, area(0, 0));
    excel.active.tables.push({ name: 'RunTable', sheet: excel.active, area: area(1, 0, 2, 2) });
    expect(await host.taken()).toEqual({
      sheets: new Set(['runs']),
      names: new Set(['volts', 'runtable']),
    });
    expect(excel.syncs).toBe(1);
  });

  it('selects cells, and says so where the sheet is gone', async () => {
    const excel = workbook({ Runs: null });
    await host.select('Runs', area(4, 1, 1, 3));
    expect(excel.done.map(({ path }) => path)).toContain('Runs!getRangeByIndexes(4,1,1,3).select');
    excel.refuse = () => 'ItemNotFound';
    await expect(host.select('Gone', area(0, 0))).rejects.toThrow(
      'The cells on “Gone” could not be selected: the sheet or the cells are no longer there; bring the right sheet into view and try again.',
    );
  });
});

describe('listening', () => {
  const settled = () => new Promise((resolve) => setTimeout(resolve, 0));

  it('hears of another sheet in view, until told to stop', async () => {
    const excel = workbook();
    let heard = 0;
    const stop = host.onChange(() => (heard += 1));
    await settled();
    const events = ['onChanged', 'onCalculated', 'onActivated'];
    expect([...excel.listeners.keys()]).toEqual(events);
    const [activated] = excel.listeners.get('onActivated')!;
    await activated!({ worksheetId: '{1}' });
    expect(heard).toBe(1);
    stop();
    await activated!({ worksheetId: '{1}' });
    expect(heard).toBe(1);
    await settled();
    for (const event of events) expect(excel.listeners.get(event)?.size).toBe(0);
  });

  it('reports where it cannot listen', async () => {
    const excel = workbook();
    excel.refuse = () => 'ApiNotFound';
    const stop = host.onChange(() => undefined);
    await settled();
    stop();
    await settled();
    expect(faults.map((fault) => fault.message)).toEqual([
      'The pane does not follow changes in the workbook: this version of Excel cannot do it; update Office, or use Excel on the web.',
    ]);
  });
});
