import { isDeepStrictEqual } from 'node:util';
import type { Browser, Locator } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { countVerdicts, readSchedule, worstRow } from '../../src/sheets/schedule/reading';
import { SCHEDULE_COLUMNS } from '../../src/sheets/schedule/columns';
import { cellAddress } from '../../src/sheets/plan/area';
import { sidewaysPx, violations } from './accessibility';
import { launchBrowser } from './browser';
import { openWorkbench, type WorkbenchPage } from './workbench-page';

let browser: Browser;
let workbench: WorkbenchPage;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser?.close();
});

const button = (name: string): Locator => workbench.page.getByRole('button', { name });

/** At one moment: rows that were there before may be gone. */
async function shownCounts(): Promise<ReadonlyMap<string, number>> {
  const pairs = await workbench.page.locator('.loom-counts li').evaluateAll((rows) =>
    rows.map((row) => {
      const text = (of: string) => row.querySelector(of)?.textContent ?? '';
      return [text('.loom-verdict'), Number(text('.loom-count'))] as const;
    }),
  );
  return new Map(pairs);
}

async function readView() {
  const grid = await workbench.activeGrid();
  const reading = readSchedule(grid.values);
  if (reading === undefined) throw new Error(`${grid.sheetName} is not a schedule.`);
  return { sheetName: grid.sheetName, reading };
}

describe('the pane beside the grid', () => {
  let demonstration: string;

  beforeAll(async () => {
    workbench = await openWorkbench(browser);
    demonstration = (await readView()).sheetName;
  });

  beforeEach(async () => {
    await workbench.select(demonstration, 'A1');
    await workbench.page.getByText(`“${demonstration}”: `).waitFor();
  });

  afterAll(async () => {
    expect(workbench.trouble).toEqual({ violations: [], strayRequests: [], pageErrors: [] });
    await workbench.page.close();
  });

  test('counts the runs of the schedule in view, and follows an edit', async () => {
    const { sheetName, reading } = await readView();
    const inSheet = async () => new Map(countVerdicts((await readView()).reading));
    const before = await inSheet();
    expect(before.get('ok')).toBeGreaterThan(0);
    await expect.poll(shownCounts).toEqual(before);

    const okRow = reading.rows.find(({ values }) => values.verdict === 'ok');
    await workbench.write(sheetName, cellAddress(okRow!.row, reading.columnOf.length), null);
    // The row is cleared at once and calculated a moment later.
    await expect.poll(inSheet).not.toEqual(before);
    await expect
      .poll(async () => isDeepStrictEqual(await shownCounts(), await inSheet()))
      .toBe(true);
  });

  test('goes to the worst run and says why', async () => {
    const { reading } = await readView();
    const worst = worstRow(reading);
    if (worst === undefined) throw new Error('The demonstration has no bad run.');
    await button('Go to the worst run').click();
    const told = workbench.page.locator('.loom-standing-section [role=status]').last();
    await workbench.page.getByText(`Row ${worst.row + 1}, “${String(worst.values.run)}”`).waitFor();
    expect(await told.textContent()).toContain(String(worst.values.verdict));
    const foot = await workbench.page.locator('.loom-cautions-section').boundingBox();
    const box = await told.boundingBox();
    expect(box!.y + box!.height).toBeLessThanOrEqual(foot!.y);
    const cell = cellAddress(worst.row, reading.columnOf.run);
    await expect
      .poll(() => workbench.statusText())
      .toContain(`${cell} ${SCHEDULE_COLUMNS.run.heading}`);
  });

  test('says where the sheet in view is no schedule', async () => {
    await workbench.select('Verdicts', 'A1');
    await workbench.page.getByText('The sheet in view is no run schedule.').waitFor();
    expect(await shownCounts()).toEqual(new Map());
    expect(await button('Go to the worst run').isVisible()).toBe(false);
  });

  test('shows a host’s failure and can be used again', async () => {
    await workbench.page.evaluate(() => {
      const { host } = window.loomWorkbench!;
      const insert = host.insert.bind(host);
      host.insert = () => {
        host.insert = insert;
        return Promise.reject(new Error('Nothing was inserted: the pencil broke.'));
      };
    });
    const before = await workbench.sheetNames();
    await button('Insert an empty schedule').click();
    await workbench.page.getByRole('alert').filter({ hasText: 'the pencil broke' }).waitFor();
    expect(await workbench.sheetNames()).toEqual(before);
    await button('Insert an empty schedule').click();
    await workbench.page.getByText('Inserted “').waitFor();
    expect((await workbench.sheetNames()).length).toBeGreaterThan(before.length);
    await workbench.page.getByText('has no runs yet').waitFor();
  });

  test('is worked by keyboard alone: Tab reaches everything, Enter inserts', async () => {
    const { page } = workbench;
    const before = await workbench.sheetNames();
    await page.locator('#loom-run-line').focus();
    for (const next of ['Add the run', 'Order, columns, repair', 'Go to the worst run']) {
      await page.keyboard.press('Tab');
      expect(await focusedText()).toBe(next);
    }
    for (const next of [
      'Lighten: the lightest sizes of all runs',
      'Compare sizes of the selected run',
      'Insert the demonstration',
    ]) {
      await page.keyboard.press('Tab');
      expect(await focusedText()).toBe(next);
    }
    await page.keyboard.press('Tab');
    expect(await focusedText()).toBe('Insert an empty schedule');
    await page.keyboard.press('Enter');
    await page.getByText('Inserted “').waitFor();
    expect((await workbench.sheetNames()).length).toBeGreaterThan(before.length);

    await workbench.select(demonstration, 'A1');
    await page.getByText(`“${demonstration}”: `).waitFor();
    await button('Insert an empty schedule').focus();
    await page.keyboard.press('Tab');
    expect(await focusedText()).toBe('Wire list, Parts, Labels, As built, Fuse map');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.ariaLabel)).toBe(
      'File with a list of runs',
    );
    await page.keyboard.press('Tab');
    expect(await focusedText()).toBe('Draw the schedule in view');
    await page.keyboard.press('Tab');
    expect(await focusedText()).toBe(
      'Wire list, Parts, Labels, As built, Fuse map, Drawing, Drop chart',
    );
    await page.keyboard.press('Tab');
    expect(await focusedText()).toBe('Download a copy (.xlsx)');
    await page.keyboard.press('Tab');
    await page.keyboard.type('mingauge');
    await page.getByText('1 of ').waitFor();
    await page.keyboard.press('Tab');
    expect(await focusedText()).toBe('Run');
    await page.keyboard.press('Tab');
    expect(await focusedText()).toContain('MINGAUGE');
    const help = page.locator('.loom-function:visible');
    expect(await help.getAttribute('open')).not.toBeNull();
    await page.keyboard.press('Enter');
    expect(await help.getAttribute('open')).toBeNull();
    await page.keyboard.press('Space');
    expect(await help.locator('.loom-call').isVisible()).toBe(true);
  });

  test('shows where the keyboard is', async () => {
    const { page } = workbench;
    await page.locator('.loom-search input').focus();
    await page.keyboard.press('Tab');
    const outline = await page.evaluate(() => {
      const { outlineStyle, outlineWidth } = getComputedStyle(document.activeElement!);
      return { outlineStyle, outlineWidth };
    });
    expect(outline).toEqual({ outlineStyle: 'solid', outlineWidth: '2px' });
  });
});

function focusedText(): Promise<string> {
  return workbench.page.evaluate(() => (document.activeElement?.textContent ?? '').trim());
}

describe.each([
  { width: 320, height: 2400 },
  { width: 1280, height: 2400 },
])('the pane in a workbench $width px wide', (viewport) => {
  test('has no violations and nothing that sticks out', async () => {
    workbench = await openWorkbench(browser, viewport);
    const { page } = workbench;
    const expectSound = async (state: string) => {
      expect(await violations(page, '#pane'), state).toEqual([]);
      expect(await sidewaysPx(page, '#pane'), state).toBe(0);
    };
    await page.locator('.loom-counts li').first().waitFor();
    await expectSound('demonstration in view');
    await page.locator('.loom-search input').fill('fuse_for');
    await page.locator('.loom-function[open]').waitFor();
    await expectSound('help open');
    await page.evaluate(() => {
      window.loomWorkbench!.host.insert = () => Promise.reject(new Error('The pencil broke.'));
    });
    await button('Insert the demonstration').click();
    await page.getByRole('alert').filter({ hasText: 'pencil' }).waitFor();
    await expectSound('error shown');
    await workbench.select('Verdicts', 'A1');
    await page.getByText('The sheet in view is no run schedule.').waitFor();
    await expectSound('no schedule in view');
    await page.close();
  });
});
