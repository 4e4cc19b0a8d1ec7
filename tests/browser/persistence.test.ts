import { readdirSync, readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { CellError } from '../../src/functions/cell';
import type { GridValue } from '../../src/sheets/plan/grid';
import { readSchedule } from '../../src/sheets/schedule/reading';
import { stationValues } from '../../src/sheets/station-values';
import type { StationContent } from '../../src/sheets/station/content';
import { violations } from './accessibility';
import { launchBrowser } from './browser';
import { leaveKeptText, readKeptText } from './kept/database';
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

describe('what an earlier version kept', () => {
  const kept = new URL('kept/', import.meta.url);
  const typed = new URL('../lists/written/', import.meta.url);
  const versions = readdirSync(kept)
    .filter((name) => name.endsWith('.json.gz'))
    .map((name) => name.slice(0, -'.json.gz'.length));

  test('is known of the present version too', () => {
    const description = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
    expect(versions).toContain((JSON.parse(description) as { version: string }).version);
  });

  test.each(versions)('stands there again, judged: %s', async (version) => {
    const context = await browser.newContext();
    const before = await context.newPage();
    await before.goto(`${inject('origin')}/numbers.html`);
    const text = gunzipSync(readFileSync(new URL(`${version}.json.gz`, kept))).toString();
    await leaveKeptText(before, text);
    await before.close();

    const { page, activeGrid, sheetNames, trouble } = await openWorkbench(context);
    const names = await sheetNames();
    expect(names).toEqual(expect.arrayContaining(['Run schedule', 'Run schedule 2']));
    expect(await page.locator('#told').textContent()).toBe('');
    const station = JSON.parse(
      readFileSync(new URL(`${version}.json`, typed), 'utf8'),
    ) as StationContent;
    const judged = stationValues(station).runs.map(({ verdict, size }, place) => [
      station.runs[place]!.run,
      verdict,
      size instanceof CellError ? size.code : size,
    ]);
    expect(judged.length).toBeGreaterThan(3);
    const { rows } = readSchedule((await activeGrid()).values)!;
    expect(rows.map(({ values: { run, verdict, size } }) => [run, verdict, size])).toEqual(judged);
    // And it is kept anew, in the form of this version.
    expect(await readKeptText(page)).toMatch(/^\{"form":\d+,/);
    expect(trouble.pageErrors).toEqual([]);
    await context.close();
  });
});
