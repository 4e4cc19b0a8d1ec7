/** Random trees of runs that miss something, for the words of the Fix column. */
import fc from 'fast-check';
import { COUNTS } from '../../../src/sheets/station/parameters';
import type { StationContent } from '../../../src/sheets/station/content';
import type { ScheduleRun } from '../../../src/sheets/station/run';
import { TREE_DEPTH } from '../../../src/sheets/station/schedule-keys';

const MOST_RUNS = 9;
const OWN_SIZES = ['18 AWG', '16 AWG', '14 AWG', '12 AWG', '10 AWG', '8 AWG', '6 AWG', '4 AWG'];

/** An even share from 0 to 1; doubles themselves are spread by their bits. */
const share = fc.noBias(fc.nat(9999)).map((nth) => nth / 10_000);
const between = (least: number, most: number) =>
  share.map((at) => Number((least + at * (most - least)).toPrecision(3)));
/** Left out once in so many times. */
const mostly = <Value>(value: fc.Arbitrary<Value>, once: number) =>
  fc.option(value, { nil: undefined, freq: once - 1 });

/** A run of a random tree: which of those before it feeds it, and what hangs at its end. */
const drawn = fc.record({
  feeder: share,
  isLoad: fc.nat(3).map((of) => of > 0),
  peak: between(0.5, 15),
  kind: fc.constantFrom('A', 'W'),
  length: between(0.3, 12),
  joints: mostly(between(0, 6), 5),
  ownSize: mostly(fc.constantFrom(...OWN_SIZES), 4),
  fused: fc.constantFrom(undefined, undefined, 'no'),
  leastVolts: mostly(between(10.4, 11.9), 3),
  target: mostly(fc.constantFrom(0.02, 0.05, 0.1), 5),
  atOnce: fc.constantFrom(undefined, undefined, undefined, 0, 0.4),
});
type Drawn = typeof drawn extends fc.Arbitrary<infer Value> ? Value : never;

/** Trees as deep as the sheets follow them. */
function planted(runs: readonly Drawn[]): ScheduleRun[] {
  const depths: number[] = [];
  return runs.map(({ feeder, isLoad, ...run }, index) => {
    const feeders = [...depths.keys()].filter((at) => depths[at]! < TREE_DEPTH);
    const at = feeders[Math.floor(feeder * (feeders.length + 1)) - 1];
    depths.push(at === undefined ? 0 : depths[at]! + 1);
    const { peak, kind, leastVolts, target, atOnce, ...wire } = run;
    const load = { peak: kind === 'W' ? peak * 12 : peak, kind, leastVolts, target, atOnce };
    const whole: Record<string, unknown> = {
      run: `R${index + 1}`,
      ...(at !== undefined && { fedFrom: `R${at + 1}` }),
      ...wire,
      ...(isLoad && load),
    };
    // Left out, not undefined.
    return Object.fromEntries(Object.entries(whole).filter(([, value]) => value !== undefined));
  });
}

const ruled = (runs: fc.Arbitrary<readonly Drawn[]>): fc.Arbitrary<StationContent> =>
  fc
    .record({
      runs,
      target: fc.constantFrom(0.03, 0.05, 0.1),
      counts: fc.constantFrom(COUNTS[0], COUNTS[0], COUNTS[1]),
      milliohms: fc.constantFrom(2, 8, 20),
      series: fc.constantFrom('AWG', 'AWG all', 'mm2'),
    })
    .map(({ runs: drawnRuns, target, counts, milliohms, series }) => ({
      title: 'Fix',
      rules: { unit: 'm', volts: 12.6, target, counts, series },
      supply: { milliohms },
      runs: planted(drawnRuns),
    }));

/** Stations of all kinds, most wires typed. */
export const station = ruled(fc.array(drawn, { minLength: 1, maxLength: MOST_RUNS }));

/** Stations whose wires are all suggested, and whose loads ask for volts that the usual targets hardly leave. */
export const suggestedStation = ruled(
  fc.array(
    drawn.chain((run) =>
      fc.record({ peak: between(0.5, 6), leastVolts: between(11.2, 11.9) }).map((asked) => ({
        ...run,
        ...asked,
        kind: 'A' as const,
        ownSize: undefined,
        target: undefined,
      })),
    ),
    { minLength: 2, maxLength: 6 },
  ),
);

/** A station of 12.6 V in metres. */
export function stationOf(
  rules: NonNullable<StationContent['rules']>,
  runs: readonly ScheduleRun[],
) {
  return {
    title: 'Fix',
    rules: { unit: 'm', volts: 12.6, target: 0.03, ...rules },
    supply: { milliohms: 8 },
    runs,
  } satisfies StationContent;
}
