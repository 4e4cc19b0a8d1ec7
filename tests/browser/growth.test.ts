/** Runs written below the last row of a schedule in the workbench: it grows by them, and all that follows its runs with it. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Browser, BrowserContext } from 'playwright-core';
import type { ComputedGrid, GridValue } from '../../src/sheets/plan/grid';
import { CAUTIONS } from '../../src/sheets/plan/cautions';
import { addInSheets } from '../../src/sheets/book';
import { calculate } from '../../src/sheets/calculate/calculate';
import { CellError } from '../../src/functions/cell';
import { cellAddress } from '../../src/sheets/plan/area';
import { stationOf } from '../../src/lists/grids';
import { BUILT_WRONG } from '../../src/sheets/as-built/formulas';
import { BUILT_ROW, builtColumn, type BuiltKey } from '../../src/sheets/as-built/layout';
import { columnOf, ROW } from '../../src/sheets/schedule/layout';
import { roomyRows } from '../../src/sheets/schedule/sheet';
import { PROTECTION_ROW, protectionColumn } from '../../src/sheets/protection/layout';
import { scheduleNames } from '../../src/sheets/station/naming';
import type { ColumnKey } from '../../src/sheets/station/schedule-keys';
import { launchBrowser } from './browser';
import { typeLines } from './hands';
import { openWorkbench, type WorkbenchPage } from './workbench-page';

const PATIENCE_MS = 180_000;
const SHEET = 'Run schedule 2';
const ROWS = 25;

let browser: Browser;
let context: BrowserContext;
let workbench: WorkbenchPage;

// One schedule for all of them, as a person has it: each leaves it as the next says that it is.
beforeAll(async () => {
  browser = await launchBrowser();
  context = await browser.newContext({ permissions: ['clipboard-read', 'clipboard-write'] });
  workbench = await openWorkbench(context);
  const { page } = workbench;
  const fresh = page.locator('.loom-new-schedule-section');
  await fresh.locator('summary').click();
  for (const label of ['Wire list', 'Parts', 'As built']) await fresh.getByLabel(label).check();
  await page.getByRole('button', { name: 'Insert an empty schedule' }).click();
  await page.getByText(`Inserted “${SHEET}”`).waitFor({ timeout: PATIENCE_MS });
}, PATIENCE_MS);

afterAll(() => browser?.close());

const at = (place: number, key: ColumnKey) =>
  cellAddress(ROW.first + place, columnOf(key)).replaceAll('$', '');
const read = (place: number, key: ColumnKey) => workbench.read(SHEET, at(place, key));
const settled = () => workbench.page.evaluate(() => window.loomWorkbench!.calculated());
async function grids(): Promise<readonly ComputedGrid[]> {
  await settled();
  return workbench.page.evaluate(() => window.loomWorkbench!.host.allGrids());
}
async function keys(address: string): Promise<void> {
  await workbench.select(SHEET, address);
  await workbench.page.evaluate(() => {
    window.loomWorkbench!.host.takeKeys?.();
  });
}
async function paste(address: string, text: string): Promise<void> {
  await workbench.page.evaluate((content) => navigator.clipboard.writeText(content), text);
  await keys(address);
  await workbench.page.keyboard.press('Control+v');
}
const runs = (from: number, count: number) =>
  Array.from({ length: count }, (_, index) =>
    [
      `Run ${from + index}`,
      'Trunk',
      'Lamp',
      `${100 + 7 * (from + index)} mA`,
      `${5 + index} ft`,
    ].join('\t'),
  ).join('\n');

/** Fills the first places of the schedule: a trunk, and runs on it. */
async function fill(places: number): Promise<void> {
  await paste(at(0, 'run'), `Trunk\t\t\t\t6 ft\n${runs(2, places - 1)}`);
  await expect.poll(() => read(places - 1, 'verdict'), { timeout: PATIENCE_MS }).not.toBe(null);
}

const isSame = (found: GridValue, wanted: unknown) =>
  typeof wanted === 'number' && typeof found === 'number'
    ? Math.abs(found - wanted) <= 1e-9 * Math.max(1, Math.abs(wanted))
    : found === wanted;

/** How many rows the schedule has: the cautions stand below the last, and nowhere else. */
function rowsOf(all: readonly ComputedGrid[]): number {
  const { values } = all.find(({ sheetName }) => sheetName === SHEET)!;
  const cautions = values.flatMap(([first], row) =>
    String(first).startsWith(CAUTIONS[0]!) ? [row] : [],
  );
  expect(cautions).toHaveLength(1);
  return cautions[0]! - ROW.first - 1;
}

/** Cells of the schedule's sheets that stand otherwise than our own evaluation has them. */
async function wrongCells(): Promise<string[]> {
  const all = await grids();
  const rows = rowsOf(all);
  const read = stationOf(all, SHEET)!;
  // As it was typed: the reader makes figures of quantities.
  const typed = all.find(({ sheetName }) => sheetName === SHEET)!.values.slice(ROW.first);
  const content = {
    ...read,
    runs: read.runs.map((run, place) => ({
      ...run,
      peak: typed[place]![columnOf('peak')] as string,
      length: typed[place]![columnOf('length')] as string,
    })),
  };
  const plans = addInSheets({ names: scheduleNames(2), references: 'cells', rows }, content);
  const values = calculate(plans);
  return plans.flatMap(({ name, blocks }) => {
    const grid = all.find(({ sheetName }) => sheetName === name)!;
    return blocks.flatMap(({ area, fill, cells }) =>
      Array.from({ length: area.rows }, (_, down) => down).flatMap((down) =>
        Array.from({ length: area.columns }, (_, across) => across).flatMap((across) => {
          const given = cells?.[down]?.[across] ?? null;
          const isFormula =
            given === null ? (fill?.[across] ?? null) !== null : typeof given === 'object';
          if (!isFormula) return [];
          const [row, column] = [area.row + down, area.column + across];
          const value = values.at(name, row, column);
          const wanted = value instanceof CellError ? value.code : value === '' ? null : value;
          const found = grid.values[row]?.[column] ?? null;
          return isSame(found, wanted)
            ? []
            : [`${name}!${cellAddress(row, column)}: ${String(found)}, not ${String(wanted)}`];
        }),
      ),
    );
  });
}

test(
  'a pasted block of thirty is answered on every sheet, and one undo takes it back',
  { timeout: PATIENCE_MS },
  async () => {
    const { page } = workbench;
    await fill(12);
    // What was typed for a run on another sheet stays with it.
    const rated = cellAddress(PROTECTION_ROW.first + 1, protectionColumn('ratedVolts')).replaceAll(
      '$',
      '',
    );
    await workbench.write('Protection 2', rated, 58);
    const before = await grids();
    await paste(at(12, 'run'), runs(13, 30));
    await expect.poll(() => read(41, 'verdict'), { timeout: PATIENCE_MS }).not.toBe(null);
    expect(await wrongCells()).toEqual([]);
    expect(rowsOf(await grids())).toBe(roomyRows(42));
    expect(await workbench.read('Protection 2', rated)).toBe(58);
    const after = await grids();
    const schedule = after.find(({ sheetName }) => sheetName === SHEET)!;
    expect(schedule.values[ROW.title]![columnOf('verdict')]).toMatch(/^42 runs: /);
    expect(String(schedule.values[ROW.title]![columnOf('size')])).not.toMatch(/no answer/);
    // Colours and what belongs into a cell reach as far.
    expect(await workbench.highlight(SHEET, at(41, 'verdict'))).toBe(
      await workbench.highlight(SHEET, at(11, 'verdict')),
    );
    await workbench.select(SHEET, at(41, 'length'));
    await expect.poll(() => workbench.statusText()).toContain('One-way length');

    await keys(at(12, 'run'));
    await page.keyboard.press('Control+z');
    await expect.poll(() => read(12, 'run')).toBe(null);
    expect(await grids()).toEqual(before);
    expect(await wrongCells()).toEqual([]);
    expect(rowsOf(before)).toBe(ROWS);
    await page.keyboard.press('Control+y');
    await expect.poll(() => read(41, 'verdict'), { timeout: PATIENCE_MS }).not.toBe(null);
    expect(await grids()).toEqual(after);
    await page.keyboard.press('Control+z');
    await expect.poll(() => read(12, 'run')).toBe(null);
  },
);

test(
  'a reading is named for its run, and one undo takes back both',
  { timeout: PATIENCE_MS },
  async () => {
    const { page } = workbench;
    const built = 'As built 2';
    const there = (place: number, key: BuiltKey) =>
      cellAddress(BUILT_ROW.first + place, builtColumn(key)).replaceAll('$', '');
    const told = async () => {
      const found = await Promise.all(
        (['forRun', 'amps', 'verdict'] as const).map((key) => workbench.read(built, there(3, key))),
      );
      return found.map((value) => value ?? '');
    };
    const before = await grids();
    expect(await told()).toEqual(['', '', '']);
    await workbench.type(built, there(3, 'amps'), '1.2');
    await expect.poll(told).toEqual(['Run 4', 1.2, BUILT_WRONG.missing]);
    expect(await wrongCells()).toEqual([]);
    await workbench.write(built, there(3, 'forRun'), 'Run 5');
    const remedy = 'is for "Run 5": move its entries there, or write "Run 4" under For run';
    await expect.poll(told).toEqual(['Run 5', 1.2, `row ${BUILT_ROW.first + 4} ${remedy}`]);
    await workbench.select(built, there(3, 'amps'));
    await page.evaluate(() => {
      window.loomWorkbench!.host.takeKeys?.();
    });
    await page.keyboard.press('Control+z');
    await expect.poll(told).toEqual(['Run 4', 1.2, BUILT_WRONG.missing]);
    await page.keyboard.press('Control+z');
    await expect.poll(told).toEqual(['', '', '']);
    expect(await grids()).toEqual(before);
    // Below the last run there is none to name.
    await workbench.type(built, there(20, 'amps'), '3');
    await expect.poll(() => workbench.read(built, there(20, 'verdict'))).toBe(BUILT_WRONG.noRun);
    expect(await workbench.read(built, there(20, 'forRun'))).toBe(null);
    await workbench.write(built, there(20, 'amps'), null);
    expect(await grids()).toEqual(before);
  },
);

test(
  'a schedule filled to its last row makes room for a row put in, which one undo takes back',
  { timeout: PATIENCE_MS },
  async () => {
    const { page } = workbench;
    // Twelve stand there from before.
    await paste(at(12, 'run'), runs(13, ROWS - 12));
    await expect.poll(() => read(ROWS - 1, 'verdict'), { timeout: PATIENCE_MS }).not.toBe(null);
    const before = await grids();
    await page.evaluate(
      ([sheet, row]) => {
        window.loomWorkbench!.insertRow(sheet, row);
      },
      [SHEET, ROW.first + 3] as const,
    );
    await expect.poll(() => read(3, 'run')).toBe(null);
    expect(await read(ROWS, 'run')).toBe(`Run ${ROWS}`);
    await expect.poll(() => read(ROWS, 'verdict'), { timeout: PATIENCE_MS }).not.toBe(null);
    await keys(at(0, 'run'));
    await page.keyboard.press('Control+z');
    await expect.poll(() => read(3, 'run')).toBe('Run 4');
    expect(await grids()).toEqual(before);
  },
);

test(
  'where something stands below, nothing moves and it is said',
  { timeout: PATIENCE_MS },
  async () => {
    expect(await read(ROWS - 1, 'verdict')).not.toBe(null);
    const mine = cellAddress(ROW.first + ROWS, columnOf('size')).replaceAll('$', '');
    await workbench.write(SHEET, mine, 'my own sum');
    const before = await grids();
    await keys(at(ROWS, 'run'));
    await typeLines(
      workbench.page,
      [
        ['Gate', 'Trunk', '', '5 A', '9 ft'],
        ['Bell', 'Trunk', '', '1 A', '9 ft'],
      ],
      80,
    );
    await expect.poll(() => workbench.statusText()).toContain(`something stands in ${mine}`);
    const after = await grids();
    expect(
      String(
        after.find(({ sheetName }) => sheetName === SHEET)!.values[ROW.title]![columnOf('size')],
      ),
    ).toMatch(/no answer/);
    const others = (all: readonly ComputedGrid[]) =>
      all.filter(({ sheetName }) => sheetName !== SHEET);
    expect(others(after)).toEqual(others(before));

    // Out of the way, and they are taken in.
    await workbench.write(SHEET, mine, null);
    await expect.poll(() => read(ROWS + 1, 'verdict'), { timeout: PATIENCE_MS }).not.toBe(null);
    expect(await wrongCells()).toEqual([]);
  },
);

test(
  'a run typed below a full schedule loses no key; rows and lines go in there as well',
  { timeout: PATIENCE_MS },
  async () => {
    const { page } = workbench;
    // Those of before went in; full again from there.
    const full = rowsOf(await grids());
    await paste(at(ROWS + 2, 'run'), runs(ROWS + 3, full - ROWS - 2));
    await expect.poll(() => read(full - 1, 'verdict'), { timeout: PATIENCE_MS }).not.toBe(null);
    await keys(at(full, 'run'));
    const typed = [
      ['Gate', 'trunk', 'Motor', '5 A', `8' 6"`],
      ['Bell', 'trunk', 'Bell', '300 mA', '2,5 m'],
    ];
    await typeLines(page, typed, 40);
    await expect.poll(() => read(full + 1, 'verdict'), { timeout: PATIENCE_MS }).not.toBe(null);
    for (const [row, cells] of typed.entries()) {
      const found = await Promise.all(
        (['run', 'fedFrom', 'load', 'peak', 'length'] as const).map((key) => read(full + row, key)),
      );
      expect(found).toEqual(cells);
    }
    expect(await read(full, 'draw')).toBe(5);
    expect(await wrongCells()).toEqual([]);
    // As many as were wanted when it had the time to grow.
    const rows = rowsOf(await grids());

    // Full again: a line of the pane, and a row put in among the others.
    await paste(at(full + 2, 'run'), runs(200, rows - full - 2));
    await expect.poll(() => read(rows - 1, 'verdict'), { timeout: PATIENCE_MS }).not.toBe(null);
    await page.locator('#loom-run-line').fill('Horn, 2 A, 9 ft, from Trunk');
    await page.locator('#loom-run-line').press('Enter');
    await expect.poll(() => read(rows, 'verdict'), { timeout: PATIENCE_MS }).not.toBe(null);
    expect(await read(rows, 'run')).toBe('Horn');
    await expect
      .poll(() => page.locator('.loom-run-section .loom-notice').first().textContent(), {
        timeout: PATIENCE_MS,
      })
      .toMatch(/AWG/);
    expect(await wrongCells()).toEqual([]);
    expect(rowsOf(await grids())).toBe(roomyRows(rows + 1));
  },
);
