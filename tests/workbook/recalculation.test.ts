import { CellError, type Cell } from '../../src/functions/cell';
import { describe, expect, it } from 'vitest';
import { area } from '../../src/sheets/plan/area';
import type { CellContent, SheetPlan } from '../../src/sheets/plan/plan';
import { writeWorkbook } from '../../src/hosts/xlsx/write';
import { cellsOf } from './cells';
import { recalculated } from './libreoffice';

function onePlan(cells: readonly (readonly CellContent[])[]): SheetPlan {
  const all = area(0, 0, cells.length, cells[0]?.length ?? 1);
  return {
    name: 'Judge',
    columnWidths: [],
    blocks: [{ area: all, cells }],
    names: [],
    entries: [],
    highlights: [],
    notes: [],
    frozenRows: 0,
    frozenColumns: 0,
    print: { landscape: true, area: all, footer: '' },
  };
}

/** A formula, a false value to travel along, and what it must come to. */
const CASES = [
  ['=1+1', 7, 2],
  ['="o"&"k"', 'wrong', 'ok'],
  ['=1=2', true, false],
  ['=1-1', 5, 0],
  ['=3', 0, 3],
  ['=NA()', 3, { error: '#N/A' }],
  ['=1/0', 'fine', { error: '#DIV/0!' }],
  ['=""', 'something', ''],
  ['=2', { error: '#VALUE!' }, 2],
  ['=PI()', 3, Math.PI],
] as const;

describe('the judge of written workbooks', () => {
  it('calculates every formula anew, whatever value came along', { timeout: 120_000 }, async () => {
    const plan = onePlan(CASES.map(([formula]) => [{ formula }]));
    const wrong = {
      at: (_: string, row: number) => {
        const cached = CASES[row]![1];
        return typeof cached === 'object' ? new CellError(cached.error, 'not so') : cached;
      },
    };
    const written = await writeWorkbook([plan], wrong);
    const before = await cellsOf(written);
    const after = await cellsOf(recalculated({ judge: written })['judge']!);
    for (const [row, [formula, cached, right]] of CASES.entries()) {
      const stood = (cell: Cell) => (cell instanceof CellError ? { error: cell.code } : cell);
      expect(stood(before.at('Judge', row, 0)), `travelling with ${formula}`).toEqual(cached);
      const judged = stood(after.at('Judge', row, 0));
      if (typeof right === 'number') expect(judged).toBeCloseTo(right, 14);
      // An empty text is written as none.
      else expect(right === '' ? (judged ?? '') : judged, formula).toEqual(right);
    }
  });

  it('finds text a text, whatever it begins with', { timeout: 120_000 }, async () => {
    const texts = ['=1+1', '+1', '-1', '@SUM(1)', '=cmd', "'quoted", '1/0', '3-4', 'TRUE', '0012'];
    const odd = [
      '_x0041_',
      'a\u0001b',
      'line\nbreak',
      'car\rriage',
      '<&>"\'',
      'Ω ² ° 😀',
      '  outer  ',
    ];
    const plan = onePlan([...texts, ...odd].map((text) => [text]));
    const written = await writeWorkbook([plan]);
    const after = await cellsOf(recalculated({ judge: written })['judge']!);
    const judged = [...texts, ...odd].map((_, row) => after.at('Judge', row, 0));
    expect(judged).toEqual([...texts, ...odd]);
  });
});
