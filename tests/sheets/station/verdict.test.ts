/** What a row says of itself when not everything is there. */
import { describe, expect, test } from 'vitest';
import { WORD } from '../../../src/sheets/station/verdicts';
import type { StationContent } from '../../../src/sheets/station/content';
import { stationValues } from '../../../src/sheets/station-values';

const SOUND = { run: 'Lamp', peak: 1, length: 12, ownSize: '12 AWG' } as const;

const verdictOf = (content: Partial<StationContent>) =>
  stationValues({ title: 'One run', runs: [SOUND], supply: { milliohms: 20 }, ...content }).runs[0]!
    .verdict;

test('a sound run is ok', () => {
  expect(verdictOf({})).toBe('ok');
});

describe('ok is earned', () => {
  test.each([
    ['an emptied length unit', { rules: { unit: '' } }, WORD.checkEntries],
    ['a length unit nobody knows', { rules: { unit: 'furlong' } }, WORD.checkEntries],
    ['emptied source volts', { rules: { volts: '' } }, WORD.voltsMissing],
    ['an emptied target', { rules: { target: '' } }, WORD.voltsMissing],
    ['a target of 3', { rules: { target: 3 } }, WORD.checkEntries],
    [
      'a panel of which nothing is known',
      { runs: [{ ...SOUND, fedFrom: 'panel' }] },
      WORD.voltsMissing,
    ],
    ['no length', { runs: [{ run: 'Lamp', peak: 1 }] }, WORD.lengthMissing],
    ['no load', { runs: [{ run: 'Lamp', length: 12 }] }, WORD.peakMissing],
    ['a load that is no number', { runs: [{ ...SOUND, peak: 'abc' }] }, WORD.checkEntries],
  ] as const)('not by %s', (_, content, verdict) => {
    expect(verdictOf(content)).toBe(verdict);
  });
});

test('an empty schedule brings no figures of a panel that nobody has', () => {
  const { supply } = stationValues({ title: 'Empty', runs: [] });
  for (const key of ['panelVolts', 'panelDesignAmps', 'panelColdVolts', 'panelDailyAh'] as const) {
    expect(supply.cells[key], key).toBe('');
  }
  expect(supply.cells.dailyBalance).toBe(0);
});
