/**
 * Loads in watts in a copy that needs no add-in: its rounds beside FEED_VOLTS, which solves the same trees exactly, over
 * hundreds of random trees from easy ones to those near collapse and beyond.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CellError } from '../../../src/functions/cell';
import { calculate } from '../../../src/sheets/calculate/calculate';
import { sharedCopy } from '../../../src/sheets/shared-copy';
import { readStationValues, stationValues } from '../../../src/sheets/station-values';
import type { StationContent } from '../../../src/sheets/station/content';
import { scheduleNames } from '../../../src/sheets/station/naming';
import type { ScheduleRun } from '../../../src/sheets/station/run';
import { WORD } from '../../../src/sheets/station/verdicts';
import { samples } from '../../samples';

const SAMPLES = samples({ all: 1000, usual: 300 });
const TREES = SAMPLES.count;
const TREES_A_SHEET = 10;
const SOURCE_V = 12;
/** A tree is easy where no load loses a third of its source volts. */
const EASY_V = (SOURCE_V * 2) / 3;
const EASILY_V = 1e-6;
/** What the Workings sheet promises of rows that it calls settled; written out, so that a looser promise fails here. */
const SETTLED_V = 0.001;

const SHARE = fc.noBias(fc.nat(9999)).map((nth) => nth / 10_000);
const between = (least: number, most: number) =>
  SHARE.map((share) => Number((least + (most - least) * share).toPrecision(4)));

/** A trunk, and loads of steady power behind it at up to five runs from the source; wires thick, fair and far too thin. */
const tree = fc
  .array(
    fc.record({
      above: SHARE,
      watts: between(5, 90),
      lengthM: between(1, 14),
      size: fc.constantFrom('8 AWG', '10 AWG', '12 AWG', '14 AWG'),
      isWatts: fc.oneof({ arbitrary: fc.constant(true), weight: 4 }, fc.constant(false)),
    }),
    { minLength: 2, maxLength: 9 },
  )
  .map((runs) => {
    const depths: number[] = [];
    return runs.map((run, index) => {
      const shallow = depths.flatMap((depth, at) => (depth < 4 ? [at] : []));
      const above = index === 0 ? undefined : shallow[Math.floor(run.above * shallow.length)];
      depths.push(above === undefined ? 0 : depths[above]! + 1);
      return { ...run, above };
    });
  });

type Tree = typeof tree extends fc.Arbitrary<infer Runs> ? Runs : never;

function station(trees: readonly Tree[]): StationContent {
  return {
    title: 'Loads in watts',
    rules: { unit: 'm', volts: SOURCE_V, target: 0.3 },
    supply: { chemistry: 'lead-acid', ampHours: 20_000 },
    runs: trees.flatMap((runs, number) =>
      runs.map(({ above, watts, lengthM, size, isWatts }, index): ScheduleRun => ({
        run: `T${number}R${index}`,
        ...(above === undefined ? {} : { fedFrom: `T${number}R${above}` }),
        peak: isWatts ? watts : watts / 20,
        kind: isWatts ? 'W' : 'A',
        length: lengthM,
        ownSize: size,
        leastVolts: 8,
      })),
    ),
  };
}

function bothForms(content: StationContent) {
  const { plans } = sharedCopy(content, { rows: content.runs.length });
  const copied = readStationValues(calculate(plans), content, scheduleNames());
  return { functions: stationValues(content).runs, copy: copied.runs };
}

const isUnserved = (volts: unknown) => volts instanceof CellError && volts.code === '#N/A';

describe('loads in watts, in a copy', () => {
  it('stand where the functions say, or say that they are not settled', () => {
    const trees = fc.sample(tree, { numRuns: TREES, seed: 9 });
    const count = { easy: 0, easyOff: 0, hard: 0, unsettled: 0, unserved: 0 };
    let [worstEasy, worstSettled] = [0, 0];
    for (let first = 0; first < TREES; first += TREES_A_SHEET) {
      const some = trees.slice(first, first + TREES_A_SHEET);
      const { functions, copy } = bothForms(station(some));
      let row = 0;
      for (const { length } of some) {
        const ours = functions.slice(row, row + length);
        const theirs = copy.slice(row, row + length);
        row += length;
        const unsettled = theirs.some(({ verdict }) => String(verdict).includes(WORD.notSettled));
        if (ours.some((run) => isUnserved(run.loadVolts) || isUnserved(run.lowVolts))) {
          // The functions leave the heaviest out; no row of such a tree may be well in the copy by that.
          count.unserved += 1;
          for (const [index, { verdict }] of theirs.entries()) {
            if (ours[index]!.verdict !== WORD.ok) expect(verdict).not.toBe(WORD.ok);
          }
          continue;
        }
        const off = Math.max(
          ...ours.flatMap((run, index) =>
            (['loadVolts', 'lowVolts'] as const).map((key) =>
              Math.abs(Number(run[key]) - Number(theirs[index]![key])),
            ),
          ),
        );
        const least = Math.min(...ours.map(({ lowVolts }) => Number(lowVolts)));
        if (unsettled) count.unsettled += 1;
        else worstSettled = Math.max(worstSettled, off);
        if (least < EASY_V) {
          count.hard += 1;
          continue;
        }
        count.easy += 1;
        if (off > EASILY_V) count.easyOff += 1;
        worstEasy = Math.max(worstEasy, off);
      }
    }
    console.info(
      `Loads in watts without the add-in, ${TREES} trees: ${count.easy} easy, of which ${count.easyOff} are off by more than ${EASILY_V} V ` +
        `(worst ${worstEasy.toExponential(1)} V); ${count.hard} hard; ${count.unsettled} say that they are not settled; ` +
        `worst of those that do not ${worstSettled.toExponential(1)} V; ${count.unserved} cannot be served`,
    );
    expect(count.easy).toBeGreaterThan(TREES / 2);
    expect(count.hard).toBeGreaterThan(SAMPLES.ofAll(20));
    expect(count.unsettled).toBeGreaterThan(0);
    expect(count.unserved).toBeGreaterThan(SAMPLES.ofAll(20));
    // Volts are read to a few digits: a millionth is far below what any sheet shows.
    expect(count.easyOff).toBe(0);
    expect(worstSettled).toBeLessThanOrEqual(SETTLED_V);
  });

  it('with no steady state at all are not ok', () => {
    const branch = (run: string): ScheduleRun => ({
      run,
      fedFrom: 'Trunk',
      peak: 60,
      kind: 'W',
      length: 40,
      ownSize: '14 AWG',
    });
    const content: StationContent = {
      title: 'Collapse',
      rules: { unit: 'ft', volts: 12, target: 0.3 },
      supply: { chemistry: 'lead-acid', ampHours: 100 },
      runs: [
        { run: 'Trunk', length: 60, ownSize: '10 AWG' },
        branch('A'),
        branch('B'),
        branch('C'),
      ],
    };
    const { copy } = bothForms(content);
    for (const { verdict } of copy) expect(verdict).not.toBe(WORD.ok);
  });

  describe('alone on their runs', () => {
    // Volts at the load: V = (E + sqrt(E^2 - 4 P R)) / 2, up to the most that a run can bring, E^2 / 4R.
    const alone = (watts: readonly number[], isNamed = true): StationContent => ({
      title: 'Alone',
      rules: { unit: 'm', volts: SOURCE_V, target: 0.3 },
      // No load makes its volts sink.
      supply: { chemistry: 'lead-acid', milliohms: 0 },
      runs: watts.map((peak, at) => ({
        ...(isNamed && { run: `R${at}` }),
        ...{ peak, kind: 'W', length: 10, ownSize: '14 AWG' },
      })),
    });
    const [{ ohms, lowSource }] = stationValues(alone([1])).runs as unknown as [
      Record<'ohms' | 'lowSource', number>,
    ];
    const mostWatts = lowSource ** 2 / (4 * ohms);

    it('stand where the quadratic says, or say that they are not settled', () => {
      const shares = Array.from({ length: 40 }, (_, at) => 0.9 + at * 0.00249);
      const { copy } = bothForms(alone(shares.map((share) => mostWatts * share)));
      let settled = 0;
      for (const [at, { lowVolts, verdict }] of copy.entries()) {
        if (String(verdict).includes(WORD.notSettled)) continue;
        settled += 1;
        const volts = (lowSource * (1 + Math.sqrt(1 - shares[at]!))) / 2;
        expect(Math.abs(Number(lowVolts) - volts), String(shares[at])).toBeLessThanOrEqual(
          SETTLED_V,
        );
      }
      expect(settled).toBeGreaterThan(0);
      expect(settled).toBeLessThan(shares.length);
    });

    it('can be served up to the very most, and not beyond', () => {
      const { functions, copy } = bothForms(alone([1, 1 + 1e-8].map((share) => mostWatts * share)));
      for (const runs of [functions, copy])
        expect(runs.map(({ lowVolts }) => isUnserved(lowVolts))).toEqual([false, true]);
    });

    it('have volts of no rounds where they have no name, and nothing that is not settled', () => {
      const { functions, copy } = bothForms(alone([mostWatts], false));
      expect(copy[0]!.lowVolts).toBeCloseTo(Number(functions[0]!.lowVolts), 9);
      expect(copy[0]!.verdict).toBe(functions[0]!.verdict);
    });
  });
});
