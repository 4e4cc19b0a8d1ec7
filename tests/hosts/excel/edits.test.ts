/** What the pane changes in a schedule that stands in Excel already. */
import { expect, it } from 'vitest';
import { cellsInOrder, rowSpan, withRows } from '../../../src/lists/row-order';
import type { GridValue } from '../../../src/sheets/plan/grid';
import { newSchedule } from '../../../src/sheets/new-schedule';
import { columnOf, ROW } from '../../../src/sheets/schedule/layout';
import { DEMO } from '../../../src/sheets/station/demo';
import { COLUMN_KEYS, type ColumnKey } from '../../../src/sheets/station/schedule-keys';
import { patientHost, workbook } from './stand-in';

async function openDemo() {
  const excel = workbook();
  const host = patientHost();
  const plans = newSchedule('demo', host.references, await host.taken());
  await host.insert(plans);
  const name = plans[0]!.name;
  const at = (place: number, key: ColumnKey) => {
    const cell = excel.sheetNamed(name)!.at(ROW.first + place, columnOf(key));
    return (cell?.formula ?? cell?.value ?? null) as GridValue;
  };
  return { excel, host, name, at };
}

const cell = (place: number, key: ColumnKey, content: string | number | null) => ({
  row: ROW.first + place,
  column: columnOf(key),
  content,
});

it('types quantities as text, names that look like formulas as text, numbers as numbers', async () => {
  const { host, name, at } = await openDemo();
  const place = DEMO.runs.length;
  await host.edits.type(name, [
    cell(place, 'run', '=Lamp'),
    cell(place, 'peak', '5 A'),
    cell(place, 'length', '12/11'),
    cell(place, 'leastVolts', 11.5),
    cell(0, 'load', null),
  ]);
  expect(at(place, 'run')).toBe('=Lamp');
  expect(at(place, 'peak')).toBe('5 A');
  expect(at(place, 'length')).toBe('12/11');
  expect(at(place, 'leastVolts')).toBe(11.5);
  expect(at(0, 'load') ?? '').toBe('');
  expect(at(1, 'load')).toBe(DEMO.runs[1]!.load);
});

it('puts formulas back and leaves what is typed', async () => {
  const { host, name, at } = await openDemo();
  const formula = at(2, 'verdict');
  expect(String(formula)).toMatch(/^=/);
  await host.edits.type(name, [cell(2, 'verdict', 'ok'), cell(2, 'peak', '9 A')]);
  expect(at(2, 'verdict')).toBe('ok');
  const fill = {
    from: ROW.first,
    to: ROW.first + 2,
    columns: [columnOf('verdict'), columnOf('mend')],
  };
  await host.edits.fillRows(name, [fill], COLUMN_KEYS.length);
  expect(at(2, 'verdict')).toBe(formula);
  expect(at(2, 'peak')).toBe('9 A');
});

it('moves the entries of runs, and brings back formulas where a figure was typed over one', async () => {
  const { host, name, at } = await openDemo();
  const typed = DEMO.runs.findLastIndex(({ volts }) => volts !== undefined);
  const formula = at(typed + 1, 'volts');
  expect(at(typed, 'volts')).toBe(DEMO.runs[typed]!.volts);
  expect(String(formula)).toMatch(/^=/);
  const grids = await host.allGrids();
  const span = rowSpan(grids.find(({ sheetName }) => sheetName === name)!)!;
  expect(span).toMatchObject({ first: ROW.first, used: DEMO.runs.length });
  const names = () =>
    Array.from({ length: DEMO.runs.length + 1 }, (_, place) => at(place, 'run') ?? '');
  await host.edits.rearrange(cellsInOrder(grids, name, withRows(span, typed, 1)!));
  const runs = DEMO.runs.map(({ run }) => run);
  expect(names()).toEqual([...runs.slice(0, typed), '', ...runs.slice(typed)]);
  expect(at(typed, 'volts')).toBe(formula);
  expect(at(typed + 1, 'volts')).toBe(DEMO.runs[typed]!.volts);
});

it('shows and hides columns, and knows which are out of sight', async () => {
  const { host, name } = await openDemo();
  const notes = columnOf('notes');
  await host.edits.showColumns(name, [notes], true);
  expect(await host.edits.hiddenColumns(name, notes + 1)).not.toContain(notes);
  await host.edits.showColumns(name, [notes], false);
  expect(await host.edits.hiddenColumns(name, notes + 1)).toContain(notes);
});

it('says in a sentence what Excel refused, and changes nothing', async () => {
  const { excel, host, name, at } = await openDemo();
  excel.sheetNamed(name)!.isProtected = true;
  const before = at(0, 'run');
  await expect(host.edits.type(name, [cell(0, 'run', 'Else')])).rejects.toThrow(
    /It could not be written.*\./,
  );
  expect(at(0, 'run')).toBe(before);
});
