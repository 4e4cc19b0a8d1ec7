import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { cellAddress } from '../../src/sheets/plan/area';
import { readSchedule } from '../../src/sheets/schedule/reading';
import { violations } from './accessibility';
import { launchBrowser, openPage } from './browser';
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
  // The grid's controls get their names a moment after the grid has made them.
  await expect.poll(() => violations(page, 'body')).toEqual([]);

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

test('what is typed beside the grid while the page opens stays there, and a click takes the keys back', async () => {
  const { page } = await openPage(browser, 'workbench.html');
  const line = page.locator('#loom-run-line');
  const typed = 'Van lamp, 5 A, 2.5 m, from Van feed, at least 11 V';
  // As soon as it is there: the grid selects its first cell a moment later.
  await page.waitForFunction(() => {
    document.querySelector<HTMLInputElement>('#loom-run-line')?.focus();
    return document.activeElement?.id === 'loom-run-line';
  });
  await page.keyboard.type(typed, { delay: 60 });
  await page.evaluate(() => window.loomWorkbench!.ready);
  await page.waitForTimeout(1000);
  expect(await line.inputValue()).toBe(typed);
  await page.evaluate(() => window.loomWorkbench!.select('Run schedule', 'A8'));
  await page.keyboard.type('!');
  expect(await line.inputValue()).toBe(`${typed}!`);

  await page
    .locator('canvas[id^="univer-sheet-main-canvas"]')
    .click({ position: { x: 100, y: 330 } });
  await page.keyboard.type('Lamp', { delay: 60 });
  await page.keyboard.press('Enter');
  await expect
    .poll(async () =>
      (await page.evaluate(() => window.loomWorkbench!.host.activeGrid()))?.values.flat(),
    )
    .toContain('Lamp');
  expect(await line.inputValue()).toBe(`${typed}!`);
  await page.close();
});
