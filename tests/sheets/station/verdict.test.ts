/** What a row says of itself when not everything is there. */
import { describe, expect, test } from 'vitest';
import { SCHEDULE_WORDS } from '../../../src/sheets/station/verdicts';
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
    ['an emptied length unit', { rules: { unit: '' } }, SCHEDULE_WORDS.checkEntries],
    ['a length unit nobody knows', { rules: { unit: 'furlong' } }, SCHEDULE_WORDS.checkEntries],
    ['emptied source volts', { rules: { volts: '' } }, SCHEDULE_WORDS.voltsMissing],
    ['an emptied target', { rules: { target: '' } }, SCHEDULE_WORDS.voltsMissing],
    ['a target of 3', { rules: { target: 3 } }, SCHEDULE_WORDS.checkEntries],
    [
      'a panel of which nothing is known',
      { runs: [{ ...SOUND, fedFrom: 'panel' }] },
      SCHEDULE_WORDS.voltsMissing,
    ],
    ['no length', { runs: [{ run: 'Lamp', peak: 1 }] }, SCHEDULE_WORDS.lengthMissing],
    ['no load', { runs: [{ run: 'Lamp', length: 12 }] }, SCHEDULE_WORDS.peakMissing],
    [
      'a load that is no number',
      { runs: [{ ...SOUND, peak: 'abc' }] },
      SCHEDULE_WORDS.checkEntries,
    ],
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
