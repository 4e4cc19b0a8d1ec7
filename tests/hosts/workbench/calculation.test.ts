import { ICommandService } from '@univerjs/core';
import { SetFormulaCalculationStartMutation } from '@univerjs/engine-formula';
import { afterEach, expect, test } from 'vitest';
import { watchCalculation } from '../../../src/hosts/workbench/calculation';
import type { Grid } from '../../../src/hosts/workbench/grid';
import { calculateGrid, openBareGrid } from './engine';

let grid: Grid | undefined;
afterEach(() => {
  grid?.univer.dispose();
  grid = undefined;
});

/** A column in which each row hangs on the one above; and C1. */
const ROWS = 30;
function longList(): Grid {
  const cellData = Object.fromEntries(
    Array.from({ length: ROWS }, (_, row) => [
      row,
      row === 0 ? { 0: { v: 1 }, 1: { v: 1 }, 2: { f: '=B1*2' } } : { 0: { f: `=A${row}+1` } },
    ]),
  );
  return openBareGrid([], [{ name: 'One', rowCount: ROWS, columnCount: 5, cellData }]);
}

function begun({ univer }: Grid): Promise<void> {
  const commands = univer.__getInjector().get(ICommandService);
  return new Promise((resolve) => {
    const listener = commands.onCommandExecuted(({ id }) => {
      if (id !== SetFormulaCalculationStartMutation.id) return;
      listener.dispose();
      resolve();
    });
  });
}

test('a change that is made while the grid calculates is waited for as well', async () => {
  grid = longList();
  const { settled: calculated } = watchCalculation(grid);
  await calculateGrid(grid);
  const sheet = grid.workbook.getActiveSheet();
  const shown = () => [`A${ROWS}`, 'C1'].map((address) => sheet.getRange(address).getValue());
  expect(shown()).toEqual([ROWS, 2]);
  const first = begun(grid);
  sheet.getRange('A1').setValue(101);
  await first;
  sheet.getRange('B1').setValue(21);
  await calculated();
  expect(shown()).toEqual([ROWS + 100, 42]);
});

test('a change that nothing hangs on is not waited for without end', async () => {
  grid = longList();
  const { settled: calculated } = watchCalculation(grid);
  await calculateGrid(grid);
  const sheet = grid.workbook.getActiveSheet();
  sheet.getRange('D1').setValue(5);
  await calculated();
  sheet.getRange('D1').setFontWeight('bold');
  await calculated();
  expect(sheet.getRange('D1').getValue()).toBe(5);
});

test('says that it calculates for as long as it does', async () => {
  grid = longList();
  const watch = watchCalculation(grid);
  await calculateGrid(grid);
  expect(watch.isUnderWay()).toBe(false);
  const first = begun(grid);
  grid.workbook.getActiveSheet().getRange('A1').setValue(7);
  expect(watch.isUnderWay()).toBe(true);
  await first;
  expect(watch.isUnderWay()).toBe(true);
  await watch.settled();
  await expect.poll(() => watch.isUnderWay()).toBe(false);
});

test('tells once it is sure that a change needs no calculation', async () => {
  grid = longList();
  const watch = watchCalculation(grid);
  await calculateGrid(grid);
  const told = new Promise<boolean>((resolve) => {
    const stop = watch.onNothingToDo(() => {
      stop();
      resolve(watch.isUnderWay());
    });
  });
  grid.workbook.getActiveSheet().getRange('D1').setFontWeight('bold');
  await expect(told).resolves.toBe(false);
});
