/** The sheets beyond the sizing in a real browser: ticked, added to the schedule in view, following it, and shared. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readRuns } from '../../src/lists/read-runs';
import { area, areaAddress } from '../../src/sheets/plan/area';
import { columnArea } from '../../src/sheets/schedule/layout';
import { runColumn, WIRE_ROW } from '../../src/sheets/wire-list/layout';
import { sidewaysPx, violations } from './accessibility';
import { launchBrowser } from './browser';
import { openWorkbench, type WorkbenchPage } from './workbench-page';

const PATIENCE_MS = 180_000;

let browser: Browser;
let workbench: WorkbenchPage;
let room: string;

beforeAll(async () => {
  room = mkdtempSync(join(tmpdir(), 'loomsheet-extras-'));
  browser = await launchBrowser();
  workbench = await openWorkbench(browser);
}, PATIENCE_MS);

afterAll(async () => {
  await browser?.close();
  rmSync(room, { recursive: true, force: true });
});

const section = (name: string) => workbench.page.locator(`.loom-${name}-section`);

test(
  'are added to the schedule in view, and shared where they are ticked',
  { timeout: PATIENCE_MS },
  async () => {
    const { page } = workbench;
    const fresh = section('new-schedule');
    await fresh.locator('summary').click();
    for (const label of ['Wire list', 'Parts', 'Labels', 'As built']) {
      await fresh.getByLabel(label).check();
    }
    await fresh.getByRole('button', { name: 'Add these sheets to the schedule in view' }).click();
    await fresh
      .getByText('Added “Wire list”, “Parts”, “Labels” and “As built”')
      .waitFor({ timeout: PATIENCE_MS });
    expect(await workbench.sheetNames()).toEqual(
      expect.arrayContaining(['Wire list', 'Parts', 'Labels', 'As built']),
    );
    expect(await violations(page, '#pane')).toEqual([]);
    expect(await sidewaysPx(page, '#pane')).toBe(0);

    // 7 ft with a tenth of slack and two tails of half a foot; then 10 ft.
    const cut = areaAddress(area(WIRE_ROW.firstRun, runColumn('each')));
    await expect.poll(() => workbench.read('Wire list', cut), { timeout: 60_000 }).toBe(8.7);
    await workbench.write('Run schedule', areaAddress(columnArea('length', 1)), '10');
    await expect.poll(() => workbench.read('Wire list', cut), { timeout: 60_000 }).toBe(12);

    const shared = section('share');
    await shared.locator('summary').click();
    await shared.getByLabel('As built').check();
    await workbench.select('Run schedule', 'A3');
    const [file] = await Promise.all([
      page.waitForEvent('download', { timeout: PATIENCE_MS }),
      shared.getByRole('button', { name: 'Download a copy (.xlsx)' }).click(),
    ]);
    const path = join(room, 'copy.xlsx');
    await file.saveAs(path);
    const report = await readRuns(readFileSync(path), 'copy.xlsx');
    expect(report.extras).toEqual(['asBuilt']);
  },
);
