/** Rows that lack formulas, and the row of the next run. */
import { describe, expect, test } from 'vitest';
import { addInSheets } from '../../../src/sheets/book';
import { calculate } from '../../../src/sheets/calculate/calculate';
import type { ComputedGrid, GridValue } from '../../../src/sheets/plan/grid';
import { layBlocks } from '../../../src/sheets/plan/lay-blocks';
import { columnOf, ROW } from '../../../src/sheets/schedule/layout';
import { lackingRows, nextFreeRow, rowsBelow } from '../../../src/sheets/schedule/repair';
import { DEMO } from '../../../src/sheets/station/demo';
import { scheduleNames } from '../../../src/sheets/station/naming';
import { COLUMN_KEYS } from '../../../src/sheets/station/schedule-keys';

const ROWS = DEMO.runs.length + 3;

/** The demonstration as a live sheet hands it over. */
function demoGrid() {
  const names = scheduleNames();
  const sheets = addInSheets({ names, references: 'cells', rows: ROWS }, DEMO);
  const plan = sheets.find(({ name }) => name === names.sheet)!;
  const calculated = calculate(sheets);
  const values: GridValue[][] = Array.from({ length: ROW.first + ROWS }, () =>
    COLUMN_KEYS.map(() => null),
  );
  const computed = values.map((row) => row.map(() => false));
  for (const { row, column, content } of layBlocks(plan.blocks)) {
    if (row >= values.length || column >= COLUMN_KEYS.length || content === null) continue;
    const isFormula = typeof content === 'object';
    computed[row]![column] = isFormula;
    const value = isFormula ? calculated.at(plan.name, row, column) : content;
    values[row]![column] = typeof value === 'object' ? null : value;
  }
  return { sheetName: plan.name, values, computed } satisfies ComputedGrid;
}

/** A row put in by hand, with what is typed in it. */
function withRowAt(grid: ReturnType<typeof demoGrid>, row: number) {
  const typed: GridValue[] = COLUMN_KEYS.map(() => null);
  typed[columnOf('run')] = 'New lamp';
  typed[columnOf('peak')] = '5 A';
  typed[columnOf('length')] = '10 ft';
  grid.values.splice(row, 0, typed);
  grid.computed.splice(
    row,
    0,
    typed.map(() => false),
  );
  return grid;
}

describe('a schedule', () => {
  test('as it was inserted lacks nothing, and has its next row behind the last run', () => {
    expect(lackingRows(demoGrid())).toEqual([]);
    expect(nextFreeRow(demoGrid())).toBe(ROW.first + DEMO.runs.length);
  });

  test.each([0, 5, DEMO.runs.length])('lacks the formulas of a row put in at place %i', (place) => {
    const row = ROW.first + place;
    const [lacking, ...others] = lackingRows(withRowAt(demoGrid(), row));
    expect(others).toEqual([]);
    expect(lacking!.to).toBe(row);
    expect(lacking!.from).not.toBe(row);
    for (const key of ['verdict', 'place', 'level', 'volts', 'target', 'joints'] as const) {
      expect(lacking!.columns, key).toContain(columnOf(key));
    }
    for (const key of ['run', 'peak', 'length', 'ownSize'] as const) {
      expect(lacking!.columns, key).not.toContain(columnOf(key));
    }
  });

  test('keeps what was typed over a usual figure', () => {
    const grid = demoGrid();
    const row = ROW.first + 1;
    grid.computed[row]![columnOf('volts')] = false;
    grid.values[row]![columnOf('volts')] = 13.8;
    grid.computed[row]![columnOf('verdict')] = false;
    const [lacking] = lackingRows(grid);
    expect(lacking!.columns).toEqual([columnOf('verdict')]);
  });

  test('fills no row that was typed below it, and names it', () => {
    const grid = withRowAt(demoGrid(), ROW.first + ROWS);
    expect(lackingRows(grid)).toEqual([]);
    expect(rowsBelow(grid)).toEqual([ROW.first + ROWS]);
    expect(rowsBelow(demoGrid())).toEqual([]);
  });

  test('that is full has no next row', () => {
    const grid = demoGrid();
    for (let row = ROW.first; row < ROW.first + ROWS; row += 1) grid.values[row]![0] = 'taken';
    expect(nextFreeRow(grid)).toBeUndefined();
  });
});
