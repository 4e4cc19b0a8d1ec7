import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { ScheduleRun } from '../../../src/sheets/station/run';
import { FIX_WORDS } from '../../../src/sheets/station/verdicts';
import type { StationContent } from '../../../src/sheets/station/content';
import { stationValues } from '../../../src/sheets/station-values';

/** A trunk and what hangs from it: loads of amps and watts, near their least volts. */
const station: fc.Arbitrary<StationContent> = fc
  .tuple(
    fc.double({ min: 2, max: 30, noNaN: true }),
    fc.array(
      fc.record({
        peak: fc.double({ min: 0.5, max: 12, noNaN: true }),
        kind: fc.constantFrom('A', 'W'),
        length: fc.double({ min: 1, max: 25, noNaN: true }),
        leastVolts: fc.double({ min: 10.5, max: 11.8, noNaN: true }),
      }),
      { minLength: 1, maxLength: 4 },
    ),
    fc.constantFrom(0.03, 0.05, 0.1),
  )
  .map(([trunkLength, loads, target]) => ({
    title: 'Fix',
    rules: { unit: 'm', volts: 12.6, target },
    supply: { milliohms: 8 },
    runs: [
      { run: 'trunk', length: trunkLength },
      ...loads.map(({ peak, kind, length, leastVolts }, index): ScheduleRun => ({
        run: `load ${index + 1}`,
        fedFrom: 'trunk',
        peak: kind === 'W' ? peak * 12 : peak,
        kind,
        length,
        leastVolts,
      })),
    ],
  }));

/** Thicker runs that were proposed, over all examples: the property means nothing without some. */
let proposed = 0;

test('a thicker run that is named gives the load its least volts', () => {
  const named = new RegExp(`${FIX_WORDS.thicker}(.+)${FIX_WORDS.inSize}(\\S+ \\S+)`);
  fc.assert(
    fc.property(station, (content) => {
      for (const [row, { mend }] of stationValues(content).runs.entries()) {
        const told = named.exec(String(mend));
        if (told === null) continue;
        proposed += 1;
        const [, name, size] = told;
        const fixed = stationValues({
          ...content,
          runs: content.runs.map((run) => (run.run === name ? { ...run, ownSize: size! } : run)),
        });
        expect(fixed.runs[row]!.shortLow, `${name} in ${size}`).toBe(0);
      }
    }),
    { numRuns: 400, seed: 20261125 },
  );
  expect(proposed).toBeGreaterThan(50);
});
