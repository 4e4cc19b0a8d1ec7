/** What the pane offers where Excel does only part of what it is asked, over the stand-in for Excel. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { scheduleGrid } from '../taskpane/stand-in-host';
import { sidewaysPx, violations } from './accessibility';
import { launchBrowser } from './browser';
import { openPaneInExcel } from './excel-stand-in';

const VIEW = { width: 320, height: 4000 };
const SCHEDULE = scheduleGrid({ run: 'Lamp', verdict: 'ok', peak: 1, length: 2 }, { peak: 3 });

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser?.close();
});

const button = (page: Page, name: string) => page.getByRole('button', { name });

/** From now on the stand-in refuses steps whose path matches; an empty pattern lets everything pass. */
function refuse(page: Page, pattern: string): Promise<void> {
  return page.evaluate((source) => {
    const refused = source === '' ? /(?!)/ : new RegExp(source);
    window.standIn!.refuse = ({ path }) => (refused.test(path) ? 'AccessDenied' : undefined);
  }, pattern);
}

const sheetNames = (page: Page) => page.evaluate(() => [...window.standIn!.sheetNames]);

async function expectSound(page: Page): Promise<void> {
  expect(await violations(page, 'body')).toEqual([]);
  expect(await sidewaysPx(page, '#pane')).toBe(0);
}

test('looks that are missing are told, and “Repair the sheet” makes them', async () => {
  const { page } = await openPaneInExcel(browser, VIEW, { grid: SCHEDULE });
  await refuse(page, '^Supply!pageLayout');
  await button(page, 'Insert the demonstration').click();
  await page.getByText('Refused or not confirmed: the print set-up of “Supply”').waitFor();
  await expectSound(page);
  await refuse(page, '');
  await button(page, 'Repair the sheet').click();
  await page.getByText('Repaired: everything is confirmed.').waitFor();
  expect(await button(page, 'Repair the sheet').isVisible()).toBe(false);
  await page.close();
});

test('what is left is named, and “Remove what is left of it” removes it', async () => {
  const { page } = await openPaneInExcel(browser, VIEW, { grid: SCHEDULE });
  const before = await sheetNames(page);
  await refuse(page, 'copyFrom$|^Supply!delete');
  await button(page, 'Insert the demonstration').click();
  await page.getByText('the sheet “Supply” is still there').waitFor();
  await expectSound(page);
  await refuse(page, '');
  await button(page, 'Remove what is left of it').click();
  await page.getByText('Nothing of it is left.').waitFor();
  expect(await sheetNames(page)).toEqual(before);
  await page.close();
});

test('an insertion that waits says why, can be stopped, and leaves nothing', async () => {
  const { page } = await openPaneInExcel(browser, VIEW, { grid: SCHEDULE });
  const before = await sheetNames(page);
  await page.evaluate(() => {
    const excel = window.standIn!;
    excel.editing = new Promise((resolve) => {
      Object.assign(window, {
        leaveCell() {
          excel.editing = undefined;
          resolve();
        },
      });
    });
  });
  await button(page, 'Insert the demonstration').click();
  await page.getByText('If a cell is being edited, press Enter or Esc').waitFor();
  await button(page, 'Stop').click();
  await page.getByText('Stopping…').waitFor();
  await expectSound(page);
  await page.evaluate(() => {
    (window as unknown as { leaveCell(): void }).leaveCell();
  });
  await page.getByText('Stopped: nothing was inserted, the workbook is as it was.').waitFor();
  expect(await sheetNames(page)).toEqual(before);
  await page.close();
});

test('manual calculation has a button, and rows without formulas are named', async () => {
  const { page } = await openPaneInExcel(browser, VIEW, { grid: SCHEDULE });
  await page.getByText('Row 5 has entries but no formulas').waitFor();
  await page.evaluate(async () => {
    const excel = window.standIn!;
    excel.application.calculationMode = 'Manual';
    await excel.tell('onActivated', { worksheetId: excel.active.id });
  });
  await page.getByText('calculates only when asked').waitFor();
  await expectSound(page);
  await button(page, 'Calculate now').click();
  await expect.poll(() => page.evaluate(() => window.standIn!.application.calculated)).toBe(1);
  await page.close();
});
