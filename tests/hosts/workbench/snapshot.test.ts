import { BooleanNumber, CellValueType, WrapStrategy, type IStyleData } from '@univerjs/core';
import { describe, expect, test } from 'vitest';
import { gridContent, gridStyle, sheetSnapshot } from '../../../src/hosts/workbench/snapshot';
import { area } from '../../../src/sheets/plan/area';
import { BARE_PLAN } from '../../sheets/bare-plan';

describe('contents', () => {
  test.each(['1/0', '12', '=1+1', 'TRUE', '#N/A', ''])('the text %j stays text', (text) => {
    expect(gridContent(text)).toEqual({ v: text, t: CellValueType.STRING });
  });

  test('numbers, truth, formulas and blanks keep their kind', () => {
    expect(gridContent(12.8)).toEqual({ v: 12.8, t: CellValueType.NUMBER });
    expect(gridContent(false)).toEqual({ v: 0, t: CellValueType.BOOLEAN });
    expect(gridContent({ formula: '=A1*2' })).toEqual({ f: '=A1*2' });
    expect(gridContent(null)).toEqual({});
  });
});

describe('a plan', () => {
  test('lays later blocks over earlier ones, each adding its own looks', () => {
    const { cellData } = sheetSnapshot({
      ...BARE_PLAN,
      blocks: [
        { area: area(0, 0, 1, 2), cells: [['a', 'b']], style: { bold: true, fill: '#ffffff' } },
        { area: area(0, 1), cells: [[7]], style: { fill: '#ff0000' } },
        { area: area(0, 0, 2, 1), style: { italic: true } },
      ],
    });
    expect(cellData?.[0]?.[0]).toMatchObject({
      v: 'a',
      s: { bl: 1, it: 1, bg: { rgb: '#ffffff' } },
    });
    expect(cellData?.[0]?.[1]).toEqual({
      v: 7,
      t: CellValueType.NUMBER,
      s: { bl: BooleanNumber.TRUE, bg: { rgb: '#ff0000' } },
    });
    expect(cellData?.[1]?.[0]).toEqual({ s: { it: BooleanNumber.TRUE } });
  });

  test('freezes its head, and leaves room below', () => {
    const snapshot = sheetSnapshot({
      ...BARE_PLAN,
      blocks: [{ area: area(99, 0), cells: [[1]] }],
      frozenRows: 8,
      frozenColumns: 1,
    });
    expect(snapshot.freeze).toEqual({ xSplit: 1, ySplit: 8, startRow: 8, startColumn: 1 });
    expect(snapshot.rowCount).toBeGreaterThan(100);
  });

  test('hides the columns that it hides, and no other', () => {
    const { columnData } = sheetSnapshot({
      ...BARE_PLAN,
      columnWidths: [10, 10, 10, 10],
      hiddenColumns: [1, 2],
    });
    const hidden = [0, 1, 2, 3].map((column) => columnData?.[column]?.hd ?? BooleanNumber.FALSE);
    expect(hidden).toEqual([0, 1, 1, 0]);
  });

  test('gives a column with a list room for the arrow, and its cells one line', () => {
    const snapshot = sheetSnapshot({
      ...BARE_PLAN,
      columnWidths: [10, 10],
      entries: [{ area: area(2, 1), choices: ['ft', 'm'], promptTitle: '', prompt: '' }],
    });
    const [plain, list] = [snapshot.columnData?.[0]?.w, snapshot.columnData?.[1]?.w];
    expect(plain).toBe(75);
    expect(list).toBeGreaterThan(75);
    const style = snapshot.cellData?.[2]?.[1]?.s as IStyleData;
    expect(style.tb).toBe(WrapStrategy.CLIP);
  });

  test('keeps a note with its cell', () => {
    const snapshot = sheetSnapshot({
      ...BARE_PLAN,
      blocks: [{ area: area(0, 0), cells: [['Run']] }],
      notes: [{ area: area(0, 0), text: 'A short name' }],
    });
    expect(snapshot.cellData?.[0]?.[0]?.custom).toEqual({ note: 'A short name' });
  });

  test('heights come in points and are drawn in pixels', () => {
    expect(sheetSnapshot({ ...BARE_PLAN, rowHeightsPt: { 7: 30 } }).rowData?.[7]?.h).toBe(40);
  });
});

test('a style says only what the plan says', () => {
  expect(gridStyle({})).toEqual({});
  expect(gridStyle({ bold: false, numberFormat: '0.0 "V"' })).toEqual({
    bl: BooleanNumber.FALSE,
    n: { pattern: '0.0 "V"' },
  });
});
