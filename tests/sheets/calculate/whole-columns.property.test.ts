/**
 * Formulas that compare whole columns with a value of their row are answered from an index and from what other rows asked.
 * They come to what the same formulas come to where nothing is kept: with areas that would move.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CellError } from '../../../src/functions/cell';
import { calculate } from '../../../src/sheets/calculate/calculate';
import { area } from '../../../src/sheets/plan/area';
import type { CellContent } from '../../../src/sheets/plan/plan';
import { BARE_PLAN } from '../bare-plan';

const ROWS = 7;
const pinned = (column: string) => `$${column}$1:$${column}$${ROWS}`;
const moving = (column: string) => `${column}1:${column}${ROWS}`;

/** Of a row: by how its areas are written. */
const FORMULAS: readonly ((of: (column: string) => string, own: string) => string)[] = [
  (of, own) => `SUMPRODUCT(--(${of('A')}=${own}))`,
  (of, own) => `SUMPRODUCT(MAX((${of('A')}=${own})*${of('B')}))`,
  (of, own) => `SUMPRODUCT(MIN((${of('A')}=${own})*(${of('B')}=2)*${of('C')}))`,
  (of, own) => `SUMPRODUCT(MAX(((${of('A')}=${own})+(${of('B')}=${own}))*(ISERROR(${of('C')})+1)))`,
  (of, own) => `SUMPRODUCT(MAX((1-(${of('A')}=${own}))*1000+${of('B')}))`,
  (of, own) => `SUMPRODUCT(MAX((${of('A')}=${own})*((ISERROR(${of('B')})+(LEN(${of('C')})>0))>0)))`,
  (of, own) =>
    `MAX((${of('A')}=${own})*(${of('B')}=SUMPRODUCT(MAX((${of('C')}=${own})*${of('B')}))))`,
  (of, own) => `SUM((${of('A')}=${own})/(${of('B')}=${own}))`,
  (of, own) => `OR(${of('A')}=${own})`,
  (of, own) => `AND(NOT(${of('A')}=${own}))`,
  (of, own) => `SUMPRODUCT((${of('A')}=${own})*(${of('B')}="x"),${of('C')})`,
  (of, own) => `INDEX(${of('A')}=${own},3)`,
  (of, own) => `SUM(ISNUMBER(${of('A')})*(${of('B')}<>${own}))`,
];

const NA: CellContent = { formula: '=NA()' };
const cell = fc.oneof(
  fc.constantFrom<CellContent>(null, '', 'x', 'X', 'xy', '2', 0, 1, 2, -2, true, false, NA),
  fc.integer({ min: -3, max: 3 }),
);
const table = fc.array(fc.tuple(cell, cell, cell), { minLength: ROWS, maxLength: ROWS });

const told = (value: unknown) =>
  value instanceof CellError ? value.code : Object.is(value, -0) ? 0 : value;

function answers(rows: readonly (readonly CellContent[])[], isKept: boolean) {
  const where = area(0, 4, ROWS, FORMULAS.length);
  const written = isKept
    ? { area: where, fill: FORMULAS.map((formula) => `=${formula(pinned, '$A1')}`) }
    : {
        area: where,
        cells: rows.map((_, row) =>
          FORMULAS.map((formula) => ({ formula: `=${formula(moving, `A${row + 1}`)}` })),
        ),
      };
  const plan = { ...BARE_PLAN, blocks: [{ area: area(0, 0, ROWS, 3), cells: rows }, written] };
  const values = calculate([plan]);
  return rows.map((_, row) =>
    FORMULAS.map((_formula, column) => told(values.at(plan.name, row, column + 4))),
  );
}

describe('a whole column compared with a value', () => {
  it('answers as cell by cell', () => {
    fc.assert(
      fc.property(table, (rows) => {
        expect(answers(rows, true)).toEqual(answers(rows, false));
      }),
      { numRuns: 400 },
    );
  });
});
