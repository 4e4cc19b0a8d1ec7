/** Names with marks that stand for other letters where a spreadsheet looks them up: each is its own run. */
import { expect, test } from 'vitest';
import { stationValues } from '../../../src/sheets/station-values';
import { WORD } from '../../../src/sheets/station/verdicts';

const FEEDERS = ['Spur 1', 'Spur ?', '~Lead*', 'Lead'] as const;

const fedFrom = (feeder: string) =>
  stationValues({
    title: 'Marked',
    supply: { milliohms: 20 },
    runs: [
      ...FEEDERS.map((run) => ({ run, length: '8 ft' })),
      { run: 'Fed', fedFrom: feeder, peak: 4, length: '5 ft' },
    ],
  }).runs;

test.each(FEEDERS)('a run fed from “%s” hangs on that one alone', (feeder) => {
  const runs = fedFrom(feeder);
  expect(runs.at(-1)!.place1).toBe(FEEDERS.indexOf(feeder) + 1);
  const carried = runs.slice(0, -1).map(({ runAmps }) => Number(runAmps));
  expect(carried.map((amps) => amps > 0)).toEqual(FEEDERS.map((run) => run === feeder));
});

test.each(['Spur *', 'Spur', '?', '~', '~~Lead*'])('“%s” names none of them', (feeder) => {
  expect(fedFrom(feeder).at(-1)!.verdict).toBe(WORD.feederNotListed);
});
