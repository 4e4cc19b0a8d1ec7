/** Schedules as people might fill them in, from a seed: every choice of every rule, and of rows all that can stand there. */
import fc from 'fast-check';
import { INSTALLATIONS } from '../../src/core/ampacity';
import { LENGTH_UNITS, METRES_PER, type LengthUnit } from '../../src/core/length';
import { formatSize, mm2, SERIES, SERIES_SIZES } from '../../src/core/size';
import { IEC_60228 } from '../../src/core/tables/iec-60228';
import { MATERIALS } from '../../src/core/tables/materials';
import type { ScheduleRun } from '../../src/sheets/station/run';
import type { StationContent } from '../../src/sheets/station/content';

const SEED = 20_251;

/** Every size that has a row in a published table, and some that fall between. */
const SIZES: readonly string[] = [
  ...SERIES_SIZES['AWG all'].map(formatSize),
  ...IEC_60228.map(({ areaMm2 }) => formatSize(mm2(areaMm2))),
  '3.7 mm2',
  '0.05 mm2',
  '399 mm2',
];
const BAD_SIZES = ['thick', '99 AWG', '500 mm2', '-1', '0.01 mm2', '5/0'];

/** Runs of one feeder tree stand together, so that one bad row spoils no more than these. */
const TREE_ROWS = 8;

/** An even share from 0 to 1; doubles themselves are spread by their bits, and so nearly always next to nothing. */
const SHARE = fc.noBias(fc.nat(9999)).map((nth) => nth / 10_000);

/** Between the bounds, as often in each decade. */
function spread(least: number, most: number): fc.Arbitrary<number> {
  return SHARE.map((share) => Number((least * (most / least) ** share).toPrecision(4)));
}

/** Mostly sound, sometimes nothing, seldom wrong. */
function typed<Sound, Wrong>(
  sound: fc.Arbitrary<Sound>,
  wrong: readonly Wrong[],
  weights: { readonly sound: number; readonly none: number; readonly wrong: number },
): fc.Arbitrary<Sound | Wrong | undefined> {
  return fc.oneof(
    { arbitrary: sound, weight: weights.sound },
    { arbitrary: fc.constant(undefined), weight: weights.none },
    { arbitrary: fc.constantFrom(...wrong), weight: weights.wrong },
  );
}

function runArbitrary(unit: LengthUnit, watts: boolean): fc.Arbitrary<ScheduleRun> {
  const lengths = spread(0.2 / METRES_PER[unit], 60 / METRES_PER[unit]);
  return fc
    .record({
      load: fc.constantFrom('Radio', 'Lamp', undefined),
      peak: typed(spread(0.2, 250), ['abc', -5, 0], { sound: 44, none: 3, wrong: 3 }),
      kind: watts ? fc.constantFrom(undefined, 'A', 'W', 'W') : fc.constantFrom(undefined, 'A'),
      length: typed(lengths, ['far', -1, 0], { sound: 46, none: 2, wrong: 2 }),
      volts: typed(fc.constantFrom(11.9, 12.8, 24, 48), [0, -12, 'many'], {
        sound: 15,
        none: 33,
        wrong: 2,
      }),
      target: typed(fc.constantFrom(0.01, 0.02, 0.05, 0.1), [3, 0, 'low'], {
        sound: 12,
        none: 36,
        wrong: 2,
      }),
      joints: typed(spread(0.2, 20), [-1, 'bad'], { sound: 20, none: 28, wrong: 1 }),
      ownSize: typed(fc.constantFrom(...SIZES), BAD_SIZES, { sound: 25, none: 22, wrong: 2 }),
      fused: fc.constantFrom(undefined, undefined, undefined, 'yes', 'no'),
      leastVolts: typed(fc.constantFrom(9, 10.8, 11.5, 22), ['much', -1], {
        sound: 10,
        none: 38,
        wrong: 1,
      }),
      surge: typed(spread(0.5, 400), ['lots', -3], { sound: 8, none: 40, wrong: 1 }),
      returns: typed(fc.constantFrom('wire', 'chassis', 1.5, 25), ['frame', 0, -2], {
        sound: 12,
        none: 36,
        wrong: 1,
      }),
      endsAt: typed(fc.constantFrom('battery', 'Panel'), ['nowhere'], {
        sound: 3,
        none: 46,
        wrong: 1,
      }),
      endFused: fc.constantFrom(undefined, 'yes', 'no'),
    })
    .map((run) =>
      // Left out, not undefined.
      Object.fromEntries(Object.entries(run).filter(([, value]) => value !== undefined)),
    );
}

/** Names and feeders: small trees of up to four levels, and now and then a name that does not hold. */
function placed(runs: readonly ScheduleRun[], picks: readonly number[]): ScheduleRun[] {
  const depths: number[] = [];
  return runs.map((run, index) => {
    const pick = picks[index]!;
    const first = index - (index % TREE_ROWS);
    const candidates = Array.from({ length: index - first }, (_, at) => first + at).filter(
      (at) => depths[at]! < 3,
    );
    const feeder = candidates[Math.floor(pick * candidates.length)];
    const isFed = feeder !== undefined && index % 3 !== 0;
    depths[index] = isFed ? depths[feeder]! + 1 : 0;
    const name = { run: `R${index + 1}` };
    if (pick > 0.985) return run;
    if (pick > 0.97) return { run: 'Twice', ...run };
    if (pick > 0.955) return { ...name, ...run, fedFrom: 'nowhere' };
    if (pick > 0.94) return { ...name, ...run, fedFrom: 'panel' };
    return isFed ? { ...name, ...run, fedFrom: `R${feeder + 1}` } : { ...name, ...run };
  });
}

const COMBINED = {
  insulationC: [60, 75, 80, 90, 105, 200],
  ambientC: [undefined, 20, 30, 45, 58],
  conductors: [1, 2, 3, 6, 9, 20, 50],
  tempC: [20, 50, -10],
  volts: [12.6, 12.8, 26, 11.4],
  target: [0.03, 0.02, 0.1],
} as const;

function cycled<Value>(values: readonly Value[], index: number): Value {
  return values[index % values.length]!;
}

/** So many schedules of so many rows; rules differ from one to the next, so that every choice comes up. */
export function generatedStations(options: {
  readonly stations: number;
  readonly rows: number;
  readonly watts: boolean;
}): readonly StationContent[] {
  return Array.from({ length: options.stations }, (_, index): StationContent => {
    const unit = cycled(LENGTH_UNITS, index);
    const ambientC = cycled(COMBINED.ambientC, index);
    const [runs, picks] = fc.sample(
      fc.tuple(
        fc.array(runArbitrary(unit, options.watts), {
          minLength: options.rows,
          maxLength: options.rows,
        }),
        fc.array(SHARE, {
          minLength: options.rows,
          maxLength: options.rows,
        }),
      ),
      { seed: SEED + index, numRuns: 1 },
    )[0]!;
    return {
      title: `Generated ${index + 1}${options.watts ? ', watts' : ''}`,
      rules: {
        unit,
        series: cycled(SERIES, index),
        material: cycled(MATERIALS, Math.floor(index / 2)),
        installed: cycled(INSTALLATIONS, index),
        insulationC: cycled(COMBINED.insulationC, index),
        ...(ambientC === undefined ? {} : { ambientC }),
        conductors: cycled(COMBINED.conductors, index),
        tempC: cycled(COMBINED.tempC, index),
        volts: cycled(COMBINED.volts, index),
        target: cycled(COMBINED.target, index),
        duty: cycled(['continuous', 'bursts'], index),
        returns: cycled(['wire', 'wire', 'chassis'], index),
        chassis: cycled([2, 12], index),
      },
      supply: {
        chemistry: cycled(['lead-acid', 'LiFePO4', 'Li-ion'], index),
        ampHours: 40 + 20 * index,
        lowCharge: 0.1 + 0.05 * (index % 4),
      },
      duty: [
        { load: 'Radio', amps: [14, 1.2, 0.5], shares: [0.05, 0.15, 0.8] },
        { load: 'Blank', amps: [1, null, null], shares: [0.5, null, null] },
        { load: 'Too much', amps: [1, 1, 1], shares: [0.9, 0.9, null] },
      ],
      runs: placed(runs, picks),
    };
  });
}
