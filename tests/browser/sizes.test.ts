/** Lighten and Compare in a real browser, in one page: shown, taken, and taken back by undo. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { area, areaAddress } from '../../src/sheets/plan/area';
import { columnOf, ROW } from '../../src/sheets/schedule/layout';
import { DEMO } from '../../src/sheets/station/demo';
import { sidewaysPx, violations } from './accessibility';
import { launchBrowser } from './browser';
import { openWorkbench, type WorkbenchPage } from './workbench-page';

const PATIENCE_MS = 180_000;
const SHEET = 'Run schedule';

let browser: Browser;
let workbench: WorkbenchPage;

beforeAll(async () => {
  browser = await launchBrowser();
  workbench = await openWorkbench(browser, { width: 320, height: 2400 });
}, PATIENCE_MS);

afterAll(async () => {
  expect(workbench.trouble).toEqual({ violations: [], strayRequests: [], pageErrors: [] });
  await browser?.close();
});

const rowOf = (name: string) => ROW.first + DEMO.runs.findIndex(({ run }) => run === name);
const wireOf = (name: string) => areaAddress(area(rowOf(name), columnOf('ownSize')));
const wire = (name: string) => workbench.read(SHEET, wireOf(name));
/** As a person does, with the keyboard in the cells. */
const undo = async () => {
  await workbench.page.evaluate(() => {
    window.loomWorkbench!.host.takeKeys?.();
  });
  await workbench.page.keyboard.press('Control+z');
};

test(
  'lightest sizes are shown, written when accepted, and undone in one step',
  { timeout: PATIENCE_MS },
  async () => {
    const { page } = workbench;
    const section = page.locator('.loom-sizes-section');
    const lighten = section.getByText('Lighten: the lightest sizes of all runs');
    await lighten.focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Space');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await section.getByText('kg now,').waitFor({ timeout: PATIENCE_MS });
    const table = section.locator('.loom-sizes tbody tr');
    expect(await table.allTextContents()).toEqual(['Bench lamp14 AWG18 AWG0.0409 kg']);
    expect(await section.locator('.loom-reasons').textContent()).toContain(
      'Van feed in 2 AWG: Van set B: too few volts while a load starts',
    );
    expect(await violations(page, '#pane')).toEqual([]);
    expect(await sidewaysPx(page, '#pane')).toBe(0);
    expect(await wire('Bench lamp')).toBe('14 AWG');

    const take = section.getByRole('button', { name: 'Write these sizes into “My wire”' });
    await take.focus();
    await page.keyboard.press('Enter');
    await section.getByText('Written into 1 cell of “My wire”').waitFor();
    expect(await wire('Bench lamp')).toBe('18 AWG');
    expect(await take.isVisible()).toBe(false);
    await undo();
    await expect.poll(() => wire('Bench lamp')).toBe('14 AWG');

    // What was found in a schedule that has changed since is not written.
    await section.getByRole('button', { name: 'Find the lightest sizes' }).click();
    await section.getByText('kg now,').waitFor();
    await workbench.write(SHEET, areaAddress(area(rowOf('Bench lamp'), columnOf('length'))), '40');
    await take.click();
    await section.getByRole('alert').getByText('the schedule was changed since').waitFor();
    expect(await wire('Bench lamp')).toBe('14 AWG');
    await undo();
    await lighten.click();
  },
);

test(
  'sizes of the selected run are compared, and one is taken by a click',
  { timeout: PATIENCE_MS },
  async () => {
    const { page } = workbench;
    const section = page.locator('.loom-sizes-section');
    await section.locator('summary').last().click();
    const compare = section.getByRole('button', { name: 'Compare sizes of the selected run' });
    await workbench.select(SHEET, 'A1');
    await compare.click();
    await section.getByText('Select a cell in the row of a run first.').waitFor();

    await workbench.select(SHEET, areaAddress(area(rowOf('Van set A'), 0)));
    await compare.click();
    await section.getByText('“Van set A”: 13 sizes compared').waitFor();
    const inUse = section.locator('tr[aria-current]');
    expect(await inUse.textContent()).toContain('14 AWGin use');
    expect(await section.locator('.loom-size-verdict').first().textContent()).toContain(
      'over ampacity; ',
    );
    expect(await section.locator('figcaption').textContent()).toContain('14 AWG: 5.54 % at 4 ft');
    // Sizes that fail are not offered.
    expect(await section.getByRole('button', { name: 'Take 12 AWG' }).count()).toBe(0);
    expect(await violations(page, '#pane')).toEqual([]);
    expect(await sidewaysPx(page, '#pane')).toBe(0);

    await section.getByRole('button', { name: 'Take 8 AWG' }).click();
    await section.getByText('“Van set A” has 8 AWG in “My wire” now.').waitFor();
    expect(await wire('Van set A')).toBe('8 AWG');
    expect(await section.locator('tr[aria-current]').textContent()).toContain('8 AWG');
    const verdict = areaAddress(area(rowOf('Van set A'), columnOf('verdict')));
    await expect.poll(() => workbench.read(SHEET, verdict)).toBe('ok');
    await undo();
    await expect.poll(() => wire('Van set A')).toBe('14 AWG');
  },
);
