/** The run schedule itself, drawn into the stand-in for Excel. */
import { afterEach, expect, it } from 'vitest';
import { ExcelHost } from '../../../src/hosts/excel/excel-host';
import type { SheetPlan } from '../../../src/sheets/plan/plan';
import { RecordingExcel, type Step } from './recording-excel';
import { newSchedule } from '../../../src/sheets/new-schedule';

afterEach(() => {
  Reflect.deleteProperty(globalThis, 'Excel');
});

/** The demonstration drawn: its schedule alone, whose steps can then be told apart, or every sheet. */
async function drawnDemo(sheets: 'schedule' | 'every sheet' = 'schedule') {
  const excel = new RecordingExcel({ Sheet1: null });
  Object.assign(globalThis, { Excel: excel });
  const host = new ExcelHost(() => undefined);
  const plans = newSchedule('demo', host.references, await host.taken());
  const [schedule] = plans;
  await host.insert(sheets === 'schedule' ? [schedule!] : plans);
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

/** What the plan's blocks type into the table's rows, by column: constants alone, row by row. */
function typedInto({ blocks, table }: SheetPlan, column: number): readonly unknown[] {
  const { area } = table!;
  const typed = new Array<unknown>(area.rows - 1).fill(undefined);
  for (const block of blocks) {
    for (const [down, line] of (block.cells ?? []).entries()) {
      const content = line[area.column + column - block.area.column];
      const row = block.area.row + down - area.row - 1;
      const isConstant = content !== undefined && content !== null && typeof content !== 'object';
      if (isConstant && row >= 0 && row < typed.length) typed[row] = content;
    }
  }
  return typed;
}

it('keeps what the demonstration types over formulas, and the formulas everywhere else', async () => {
  const { excel, schedule } = await drawnDemo();
  const { area, columns } = schedule.table!;
  const cellAt = cellsAfter(excel.done, area);
  let overtyped = 0;
  for (const [column, { formula }] of columns.entries()) {
    if (formula === undefined) continue;
    for (const [index, typed] of typedInto(schedule, column).entries()) {
      if (typed !== undefined) overtyped += 1;
      expect(cellAt(area.row + 1 + index, area.column + column)).toBe(typed ?? formula);
    }
  }
  expect(overtyped).toBeGreaterThan(0);
});

it('writes typed values as they are, without an apostrophe in text cells', async () => {
  const { excel, schedule } = await drawnDemo();
  const { area, columns } = schedule.table!;
  const cellAt = cellsAfter(excel.done, area);
  const typedColumns = [...columns.keys()].filter((column) => !columns[column]?.formula);
  const texts = typedColumns.flatMap((column) =>
    typedInto(schedule, column).flatMap((typed, index) => {
      if (typed === undefined) return [];
      expect(cellAt(area.row + 1 + index, area.column + column)).toBe(typed);
      return typeof typed === 'string' ? [typed] : [];
    }),
  );
  expect(texts).toContainEqual(expect.stringMatching(/^\d+ AWG$|mm2$/));
});

it('stays well under the 5 MB that Excel on the web takes in one request', async () => {
  const { excel } = await drawnDemo('every sheet');
  const bytes = excel.done.reduce((sum, { path, given }) => {
    const data = given.filter((value) => typeof value !== 'function');
    return sum + path.length + JSON.stringify(data).length;
  }, 0);
  expect(bytes).toBeLessThan(1_000_000);
});
