/** The run schedule itself, drawn into the stand-in for Excel. */
import { expect, it } from 'vitest';
import type { SheetPlan } from '../../../src/sheets/plan/plan';
import { newSchedule } from '../../../src/sheets/new-schedule';
import { patientHost, workbook } from './stand-in';

/** The demonstration drawn, and what stands in the cells of its schedule. */
async function drawnDemo() {
  const excel = workbook();
  const host = patientHost();
  const plans = newSchedule('demo', host.references, await host.taken());
  expect((await host.insert(plans)).missing).toEqual([]);
  const [schedule] = plans;
  const sheet = excel.sheetNamed(schedule!.name)!;
  const cellAt = (row: number, column: number) => {
    const cell = sheet.at(row, column);
    return cell?.formula ?? cell?.value;
  };
  return { excel, schedule: schedule!, cellAt };
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
  const { schedule, cellAt } = await drawnDemo();
  const { area, columns } = schedule.table!;
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
  const { schedule, cellAt } = await drawnDemo();
  const { area, columns } = schedule.table!;
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
