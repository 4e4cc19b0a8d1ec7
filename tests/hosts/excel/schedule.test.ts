/** The run schedule itself, drawn into the stand-in for Excel. */
import { afterEach, expect, it } from 'vitest';
import { ExcelHost } from '../../../src/hosts/excel/excel-host';
import { DEMO_RUNS } from '../../../src/sheets/demo';
import { newSchedule } from '../../../src/sheets/new-schedule';
import { COLUMN_KEYS } from '../../../src/sheets/schedule-columns';
import { RecordingExcel, type Step } from './recording-excel';

afterEach(() => {
  Reflect.deleteProperty(globalThis, 'Excel');
});

async function drawnDemo() {
  const excel = new RecordingExcel({ Sheet1: null });
  Object.assign(globalThis, { Excel: excel });
  const host = new ExcelHost(() => undefined);
  const plans = newSchedule('demo', host.references, await host.taken());
  await host.insert(plans);
  const [schedule] = plans;
  return { excel, schedule: schedule! };
}

type Rows = readonly (readonly unknown[])[];

/** The sheet's cells after every assignment of contents, in order; null in an assignment leaves a cell as it is. */
function cellsAfter(steps: readonly Step[], table: { row: number; column: number }) {
  const cells = new Map<string, unknown>();
  for (const { path, given } of steps) {
    const block = /getRangeByIndexes\((\d+),(\d+),\d+,\d+\)\.(values|formulas)$/.exec(path);
    const column = /getItemAt\((\d+)\)\.getDataBodyRange\(\)\.formulas$/.exec(path);
    if (block === null && column === null) continue;
    const row = block ? Number(block[1]) : table.row + 1;
    const first = block ? Number(block[2]) : table.column + Number(column?.[1]);
    for (const [down, line] of (given[0] as Rows).entries()) {
      for (const [across, cell] of line.entries()) {
        if (cell !== null) cells.set(`${row + down},${first + across}`, cell);
      }
    }
  }
  return (row: number, column: number) => cells.get(`${row},${column}`);
}

it('keeps what the demonstration types over the house rules, and formulas everywhere else', async () => {
  const { excel, schedule } = await drawnDemo();
  const table = schedule.table!;
  const cellAt = cellsAfter(excel.done, table.area);
  let overtyped = 0;
  for (const key of ['volts', 'target'] as const) {
    const column = COLUMN_KEYS.indexOf(key);
    for (const [index, run] of DEMO_RUNS.entries()) {
      const typed = run[key];
      if (typed !== undefined) overtyped += 1;
      const expected = typed ?? table.columns[column]?.formula;
      expect(cellAt(table.area.row + 1 + index, column)).toBe(expected);
    }
  }
  expect(overtyped).toBeGreaterThan(0);
});

it('writes typed texts into text cells as they are, without an apostrophe', async () => {
  const { excel, schedule } = await drawnDemo();
  const { area } = schedule.table!;
  const cellAt = cellsAfter(excel.done, area);
  const ownSize = COLUMN_KEYS.indexOf('ownSize');
  const typed = DEMO_RUNS.map((run) => run.ownSize ?? '');
  expect(typed.some((size) => size !== '')).toBe(true);
  expect(typed.map((_, index) => cellAt(area.row + 1 + index, ownSize))).toEqual(typed);
});

it('stays well under the 5 MB that Excel on the web takes in one request', async () => {
  const { excel } = await drawnDemo();
  const bytes = excel.done.reduce((sum, { path, given }) => {
    const data = given.filter((value) => typeof value !== 'function');
    return sum + path.length + JSON.stringify(data).length;
  }, 0);
  expect(bytes).toBeLessThan(1_000_000);
});
