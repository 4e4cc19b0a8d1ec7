/** A schedule whose table grew past the rows that other sheets follow: each of them says that runs are missing on it. */
import { describe, expect, test } from 'vitest';
import { addInSheets } from '../../src/sheets/book';
import { calculate } from '../../src/sheets/calculate/calculate';
import { layBlocks } from '../../src/sheets/plan/lay-blocks';
import type { CellContent, SheetPlan } from '../../src/sheets/plan/plan';
import { columnReferences, runsFollowed } from '../../src/sheets/schedule/layout';
import type { StationContent } from '../../src/sheets/station/content';
import { EXTRA_KEYS } from '../../src/sheets/station/extras';
import type { Layout } from '../../src/sheets/station/layout';
import { scheduleNames } from '../../src/sheets/station/naming';
import { COLUMN_KEYS } from '../../src/sheets/station/schedule-keys';

const names = scheduleNames();
const MISSING = 'chedule has more';

const stationOf = (runs: number): StationContent => ({
  title: 'Hut',
  extras: EXTRA_KEYS,
  runs: Array.from({ length: runs }, (_, at) => ({ run: `Lamp ${at}`, peak: 1, length: 2 })),
});

/** Sheets drawn beside a table of two runs; whoever computes them here knows the columns of a table by their cells alone. */
const DRAWN: Layout = { names, references: 'table', rows: 2 };

function sheetsBeside(runs: number) {
  const cells: Layout = { names, references: 'cells', rows: runs };
  const [inTable, inCells] = [columnReferences(DRAWN, true), columnReferences(cells, true)];
  const pointed = (formula: string) =>
    COLUMN_KEYS.reduce((said, key) => said.replaceAll(inTable[key], inCells[key]), formula);
  const pointedCell = (cell: CellContent) =>
    typeof cell === 'object' && cell !== null ? { formula: pointed(cell.formula) } : cell;
  const beside = addInSheets(DRAWN, stationOf(DRAWN.rows)).map((plan): SheetPlan => ({
    ...plan,
    blocks: plan.blocks.map((block) => ({
      ...block,
      ...(block.cells && { cells: block.cells.map((row) => row.map(pointedCell)) }),
      ...(block.fill && { fill: block.fill.map((one) => one && pointed(one)) }),
    })),
  }));
  const grown = addInSheets(cells, stationOf(runs));
  const own = [names.sheet, names.rulesSheet, names.supplySheet, names.protectionSheet];
  return beside.map((plan) =>
    own.includes(plan.name) ? grown.find(({ name }) => name === plan.name)! : plan,
  );
}

/** What each sheet says in the cells that may say so. */
function saidOf(runs: number): ReadonlyMap<string, string> {
  const plans = sheetsBeside(runs);
  const sheets = calculate(plans);
  const said = new Map<string, string>();
  for (const { name, blocks } of plans) {
    for (const { row, column, content } of layBlocks(blocks)) {
      if (typeof content !== 'object' || !content?.formula.includes(MISSING)) continue;
      said.set(name, `${said.get(name) ?? ''}${String(sheets.at(name, row, column))}. `);
    }
  }
  return said;
}

describe('a sheet that follows the runs', () => {
  const followed = runsFollowed(DRAWN);
  const [enough, tooMany] = [saidOf(followed), saidOf(followed + 1)];

  test('is the page of the crew, and every one that stands where it is wanted', () => {
    expect(enough.size).toBe(1 + EXTRA_KEYS.length);
  });

  test.each([...enough.keys()])(
    '%s says that runs are missing once they are, not before',
    (name) => {
      expect(enough.get(name)).not.toContain(MISSING);
      expect(tooMany.get(name)).toMatch(/schedule has more .*follows.*take a new copy/i);
    },
  );
});
