/**
 * Ordinary stations from a seed: trees of runs with every rule varied, nearly every entry one that the sheets understand.
 * In some a panel is not described, a tree is too deep or a feeder leads back to what it feeds.
 */
import fc from 'fast-check';
import { ampacity, INSTALLATIONS } from '../../src/core/ampacity';
import { FUSE_LIMITS } from '../../src/core/fuse-limit';
import { LENGTH_UNITS, METRES_PER, type LengthUnit } from '../../src/core/length';
import { formatSize, SERIES, SERIES_SIZES, sizeAreaMm2 } from '../../src/core/size';
import { MATERIALS } from '../../src/core/tables/materials';
import { CHEMISTRIES } from '../../src/core/tables/resting-volts';
import type { StationContent } from '../../src/sheets/station/content';
import type { ScheduleRun } from '../../src/sheets/station/run';
import { figure, NO_ANSWER } from './figures';
import { houseOf } from './house';

const MOST_RUNS = 14;
/** Runs in a row from a source to a load, in most stations and in one of so many. */
const DEEPEST = 5;
const TOO_DEEP = 7;
const ONE_IS_DEEP_OF = 8;

/** Even from 0 to 1; fast-check's own doubles lie nearly always next to a bound. */
const SHARE = fc.noBias(fc.nat(9999)).map((nth) => nth / 10_000);

/** Between the bounds, as often in each decade, to three figures as people write. */
function spread(least: number, most: number): fc.Arbitrary<number> {
  return SHARE.map((share) => Number((least * (most / least) ** share).toPrecision(3)));
}

/** Present so many times in a hundred. */
function at<Value>(percent: number, value: fc.Arbitrary<Value>): fc.Arbitrary<Value | undefined> {
  return fc.oneof(
    { arbitrary: value, weight: percent },
    { arbitrary: fc.constant(undefined), weight: 100 - percent },
  );
}

/** Without the entries that were left blank. */
function written<Entries extends object>(
  entries: Entries,
): {
  readonly [Key in keyof Entries]?: Exclude<Entries[Key], undefined>;
} {
  return Object.fromEntries(
    Object.entries(entries).filter(([, value]) => value !== undefined),
  ) as never;
}

const FUSE_KIND = fc.constantFrom('by rating', 'blade', 'bolt-in', 'high-breaking', 'own');

/** What is said of the fuse of one run: as a rule nothing. */
const FUSE = fc.record({
  kind: at(15, FUSE_KIND),
  breaks: at(10, fc.constantFrom(1000, 2000, 6000)),
  ratedVolts: at(10, fc.constantFrom(32, 58, 80)),
  i2t: at(10, spread(20, 20_000)),
});

/** Sizes that people own; of aluminium the thinnest have no published ampacity, and a few rows shall say so. */
const OWN_SIZES = [...SERIES_SIZES.AWG, ...SERIES_SIZES.mm2]
  .filter((size) => sizeAreaMm2(size) > 0.8)
  .map(formatSize);

/** The regulation for craft names copper alone. */
const WIRING = fc.oneof(
  fc.record({
    material: fc.constantFrom('copper', 'copper', ...MATERIALS),
    installed: fc.constantFrom('cable', 'air'),
  }),
  fc.record({
    material: fc.constantFrom('copper', 'tinned copper'),
    installed: fc.constantFrom(...INSTALLATIONS),
  }),
);

const RULES = fc.record({
  unit: fc.constantFrom(...LENGTH_UNITS),
  volts: fc.constantFrom(11.8, 12, 12.6, 13.2, 24, 25.6, 48),
  target: fc.constantFrom(0.02, 0.03, 0.05, 0.1, 0.2),
  counts: at(40, fc.constantFrom('to the load', 'in each run')),
  joints: at(40, fc.constantFrom(0, 1, 3, 5)),
  fuseLimit: at(30, fc.constantFrom(...FUSE_LIMITS)),
  series: fc.constantFrom(...SERIES),
  tempC: at(40, fc.constantFrom(-10, 20, 35, 50, 70)),
  insulationC: fc.constantFrom(60, 75, 75, 80, 90, 105, 125, 200),
  ambientC: at(50, fc.constantFrom(12, 25, 30, 38, 45, 52)),
  conductors: fc.constantFrom(1, 2, 2, 3, 4, 6, 8, 12, 24, 33, 45),
  duty: fc.constantFrom('continuous', 'bursts'),
});

/** What is known of the battery; of one in three nothing. */
const BATTERY = fc.oneof(
  { arbitrary: fc.constant({}), weight: 1 },
  {
    arbitrary: fc.record({
      chemistry: at(80, fc.constantFrom(...CHEMISTRIES)),
      ampHours: at(80, spread(7, 400)),
      milliohms: at(40, spread(2, 60)),
      batteryShortAmps: at(15, spread(200, 6000)),
      cells: at(8, fc.constantFrom(3, 4, 6, 8, 12)),
      chargingVolts: at(5, fc.constantFrom(13.9, 14.8, 29, 33)),
      fullRest: at(5, fc.constantFrom(12.9, 13.4)),
      lowRest: at(5, fc.constantFrom(11.5, 12.2)),
    }),
    weight: 2,
  },
);

/** A main fuse at the battery of one station in two, its cable known as a rule. */
const MAIN_FUSE = fc.oneof(
  fc.constant({}),
  fc.record({
    mainFuse: fc.constantFrom(30, 33, 60, 100, 150, 200, 300),
    mainFuseKind: at(60, FUSE_KIND),
    mainFuseBreaks: at(20, fc.constantFrom(1000, 5000, 20_000)),
    mainFuseVolts: at(20, fc.constantFrom(32, 58, 80)),
    mainCable: at(80, fc.constantFrom('10 AWG', '6 AWG', '2 AWG', '35 mm2', '2/0 AWG', '4/0 AWG')),
  }),
);

const SUPPLY = fc.record({
  lowCharge: at(60, fc.constantFrom(0.05, 0.1, 0.3, 0.5)),
  usable: at(20, fc.constantFrom(0.5, 0.8)),
  peukert: at(20, fc.constantFrom(1.05, 1.15, 1.25)),
  shortCircuitAmps: spread(1, 12),
  maximumPowerAmps: spread(1, 11),
  panelVolts: at(80, fc.constantFrom(17.2, 18.1, 34)),
  panelTarget: at(30, fc.constantFrom<number | string>(0.01, 0.03, '')),
  openCircuitVolts: at(75, fc.constantFrom(21.6, 41)),
  coldestC: at(90, fc.constantFrom(-25, -15, 3)),
  percentPerC: at(90, fc.constantFrom(-0.29, -0.34)),
  sunHours: fc.constantFrom(0.8, 2.5, 5),
});

const PROTECTION = fc.record({
  fuseKind: at(40, FUSE_KIND),
  weakTimes: at(20, fc.constantFrom(1, 1.5, 3)),
  startC: at(30, fc.constantFrom(30, 60, 90)),
  limitC: at(30, fc.constantFrom(140, 200, 250)),
});

/** Shares that leave some of the time off, or make up the whole of it. */
const DUTY = fc
  .array(
    fc.record({
      load: fc.constantFrom('Radio', 'Lamp', 'Gauge'),
      amps: fc.tuple(spread(1, 20), spread(0.2, 2), spread(0.02, 0.5)),
      shares: fc.constantFrom(
        [0.05, 0.15, 0.8],
        [0.1, null, 0.4],
        [0.25, 0.25, null],
        [1, null, null],
      ),
    }),
    { maxLength: 4 },
  )
  .map((loads) =>
    loads.map((of) => ({
      ...of,
      amps: of.amps.map((amps, at) => (of.shares[at] === null ? null : amps)),
    })),
  );

const RUN = fc.record({
  lengthM: spread(0.3, 12),
  peak: spread(0.2, 35),
  hasLoad: at(85, fc.constant(true)),
  isWatts: at(25, fc.constant(true)),
  volts: at(12, fc.constantFrom(11.8, 13.5, 24, 28)),
  target: at(20, fc.constantFrom(0.02, 0.05, 0.15)),
  joints: at(40, spread(0.3, 8)),
  ownSize: at(30, fc.constantFrom(...OWN_SIZES)),
  fused: at(40, fc.constantFrom('yes', 'no', 'no')),
  leastShare: at(25, fc.constantFrom(0.75, 0.85, 0.9, 0.94, 0.97)),
  atOnce: at(20, fc.constantFrom(0, 0.1, 0.5, 1)),
  efficiency: at(30, fc.constantFrom(0.8, 0.9, 1)),
  misread: at(3, fc.constantFrom('atOnce', 'efficiency', 'fused')),
  unfused: at(25, spread(0.05, 2)),
  /** Which of the runs above it feeds it, and whether none does. */
  feeder: SHARE,
  isRoot: at(20, fc.constant(true)),
  isPanel: at(20, fc.constant(true)),
  isShouted: at(10, fc.constant(true)),
  /** Which of those that it feeds, itself among them, feeds it. */
  loops: at(1, SHARE),
});
type Drawn = ReturnType<typeof drawRuns>[number];
function drawRuns(seed: number) {
  // An array of its own length as likely as any other.
  return fc.sample(
    fc
      .noBias(fc.integer({ min: 1, max: MOST_RUNS }))
      .chain((length) => fc.array(RUN, { minLength: length, maxLength: length })),
    { seed, numRuns: 1 },
  )[0]!;
}

/** Whether the way up from a run leads to another, or is there already. */
function leadsTo(from: number, to: number, feeders: readonly (number | undefined)[]): boolean {
  const feeder = from === to ? undefined : feeders[from];
  return from === to || (feeder !== undefined && leadsTo(feeder, to, feeders));
}

/** Hangs each run on one above it in the list, then lists them in an order of their own. */
function placed(
  drawn: readonly Drawn[],
  unit: LengthUnit,
  houseVolts: number,
  deepest: number,
): ScheduleRun[] {
  const names = drawn.map((_, row) => `Run ${row + 1}`);
  const depths: number[] = [];
  const onPanel: boolean[] = [];
  const feeders = drawn.map((run, row): number | undefined => {
    const open = depths.flatMap((depth, above) => (depth < deepest ? [above] : []));
    // Where trees are to be deep, rather the last of them.
    const nth = deepest > DEEPEST ? Math.sqrt(run.feeder) : run.feeder;
    const above = open[Math.floor(nth * open.length)];
    const feeder = run.isRoot === true ? undefined : above;
    depths[row] = feeder === undefined ? 1 : depths[feeder]! + 1;
    onPanel[row] =
      feeder === undefined ? run.isPanel === true && run.isRoot === true : onPanel[feeder]!;
    return feeder;
  });
  for (const [row, { loops }] of drawn.entries()) {
    if (loops === undefined) continue;
    const below = drawn.flatMap((_, at) => (leadsTo(at, row, feeders) ? [at] : []));
    feeders[row] = below[Math.floor(loops * below.length)]!;
    break;
  }
  const runs = drawn.map((run, row): ScheduleRun => {
    const feeder = feeders[row];
    const name = feeder === undefined ? undefined : names[feeder]!;
    const feedsNone = !feeders.includes(row);
    const volts = run.volts;
    const isLoaded = feedsNone || run.hasLoad === true;
    const watts = isLoaded && run.isWatts === true;
    return written({
      run: names[row],
      fedFrom:
        name === undefined
          ? onPanel[row]
            ? 'panel'
            : undefined
          : run.isShouted
            ? name.toUpperCase()
            : name,
      peak: isLoaded
        ? watts
          ? Number((run.peak * (volts ?? houseVolts) * 0.7).toPrecision(3))
          : run.peak
        : undefined,
      kind: watts ? 'W' : undefined,
      length: Number((run.lengthM / METRES_PER[unit]).toPrecision(3)),
      volts,
      target: run.target,
      joints: run.joints,
      ownSize: run.ownSize,
      fused: run.misread === 'fused' ? 'perhaps' : run.fused,
      leastVolts:
        run.leastShare === undefined
          ? undefined
          : Number(((volts ?? houseVolts) * run.leastShare).toPrecision(3)),
      atOnce: isLoaded && run.misread === 'atOnce' ? 1.5 : isLoaded ? run.atOnce : undefined,
      efficiency: watts && run.misread === 'efficiency' ? 0 : watts ? run.efficiency : undefined,
      unfused:
        run.unfused === undefined
          ? undefined
          : Number((run.unfused / METRES_PER[unit]).toPrecision(3)),
    });
  });
  // From the end of the list to its front, every second one: feeders stand above and below what they feed.
  return [
    ...runs.filter((_, row) => row % 2 === 1).reverse(),
    ...runs.filter((_, row) => row % 2 === 0),
  ];
}

/** In craft every second run that says nothing of its wire has the thinnest that may carry its own load. */
function withThinWires(content: StationContent): StationContent {
  const house = houseOf(content);
  if (!house.isCraft) return content;
  const thinnest = (amps: number) =>
    SERIES_SIZES[house.series].find((size) => {
      const ampacityA = figure(ampacity(size, house));
      return ampacityA !== NO_ANSWER && ampacityA >= amps;
    });
  return {
    ...content,
    runs: content.runs.map((run, row) => {
      const { peak, kind, ownSize } = run;
      const isTold = typeof peak !== 'number' || kind === 'W' || ownSize !== undefined;
      const size = isTold || row % 2 === 0 ? undefined : thinnest(peak);
      return size === undefined ? run : { ...run, ownSize: formatSize(size) };
    }),
  };
}

export function ordinaryStation(seed: number): StationContent {
  const [rules, wiring, supply, battery, mainFuse, protection, fuses, duty] = fc.sample(
    fc.tuple(
      RULES,
      WIRING,
      SUPPLY,
      BATTERY,
      MAIN_FUSE,
      PROTECTION,
      fc.array(FUSE, { minLength: MOST_RUNS, maxLength: MOST_RUNS }),
      DUTY,
    ),
    {
      seed,
      numRuns: 1,
    },
  )[0]!;
  const deepest = seed % ONE_IS_DEEP_OF === 0 ? TOO_DEEP : DEEPEST;
  const runs = placed(drawRuns(seed + 1_000_000), rules.unit, rules.volts, deepest);
  return withThinWires({
    title: `Ordinary station ${seed}`,
    rules: written({ ...rules, ...wiring }),
    supply: written({ ...supply, ...battery, ...mainFuse }),
    protection: { ...written(protection), fuses: runs.map((_, row) => written(fuses[row]!)) },
    duty,
    runs,
  });
}
