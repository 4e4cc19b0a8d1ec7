/** The Fix column is held to its word: the run that it names, in the size that it names, puts the load right. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { COUNTS } from '../../../src/sheets/station/parameters';
import type { RunValues } from '../../../src/sheets/station-values';
import { stationValues } from '../../../src/sheets/station-values';
import type { StationContent } from '../../../src/sheets/station/content';
import type { ScheduleRun } from '../../../src/sheets/station/run';
import { TREE_DEPTH } from '../../../src/sheets/station/schedule-keys';
import { FIX_WORDS, verdictsIn } from '../../../src/sheets/station/verdicts';

const MOST_RUNS = 9;
/** Without shrinking: the small stations below are what it comes to. */
const PROPERTY = { numRuns: 250, seed: 20_261_125, endOnFailure: true } as const;
const THICKEST = '4/0 AWG';
const OWN_SIZES = ['18 AWG', '16 AWG', '14 AWG', '12 AWG', '10 AWG', '8 AWG', '6 AWG', '4 AWG'];

/** An even share from 0 to 1; doubles themselves are spread by their bits. */
const share = fc.noBias(fc.nat(9999)).map((nth) => nth / 10_000);
const between = (least: number, most: number) =>
  share.map((at) => Number((least + at * (most - least)).toPrecision(3)));
const sometimes = <Value>(value: fc.Arbitrary<Value>) => fc.option(value, { nil: undefined });

/** A run of a random tree: which of those before it feeds it, and what hangs at its end. */
const drawn = fc.record({
  feeder: share,
  isLoad: fc.nat(3).map((of) => of > 0),
  peak: between(0.5, 15),
  kind: fc.constantFrom('A', 'A', 'W'),
  length: between(0.3, 12),
  joints: sometimes(between(0, 6)),
  ownSize: sometimes(fc.constantFrom(...OWN_SIZES)),
  leastVolts: sometimes(between(10.4, 11.9)),
  target: sometimes(fc.constantFrom(0.02, 0.05, 0.1)),
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

const station: fc.Arbitrary<StationContent> = fc
  .record({
    runs: fc.array(drawn, { minLength: 1, maxLength: MOST_RUNS }),
    target: fc.constantFrom(0.03, 0.05, 0.1),
    counts: fc.constantFrom(COUNTS[0], COUNTS[0], COUNTS[1]),
    milliohms: fc.constantFrom(2, 8, 20),
    series: fc.constantFrom('AWG', 'AWG all', 'mm2'),
  })
  .map(({ runs, target, counts, milliohms, series }) => ({
    title: 'Fix',
    rules: { unit: 'm', volts: 12.6, target, counts, series },
    supply: { milliohms },
    runs: planted(runs),
  }));

const NAMED = new RegExp(`${FIX_WORDS.thicker}(\\S+)${FIX_WORDS.inSize}(\\S+ \\S+)`);

/** A station of 12.6 V in metres. */
function of(rules: NonNullable<StationContent['rules']>, runs: readonly ScheduleRun[]) {
  return {
    title: 'Fix',
    rules: { unit: 'm', volts: 12.6, target: 0.03, ...rules },
    supply: { milliohms: 8 },
    runs,
  } satisfies StationContent;
}

/** Fed from a source, or from a run that is fed so. */
function isFedIn(runs: readonly ScheduleRun[], name: string | undefined): boolean {
  if (name === undefined) return true;
  const feeder = runs.find(({ run }) => run === name);
  return feeder !== undefined && isFedIn(runs, feeder.fedFrom);
}

/** What a row is short of, by the columns that the Fix column answers. */
const WANTS = {
  'too few volts': ({ shortLow }: RunValues) => shortLow === 1,
  'fewer volts than assumed': ({ fewer }: RunValues) => fewer === 1,
  'drop over target': ({ overDrop }: RunValues) => typeof overDrop === 'number' && overDrop > 0,
} as const;
type Want = keyof typeof WANTS;

const wants = (row: RunValues) => (Object.keys(WANTS) as Want[]).filter((want) => WANTS[want](row));

/** The station with a run's wire typed over, and every other wire as it is in use now or as it then is suggested. */
function fixed(
  content: StationContent,
  before: readonly RunValues[],
  told: readonly [name: string, size: string],
  others: Others,
): readonly RunValues[] {
  const [name, size] = told;
  return stationValues({
    ...content,
    runs: content.runs.map((run, index) => {
      if (run.run === name) return { ...run, ownSize: size };
      const inUse = before[index]!.size;
      return others === 'kept' && typeof inUse === 'string' ? { ...run, ownSize: inUse } : run;
    }),
  }).runs;
}

type Others = 'kept' | 'suggested anew';

const NOTHING: Readonly<Record<Want, number>> = {
  'too few volts': 0,
  'fewer volts than assumed': 0,
  'drop over target': 0,
};

/** Rows of a station whose named run does not put them right, and how many rows were told of one for what. */
function tried(content: StationContent, others: Others) {
  const before = stationValues(content).runs;
  const named = { ...NOTHING };
  const unfixed: string[] = [];
  for (const [index, row] of before.entries()) {
    const told = NAMED.exec(String(row.mend));
    if (told === null) continue;
    for (const want of wants(row)) named[want] += 1;
    const after = fixed(content, before, [told[1]!, told[2]!], others)[index]!;
    const left = wants(after);
    if (left.length > 0) {
      unfixed.push(`${content.runs[index]!.run!}: ${String(row.mend)}: ${left.join(', ')}`);
    }
  }
  return { named, unfixed };
}

/** Names from a run to its source. */
function pathOf({ runs }: StationContent, name: string): readonly string[] {
  const run = runs.find((candidate) => candidate.run === name);
  return run?.fedFrom === undefined ? [name] : [name, ...pathOf({ title: '', runs }, run.fedFrom)];
}

/** Rows that are told that no single thicker run fixes them, though one in the thickest wire does. */
function wronglyGivenUp(content: StationContent): {
  readonly told: number;
  readonly but: string[];
} {
  const before = stationValues(content).runs;
  let told = 0;
  const but: string[] = [];
  for (const [index, row] of before.entries()) {
    if (!String(row.mend).includes(FIX_WORDS.none)) continue;
    told += 1;
    const name = content.runs[index]!.run!;
    const does = pathOf(content, name).find(
      (thicker) => wants(fixed(content, before, [thicker, THICKEST], 'kept')[index]!).length === 0,
    );
    if (does !== undefined) but.push(`${name}: ${does} in ${THICKEST} does`);
  }
  return { told, but };
}

describe.each(COUNTS)('a thicker run that is named puts its load right, target %s', (counts) => {
  test.each(['kept', 'suggested anew'] as const)('other wires %s', (others) => {
    const all = { ...NOTHING };
    fc.assert(
      fc.property(station, (drawnContent) => {
        const content = { ...drawnContent, rules: { ...drawnContent.rules, counts } };
        const { named, unfixed } = tried(content, others);
        for (const want of Object.keys(all) as Want[]) all[want] += named[want];
        expect(unfixed).toEqual([]);
      }),
      PROPERTY,
    );
    // The property means nothing without some of each.
    expect(all['too few volts']).toBeGreaterThan(30);
    expect(all['drop over target']).toBeGreaterThan(30);
    expect(all['fewer volts than assumed']).toBeGreaterThan(5);
  });
});

test('where no run is named, none would do', () => {
  let all = 0;
  fc.assert(
    fc.property(station, (content) => {
      // Thicker wire lets a load in watts draw less, which the Fix column need not foresee.
      const runs = content.runs.filter(({ kind }) => kind !== 'W');
      const { told, but } = wronglyGivenUp({
        ...content,
        runs: runs.filter(({ fedFrom }) => isFedIn(runs, fedFrom)),
      });
      all += told;
      expect(but).toEqual([]);
    }),
    PROPERTY,
  );
  expect(all).toBeGreaterThan(30);
});

/** Small stations, each of one kind that the property finds in larger ones. */
const SMALL: Readonly<Record<string, { readonly content: StationContent; readonly row: number }>> =
  {
    // The trunk loses more than the lamp, but in each run a thicker trunk takes nothing from the lamp's own drop.
    'in each run a run is its own fix': {
      content: of({ counts: COUNTS[1] }, [
        { run: 'Trunk', length: 1.37, ownSize: '18 AWG' },
        { run: 'Lamp', fedFrom: 'Trunk', length: 2.28, joints: 0, ownSize: '16 AWG', peak: 6.06 },
      ]),
      row: 1,
    },
    // The inverter cannot be served and is left out of the radio's volts; the thicker trunk lets it draw again.
    'a load that cannot be served comes back': {
      content: of({ target: 0.1 }, [
        { run: 'Trunk', length: 6, ownSize: '18 AWG' },
        { run: 'Radio', fedFrom: 'Trunk', length: 1, ownSize: '10 AWG', peak: 5, leastVolts: 11 },
        {
          run: 'Inverter',
          fedFrom: 'Trunk',
          length: 2,
          ownSize: '10 AWG',
          peak: 150,
          kind: 'W',
          leastVolts: 10,
        },
      ]),
      row: 1,
    },
    // A thicker trunk leaves the radio more of its target, and its suggested wire becomes thinner.
    'a suggestion below becomes thinner': {
      content: of({ target: 0.05 }, [
        { run: 'Trunk', length: 10, ownSize: '8 AWG' },
        { run: 'Radio', fedFrom: 'Trunk', length: 6, peak: 10, leastVolts: 11.5 },
      ]),
      row: 1,
    },
    // What the inverter draws beyond its share at once flows through the trunk too.
    'the trunk of a load that is never on with the others': {
      content: of({ target: 0.1 }, [
        { run: 'Trunk', length: 1.94, ownSize: '18 AWG' },
        {
          run: 'Inverter',
          fedFrom: 'Trunk',
          length: 0.6,
          ownSize: '8 AWG',
          peak: 6,
          target: 0.02,
          atOnce: 0,
        },
      ]),
      row: 1,
    },
    // In each run the drop counts all amps, and so does what a thicker wire saves of it.
    'in each run with a load that is never on with the others': {
      content: of({ counts: COUNTS[1] }, [
        { run: 'Trunk', length: 8, ownSize: '18 AWG', peak: 11.4, target: 0.1 },
        {
          run: 'Inverter',
          fedFrom: 'Trunk',
          length: 2,
          ownSize: '8 AWG',
          peak: 6.5,
          target: 0.1,
          atOnce: 0,
        },
      ]),
      row: 0,
    },
  };

test.each(Object.entries(SMALL))('%s', (_, { content, row }) => {
  expect(wants(stationValues(content).runs[row]!)).not.toEqual([]);
  expect(NAMED.exec(String(stationValues(content).runs[row]!.mend))).not.toBeNull();
  expect(tried(content, 'kept').unfixed).toEqual([]);
  expect(tried(content, 'suggested anew').unfixed).toEqual([]);
});

test('the size that is named takes a fuse that its wire may have', () => {
  // 14 A x 1.25 = 17.5, fuse 20: over the 15 A that NFPA 70 240.4(D) allows 14 AWG, whatever it loses.
  const content = of({ unit: 'ft', volts: 12 }, [
    { run: 'Load', length: 4, peak: 14, ownSize: '16 AWG' },
  ]);
  const before = stationValues(content).runs;
  const told = NAMED.exec(String(before[0]!.mend));
  expect(told?.[2]).toBe('12 AWG');
  const after = fixed(content, before, ['Load', told![2]!], 'kept')[0]!;
  expect(verdictsIn(String(after.verdict))).not.toContain('fuse');
});
