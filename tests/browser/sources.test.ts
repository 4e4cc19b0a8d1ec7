/** Sources typed by hand in the workbench: what a person writes on the Supply sheet is in the verdicts of its runs. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { cellAddress } from '../../src/sheets/plan/area';
import { readSchedule } from '../../src/sheets/schedule/reading';
import type { ShownKey } from '../../src/sheets/station/schedule-keys';
import { DEMO } from '../../src/sheets/station/demo';
import type { SupplyKey } from '../../src/sheets/station/supply-keys';
import { supplyArea } from '../../src/sheets/supply/layout';
import { launchBrowser } from './browser';
import { openWorkbench } from './workbench-page';

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser?.close();
});

test('a person puts the sources of the demonstration right and wrong', async () => {
  const workbench = await openWorkbench(browser);
  const { sheetName, values } = await workbench.activeGrid();
  const reading = readSchedule(values)!;
  const at = (run: string, key: ShownKey) => {
    const { row } = reading.rows.find((one) => one.values.run === run)!;
    return cellAddress(row, reading.columnOf[key]!);
  };
  const ofSource = (name: string, key: SupplyKey) => {
    const place = DEMO.sources!.findIndex((source) => source.name === name);
    const { row, column } = supplyArea(key, place);
    return cellAddress(row, column);
  };
  const type = async (sheet: string, address: string, keys: string) => {
    await workbench.type(sheet, address, keys);
    const typed = /^\d+$/.test(keys) ? Number(keys) : keys;
    await expect.poll(() => workbench.read(sheet, address), { message: address }).toBe(typed);
  };
  const verdict = (run: string) => expect.poll(() => workbench.read(sheetName, at(run, 'verdict')));

  await verdict('Case link').toBe('no fuse at its other end');
  await type(sheetName, at('Case link', 'endFused'), 'yes');
  await verdict('Case link').toBe('ok');

  await verdict('Bench set').toBe('ok');
  await type('Supply', ofSource('Bench supply', 'mostAmps'), '15');
  await verdict('Bench set').toContain('supply overloaded');
  await type('Supply', ofSource('Bench supply', 'mostAmps'), '25');
  await verdict('Bench set').toBe('ok');

  // A source that is called otherwise now is no longer found, and found again under the new name.
  await type('Supply', ofSource('Case 1', 'name'), 'Blue box');
  await verdict('Case 1 set').toBe('feeder not listed');
  await type(sheetName, at('Case 1 set', 'fedFrom'), 'blue box');
  await verdict('Case 1 set').toBe('ok');
  // What charged it ends at nothing that is known.
  await verdict('Case link').toBe('source at its other end not listed');

  // Pasted: in a cell with a list of choices the grid keeps only the first of keys that come while it calculates.
  await workbench.write(sheetName, at('Bench lamp', 'returns'), 400);
  await verdict('Bench lamp').toContain('drop over target');
  await workbench.write(sheetName, at('Bench lamp', 'returns'), 'chassis');
  await verdict('Bench lamp').toBe('ok');

  await verdict('Case 2 charger').toBe('too few volts while a load starts');
  await type(sheetName, at('Case 2 pump', 'surge'), '3');
  await verdict('Case 2 charger').toBe('ok');
  expect(workbench.trouble).toEqual({ violations: [], strayRequests: [], pageErrors: [] });
  await workbench.page.close();
}, 480_000);
