/** Following a workbook without dragging it: only what a change touched is read, and only on our sheets. */
import { beforeEach, describe, expect, it } from 'vitest';
import { areaOf, ROWS_BELOW } from '../../../src/hosts/excel/follow';
import { newSchedule } from '../../../src/sheets/new-schedule';
import { ROW, columnOf } from '../../../src/sheets/schedule/layout';
import { SHOWN_KEYS } from '../../../src/sheets/station/schedule-keys';
import type { RecordingExcel } from './recording-excel';
import { patientHost, workbook } from './stand-in';

/** A workbook of other people with 100,000 cells, and our schedule beside it. */
async function bigWorkbook() {
  const excel = workbook({
    Census: {
      rowIndex: 0,
      columnIndex: 0,
      values: Array.from({ length: 1000 }, (_, row) => Array.from({ length: 100 }, () => row)),
    },
  });
  const host = patientHost();
  const plans = newSchedule('demo', host.references, await host.taken());
  await host.insert(plans);
  let heard = 0;
  host.onChange(() => (heard += 1));
  await new Promise((resolve) => setTimeout(resolve, 0));
  const schedule = excel.sheetNamed(plans[0]!.name)!;
  return { excel, host, schedule, plan: plans[0]!, heardNow: () => heard };
}

const edited = (worksheetId: string, address: string, changeType = 'RangeEdited') => ({
  worksheetId,
  address,
  changeType,
});

/** Cells read by an action. */
async function cellsReadBy(excel: RecordingExcel, action: () => Promise<unknown>): Promise<number> {
  const before = excel.cellsRead;
  await action();
  return excel.cellsRead - before;
}

describe('a workbook with 100,000 cells of other people', () => {
  let big: Awaited<ReturnType<typeof bigWorkbook>>;
  beforeEach(async () => {
    big = await bigWorkbook();
  });

  it('costs nothing while one of its sheets is in view', async () => {
    const { excel, host, heardNow } = big;
    const census = excel.sheetNamed('Census')!;
    excel.active = census;
    await excel.tell('onActivated', { worksheetId: census.id });
    const heard = heardNow();
    expect(await cellsReadBy(excel, () => host.view())).toBe(0);
    const syncs = excel.syncs;
    for (let edit = 1; edit <= 50; edit += 1) {
      await excel.tell('onChanged', edited(census.id, `A${edit}`));
      await excel.tell('onCalculated', { worksheetId: census.id });
    }
    expect(heardNow()).toBe(heard);
    expect(excel.syncs).toBe(syncs);
    expect((await host.view()).grid).toBeNull();
  });

  it('is not heard of while our schedule is in view', async () => {
    const { excel, host, heardNow } = big;
    await host.view();
    const heard = heardNow();
    await excel.tell('onChanged', edited(excel.sheetNamed('Census')!.id, 'A1:CV1000'));
    expect(heardNow()).toBe(heard);
  });

  it('reads of our schedule what is shown, then the edited cell, then what computes', async () => {
    const { excel, host, schedule, plan, heardNow } = big;
    const rows = plan.table!.area.rows;
    const headings = plan.table!.columns.length;
    expect(await cellsReadBy(excel, () => host.view())).toBe(
      headings + (rows + ROWS_BELOW) * SHOWN_KEYS.length,
    );

    const row = ROW.first + 2;
    excel.fill(schedule, { rowIndex: row, columnIndex: columnOf('length'), values: [[77]] });
    await excel.tell('onChanged', edited(schedule.id, `E${row + 1}`));
    expect(heardNow()).toBe(1);
    let view = await host.view();
    expect(view.grid?.values[row]?.[columnOf('length')]).toBe(77);
    expect(await cellsReadBy(excel, () => host.view())).toBe(0);

    excel.fill(schedule, { rowIndex: row, columnIndex: columnOf('verdict'), values: [['ok']] });
    await excel.tell('onCalculated', { worksheetId: schedule.id });
    const read = await cellsReadBy(excel, async () => (view = await host.view()));
    expect(view.grid?.values[row]?.[columnOf('verdict')]).toBe('ok');
    expect(read).toBeLessThan(rows * SHOWN_KEYS.length);
  });

  it('reads a table anew that grew, and leaves cells far from it alone', async () => {
    const { excel, host, schedule, plan, heardNow } = big;
    const table = schedule.tables[0]!;
    await host.view();
    await excel.tell('onChanged', edited(schedule.id, 'CZ200'));
    expect(heardNow()).toBe(0);
    const end = table.area.row + table.area.rows;
    table.area = { ...table.area, rows: table.area.rows + 1 };
    excel.fill(schedule, { rowIndex: end, columnIndex: 0, values: [['New run']] });
    await excel.tell('onChanged', edited(schedule.id, `A${end + 1}`));
    expect((await host.view()).grid?.values[end]?.[0]).toBe('New run');
    expect(plan.table!.area.rows).toBe(table.area.rows - 1);
    await excel.tell('onChanged', edited(schedule.id, '9:9', 'RowInserted'));
    expect(await cellsReadBy(excel, () => host.view())).toBeGreaterThan(500);
  });

  it('sees a row below the table that Excel did not take into it', async () => {
    const { excel, host, schedule } = big;
    const { area } = schedule.tables[0]!;
    await host.view();
    const row = area.row + area.rows;
    const typed = { rowIndex: row, columnIndex: columnOf('length'), values: [[12]] };
    excel.fill(schedule, typed);
    await excel.tell('onChanged', edited(schedule.id, `E${row + 1}`));
    expect((await host.view()).grid?.values[row]?.[columnOf('length')]).toBe(12);
  });

  it('keeps what happens while it reads for the next reading, and what could not be read', async () => {
    const { excel, host, schedule } = big;
    await host.view();
    const reading = host.view();
    excel.fill(schedule, { rowIndex: ROW.first, columnIndex: columnOf('peak'), values: [[5]] });
    await excel.tell('onChanged', edited(schedule.id, `D${ROW.first + 1}`));
    await reading;
    excel.refuse = () => 'GeneralException';
    await expect(host.view()).rejects.toThrow(/could not be read: Excel met an internal error/);
    excel.refuse = () => undefined;
    expect((await host.view()).grid?.values[ROW.first]?.[columnOf('peak')]).toBe(5);
  });

  it('knows a schedule whose table was made plain cells by its names', async () => {
    const { excel, host, schedule } = big;
    schedule.tables.length = 0;
    await excel.tell('onActivated', { worksheetId: schedule.id });
    expect((await host.view()).grid?.values[ROW.header]?.[0]).toBe(
      schedule.at(ROW.header, 0)?.value,
    );
  });

  it('tells manual and unfinished calculation, and calculates when asked', async () => {
    const { excel, host } = big;
    expect((await host.view()).calculation).toBe('done');
    excel.application.calculationState = 'Calculating';
    expect((await host.view()).calculation).toBe('under way');
    excel.application.calculationMode = 'Manual';
    expect((await host.view()).calculation).toBe('manual');
    await host.calculate();
    expect(excel.application.calculated).toBe(1);
  });
});

describe('an address in an event', () => {
  it.each([
    ['C5', { row: 4, column: 2, rows: 1, columns: 1 }],
    ['$AA$10:$AB$12', { row: 9, column: 26, rows: 3, columns: 2 }],
    ["'My sheet'!A1", { row: 0, column: 0, rows: 1, columns: 1 }],
    ['A1,C3', undefined],
    ['A:A', undefined],
    ['5:6', undefined],
  ])('%s', (address, expected) => {
    expect(areaOf(address)).toEqual(expected);
  });
});
