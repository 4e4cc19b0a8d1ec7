/** What edits, undo, and rows put in leave in the page is what a calculation of everything brings. */
import * as fc from 'fast-check';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Grid } from '../../src/hosts/workbench/grid';
import { cellAddress } from '../../src/sheets/plan/area';
import type { GridValue } from '../../src/sheets/plan/grid';
import { scheduleSheets } from '../../src/sheets/new-schedule';
import { ROW } from '../../src/sheets/schedule/layout';
import { DEMO } from '../../src/sheets/station/demo';
import { samples } from '../samples';
import { launchBrowser } from './browser';
import { openWorkbench } from './workbench-page';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

const PLANS = scheduleSheets(DEMO, 'cells', { sheets: new Set(), names: new Set() });
const [{ name: SCHEDULE }] = PLANS as [(typeof PLANS)[number]];
const ENTRIES = PLANS.flatMap(({ name, entries }) =>
  entries.filter(({ workedOut }) => workedOut !== true).map(({ area }) => ({ name, area })),
);
const TYPED: readonly GridValue[] = [
  ...['5 A', '30 A', '60 W', '3', '10 ft', '40 ft', '12 AWG', 'far', 'battery', 'Hut trunk'],
  ...['Relay set', 'yes', 'no', 0, 11.5, null, null, '=2*3', '=ROUNDUP(3.2,0)', '=Supply!B5'],
];

/** The pane's host as it is made, with the grid in it. */
interface Held {
  readonly grid: Grid;
}

interface Write {
  readonly kind: 'write';
  readonly sheet: string;
  readonly address: string;
  readonly to: GridValue;
}
type Act = Write | { readonly kind: 'undo' | 'redo' } | { kind: 'row'; row: number };

const write = fc
  .tuple(fc.constantFrom(...ENTRIES), fc.nat(27), fc.nat(5), fc.constantFrom(...TYPED))
  .map(([{ name, area }, down, across, to]): Write => {
    const [row, column] = [area.row + (down % area.rows), area.column + (across % area.columns)];
    return { kind: 'write', sheet: name, address: cellAddress(row, column), to };
  });
const act = fc.oneof<fc.WeightedArbitrary<Act>[]>(
  { weight: 8, arbitrary: write },
  { weight: 2, arbitrary: fc.constant({ kind: 'undo' }) },
  { weight: 1, arbitrary: fc.constant({ kind: 'redo' }) },
  { weight: 1, arbitrary: fc.nat(20).map((row) => ({ kind: 'row', row: ROW.first + row })) },
);
/** A whole calculation after each would take most of the time. */
const EVERY = 4;

test('as hurried hands do it', async () => {
  const { page, write: type } = await openWorkbench(browser);
  const calculated = () => page.evaluate(() => window.loomWorkbench!.calculated());
  const cells = async () => {
    const grids = await page.evaluate(() => window.loomWorkbench!.host.allGrids());
    return grids.flatMap(({ sheetName, values }) =>
      values.flatMap((line, row) =>
        line.map((value, column) => `${sheetName}!${cellAddress(row, column)}: ${String(value)}`),
      ),
    );
  };
  const does: Record<Act['kind'], (what: never) => Promise<unknown>> = {
    write: ({ sheet, address, to }: Write) => type(sheet, address, to),
    undo: () =>
      page.evaluate(() => (window.loomWorkbench!.host as unknown as Held).grid.api.undo()),
    redo: () =>
      page.evaluate(() => (window.loomWorkbench!.host as unknown as Held).grid.api.redo()),
    row: ({ row }: { row: number }) =>
      page.evaluate(([sheet, at]) => window.loomWorkbench!.insertRow(sheet, at), [
        SCHEDULE,
        row,
      ] as const),
  };
  const { count } = samples({ all: 200, usual: 20 });
  let before = await cells();
  let changes = 0;
  for (const [index, one] of fc.sample(act, { seed: 51, numRuns: count }).entries()) {
    await does[one.kind](one as never);
    // What follows from a change in the grid is done after the command that made it.
    await page.waitForTimeout(200);
    await calculated();
    if (index % EVERY !== EVERY - 1) continue;
    const left = await cells();
    await page.evaluate(() => window.loomWorkbench!.host.calculate());
    const anew = await cells();
    expect(left, `after ${index}: ${JSON.stringify(one)}`).toEqual(anew);
    if (JSON.stringify(left) !== JSON.stringify(before)) changes += 1;
    before = left;
  }
  expect(changes).toBeGreaterThan(count / EVERY / 2);
});
