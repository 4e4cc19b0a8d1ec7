/** What edits leave in the cells is what a calculation of everything brings, whatever was left out on the way. */
import * as fc from 'fast-check';
import { afterEach, expect, test } from 'vitest';
import { CATALOGUE } from '../../../src/functions/catalogue';
import { watchCalculation } from '../../../src/hosts/workbench/calculation';
import type { Grid } from '../../../src/hosts/workbench/grid';
import { readSheet } from '../../../src/hosts/workbench/read';
import { gridContent } from '../../../src/hosts/workbench/snapshot';
import { scheduleSheets } from '../../../src/sheets/new-schedule';
import { cellAddress } from '../../../src/sheets/plan/area';
import type { GridValue } from '../../../src/sheets/plan/grid';
import type { CellContent } from '../../../src/sheets/plan/plan';
import { withNumbersAsText } from '../../../src/sheets/plan/typed-text';
import { DEMO } from '../../../src/sheets/station/demo';
import { samples } from '../../samples';
import { calculateGrid, openBareGrid, openPlans } from './engine';

let grid: Grid | undefined;
afterEach(() => {
  grid?.univer.dispose();
  grid = undefined;
});

const NOTHING_TAKEN = { sheets: new Set<string>(), names: new Set<string>() };

/** Every cell that holds something, by its sheet and address. */
function cellsOf(of: Grid): ReadonlyMap<string, GridValue> {
  const cells = new Map<string, GridValue>();
  for (const sheet of of.workbook.getSheets()) {
    for (const [row, values] of (readSheet(of, sheet)?.values ?? []).entries()) {
      for (const [column, value] of values.entries()) {
        if (value !== null) cells.set(`${sheet.getSheetName()}!${cellAddress(row, column)}`, value);
      }
    }
  }
  return cells;
}

const differences = (one: ReadonlyMap<string, GridValue>, other: ReadonlyMap<string, GridValue>) =>
  [...new Set([...one.keys(), ...other.keys()])]
    .filter((cell) => one.get(cell) !== other.get(cell))
    .map((cell) => `${cell}: ${String(one.get(cell))} / ${String(other.get(cell))}`);

function put({ workbook }: Grid, sheetName: string, row: number, column: number, to: CellContent) {
  const sheet = workbook.getSheetByName(sheetName)!;
  sheet.getRange(row, column).setValue({ v: null, f: null, ...gridContent(to) });
}

/** Edits one after the other; after every few, all is calculated anew, and no cell may come to anything else. */
async function holdsWhatEditsLeave(
  of: Grid,
  edits: readonly (readonly [sheet: string, row: number, column: number, to: CellContent])[],
  every: number,
): Promise<number> {
  const { settled } = watchCalculation(of);
  let changes = 0;
  for (const [index, edit] of edits.entries()) {
    const before = cellsOf(of);
    put(of, ...edit);
    await settled();
    const left = cellsOf(of);
    if (differences(before, left).length > 0) changes += 1;
    if ((index + 1) % every !== 0) continue;
    await calculateGrid(of);
    expect(differences(left, cellsOf(of)), `after edit ${index}: ${JSON.stringify(edit)}`).toEqual(
      [],
    );
  }
  return changes;
}

const RUNS = 10;
const TYPED = [null, '5 A', '30 A', '60 W', '3', '10 ft', '40 ft', '2.5 m', '12 AWG', '2/0 AWG'];
const ODD = ['far', 0, -1, 'battery', 'Van feed', 'Relay set', 11.5, 9, '50 %', 'yes', 'aluminum'];

test('in the sheets of the demonstration', { timeout: 300_000 }, async () => {
  const { count } = samples({ all: 80, usual: 8 });
  // Enough for a feeder of feeders, and quicker by half than all of them.
  const content = { ...DEMO, runs: DEMO.runs.slice(0, RUNS) };
  const plans = scheduleSheets(content, 'cells', NOTHING_TAKEN).map(withNumbersAsText);
  grid = await openPlans(CATALOGUE, plans);
  const entries = plans.flatMap(({ name, entries: rules }) =>
    rules.map(({ area }) => ({ name, area })),
  );
  const edit = fc
    .tuple(
      fc.constantFrom(...entries),
      fc.nat(RUNS - 1),
      fc.nat(10),
      fc.constantFrom(...TYPED, ...TYPED, ...ODD),
    )
    .map(([{ name, area }, down, across, to]) => {
      const row = area.row + (down % area.rows);
      return [name, row, area.column + (across % area.columns), to] as const;
    });
  const changes = await holdsWhatEditsLeave(grid, fc.sample(edit, { seed: 31, numRuns: count }), 4);
  expect(changes).toBeGreaterThan(count / 2);
});

/** Sums, a list that spills and what reads one cell of it, a function of chance, texts, and empty text. */
const SMALL: readonly (readonly CellContent[])[] = [
  [3, { formula: '=SUM(A1:A4)' }, { formula: '=A1:A4*2' }, { formula: '=C3+1' }, 1],
  [4, { formula: '=IF(B1>10,"much","little")' }, null, { formula: '=SUM(C1:C4)+B1' }, null],
  [5, { formula: '=B2&"!"' }, null, { formula: '=IF(A1>3,C2,D1)' }, null],
  [0, { formula: '=LEN(B3)+A4' }, null, { formula: '=A4=""' }, null],
  ['', { formula: '=IFERROR(A1/A4,"none")' }, null, { formula: '=D4&B5' }, null],
];
const VALUES = [null, 0, 1, 3, 4, 12, '', 'text', true, -2.5];

test('in a small sheet, of lists that spill, texts and blanks', async () => {
  const cellData = Object.fromEntries(
    SMALL.map((contents, row) => [
      row,
      Object.fromEntries(contents.map((content, column) => [column, gridContent(content)])),
    ]),
  );
  grid = openBareGrid([], [{ name: 'One', rowCount: 20, columnCount: 8, cellData }]);
  await calculateGrid(grid);
  const edit: fc.Arbitrary<[number, number, CellContent]> = fc.oneof(
    { weight: 4, arbitrary: fc.tuple(fc.nat(4), fc.constant(0), fc.constantFrom(...VALUES)) },
    {
      weight: 1,
      arbitrary: fc.tuple(
        fc.constant(0),
        fc.constant(5),
        fc.constantFrom({ formula: '=F2+1' }, { formula: '=E1+1' }, 7),
      ),
    },
  );
  const edits = fc.sample(edit, { seed: 31, numRuns: 40 }).map((one) => ['One', ...one] as const);
  const changes = await holdsWhatEditsLeave(grid, edits, 1);
  expect(changes).toBeGreaterThan(20);
});
