import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { cellAddress } from '../../src/sheets/plan/area';
import { readSchedule } from '../../src/sheets/schedule/reading';
import { violations } from './accessibility';
import { launchBrowser } from './browser';
import { typeLines } from './hands';
import { openWorkbench } from './workbench-page';

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser?.close();
});

test('a schedule is inserted and a run typed without a mouse, on a page without violations', async () => {
  const workbench = await openWorkbench(browser);
  const { page } = workbench;
  const press = (key: string) => page.keyboard.press(key);
  const focused = () => page.evaluate(() => (document.activeElement?.textContent ?? '').trim());
  const isInGrid = () =>
    page.evaluate(() => document.activeElement?.getAttribute('data-u-comp') === 'editor');
  await page.locator('.loom-counts li').first().waitFor();
  expect(await violations(page, 'body')).toEqual([]);

  // From the grid, where the keyboard is at first, to the pane; by Esc and Tab as well.
  await expect.poll(isInGrid).toBe(true);
  const isOnLine = () => page.evaluate(() => document.activeElement?.id === 'loom-run-line');
  await press('F6');
  expect(await isOnLine()).toBe(true);
  await press('Shift+F6');
  expect(await isInGrid()).toBe(true);
  await press('Escape');
  await press('Tab');
  expect(await isOnLine()).toBe(true);
  for (let tabs = 0; (await focused()) !== 'Insert an empty schedule'; tabs += 1) {
    expect(tabs).toBeLessThan(8);
    await press('Tab');
  }
  await press('Enter');
  await page.getByText('Inserted “Run schedule 2”').waitFor();

  // The first run's name is what the keys go to.
  expect(await isInGrid()).toBe(true);
  const { sheetName, values } = await workbench.activeGrid();
  const { headerRow, columnOf } = readSchedule(values)!;
  const at = (key: 'target') => cellAddress(headerRow + 1, columnOf[key]);
  // A hurried person does not wait for the calculation, nor for one key's effect before the next.
  const typed = [
    ['Beacon trunk', '', '', '', '6 ft'],
    ['Beacon', 'beacon trunk', 'Carry-out case', '12345 mA', `8' 6"`],
    ['Lamp', 'Beacon trunk', 'Lamp', '1,5', '120 cm'],
  ];
  await typeLines(page, typed, 40);
  const shown = await workbench.activeGrid();
  expect(
    typed.map((cells, row) =>
      cells.map((_, offset) =>
        String(shown.values[headerRow + 1 + row]?.[columnOf.run + offset] ?? ''),
      ),
    ),
  ).toEqual(typed);

  // What a cell does not take stays in it, and the line says what is wrong.
  await workbench.type(sheetName, at('target'), '-3');
  await expect.poll(() => workbench.statusText()).toContain('“-3” is not what this cell asks for');
  expect(await workbench.read(sheetName, at('target'))).toBe(-3);
  expect(await page.locator('[role="dialog"]:visible').count()).toBe(0);

  // Results that come in the middle of a word leave it as it is typed.
  const first = cellAddress(headerRow + 1, columnOf.run);
  await workbench.select(sheetName, first);
  await page.keyboard.type('Slow ');
  await page.evaluate(() => window.loomWorkbench!.host.calculate());
  await page.keyboard.type('hands');
  await page.keyboard.press('Enter');
  await expect.poll(() => workbench.read(sheetName, first)).toBe('Slow hands');
  expect(await page.locator('#grid').textContent()).not.toContain('progress.');
  await page.close();
});
