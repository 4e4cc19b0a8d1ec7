/** The story that the demonstration tells of the hilltop hut. */
import { expect, test } from 'vitest';
import { DEMO } from '../../src/sheets/demo';
import { stationValues } from '../../src/sheets/schedule-values';
import { MEND_WORDS } from '../../src/sheets/schedule-words';

const rowNamed = (name: string) => DEMO.runs.findIndex(({ run }) => run === name);

test('every load works from a full battery; at low charge the relay set does not', () => {
  const { runs, supply } = stationValues(DEMO);
  expect(supply.cells.fullShort).toBe(0);
  expect(supply.cells.lowShort).toBe(1);
  expect(runs[rowNamed('Relay set')]!.shortLow).toBe(1);
});

test('the thicker run that is named mends it, and the size in use does not', () => {
  const { runs } = stationValues(DEMO);
  const told = String(runs[rowNamed('Relay set')]!.mend);
  const [, name, size] = new RegExp(`${MEND_WORDS.mends}(.+)${MEND_WORDS.inSize}(.+)`).exec(told)!;
  const thicker = rowNamed(name!);
  expect(thicker).toBeGreaterThanOrEqual(0);
  const mended = stationValues({
    ...DEMO,
    runs: DEMO.runs.map((run, row) => (row === thicker ? { ...run, ownSize: size! } : run)),
  });
  expect(mended.supply.cells.lowShort).toBe(0);
  expect(mended.runs[rowNamed('Relay set')]!.verdict).toBe('ok');
});
