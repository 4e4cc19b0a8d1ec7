/** Marks that stand for any letters do so in criteria alone, as in Excel and LibreOffice, and never beside an operator. */
import { expect, test } from 'vitest';
import type { GridValue } from '../../../src/sheets/plan/grid';
import { openEngine } from './engine';

/** Of A1 "Lamp 1" and B1 "Lamp ?", A2 "Lamp ?" and B2 "*". */
const CASES: readonly (readonly [formula: string, answer: GridValue])[] = [
  ['=A1=B1', false],
  ['=B1=A1', false],
  ['=A1<>B1', true],
  ['=A2=B1', true],
  ['=A2="lamp ?"', true],
  ['=A1=B2', false],
  ['=A1>=B2', true],
  ['=SUMPRODUCT(--(A1:A2=B1))', 1],
  ['=SUMPRODUCT(--(A1:A2=B1:B2))', 0],
  ['=COUNTIF(A1:A2,"Lamp ?")', 2],
  ['=COUNTIF(A1:A2,"Lamp ~?")', 1],
  ['=IF(A1=B1,1,2)', 2],
];

test.each(CASES)('%s', async (formula, answer) => {
  const engine = await openEngine(
    [],
    [
      ['Lamp 1', 'Lamp ?', { formula }],
      ['Lamp ?', '*'],
    ],
  );
  expect(engine.value('C1')).toBe(answer);
  engine.close();
});
