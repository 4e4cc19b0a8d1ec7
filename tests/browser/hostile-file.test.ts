/** Files made to harm, chosen in the pane: they are read in a thread of their own, and the page goes on meanwhile. */
import type { Browser, Worker } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { growingArchive, MAIN } from '../lists/archive';
import { launchBrowser } from './browser';
import { openWorkbench, type WorkbenchPage } from './workbench-page';

const LIST = 'Name;Current (A);Length (m)\nHut trunk;24;2,1\nRelay set;14;1,5\n';
const READER = /\/parts\/[^/]*list-worker[^/]*\.js$/;

let browser: Browser;
let workbench: WorkbenchPage;
const readers: Worker[] = [];

beforeAll(async () => {
  browser = await launchBrowser();
  workbench = await openWorkbench(browser);
  workbench.page.on('worker', (worker) => readers.push(worker));
});

afterAll(async () => {
  await browser?.close();
});

const section = () => workbench.page.locator('.loom-take-in-section');
const warned = () => section().getByRole('alert').textContent();
const told = () => section().getByRole('status').textContent();

function choose(name: string, content: string | Uint8Array): Promise<void> {
  return workbench.page
    .getByLabel('File with a list of runs')
    .setInputFiles({ name, mimeType: '', buffer: Buffer.from(content) });
}

/** Counts turns of the page's own thread until `stop`. */
async function turns(): Promise<{ stop(): Promise<number> }> {
  await workbench.page.evaluate(() => {
    const counted = window as unknown as { turns: number; counter: number };
    counted.turns = 0;
    counted.counter = window.setInterval(() => (counted.turns += 1), 20);
  });
  return {
    stop: () =>
      workbench.page.evaluate(() => {
        const counted = window as unknown as { turns: number; counter: number };
        window.clearInterval(counted.counter);
        return counted.turns;
      }),
  };
}

describe('a file that keeps its reader busy', { timeout: 120_000 }, () => {
  test('is refused with a sentence, and the page has its turns meanwhile', async () => {
    const bomb = growingArchive(
      `<worksheet xmlns="${MAIN}"><sheetData>`,
      `<c>${' '.repeat(1_000_000)}</c>`,
      4_000,
    );
    const counted = await turns();
    await choose('bomb.xlsx', bomb);
    await expect.poll(warned, { timeout: 60_000 }).toContain('it unpacks to more than 200 MB');
    expect(await counted.stop()).toBeGreaterThan(5);
    expect(readers).toHaveLength(1);
  });

  test('is left after a time, with a sentence, and the next one is read', async () => {
    await workbench.page.route(READER, (route) =>
      route.fulfill({
        contentType: 'text/javascript',
        body: 'self.onmessage = () => { for (;;); };',
      }),
    );
    await choose('endless.csv', LIST);
    await expect.poll(told).toBe('Reading “endless.csv”…');
    // The page answers while the reader does not.
    expect(await workbench.page.evaluate(() => document.readyState)).toBe('complete');
    await expect
      .poll(warned, { timeout: 60_000 })
      .toMatch(/^"endless\.csv" was still not read after 15 seconds, and was left\. /);
    await workbench.page.unroute(READER);
    await choose('runs.csv', LIST);
    await expect.poll(told).toMatch(/“runs\.csv” lists 2 runs/);
    await section().getByRole('button', { name: 'Cancel' }).click();
    // Each reader is gone once its file is.
    await expect.poll(() => workbench.page.workers().length).toBe(0);
    expect(readers).toHaveLength(3);
    expect(workbench.trouble).toEqual({ violations: [], strayRequests: [], pageErrors: [] });
  });

  test('is read in the page where its reader cannot be started', async () => {
    await workbench.page.route(READER, (route) => route.fulfill({ status: 200, body: 'throw 1;' }));
    await choose('again.csv', LIST);
    await expect.poll(told).toMatch(/“again\.csv” lists 2 runs/);
    await workbench.page.unroute(READER);
  });
});
