/** Empty text in the grid's engine comes to the same whenever it was calculated, and to what a spreadsheet says. */
import { expect, test } from 'vitest';
import type { GridValue } from '../../../src/sheets/plan/grid';
import { openEngine } from './engine';

/** Beside A1, which is empty text by a formula, and B1, which is blank. Excel and LibreOffice answer so. */
const CASES: readonly (readonly [formula: string, answer: GridValue])[] = [
  ['=A1+1', '#VALUE!'],
  ['=A1-A1', '#VALUE!'],
  ['=INDEX(A1:A2,1)*2', '#VALUE!'],
  ['=N(A1)+1', 1],
  ['=SUM(A1:A2)', 0],
  ['=A1&"x"', 'x'],
  ['=A1=B1', true],
  ['=B1=A1', true],
  ['=A1<>B1', false],
  ['=A1>B1', false],
  ['=SUMPRODUCT(--(A1:A2<>B1:B2))', 0],
  ['=B1+1', 1],
];

test.each(CASES)('%s', async (formula, answer) => {
  // D1 is no part of what A1 hangs on: after an edit of it, the formula reads an A1 of an earlier calculation.
  const also = { formula: `=IF(D1=5,${formula.slice(1)},${formula.slice(1)})` };
  const empty = { formula: '=IF(C1=1,"","")' };
  const engine = await openEngine([], [[empty, null, 1, 5, { formula }, also], [empty]]);
  const answers = () => [engine.value('E1'), engine.value('F1')];
  expect(answers()).toEqual([answer, answer]);
  await engine.put('D1', 6);
  expect(answers()).toEqual([answer, answer]);
  await engine.put('C1', 2);
  expect(answers()).toEqual([answer, answer]);
  engine.close();
});
