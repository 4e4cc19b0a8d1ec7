/** The Fix column is held to its word: what it names, once it is done, puts right what it is named for. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { COUNTS } from '../../../src/sheets/station/parameters';
import { stationValues, type RunValues } from '../../../src/sheets/station-values';
import type { StationContent } from '../../../src/sheets/station/content';
import type { ScheduleRun } from '../../../src/sheets/station/run';
import { FIX_WORDS, verdictsIn, type VerdictKey } from '../../../src/sheets/station/verdicts';
import { samples } from '../../samples';
import { station, stationOf, suggestedStation } from './remedy-stations';
import {
  afterwards,
  OTHERS,
  pathOf,
  said,
  thickest,
  toldBy,
  wants,
  type Others,
  type Told,
  type Want,
} from './remedy-told';

const SAMPLES = samples({ all: 200, usual: 100 });
/** Without shrinking: the small stations below are what it comes to. */
const PROPERTY = { numRuns: SAMPLES.count, seed: 20_261_125, endOnFailure: true } as const;
const THICKEST = '4/0 AWG';

const THIN: readonly VerdictKey[] = ['heat', 'tooHot', 'fuse', 'noAmpacity'];
const FAR_END: readonly VerdictKey[] = ['fuseTooSlow', 'faultTooWeak'];
/** What keeps others from being judged. */
const FIRST: readonly VerdictKey[] = [
  'cannotBeServed',
  'noSize',
  'noRoom',
  'checkEntries',
  'tiedToAnother',
];

interface ToldRow {
  readonly content: StationContent;
  readonly before: readonly RunValues[];
  readonly index: number;
  readonly row: RunValues;
  readonly name: string;
  readonly told: Told;
}

/** Every row of a station with what it is told. */
function toldRows(content: StationContent): readonly ToldRow[] {
  const before = stationValues(content).runs;
  return content.runs.map((run, index) => {
    const row = before[index]!;
    return { content, before, index, row, name: run.run!, told: toldBy(row) };
  });
}

/** The row once something is typed into a run. */
const once = (
  { content, before, index }: ToldRow,
  run: string,
  typed: ScheduleRun,
  others: Others,
) => afterwards(content, before, run, typed, others)[index]!;

/** What is wrong with the answers to a row, and how many of each kind it was told. */
type Check = (row: ToldRow, others: Others, count: (kind: string) => void) => readonly string[];

const CHECKS: Readonly<Record<string, Check>> = {
  // The load gets its volts, and its drop holds.
  thicker: (row, others, count) => {
    const { thicker } = row.told;
    if (thicker === undefined) return [];
    for (const want of wants(row.row)) count(want);
    return wants(once(row, thicker.run, { ownSize: thicker.size }, others));
  },
  // A wire of its own that bears the load and takes its fuse keeps its target too; or one that the fuse above protects.
  take: (row, others, count) => {
    const { take, isUnprotected, ownFuseA } = row.told;
    if (take.length === 0) return [];
    const isThin = said(row.row, THIN).length > 0;
    count(isThin ? 'its own wire is too thin' : 'the fuse above is too large');
    const after = once(row, row.name, { ownSize: thickest(take) }, others);
    const left = [
      ...said(after, THIN),
      ...(isThin ? wants(after).filter((want) => want === 'drop over target') : []),
    ];
    const answersFarEnd = !isUnprotected && ownFuseA === undefined;
    return answersFarEnd
      ? [...left, ...said(after, FAR_END).filter((key) => said(row.row, [key]).length > 0)]
      : left;
  },
  ownFuse: (row, others, count) => {
    const { ownFuseA } = row.told;
    if (ownFuseA === undefined) return [];
    const lacksFuse = said(row.row, ['needsFuse']).length > 0;
    count(lacksFuse ? 'it needs its own fuse' : 'its far end needs its own fuse');
    // The wire is the one that is there.
    const wire = { ownSize: String(row.row.size) };
    const after = once(row, row.name, { ...wire, fused: 'yes' }, others);
    const left = said(after, lacksFuse ? ['needsFuse'] : ['needsFuse', ...FAR_END]);
    // Where the path lets so little through that not even that fuse opens, the next step is said.
    const isStuck = said(after, FAR_END).length > 0 && String(after.mend) === '';
    return [
      ...left,
      ...(after.fuse === ownFuseA ? [] : [`fuse of ${String(after.fuse)} A`]),
      ...(isStuck ? ['nothing is said of its far end'] : []),
    ];
  },
};

/** What the checks found in a station, its other wires kept or suggested anew. */
function broken(content: StationContent, others: Others, count: (kind: string) => void) {
  return toldRows(content).flatMap((row) =>
    Object.values(CHECKS).flatMap((check) => {
      const left = check(row, others, count);
      return left.length === 0 ? [] : [`${row.name}: ${String(row.row.mend)}: ${left.join(', ')}`];
    }),
  );
}

/**
 * The property means nothing without some of each: half of what this seed draws in all samples, or less. Branches of which nothing but
 * the far end is wrong are too rare for it; a small station has one.
 */
const LEAST: Readonly<Record<string, number>> = {
  'too few volts': 30,
  'drop over target': 50,
  'fewer volts than assumed': 5,
  'its own wire is too thin': 50,
  'it needs its own fuse': 50,
};
const kinds = () => {
  const counted: Record<string, number> = {};
  const count = (kind: string) => {
    counted[kind] = (counted[kind] ?? 0) + 1;
  };
  return { counted, count };
};

describe.each(COUNTS)('what is named puts its row right, target %s', (counts) => {
  test.each(OTHERS)('other wires %s', (others) => {
    const { counted, count } = kinds();
    fc.assert(
      fc.property(station, (drawn) => {
        const content = { ...drawn, rules: { ...drawn.rules, counts } };
        expect(broken(content, others, count)).toEqual([]);
      }),
      PROPERTY,
    );
    for (const [kind, least] of Object.entries(LEAST)) {
      expect(counted[kind] ?? 0, kind).toBeGreaterThan(SAMPLES.ofAll(least));
    }
  });

  test('a run that has to be fixed first keeps others from being judged, and says more', () => {
    const { counted, count } = kinds();
    fc.assert(
      fc.property(station, (drawn) => {
        const content = { ...drawn, rules: { ...drawn.rules, counts } };
        const rows = toldRows(content);
        const named = (name: string) => rows.find((row) => row.name === name)!;
        for (const row of rows) {
          if (row.told.first === undefined) continue;
          const keeps = named(row.told.first);
          expect(said(keeps.row, FIRST), `${row.name}: ${String(row.row.mend)}`).not.toEqual([]);
          expect(pathOf(content, keeps.name).at(-1)).toBe(pathOf(content, row.name).at(-1));
          for (const key of said(keeps.row, FIRST)) count(key);
          // From one to the next it comes to a run that waits for no other.
          const seen = new Set([row.name]);
          for (let at = keeps; ; at = named(at.told.first)) {
            expect(seen, 'comes round').not.toContain(at.name);
            seen.add(at.name);
            if (at.told.first === undefined) break;
          }
        }
      }),
      PROPERTY,
    );
    expect(counted['cannotBeServed'] ?? 0).toBeGreaterThan(SAMPLES.ofAll(2));
    expect(counted['noSize'] ?? 0).toBeGreaterThan(SAMPLES.ofAll(2));
  });
});

describe('a drop target that is named', () => {
  test('gives the load its minimum volts', () => {
    let all = 0;
    fc.assert(
      fc.property(suggestedStation, (drawn) => {
        const content = { ...drawn, rules: { ...drawn.rules, counts: COUNTS[0] } };
        for (const row of toldRows(content)) {
          const { target } = row.told;
          if (target === undefined) continue;
          all += 1;
          const after = once(row, row.name, { target }, 'suggested anew');
          expect(wants(after), `${row.name}: ${String(row.row.mend)}`).toEqual([]);
        }
      }),
      PROPERTY,
    );
    expect(all).toBeGreaterThan(SAMPLES.ofAll(10));
  });

  // 12.026 V low less 8 mOhm; from 11.6 V to them, in whole tenths of a percent of 12.6 V. 4/0 AWG: 0.049 Ohm for 1000 ft
  // (classic wire table), x 1.0393 at 30 degC. It has two conductors, and each run a third of what the joints leave.
  test.each([
    [2, 8, 3.2],
    [8, 3, 2.8],
    [8, 8, 2.8],
  ])(
    'for %d A over joints of %d milliohms reaches as far as the thickest wire',
    (peak, joints, target) => {
      const reach = ((target / 100) * 12.6) / peak - (3 * joints) / 1000;
      const farthest = reach / 3 / (2 * (0.049 / 304.8) * 1.0393);
      const lampAt = (length: number) => {
        const runs = ['Trunk', 'Shelf', 'Lamp'].map((run, at, names) => ({
          ...{ run, length, joints },
          ...(at > 0 && { fedFrom: names[at - 1]! }),
          ...(at === 2 && { peak, leastVolts: 11.6 }),
        }));
        return toldRows(stationOf({ target: 0.1 }, runs))[2]!;
      };
      const near = lampAt(0.98 * farthest);
      expect(near.told.target).toBeCloseTo(target / 100, 9);
      expect(wants(once(near, 'Lamp', { target: target / 100 }, 'suggested anew'))).toEqual([]);
      expect(lampAt(1.02 * farthest).told).toMatchObject({ target: undefined, isGivenUp: true });
    },
  );

  test('is none where every run may lose its own', () => {
    fc.assert(
      fc.property(suggestedStation, (drawn) => {
        const content = { ...drawn, rules: { ...drawn.rules, counts: COUNTS[1] } };
        expect(toldRows(content).map(({ told }) => told.target ?? null)).toEqual(
          content.runs.map(() => null),
        );
      }),
      PROPERTY,
    );
  });
});

/** A run on the path of a row that alone, in the thickest wire, puts it right whatever becomes of the other wires. */
const curing = (row: ToldRow) =>
  pathOf(row.content, row.name).find((run) =>
    OTHERS.every((others) => wants(once(row, run, { ownSize: THICKEST }, others)).length === 0),
  );

/** Fed from a source, or from a run that is fed so. */
function isFedIn(runs: readonly ScheduleRun[], name: string | undefined): boolean {
  if (name === undefined) return true;
  const feeder = runs.find(({ run }) => run === name);
  return feeder !== undefined && isFedIn(runs, feeder.fedFrom);
}

test('where no run is named, none would do', () => {
  let all = 0;
  fc.assert(
    fc.property(station, (drawn) => {
      // Thicker wire lets a load in watts draw less, which the Fix column need not foresee.
      const runs = drawn.runs.filter(({ kind }) => kind !== 'W');
      const content = { ...drawn, runs: runs.filter(({ fedFrom }) => isFedIn(runs, fedFrom)) };
      for (const row of toldRows(content)) {
        if (!row.told.isGivenUp) continue;
        all += 1;
        expect(curing(row), `${row.name} in ${THICKEST}`).toBeUndefined();
      }
    }),
    PROPERTY,
  );
  expect(all).toBeGreaterThan(SAMPLES.ofAll(10));
});

/** Small stations, each of one kind that the property finds in larger ones. */
describe('in a small station', () => {
  const rowOf = (content: StationContent, name: string) =>
    toldRows(content).find((row) => row.name === name)!;

  /** Every answer to the row holds, and there is one. */
  function isPutRight(row: ToldRow, wanted: Want) {
    expect(wants(row.row)).toContain(wanted);
    for (const others of OTHERS) {
      const { counted, count } = kinds();
      for (const check of Object.values(CHECKS)) expect(check(row, others, count)).toEqual([]);
      expect(Object.keys(counted)).not.toEqual([]);
    }
  }

  test('in each run a run over its own drop names itself', () => {
    // The trunk loses more than the lamp, but a thicker trunk takes nothing from the lamp's own drop.
    const row = rowOf(
      stationOf({ counts: COUNTS[1] }, [
        { run: 'Trunk', length: 1.37, ownSize: '18 AWG' },
        { run: 'Lamp', fedFrom: 'Trunk', length: 2.28, joints: 0, ownSize: '16 AWG', peak: 6.06 },
      ]),
      'Lamp',
    );
    expect(row.told.thicker?.run).toBe('Lamp');
    isPutRight(row, 'drop over target');
  });

  test('a load that cannot be served comes first, and the trunk serves it', () => {
    // The inverter is left out of the radio's volts; the thicker trunk lets it draw again.
    const content = stationOf({ target: 0.1 }, [
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
    ]);
    const radio = rowOf(content, 'Radio');
    expect(wants(radio.row)).toContain('too few volts');
    expect(radio.told).toMatchObject({ first: 'Inverter', thicker: undefined });
    expect(said(rowOf(content, 'Inverter').row, FIRST)).toEqual(['cannotBeServed']);
    const trunk = rowOf(content, 'Trunk');
    for (const others of OTHERS) {
      const after = afterwards(
        content,
        trunk.before,
        'Trunk',
        { ownSize: thickest(trunk.told.take) },
        others,
      );
      expect(said(after[2]!, FIRST)).toEqual([]);
      expect(toldBy(after[1]!).first).toBeUndefined();
    }
  });

  test.each([1, 2, 3, 4])(
    'a run to whom those above leave nothing names the one that loses most: the %d. of four',
    (most) => {
      const content = stationOf({}, [
        ...[1, 2, 3, 4].map((at) => ({
          run: `Feed${at}`,
          ...(at > 1 && { fedFrom: `Feed${at - 1}` }),
          length: at === most ? 10 : 0.2,
          ownSize: '10 AWG',
        })),
        { run: 'Lamp', fedFrom: 'Feed4', length: 2, peak: 12 },
      ]);
      // 12 A x 20 m x 3.277 x 1.0393 mOhm is 0.82 V, of 0.378 V; the others lose a fiftieth of it each.
      expect(said(rowOf(content, 'Lamp').row, FIRST)).toEqual(['noRoom']);
      expect(String(rowOf(content, 'Lamp').row.mend)).toBe(`${FIX_WORDS.thicker}Feed${most}`);
    },
  );

  test('no single run does where the suggestion below it becomes thinner', () => {
    // A thicker trunk leaves the radio more of its target; by itself the radio cannot make up for the trunk.
    const row = rowOf(
      stationOf({ target: 0.05 }, [
        { run: 'Trunk', length: 10, ownSize: '8 AWG' },
        { run: 'Radio', fedFrom: 'Trunk', length: 6, peak: 10, leastVolts: 11.5 },
      ]),
      'Radio',
    );
    expect(wants(row.row)).toEqual(['too few volts']);
    expect(row.told.isGivenUp).toBe(true);
    expect(curing(row)).toBeUndefined();
  });

  test('the trunk of a load that is never on with the others', () => {
    // What the inverter draws beyond its share at once flows through the trunk too.
    const row = rowOf(
      stationOf({ target: 0.1 }, [
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
      'Inverter',
    );
    expect(row.told.thicker?.run).toBe('Trunk');
    isPutRight(row, 'drop over target');
  });

  test('in each run a wire that is too thin for a load never on with the others', () => {
    // In each run the drop counts all amps, and so does the wire that is suggested.
    const row = rowOf(
      stationOf({ counts: COUNTS[1] }, [
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
      'Trunk',
    );
    expect(row.told.take).toHaveLength(1);
    isPutRight(row, 'drop over target');
  });

  test('the size that is named takes a fuse that its wire may have', () => {
    // 14 A x 1.25 = 17.5, fuse 20: over the 15 A that NFPA 70 240.4(D) allows 14 AWG, whatever it loses.
    const row = rowOf(
      stationOf({ unit: 'ft', volts: 12 }, [
        { run: 'Load', length: 4, peak: 14, ownSize: '16 AWG' },
      ]),
      'Load',
    );
    expect(row.told.take).toEqual(['12 AWG']);
    isPutRight(row, 'drop over target');
    expect(
      verdictsIn(String(once(row, 'Load', { ownSize: '12 AWG' }, 'kept').verdict)),
    ).not.toContain('fuse');
  });

  test('a branch whose far end the fuse above does not open takes its own', () => {
    // A short at the far end draws 17 A, under 1.35 x 30 A; 0.5 A x 1.25 = 0.625, fuse 1.
    const row = rowOf(
      {
        ...stationOf({ unit: 'ft', volts: 12, target: 0.05 }, [
          { run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 20 },
          {
            run: 'Branch',
            fedFrom: 'Trunk',
            fused: 'no',
            peak: 0.5,
            length: 250,
            ownSize: '10 AWG',
          },
        ]),
        supply: { milliohms: 50 },
      },
      'Branch',
    );
    expect(said(row.row, ['needsFuse', ...FAR_END])).toEqual(['faultTooWeak']);
    expect(row.told.ownFuseA).toBe(1);
    for (const others of OTHERS) expect(CHECKS['ownFuse']!(row, others, kinds().count)).toEqual([]);
  });

  test('current that does not count for the others makes the battery sag for a load too', () => {
    // 132 W / 11.8 V = 11.2 A, 6.7 A of them beyond its share: 0.13 V more through 20 milliohms than the others see.
    const content = {
      ...stationOf({ target: 0.1 }, [
        {
          run: 'Pump',
          length: 1.92,
          joints: 5.32,
          peak: 132,
          kind: 'W',
          leastVolts: 11.8,
          target: 0.05,
          atOnce: 0.4,
        },
        { run: 'Lamp', length: 4.4, peak: 3.16, atOnce: 0.4 },
      ]),
      supply: { milliohms: 20 },
    };
    const row = rowOf(content, 'Pump');
    expect(wants(row.row)).toEqual(['too few volts']);
    expect(row.told).toMatchObject({ target: undefined, thicker: undefined });
    expect(String(row.row.mend)).toContain('itself gives');
    expect(curing(row)).toBeUndefined();
  });
});
