/** Runs put into a schedule by a person: in one line, as a row between others, under another name. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Browser } from 'playwright-core';
import { PROTECTION_ROW, protectionColumn } from '../../src/sheets/protection/layout';
import { columnOf, ROW } from '../../src/sheets/schedule/layout';
import { cellAddress } from '../../src/sheets/plan/area';
import { DEMO } from '../../src/sheets/station/demo';
import { WORD } from '../../src/sheets/station/verdicts';
import type { ColumnKey } from '../../src/sheets/station/schedule-keys';
import { sidewaysPx, violations } from './accessibility';
import { launchBrowser } from './browser';
import { openWorkbench, type WorkbenchPage } from './workbench-page';

const SHEET = 'Run schedule';
let browser: Browser;
let workbench: WorkbenchPage;

beforeAll(async () => {
  browser = await launchBrowser();
  workbench = await openWorkbench(browser);
});
afterAll(() => browser.close());

const at = (place: number, key: ColumnKey) =>
  cellAddress(ROW.first + place, columnOf(key)).replaceAll('$', '');
const read = (place: number, key: ColumnKey) => workbench.read(SHEET, at(place, key));
/** What must not change in a row that moves. */
const ANSWERS: readonly ColumnKey[] = ['run', 'verdict', 'mend', 'size', 'fuse'];
const section = () => workbench.page.locator('.loom-run-section');

it('a line adds a run and answers in a sentence', async () => {
  const place = DEMO.runs.length;
  await section()
    .locator('#loom-run-line')
    .fill('Van lamp, 5 A, 2.5 m, from Van feed, at least 11 V');
  await section().locator('#loom-run-line').press('Enter');
  await expect
    .poll(() => section().locator('.loom-notice').textContent())
    .toMatch(/Peak load: 5 A.*AWG, [\d.]+ A fuse, [\d.]+ V at .*: /);
  expect(await read(place, 'peak')).toBe('5 A');
  expect(await read(place, 'draw')).toBe(5);
  expect(Number(await read(place, 'oneWay'))).toBeCloseTo(2.5 / 0.3048, 9);

  // Its answer of then goes where another holds; what was understood stays.
  await workbench.write(SHEET, at(place, 'length'), '30 m');
  await expect
    .poll(() => section().locator('.loom-notice').textContent())
    .toMatch(/at least 11 V\.$/);
  await workbench.write(SHEET, at(place, 'length'), '2.5 m');
});

it('says why of the selected run, by the keyboard, and of no other', async () => {
  const { page } = workbench;
  const placeOf = (name: string) => DEMO.runs.findIndex(({ run }) => run === name);
  const why = section().getByRole('button', { name: 'Why?' });
  const shown = section().locator('.loom-why');
  await workbench.select(SHEET, at(placeOf('Relay set'), 'run'));
  await section().locator('.loom-selected').getByText('Relay set').waitFor();
  expect(await why.getAttribute('aria-expanded')).toBe('false');
  await why.focus();
  await page.keyboard.press('Enter');
  await shown.getByText('too few volts with the battery low').waitFor();
  expect(await why.getAttribute('aria-expanded')).toBe('true');
  expect(await shown.locator('.loom-working').textContent()).toMatch(
    /^14 A over 5 ft of 12 AWG copper from 12\.6 V\.\n/,
  );
  const before = page.viewportSize()!;
  for (const width of [before.width, 320]) {
    await page.setViewportSize({ width, height: before.height });
    expect(await violations(page, '#pane')).toEqual([]);
    expect(await sidewaysPx(page, '#pane')).toBe(0);
  }
  await page.setViewportSize(before);

  // Another entry, another run, no run: nothing of before stays.
  await workbench.write(SHEET, at(placeOf('Relay set'), 'leastVolts'), 10);
  await shown.getByText('the load works with 10 V').waitFor();
  expect(await shown.textContent()).not.toContain('too few volts');
  await workbench.write(SHEET, at(placeOf('Relay set'), 'length'), 'far');
  await shown.getByText('The row cannot be judged yet').waitFor();
  expect(await shown.textContent()).not.toMatch(/\d V|ohm/);
  await workbench.write(SHEET, at(placeOf('Relay set'), 'length'), '5');
  await workbench.write(SHEET, at(placeOf('Relay set'), 'leastVolts'), 11.5);
  await workbench.select(SHEET, at(placeOf('Bench set'), 'run'));
  await shown.getByText('Why: Bench set').waitFor();
  expect(await shown.textContent()).not.toContain('Relay set');
  await why.focus();
  await page.keyboard.press('Space');
  expect(await shown.isVisible()).toBe(false);
  await page.keyboard.press('Space');
  await shown.getByText('Why: Bench set').waitFor();
  await workbench.select(SHEET, 'A1');
  await expect.poll(() => shown.isVisible()).toBe(false);
  expect(await why.isVisible()).toBe(false);
  await page.evaluate(() => window.loomWorkbench!.calculated());
});

it('a row put between others has its formulas, and keeps the others right', async () => {
  const last = DEMO.runs.length;
  const answers = async (places: readonly number[]) =>
    Promise.all(places.map((place) => Promise.all(ANSWERS.map((key) => read(place, key)))));
  const places = Array.from({ length: last }, (_, place) => place);
  await workbench.page.evaluate(() => window.loomWorkbench!.calculated());
  const before = await answers(places);
  expect(before.flat().filter((value) => String(value).startsWith('#VALUE'))).toEqual([]);
  await workbench.page.evaluate(
    async ([name, row]) => {
      window.loomWorkbench!.insertRow(name, row);
      await window.loomWorkbench!.calculated();
    },
    [SHEET, ROW.first + 2] as const,
  );
  expect(await answers(places.map((place) => (place < 2 ? place : place + 1)))).toEqual(before);
  // The new row answers as soon as it has entries.
  await workbench.write(SHEET, at(2, 'run'), 'Step lamp');
  await workbench.write(SHEET, at(2, 'peak'), '3 A');
  await workbench.write(SHEET, at(2, 'length'), `8' 6"`);
  expect(await read(2, 'oneWay')).toBe(8.5);
  expect(await read(2, 'verdict')).toBe('ok');
});

it('what is typed of a fuse is named for its run, and one undo takes back both', async () => {
  const place = 0;
  const there = (key: 'forRun' | 'ratedVolts') =>
    cellAddress(PROTECTION_ROW.first + place, protectionColumn(key)).replaceAll('$', '');
  const { page } = workbench;
  const typed = () =>
    Promise.all([workbench.read('Protection', there('forRun')), read(0, 'verdict')]);
  expect(await workbench.read('Protection', there('forRun'))).toBe(null);
  const before = await read(place, 'verdict');
  await workbench.type('Protection', there('ratedVolts'), '58');
  await expect.poll(typed).toEqual([await read(place, 'run'), before]);
  await workbench.select('Protection', there('ratedVolts'));
  await page.evaluate(() => {
    window.loomWorkbench!.host.takeKeys?.();
  });
  await page.keyboard.press('Control+z');
  await expect.poll(typed).toEqual([null, before]);
  // Whose name is taken away is asked for.
  await workbench.type('Protection', there('ratedVolts'), '58');
  await workbench.write('Protection', there('forRun'), null);
  expect(await read(place, 'verdict')).toBe(WORD.entriesAstray);
  expect(await read(place, 'mend')).toContain('under For run');
});
