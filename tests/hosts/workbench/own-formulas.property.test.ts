/** What our own evaluation leaves in the sheets of a grid, beside new sheets with the same entries. */
import { setTimeout } from 'node:timers/promises';
import * as fc from 'fast-check';
import { afterEach, expect, test } from 'vitest';
import { CATALOGUE } from '../../../src/functions/catalogue';
import { CellError, type Cell } from '../../../src/functions/cell';
import { watchCalculation } from '../../../src/hosts/workbench/calculation';
import type { Grid } from '../../../src/hosts/workbench/grid';
import { readCell, readSheet } from '../../../src/hosts/workbench/read';
import { gridContent } from '../../../src/hosts/workbench/snapshot';
import { calculate } from '../../../src/sheets/calculate/calculate';
import { scheduleSheets } from '../../../src/sheets/new-schedule';
import { cellAddress } from '../../../src/sheets/plan/area';
import type { GridValue } from '../../../src/sheets/plan/grid';
import type { CellContent } from '../../../src/sheets/plan/plan';
import { withNumbersAsText } from '../../../src/sheets/plan/typed-text';
import { columnOf, ROW } from '../../../src/sheets/schedule/layout';
import type { ScheduleRun } from '../../../src/sheets/station/run';
import { DEMO } from '../../../src/sheets/station/demo';
import { samples } from '../../samples';
import { calculateGrid, openPlans } from './engine';

const grids: Grid[] = [];
afterEach(() => {
  for (const grid of grids.splice(0)) grid.univer.dispose();
});

const NOTHING_TAKEN = { sheets: new Set<string>(), names: new Set<string>() };
const RUNS = 10;
/** With the unit beside each load, as it stands in the sheet. */
const RUNS_OF_DEMO = DEMO.runs
  .slice(0, RUNS)
  .map(({ kind, ...run }): ScheduleRun => (kind === 'W' ? { ...run, peak: `${run.peak} W` } : run));
const PLANS = scheduleSheets({ ...DEMO, runs: RUNS_OF_DEMO }, 'cells', NOTHING_TAKEN).map(
  withNumbersAsText,
);
const SCHEDULE = PLANS[0]!.name;
/** The first column past ours. */
const BESIDE = Math.max(
  ...PLANS[0]!.blocks.map(({ area: { column, columns } }) => column + columns),
);

interface Watched {
  readonly grid: Grid;
  readonly settled: () => Promise<void>;
}

async function opened(): Promise<Watched> {
  const grid = await openPlans(CATALOGUE, PLANS, 'our evaluation');
  grids.push(grid);
  const { settled } = watchCalculation(grid);
  // A sheet of a person's own beside ours.
  grid.workbook.create('Mine', 30, 10);
  await calculateGrid(grid);
  await settled();
  return { grid, settled };
}

function cellsOf({ grid }: Watched): ReadonlyMap<string, GridValue> {
  const cells = new Map<string, GridValue>();
  for (const sheet of grid.workbook.getSheets()) {
    for (const [row, values] of (readSheet(grid, sheet)?.values ?? []).entries()) {
      for (const [column, value] of values.entries()) {
        if (value !== null) cells.set(`${sheet.getSheetName()}!${cellAddress(row, column)}`, value);
      }
    }
  }
  return cells;
}

type Edit = readonly [sheet: string, row: number, column: number, to: CellContent];

async function put({ grid, settled }: Watched, [name, row, column, to]: Edit): Promise<void> {
  const sheet = grid.workbook.getSheetByName(name)!;
  sheet.getRange(row, column).setValue({ v: null, f: null, ...gridContent(to) });
  await settled();
}

type Key = Parameters<typeof columnOf>[0];

const inSchedule = (key: Key, run: number, to: CellContent): Edit => [
  SCHEDULE,
  ROW.first + run,
  columnOf(key),
  to,
];

const TYPED: readonly (readonly [Key & keyof ScheduleRun, readonly (string | number | null)[]])[] =
  [
    ['run', ['Ridge repeater', 'Ridge repeater', null]],
    ['peak', [null, '5 A', '30 A', '60 W', '800 mA', 'much']],
    ['length', [null, '10 ft', '40 ft', '2.5 m', '3', 'far']],
    ['fedFrom', ['battery', 'Hut trunk', 'Ridge repeater', 'nowhere', null]],
    ['ownSize', [null, '12 AWG', '2/0 AWG', 'thick']],
    ['fused', [null, 'yes', 'no']],
    ['leastVolts', [null, 11.5, 9]],
    ['target', [null, 0.02, 0.05]],
  ];

test('edits in the sheets of the demonstration', { timeout: 300_000 }, async () => {
  const { count } = samples({ all: 120, usual: 24 });
  const edit = fc
    .nat(RUNS - 1)
    .chain((run) =>
      fc
        .constantFrom(...TYPED)
        .chain(([key, values]) => fc.constantFrom(...values).map((to) => ({ run, key, to }))),
    );
  const ours = await opened();
  const entries: Record<number, Partial<ScheduleRun>> = {};
  let changes = 0;
  for (const { run, key, to } of fc.sample(edit, { seed: 32, numRuns: count })) {
    const before = answersOf(ours);
    entries[run] = { ...entries[run], [key]: to ?? undefined };
    await put(ours, inSchedule(key, run, to));
    const now = answersOf(ours);
    expect(now, JSON.stringify(entries)).toEqual(answersWith(entries));
    if (JSON.stringify(now) !== JSON.stringify(before)) changes += 1;
  }
  expect(changes).toBeGreaterThan(count / 3);
});

const mine = (row: number, column: number, to: CellContent): Edit => ['Mine', row, column, to];
const at = (key: Key, run: number) =>
  `'${SCHEDULE}'!${cellAddress(ROW.first + run, columnOf(key))}`;

/** What a person reads of each run. */
function answers(at: (row: number, column: number) => Cell): unknown[][] {
  return (['verdict', 'mend', 'size', 'fuse', 'pathDrop', 'lowVolts'] as const).map((key) =>
    Array.from({ length: RUNS }, (_, run) => {
      const value = at(ROW.first + run, columnOf(key));
      return value instanceof CellError ? value.code : value === '' ? null : value;
    }),
  );
}

const answersOf = ({ grid }: Watched) => {
  const sheet = grid.workbook.getSheetByName(SCHEDULE)!;
  return answers((row, column) => readCell(grid, sheet, row, column));
};

test('an entry that a formula works out is what it comes to', async () => {
  const [typed, worked] = [await opened(), await opened()];
  const before = answersOf(typed);
  await put(typed, inSchedule('length', 3, 70));
  await put(worked, inSchedule('length', 3, { formula: '=2*30+10' }));
  await put(typed, inSchedule('peak', 4, '40 W'));
  await put(worked, inSchedule('peak', 4, { formula: '=ROUNDUP(39.5,0)&" W"' }));
  expect(answersOf(worked)).toEqual(answersOf(typed));
  expect(answersOf(typed)).not.toEqual(before);
});

test('a person’s own sheet has its errors and their reasons from the engine', async () => {
  const { grid, settled } = await opened();
  const sheet = grid.workbook.getSheetByName('Mine')!;
  sheet.getRange(0, 0).setValue({ f: '=LOOM.RUN_OHMS(6,"ft","far")' });
  await settled();
  expect(grid.sentences.find(sheet.getSheetId(), 0, 0, '#VALUE!')).toContain('far');
});

/** What new sheets come to where runs have other entries, by their places. */
function answersWith(entries: Readonly<Record<number, Partial<ScheduleRun>>>): unknown[][] {
  const runs = RUNS_OF_DEMO.map((run, at) => ({ ...run, ...entries[at] }));
  const plans = scheduleSheets({ ...DEMO, runs }, 'cells', NOTHING_TAKEN).map(withNumbersAsText);
  const values = calculate(plans);
  return answers((row, column) => values.at(SCHEDULE, row, column));
}

test('formulas of people that read ours, and that ours read', { timeout: 60_000 }, async () => {
  const ours = await opened();
  const leastVolts: Record<number, number> = {};
  const holds = async (edit: Edit, now: Readonly<Record<number, number>> = {}) => {
    Object.assign(leastVolts, now);
    await put(ours, edit);
    const entries = Object.entries(leastVolts).map(([run, volts]) => [run, { leastVolts: volts }]);
    expect(answersOf(ours), JSON.stringify(edit)).toEqual(
      answersWith(Object.fromEntries(entries) as Record<number, Partial<ScheduleRun>>),
    );
  };
  const formula = (run: number, text: string) => inSchedule('leastVolts', run, { formula: text });
  // In the language of our evaluation and beyond it, as entries.
  await holds(formula(3, '=2*5+1'), { 3: 11 });
  await holds(formula(4, '=ROUNDUP(PI(),0)*3'), { 4: 12 });
  // Figures of a person's own sheet, given and worked out.
  await holds(mine(0, 0, 11.6));
  await holds(formula(5, '=Mine!A1'), { 5: 11.6 });
  await holds(mine(0, 0, 12.9), { 5: 12.9 });
  await holds(mine(1, 0, { formula: '=ROUNDUP(A1-1,0)' }));
  await holds(formula(6, '=Mine!A2+1'), { 6: 13 });
  await holds(mine(0, 0, 10), { 5: 10, 6: 10 });
  // There and back: a person's formula reads ours, and one of ours reads that.
  await holds(mine(2, 0, { formula: `=ROUNDUP(${at('leastVolts', 6)},1)` }));
  await holds(formula(7, '=Mine!A3'), { 7: 10 });
  await holds(mine(0, 0, 13.4), { 5: 13.4, 6: 14, 7: 14 });
  await holds(mine(0, 0, null), { 5: 0, 6: 0, 7: 0 });
  await holds(mine(0, 0, 8), { 5: 8, 6: 8, 7: 8 });
  // A list that spills, read by ours where it spills to.
  await holds(mine(5, 0, { formula: '=A1:A3*1' }));
  await holds(formula(8, '=Mine!A8'), { 8: 8 });
  await holds(mine(0, 0, 12.5), { 5: 12.5, 6: 13, 7: 13, 8: 13 });
  // Beside our columns, on what ours come to.
  await put(ours, [SCHEDULE, ROW.first, BESIDE, { formula: `=UPPER(${at('verdict', 0)})` }]);
  await put(ours, inSchedule('fedFrom', 0, 'nowhere'));
  const verdict = String(answersOf(ours)[0]![0]);
  expect(verdict).not.toBe('ok');
  const beside = cellsOf(ours).get(`${SCHEDULE}!${cellAddress(ROW.first, BESIDE)}`);
  expect(beside).toBe(verdict.toUpperCase());
});

test('an entry that leads back to itself by a person’s formula ends, and heals', async () => {
  const ours = await opened();
  await put(ours, mine(2, 0, { formula: `=ROUNDUP(${at('leastVolts', 6)},0)+1` }));
  await put(ours, inSchedule('leastVolts', 6, { formula: '=Mine!A3' }));
  await put(ours, inSchedule('leastVolts', 6, 11));
  expect(answersOf(ours)).toEqual(answersWith({ 6: { leastVolts: 11 } }));
});

test('edits that come while others are calculated are all taken up', async () => {
  const ours = await opened();
  const { grid, settled } = ours;
  const sheet = grid.workbook.getSheetByName(SCHEDULE)!;
  const lengths = Array.from({ length: RUNS }, (_, run) => `${20 + run} ft`);
  // A calculation begins a tenth of a second after what it is for, and takes as long: each comes in the middle of one.
  for (const pauseMs of [115, 150, 103]) {
    for (const [run, length] of lengths.entries()) {
      sheet.getRange(ROW.first + run, columnOf('length')).setValue(`${pauseMs + run} ft`);
      await setTimeout(pauseMs);
      sheet.getRange(ROW.first + run, columnOf('length')).setValue(length);
      // One of another calculation of everything, which takes longest.
      if (run === 4) grid.api.getFormula().executeCalculation();
    }
    await settled();
    expect(answersOf(ours)).toEqual(
      answersWith(Object.fromEntries(lengths.map((length, run) => [run, { length }]))),
    );
  }
});

test('a row put into a person’s sheet, a sheet of ours renamed, and one removed', async () => {
  const ours = await opened();
  const { grid, settled } = ours;
  const sheet = (name: string) => grid.workbook.getSheetByName(name)!;
  const holds = async (entries: Partial<ScheduleRun>) => {
    await settled();
    expect(answersOf(ours)).toEqual(answersWith({ 3: entries }));
  };
  const length = () => sheet(SCHEDULE).getRange(ROW.first + 3, columnOf('length'));
  const leastVolts = sheet(SCHEDULE).getRange(ROW.first + 3, columnOf('leastVolts'));

  await put(ours, mine(0, 0, 11.9));
  leastVolts.setValue({ f: '=Mine!A1' });
  await holds({ leastVolts: 11.9 });
  sheet('Mine').insertRowsBefore(0, 2);
  await holds({ leastVolts: 11.9 });
  sheet('Mine').getRange(2, 0).setValue(12.4);
  await holds({ leastVolts: 12.4 });

  sheet('Supply').setName('Of the hut');
  await holds({ leastVolts: 12.4 });
  length().setValue('12 ft');
  await holds({ leastVolts: 12.4, length: '12 ft' });

  grid.workbook.deleteSheet(sheet('Mine'));
  await settled();
  expect(answersOf(ours)[0]![3]).toBe('check the entries');
  leastVolts.setValue({ v: 12.2, f: null });
  await holds({ leastVolts: 12.2, length: '12 ft' });
});
