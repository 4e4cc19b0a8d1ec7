/** The evaluation of formulas by itself: the language, its kinds of values, and what must not hang or overflow. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CellError, type Cell } from '../../../src/functions/cell';
import { calculate } from '../../../src/sheets/calculate/calculate';
import { FormulaSyntaxError, parseFormula } from '../../../src/sheets/calculate/syntax';
import { area } from '../../../src/sheets/plan/area';
import type { CellContent, SheetPlan } from '../../../src/sheets/plan/plan';
import { BARE_PLAN } from '../bare-plan';

function planOf(cells: readonly (readonly CellContent[])[], more: Partial<SheetPlan> = {}) {
  const columns = Math.max(...cells.map((row) => row.length));
  return { ...BARE_PLAN, blocks: [{ area: area(0, 0, cells.length, columns), cells }], ...more };
}

/** What a formula in D1 comes to beside A1:C3. */
const BESIDE: readonly (readonly CellContent[])[] = [
  [1, 'two', true],
  [4, '', null],
  [9, '3', { formula: '=1/0' }],
];
function value(formula: string): Cell {
  const cells = BESIDE.map((row, index) => (index === 0 ? [...row, { formula }] : row));
  return calculate([planOf(cells)]).at('Runs', 0, 3);
}

const shown = (cell: Cell) => (cell instanceof CellError ? cell.code : cell);

/** As Excel and LibreOffice have it; the errors by their kind. */
const CASES: readonly (readonly [string, unknown])[] = [
  ['=1+2*3^2', 19],
  ['=-2^2', 4],
  ['=2^3^2', 64],
  ['=50%', 0.5],
  ['=1&2=12', false],
  ['="a"="A"', true],
  ['=1="1"', false],
  ['=B2=""', true],
  ['=C2=""', true],
  ['=C2=0', true],
  ['=A1+B3', 4],
  ['=A1+B1', '#VALUE!'],
  ['=A1+B2', '#VALUE!'],
  ['=A1+C2', 1],
  ['=TRUE+1', 2],
  ['=C3', '#DIV/0!'],
  ['=C3+NA()', '#DIV/0!'],
  ['=NA()+C3', '#N/A'],
  ['=IF(1=1,"yes",C3)', 'yes'],
  ['=IF(1=2,"yes")', false],
  ['=IF("text",1,2)', '#VALUE!'],
  ['=IFERROR(C3,"fixed")', 'fixed'],
  ['=ISNUMBER(C3)', false],
  ['=ISNA(NA())', true],
  ['=ISERROR(VALUE("check"))', true],
  ['=VALUE(" 2.5 ")', 2.5],
  ['=SUM(A1:C2)', 5],
  ['=SUM(A1:C3)', '#DIV/0!'],
  ['=COUNT(A1:C2)', 2],
  ['=MAX(A1:A3)', 9],
  ['=MIN(A1:A3,-1)', -1],
  // Text in a cell that is named is left out, as LibreOffice and Excel do; text that is computed is not.
  ['=MIN(B1,5)', 5],
  ['=MAX(B1,-5)', -5],
  ['=SUM(B1,5)', 5],
  ['=MIN(B1&"",5)', '#VALUE!'],
  ['=MIN(C3,5)', '#DIV/0!'],
  ['=SUMPRODUCT(A1:A3,A1:A3)', 98],
  ['=SUMPRODUCT(--(A1:A3>1))', 2],
  ['=SUMPRODUCT((A1:A3>1)*(A1:A3<9))', 1],
  ['=SUMPRODUCT(MAX(ABS(A1:A3-5)))', 4],
  ['=SUMPRODUCT(A1:A3>1)', 0],
  ['=MATCH("TWO",B1:B3,0)', 1],
  ['=MATCH(5,A1:A3,1)', 2],
  ['=MATCH(0,A1:A3,1)', '#N/A'],
  ['=INDEX(A1:A3,2)', 4],
  ['=INDEX(A1:B3,1,2)', 'two'],
  ['=INDEX(A1:C1,3)', true],
  ['=INDEX(A1:A3,4)', '#REF!'],
  ['=INDEX(C1:C3,1)', true],
  ['=LOOKUP(5,A1:A3,B1:B3)', 0],
  ['=SUMIF(B1:B3,"two",A1:A3)', 1],
  ['=COUNTIF(B1:B3,"TWO")', 1],
  ['=ROW()', 1],
  ['=ROW(A3)', 3],
  ['=SUM(ROW(A1:A3))', 6],
  ['=COLUMN(C1)', 3],
  ['=SUM(COLUMN(A1:C1))', 6],
  ['=SUMPRODUCT(COLUMN(A1:C1)*ROW(A1:A2))', 18],
  ['=ROWS(A1:A3)', 3],
  ['=LEN("water")', 5],
  ['=MID("watch",2,3)', 'atc'],
  ['=LEFT("watch",2)', 'wa'],
  ['=TRIM("  a  b ")', 'a b'],
  ['=SEARCH("TER","water")', 3],
  ['=ISNUMBER(SEARCH("x","water"))', false],
  ['=N("x")+N(3)', 3],
  ['=INT(-1.5)', -2],
  ['=ERROR.TYPE(1/0)', 2],
  ['=ERROR.TYPE(INDEX(A1:A3,4))', 4],
  ['=ERROR.TYPE(NA())', 7],
  ['=ERROR.TYPE(3)', '#N/A'],
  ['=LN(0)', '#NUM!'],
  ['=SQRT(-1)', '#NUM!'],
  ['=9^999', '#NUM!'],
  ['=NOT(FALSE)', true],
  ['=AND(TRUE,1,A1:A3)', true],
  ['=OR(FALSE,C3)', '#DIV/0!'],
  ['=Nobody_knows', '#NAME?'],
  ['=LOOM.NOTHING(1)', '#NAME?'],
  ['=LOOM.DCDROP(20,6,"ft","12 AWG")', 0.381181],
  ['=LOOM.DCDROP(C2,6,"ft","12 AWG")', ''],
  ['=LOOM.DCDROP(,6,"ft","12 AWG")', '#VALUE!'],
  ['=LOOM.DCDROP(20,6,"ft","12 AWG",,,)', 0.381181],
  ['=LOOM.DCDROP(20,6,ft,"12 AWG")', '#NAME?'],
  ['=LOOM.DCDROP("20 A","6 ft","ft","12 AWG")', 0.381181],
];

describe('a formula', () => {
  test.each(CASES)('%s', (formula, expected) => {
    const found = shown(value(formula));
    if (typeof expected === 'number') expect(found).toBeCloseTo(expected, 6);
    else expect(found).toBe(expected);
  });

  test.each(['1+', 'IF(1', '"open', 'SUM(A1:)', '1 2', ')', 'NOSUCH(1)', '{1,2}'])(
    'that is none is refused: %s',
    (formula) => {
      expect(() => value(`=${formula}`)).toThrow(FormulaSyntaxError);
    },
  );

  test('is read whatever is in it, or refused: nothing else is thrown', () => {
    const pieces = [
      'IF(',
      ')',
      ',',
      'A1',
      '"x"',
      '1.5',
      '+',
      '-',
      '&',
      '<>',
      'B$2:C3',
      "'a b'!",
      '%',
    ];
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...pieces), { maxLength: 12 }), (parts) => {
        try {
          parseFormula(parts.join(''));
        } catch (fault) {
          expect(fault).toBeInstanceOf(FormulaSyntaxError);
        }
      }),
      { numRuns: 2000 },
    );
  });
});

describe('sheets that are calculated together', () => {
  test('read each other by name and by address', () => {
    const one = planOf([[2], [{ formula: "=Loom_there*'Two of them'!A1" }]]);
    const two = planOf([[5], [{ formula: '=Runs!$A$1+1' }]], {
      name: 'Two of them',
      names: [{ name: 'LOOM_THERE', area: area(1, 0) }],
    });
    expect(calculate([one, two]).at('Runs', 1, 0)).toBe(15);
  });

  test('fill a formula down, and leave what is typed over it', () => {
    const plan: SheetPlan = {
      ...BARE_PLAN,
      blocks: [
        { area: area(0, 0, 3, 1), cells: [[1], [2], [3]] },
        { area: area(0, 1, 3, 1), cells: [[null], [7], [null]], fill: ['=$A1*10+$A$3'] },
      ],
    };
    const { at } = bound(plan);
    expect([0, 1, 2].map((row) => at(row, 1))).toEqual([13, 7, 33]);
  });

  test('let a formula spill as far as it is said to', () => {
    const plan: SheetPlan = {
      ...BARE_PLAN,
      blocks: [
        { area: area(0, 0, 2, 1), cells: [[1], [2]] },
        { area: area(0, 1), cells: [[{ formula: '=A1:A2*2' }]], spillRows: 3 },
        { area: area(3, 0), cells: [[{ formula: '=SUM(B1:B3)' }]] },
      ],
    };
    const { at } = bound(plan);
    expect([at(1, 1), at(2, 1), at(3, 0)]).toEqual([4, null, 6]);
  });

  function bound(plan: SheetPlan) {
    const read = calculate([plan]);
    return { at: (row: number, column: number) => read.at(plan.name, row, column) };
  }

  test('tell a circular reference as an error, and compute the rest', () => {
    const plan = planOf([
      [{ formula: '=B1+1' }, { formula: '=A1' }],
      [{ formula: '=IF(1=1,2,A2)' }, { formula: '=IFERROR(A1,"circular")' }],
    ]);
    const { at } = bound(plan);
    expect(shown(at(0, 0))).toBe('#REF!');
    expect([at(1, 0), at(1, 1)]).toEqual([2, 'circular']);
  });

  test('bear a chain of any depth, read from either end', () => {
    const rows = 20_000;
    const plan: SheetPlan = {
      ...BARE_PLAN,
      blocks: [
        { area: area(0, 0), cells: [[1]] },
        { area: area(1, 0, rows, 1), fill: ['=$A1+1'] },
      ],
    };
    expect(bound(plan).at(rows, 0)).toBe(rows + 1);
    expect(bound({ ...plan, name: 'Other' }).at(3, 0)).toBe(4);
  });

  test('find a circle however long it is', () => {
    const rows = 3000;
    const plan: SheetPlan = {
      ...BARE_PLAN,
      blocks: [
        { area: area(0, 0), cells: [[{ formula: `=A${rows}` }]] },
        { area: area(1, 0, rows, 1), fill: ['=$A1+1'] },
      ],
    };
    expect(shown(bound(plan).at(rows, 0))).toBe('#REF!');
  });
});
