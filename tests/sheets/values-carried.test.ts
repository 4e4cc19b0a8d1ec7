/**
 * A copy carries what its cells come to, for viewers that do not calculate. It is worked out with as many rows as there are
 * runs, while the copy has more: nothing that is shown may stand elsewhere for that.
 */
import { expect, it } from 'vitest';
import { CellError } from '../../src/functions/cell';
import { calculate } from '../../src/sheets/calculate/calculate';
import { layBlocks } from '../../src/sheets/plan/lay-blocks';
import { sharedCopy } from '../../src/sheets/shared-copy';
import { DEMO } from '../../src/sheets/station/demo';
import { EXTRA_KEYS, EXTRAS } from '../../src/sheets/station/extras';

const CONTENT = {
  ...DEMO,
  sources: DEMO.sources!.map((source) =>
    source.kind === 'battery' ? { ...source, mainFuse: 150, mainFuseKind: 'bolt-in' } : source,
  ),
  extras: EXTRA_KEYS,
};
const { plans, values } = sharedCopy(CONTENT);
const calculated = calculate(plans);

const shown = (value: unknown) => {
  if (value instanceof CellError) return value.code;
  return typeof value === 'number' ? value.toPrecision(9) : value;
};

// The Drawing has a picture, and hardly a cell in sight.
const SHEETS = EXTRA_KEYS.filter((key) => key !== 'drawing').map((key) => EXTRAS[key].sheetName);

it.each(SHEETS)('on the sheet %s', (sheet) => {
  const plan = plans.find(({ name }) => name === sheet)!;
  const differing: string[] = [];
  let compared = 0;
  for (const { row, column } of layBlocks(plan.blocks)) {
    const carried = values.at(sheet, row, column);
    // Rows beyond the list, and warnings that a copy does not need, carry nothing.
    if (carried === null || carried === undefined) continue;
    compared += 1;
    const [said, comesTo] = [shown(carried), shown(calculated.at(sheet, row, column))];
    if (said !== comesTo)
      differing.push(`row ${row + 1}, column ${column + 1}: ${String(said)}, ${String(comesTo)}`);
  }
  expect(differing).toEqual([]);
  expect(compared).toBeGreaterThan(10);
});
