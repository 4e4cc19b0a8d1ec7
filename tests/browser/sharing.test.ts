import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { sharedFile } from '../../src/hosts/xlsx/shared-file';
import { readRuns } from '../../src/lists/read-runs';
import { DEMO } from '../../src/sheets/station/demo';
import { readSchedule } from '../../src/sheets/schedule/reading';
import { sidewaysPx, violations } from './accessibility';
import { launchBrowser } from './browser';
import { openWorkbench, type WorkbenchPage } from './workbench-page';

const LIST =
  'Name;Current (A);Length (m);Colour\n' +
  'Hut trunk;24;2,1;red\n' +
  'Relay set;14;1,5;\n' +
  'too;many;cells;in;row\n' +
  'Odd;abc;3;\n';

let browser: Browser;
let workbench: WorkbenchPage;
let room: string;
let demonstration: string;

beforeAll(async () => {
  room = mkdtempSync(join(tmpdir(), 'loomsheet-sharing-'));
  browser = await launchBrowser();
  workbench = await openWorkbench(browser);
  demonstration = (await workbench.activeGrid()).sheetName;
});

afterAll(async () => {
  await browser?.close();
  rmSync(room, { recursive: true, force: true });
});

const button = (name: string) => workbench.page.getByRole('button', { name });
const section = (name: string) => workbench.page.locator(`.loom-${name}-section`);
const said = (name: string) => section(name).getByRole('status');
const warned = (name: string) => section(name).getByRole('alert');

/** The parts of a workbook; of long figures nine digits, since two engines' logarithms differ in the last. */
const partsOf = (workbook: Uint8Array) =>
  Object.entries(unzipSync(workbook)).map(([name, content]) => [
    name,
    strFromU8(content).replace(/\d+\.\d{9,}/g, (figure) => Number(figure).toPrecision(9)),
  ]);

/** Puts a text into the pane's file field, as choosing a file does. */
async function choose(fileName: string, content: string | Uint8Array): Promise<void> {
  const path = join(room, fileName);
  writeFileSync(path, content);
  await workbench.page.getByLabel('File with a list of runs').setInputFiles(path);
}

async function downloaded(): Promise<{ readonly name: string; readonly bytes: Uint8Array }> {
  const [file] = await Promise.all([
    workbench.page.waitForEvent('download'),
    button('Download a copy (.xlsx)').click(),
  ]);
  const path = join(room, 'downloaded.xlsx');
  await file.saveAs(path);
  return { name: file.suggestedFilename(), bytes: readFileSync(path) };
}

describe('sharing from the pane', () => {
  test('downloads the schedule in view, as it was typed', { timeout: 60_000 }, async () => {
    await workbench.select(demonstration, 'A1');
    const { name, bytes } = await downloaded();
    expect(name).toBe('River flood watch runs.xlsx');
    // The writer that ships is a part of the library; the whole of it, as the command has it, writes the same.
    expect(partsOf(bytes)).toEqual(partsOf(await sharedFile(DEMO)));
    const report = await readRuns(bytes, name);
    expect(report.runs).toEqual(DEMO.runs);
    expect(report.rules).toMatchObject(DEMO.rules ?? {});
    expect(report.sources).toEqual(DEMO.sources);
    expect(report.duty).toEqual(DEMO.duty);
    expect(report.leftOver).toEqual([]);
    await expect
      .poll(() => said('share').textContent())
      .toBe(`Downloaded “River flood watch runs.xlsx”: ${DEMO.runs.length} runs.`);
  });

  test('says so where no schedule is in view', async () => {
    await workbench.select('Supply', 'A1');
    await button('Download a copy (.xlsx)').click();
    await expect
      .poll(() => warned('share').textContent())
      .toBe('The sheet in view is no run schedule. Select the sheet of one, then share it.');
    await workbench.select(demonstration, 'A1');
  });

  test(
    'shows what it understood of a list, inserts nothing unasked, and then all of it',
    { timeout: 120_000 },
    async () => {
      const before = await workbench.sheetNames();
      await choose('hut.csv', LIST);
      await expect
        .poll(() => said('take-in').textContent())
        .toBe(
          '“hut.csv” lists 3 runs; 1 row could not be read; 1 cell needs a look; 1 column was left out. Nothing is inserted yet.',
        );
      const told = (await section('take-in').locator('.loom-report').textContent()) ?? '';
      expect(told).toContain('“Current (A)” as Peak load, in A');
      expect(told).toContain('“Length (m)” as One-way length, in m');
      expect(told).toContain('“Colour”');
      expect(told).toContain('Line 4, not taken');
      expect(told).toContain('Line 5, taken as it stands');
      expect(await workbench.sheetNames()).toEqual(before);
      expect(await violations(workbench.page, '.loom-pane')).toEqual([]);
      expect(await sidewaysPx(workbench.page, '.loom-body')).toBe(0);

      await button('Insert as a new schedule').click();
      await expect
        .poll(() => said('take-in').textContent(), { timeout: 60_000 })
        .toMatch(/^Inserted “Run schedule 2” with 3 runs\.$/);
      // The grid may still be calculating when it says that the sheet stands: each row has to come to a verdict.
      const rows = async () => {
        const reading = readSchedule((await workbench.activeGrid()).values);
        return reading?.rows.map(({ values }) => [
          values.run,
          values.peak,
          values.length,
          values.verdict,
        ]);
      };
      const verdict = expect.stringMatching(/^\w/) as string;
      await expect.poll(rows, { timeout: 30_000 }).toEqual([
        ['Hut trunk', '24', '2.1', verdict],
        ['Relay set', '14', '1.5', verdict],
        ['Odd', 'abc', '3', verdict],
      ]);
      expect((await rows())?.[2]?.[3]).not.toBe('ok');
      expect(await section('take-in').locator('.loom-report').count()).toBe(0);
    },
  );

  test('asks what a column is that it does not understand', { timeout: 120_000 }, async () => {
    await choose('board.csv', 'Name,From where,Amps,Length (ft)\nBoard,,24,7\nRadio,Board,14,5\n');
    const column = workbench.page.getByLabel('“From where” holds Board');
    await expect.poll(() => column.evaluate((one) => one === document.activeElement)).toBe(true);
    expect(await column.inputValue()).toBe('Fed from');
    expect(await violations(workbench.page, '.loom-pane')).toEqual([]);
    expect(await sidewaysPx(workbench.page, '.loom-body')).toBe(0);

    await column.selectOption('Leave out');
    const flat = button('Insert, every run from the source');
    await expect.poll(() => flat.count(), { timeout: 10_000 }).toBe(1);
    expect(await section('take-in').locator('.loom-lacking').textContent()).toContain(
      'every run will start at the source',
    );
    await column.press('Escape');
    await expect.poll(() => said('take-in').textContent()).toBe('Nothing was inserted.');
    expect(await section('take-in').locator('.loom-columns').count()).toBe(0);

    await choose('board.csv', 'Name,From where,Amps,Length (ft)\nBoard,,24,7\nRadio,Board,14,5\n');
    await expect.poll(() => column.inputValue()).toBe('Fed from');
    await button('Insert as a new schedule').click();
    await expect
      .poll(() => said('take-in').textContent(), { timeout: 60_000 })
      .toMatch(/^Inserted “Run schedule \d” with 2 runs\.$/);
    const reading = readSchedule((await workbench.activeGrid()).values);
    expect(reading?.rows.map(({ values }) => [values.run, values.fedFrom])).toEqual([
      ['Board', null],
      ['Radio', 'Board'],
    ]);
  });

  test('takes its own shared copy in again', { timeout: 60_000 }, async () => {
    await workbench.select(demonstration, 'A1');
    const { bytes } = await downloaded();
    await choose('copy.xlsx', bytes);
    await expect
      .poll(() => said('take-in').textContent(), { timeout: 30_000 })
      .toBe(
        `“copy.xlsx” lists ${DEMO.runs.length} runs; all of it understood. Nothing is inserted yet.`,
      );
    await button('Cancel').click();
    await expect.poll(() => said('take-in').textContent()).toBe('Nothing was inserted.');
  });

  test('refuses what is no list with its sentence', async () => {
    await choose('empty.csv', '');
    await expect.poll(() => warned('take-in').textContent()).toBe('"empty.csv" is empty.');
    await choose('broken.xlsx', Uint8Array.from([0x50, 0x4b, 3, 4, 0, 0]));
    await expect
      .poll(() => warned('take-in').textContent())
      .toMatch(/^"broken.xlsx" is damaged, or no workbook/);
    expect(await section('take-in').locator('.loom-report').count()).toBe(0);
  });

  test('did nothing that the page forbids', () => {
    expect(workbench.trouble).toEqual({ violations: [], strayRequests: [], pageErrors: [] });
  });
});
