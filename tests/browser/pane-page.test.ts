import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/functions/catalogue';
import { CAUTIONS } from '../../src/sheets/plan/cautions';
import { REFERENCE_PAGES } from '../../src/taskpane/reference-pages';
import { scheduleGrid } from '../taskpane/stand-in-host';
import { sidewaysPx, violations } from './accessibility';
import { launchBrowser, openPage } from './browser';
import { openPaneInExcel } from './excel-stand-in';

/** High enough to show all of the pane at once: what lies under something else, axe does not judge. */
const WINDOWS = [
  { width: 320, height: 4000 },
  { width: 1280, height: 4000 },
];

const SCHEDULE = scheduleGrid(
  { run: 'Lamp', verdict: 'ok' },
  { run: 'Camera', verdict: 'drop over target', dropShare: 0.05, target: 0.03 },
  { run: 'Siren', verdict: 'drop over target; no fuse fits', dropShare: 0.04, target: 0.03 },
  { run: 'Pump', verdict: 'length missing' },
);

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser?.close();
});

async function expectSound(page: Page, state: string): Promise<void> {
  expect(await violations(page, 'body'), state).toEqual([]);
  expect(await sidewaysPx(page, '#pane'), state).toBe(0);
}

describe.each(WINDOWS)('the pane’s page, $width px wide', (viewport) => {
  test('outside Excel says so, and leads to the workbench', async () => {
    const { page, trouble } = await openPage(browser, 'taskpane.html', viewport);
    const link = page.getByRole('link', { name: 'Open the workbench' });
    await link.waitFor();
    expect(await page.locator('main').textContent()).toContain('runs inside Excel');
    expect(await link.getAttribute('href')).toBe('workbench.html');
    await expectSound(page, 'outside Excel');
    expect(trouble.pageErrors).toEqual([]);
    // Office.js itself tries a telemetry frame outside Excel, which the page's policy stops.
    for (const violation of trouble.violations) expect(violation).toMatch(/^frame-src/);
    await page.close();
  });

  test('in Excel keeps its policy and is sound in every state', async () => {
    const { page, trouble } = await openPaneInExcel(browser, viewport, { grid: SCHEDULE });
    await page.locator('.loom-counts li').first().waitFor();
    expect(await page.locator('.loom-summary').textContent()).toBe(
      '“Hill runs”: 4 runs, 1 danger, 1 fails, 1 unclear, 1 ok.',
    );
    expect(await page.locator('.loom-counts li').allTextContents()).toEqual([
      '1drop over target; no fuse fits',
      '1drop over target',
      '1length missing',
      '1ok',
    ]);
    await expectSound(page, 'schedule in view');

    await page.getByRole('button', { name: 'Go to the worst run' }).click();
    await page.getByText('Row 6, “Siren”').waitFor();
    await page.getByRole('button', { name: 'Insert the demonstration' }).click();
    await page.getByText('Inserted “Run schedule”').waitFor();
    await expectSound(page, 'demonstration inserted');

    for (const topic of await page.locator('.loom-topic > summary').all()) await topic.click();
    for (const help of await page.locator('.loom-function > summary').all()) await help.click();
    expect(await page.locator('.loom-function[open]').count()).toBe(CATALOGUE.length);
    await page.setViewportSize({ ...viewport, height: 30_000 });
    await expectSound(page, 'all help open');

    expect(trouble).toEqual({ violations: [], strayRequests: [], pageErrors: [] });
    await page.close();
  });

  test('in Excel tells what went wrong, and where nothing is in view', async () => {
    const { page } = await openPaneInExcel(browser, viewport, {
      grid: { sheetName: 'Shopping', values: [['Bread']] },
      failsWith: 'AccessDenied',
    });
    await page.getByText('The sheet in view is no run schedule.').waitFor();
    expect(await page.getByRole('button', { name: 'Go to the worst run' }).isVisible()).toBe(false);
    const button = page.getByRole('button', { name: 'Insert an empty schedule' });
    await button.click();
    const alert = page.locator('#pane').getByRole('alert').filter({ hasText: 'protected' });
    await alert.waitFor();
    expect(await page.locator('#faults').textContent()).toContain('does not follow changes');
    expect(await button.getAttribute('disabled-focusable')).toBeNull();
    await expectSound(page, 'error shown');
    await page.close();
  });
});

test('the functions are associated in the pane’s page, which is Excel’s one runtime', async () => {
  const { page } = await openPaneInExcel(browser, WINDOWS[0]!, { grid: SCHEDULE });
  expect(await page.evaluate(() => window.associated)).toEqual(CATALOGUE.map(({ id }) => id));
  await page.close();
});

test.each(['dark', 'light'] as const)('contrast holds in the %s theme', async (colorScheme) => {
  const { page } = await openPaneInExcel(browser, WINDOWS[0]!, {
    grid: SCHEDULE,
    failsWith: 'AccessDenied',
  });
  await page.emulateMedia({ colorScheme });
  // What the sheet in view comes to moves the buttons below it.
  await page.locator('.loom-counts li').first().waitFor();
  await page.getByRole('button', { name: 'Insert an empty schedule' }).click();
  await page.locator('#pane').getByRole('alert').filter({ hasText: 'protected' }).waitFor();
  await page.locator('.loom-topic > summary').first().click();
  await page.locator('.loom-topic[open] .loom-function > summary').first().click();
  const [red = 0] = await page
    .locator('.loom-pane')
    .evaluate((pane) => (/\d+/.exec(getComputedStyle(pane).backgroundColor) ?? []).map(Number));
  expect(colorScheme === 'dark' ? red < 64 : red > 192).toBe(true);
  // The buttons' colours change over a moment.
  await page.waitForTimeout(500);
  await expectSound(page, colorScheme);
  await page.close();
});

test('the cautions are in view in a pane of ordinary height, wherever it is scrolled', async () => {
  const { page } = await openPaneInExcel(browser, { width: 320, height: 760 }, { grid: SCHEDULE });
  await page.locator('.loom-topic > summary').first().click();
  await page.locator('.loom-body').evaluate((body) => {
    body.scrollTop = body.scrollHeight;
  });
  const folded = await page.locator('.loom-cautions-section').boundingBox();
  expect(folded!.height).toBeLessThan(760 / 10);
  expect(folded!.y + folded!.height).toBeLessThanOrEqual(760);
  await page.locator('.loom-cautions > summary').click();
  for (const caution of CAUTIONS) {
    const box = await page.getByText(caution).boundingBox();
    expect(box, caution).not.toBeNull();
    expect(box!.y).toBeGreaterThan(0);
    expect(box!.y + box!.height).toBeLessThanOrEqual(760);
  }
  await page.close();
});

test.each(Object.entries(REFERENCE_PAGES))(
  'the pane leads to %s, which is plain, sound and fits a narrow window',
  async (address, title) => {
    const { page: pane } = await openPaneInExcel(browser, WINDOWS[0]!, { grid: SCHEDULE });
    await pane.locator('.loom-cautions > summary').click();
    const link = pane.locator('.loom-cautions-section').getByRole('link', { name: title });
    expect(await link.getAttribute('href')).toBe(address);
    await expectSound(pane, 'cautions open');
    await pane.close();
    const { page, trouble } = await openPage(browser, address, WINDOWS[0]);
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe(title);
    expect(await violations(page, 'body')).toEqual([]);
    expect(await sidewaysPx(page, 'body')).toBe(0);
    // That the one style is let in shows in what it sets.
    const wraps = await page
      .locator('body')
      .evaluate((body) => getComputedStyle(body).overflowWrap);
    expect(wraps).toBe('anywhere');
    expect(trouble).toEqual({ violations: [], strayRequests: [], pageErrors: [] });
    await page.close();
  },
);
