import { hashAlgorithm } from '@univerjs/core';
import { afterEach, expect, test } from 'vitest';
import type { Grid } from '../../../src/hosts/workbench/grid';
import { calculateGrid, openBareGrid } from './engine';

let grid: Grid | undefined;
afterEach(() => {
  grid?.univer.dispose();
  grid = undefined;
});

/** Two long texts that the engine's own number for a text does not tell apart. */
const TEXTS = ['vhd08dnbs4zw', 'a9jjoqr0gr5n'].map((end) => `${'x'.repeat(70)}${end}`);

test('two long formulas that share a number have each its own answer', async () => {
  expect(new Set(TEXTS.map(hashAlgorithm)).size).toBe(1);
  const cellData = Object.fromEntries(
    TEXTS.map((text, row) => [row, { 0: { f: `="${text}"` } }] as const),
  );
  grid = openBareGrid([], [{ name: 'One', rowCount: 5, columnCount: 5, cellData }]);
  await calculateGrid(grid);
  const sheet = grid.workbook.getActiveSheet();
  const answers = ['A1', 'A2'].map((address) => sheet.getRange(address).getValue());
  expect(answers).toEqual(TEXTS);
});
