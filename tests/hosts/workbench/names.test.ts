import { afterEach, expect, test } from 'vitest';
import { insertName, removeNames } from '../../../src/hosts/workbench/names';
import type { Grid } from '../../../src/hosts/workbench/grid';
import { calculateGrid, openBareGrid } from './engine';

let grid: Grid | undefined;
afterEach(() => {
  grid?.univer.dispose();
  grid = undefined;
});

test('names stand for their cells until they are taken out, and then for nothing', async () => {
  const cellData = { 0: { 0: { v: 7 }, 1: { f: '=Lamps*2' }, 2: { f: '=A1+1' } } };
  grid = openBareGrid([], [{ name: 'One', rowCount: 5, columnCount: 5, cellData }]);
  const sheet = grid.workbook.getActiveSheet();
  const shown = () => ['B1', 'C1'].map((address) => sheet.getRange(address).getValue());
  const names = () => grid!.workbook.getDefinedNames().map((name) => name.getName());
  for (const name of ['Lamps', 'Lamp', 'Fuses']) insertName(grid, name, 'One!$A$1');
  await calculateGrid(grid);
  expect(shown()).toEqual([14, 8]);
  removeNames(grid, ['Lamp']);
  expect(names()).toEqual(['Lamps', 'Fuses']);
  await calculateGrid(grid);
  expect(shown()).toEqual([14, 8]);
  // What somebody wrote with the name shows no figure of a cell that it no longer stands for.
  removeNames(grid, ['Lamps', 'Lamp']);
  expect(names()).toEqual(['Fuses']);
  await calculateGrid(grid);
  expect(shown()).toEqual(['#REF!', 8]);
});
