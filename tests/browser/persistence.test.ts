import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import type { GridValue } from '../../src/sheets/plan/grid';
import { violations } from './accessibility';
import { launchBrowser } from './browser';
import { openWorkbench } from './workbench-page';

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser?.close();
});

const isReady = (page: Page) =>
  page.waitForFunction(() => document.documentElement.dataset['ready'] === 'true');
/** The grid keeps fifteen digits of what it computes; a new sheet holds all of them. */
const rounded = (values: readonly (readonly GridValue[])[]) =>
  values.map((row) =>
    row.map((value) => (typeof value === 'number' ? Number(value.toPrecision(12)) : value)),
  );
const kept = (page: Page) => page.locator('#kept').textContent();

test('what was typed, and what follows from it, stands there again after a reload', async () => {
  // Tabs share what is kept within one context only.
  const context = await browser.newContext();
  const { page, write, read, activeGrid, trouble } = await openWorkbench(context);
  const { sheetName } = await activeGrid();
  const named = await read(sheetName, 'A10');
  await write(sheetName, 'A10', 'Ridge repeater');
  await page.evaluate(() => window.loomWorkbench!.calculated());
  await expect.poll(() => kept(page)).toBe('Kept in this browser');
  const before = await activeGrid();

  await page.reload();
  await isReady(page);
  expect(await read(sheetName, 'A10')).toBe('Ridge repeater');
  const after = await activeGrid();
  expect(after.sheetName).toBe(before.sheetName);
  expect(rounded(after.values)).toEqual(rounded(before.values));
  await page.getByText(`“${sheetName}”: `).waitFor();
  expect(trouble.pageErrors).toEqual([]);

  // A second tab is told, and what is typed there is not kept.
  const other = await context.newPage();
  await other.goto(`${inject('origin')}/workbench.html`);
  await isReady(other);
  expect(await kept(other)).toContain('open in another tab');
  await other.close();

  // No is a no; yes brings the demonstration.
  await page.getByRole('button', { name: 'Start anew' }).click();
  expect(await violations(page, 'dialog')).toEqual([]);
  await page.keyboard.press('Escape');
  expect(await read(sheetName, 'A10')).toBe('Ridge repeater');
  await page.getByRole('button', { name: 'Start anew' }).click();
  await Promise.all([
    page.waitForEvent('load'),
    page.getByRole('button', { name: 'Throw it away and start anew' }).click(),
  ]);
  await isReady(page);
  expect(await read(sheetName, 'A10')).toBe(named);
  await context.close();
});
