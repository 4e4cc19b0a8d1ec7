/** Runs put into a schedule by a person: in one line, as a row between others, under another name. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Browser } from 'playwright-core';
import { columnOf, ROW } from '../../src/sheets/schedule/layout';
import { cellAddress } from '../../src/sheets/plan/area';
import { DEMO } from '../../src/sheets/station/demo';
import type { ColumnKey } from '../../src/sheets/station/schedule-keys';
import { launchBrowser } from './browser';
import { openWorkbench, type WorkbenchPage } from './workbench-page';

const SHEET = 'Run schedule';
let browser: Browser;
let workbench: WorkbenchPage;

beforeAll(async () => {
  browser = await launchBrowser();
  workbench = await openWorkbench(browser);
});
afterAll(() => browser.close());

const at = (place: number, key: ColumnKey) =>
  cellAddress(ROW.first + place, columnOf(key)).replaceAll('$', '');
const read = (place: number, key: ColumnKey) => workbench.read(SHEET, at(place, key));
const section = () => workbench.page.locator('.loom-run-section');

it('a line adds a run and answers in a sentence', async () => {
  const place = DEMO.runs.length;
  await section()
    .locator('#loom-run-line')
    .fill('Van lamp, 5 A, 2.5 m, from Van feed, at least 11 V');
  await section().locator('#loom-run-line').press('Enter');
  await expect
    .poll(() => section().locator('.loom-notice').textContent())
    .toMatch(/Peak load: 5 A.*AWG, [\d.]+ A fuse, [\d.]+ V at .*: /);
  expect(await read(place, 'peak')).toBe('5 A');
  expect(await read(place, 'draw')).toBe(5);
  expect(Number(await read(place, 'oneWay'))).toBeCloseTo(2.5 / 0.3048, 9);
});

it('a row put between others has its formulas, and keeps the others right', async () => {
  const before = await read(2, 'run');
  await workbench.page.evaluate(
    ([name, row]) => {
      window.loomWorkbench!.insertRow(name, row);
    },
    [SHEET, ROW.first + 2] as const,
  );
  await expect.poll(() => read(2, 'place')).toBe(3);
  expect(await read(3, 'run')).toBe(before);
  await expect.poll(() => read(3, 'place')).toBe(4);
});
