/** Workbooks that a browser kept: which of their sheets were laid out by a plan. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { gunzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { projectFolder } from '../../../src/build/build-folders';
import { readKept } from '../../../src/hosts/workbench/kept';
import { isPlanned, PLANNED } from '../../../src/hosts/workbench/standing-sheets';

const EARLIEST = path.join(projectFolder, 'tests/browser/kept/0.1.0.json.gz');

const plannedIn = (text: string) =>
  Object.values(readKept(text).workbook.sheets ?? {}).map((sheet) => isPlanned(sheet));
const keptOf = (sheets: object) =>
  JSON.stringify({ form: 1, inView: 'a', workbook: { sheetOrder: Object.keys(sheets), sheets } });

test('all of one that an earlier version kept', () => {
  const planned = plannedIn(gunzipSync(readFileSync(EARLIEST)).toString());
  expect(planned.length).toBeGreaterThan(3);
  expect(planned).not.toContain(false);
});

test('those that say so, where some do', () => {
  const filled = { cellData: { 2: { 1: { si: 'fill 1', f: '=A1' } } } };
  expect(plannedIn(keptOf({ a: { custom: { ...PLANNED } }, b: filled }))).toEqual([true, false]);
});

test('none of a workbook of a person’s own', () => {
  const own = { cellData: { 0: { 0: { si: 'x1', f: '=B1' }, 1: { v: 'fill 1' } }, 1: null } };
  expect(plannedIn(keptOf({ a: own, b: {} }))).toEqual([false, false]);
});
