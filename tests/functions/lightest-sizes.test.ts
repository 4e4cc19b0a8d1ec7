/** LIGHTEST_SIZES: against trying every wire, by the other functions' figures, and by what must hold whatever the list. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildFeederTree, SOURCE } from '../../src/core/feeder-tree';
import {
  lightestSizes,
  mostAboveBest,
  type RunsToSize,
  type SizingRules,
} from '../../src/core/lightest/lightest-sizes';
import { isRefusal } from '../../src/core/outcome';
import { formatSize, SERIES_SIZES } from '../../src/core/size';
import { MATERIAL_CONSTANTS } from '../../src/core/tables/materials';
import { CellError, type Cell } from '../../src/functions/cell';
import { samples } from '../samples';
import {
  copperOf,
  JOINT_OHMS,
  leastCopper,
  TARGET,
  tree,
  VOLTS,
} from '../sheets/schedule/least-copper';
import { call, callNumber, callRange, type TestArgument } from './call';

const { count: TREES } = samples({ all: 500, usual: 100 });

type Column = readonly (readonly [Cell])[];
const column = (cells: readonly Cell[]): Column => cells.map((cell) => [cell] as const);

/** Runs of a list: its own name is its number, and it hangs on one before it. */
interface ListedRun {
  readonly feeder: number;
  readonly amps: number;
  readonly lengthM: number;
  readonly joints: number;
}

const listed: fc.Arbitrary<readonly ListedRun[]> = fc
  .array(
    fc.record({
      pick: fc.nat(999),
      isRoot: fc.nat(9).map((draw) => draw === 0),
      amps: fc.integer({ min: 0, max: 120 }).map((tenths) => tenths / 10),
      lengthM: fc.integer({ min: 0, max: 60 }).map((tenths) => tenths / 10),
      joints: fc.constantFrom(0, 1, 3),
    }),
    { minLength: 1, maxLength: 14, size: 'max' },
  )
  .map((drawn) =>
    drawn.map(({ pick, isRoot, ...run }, at) => ({
      ...run,
      feeder: at === 0 || isRoot ? -1 : pick % at,
    })),
  );

const nameOf = (at: number) => `run ${at}`;
const feederOf = ({ feeder }: ListedRun) => (feeder < 0 ? null : nameOf(feeder));

/** The first arguments of a call for these runs. */
function argumentsOf(
  runs: readonly ListedRun[],
  volts: number,
  target: TestArgument,
  leastVolts: TestArgument = undefined,
): TestArgument[] {
  return [
    column(runs.map((_, at) => nameOf(at))),
    column(runs.map(feederOf)),
    column(runs.map(({ amps }) => amps)),
    column(runs.map(({ lengthM }) => lengthM)),
    'm',
    volts,
    target,
    leastVolts,
    undefined,
    undefined,
    column(runs.map(({ joints }) => joints)),
  ];
}

const sizesOf = (...given: Parameters<typeof argumentsOf>) =>
  callRange('LIGHTEST_SIZES', ...argumentsOf(...given)).map(([cell]) => cell!);

const massOf = (runs: readonly ListedRun[], sizes: readonly (string | undefined)[]) =>
  runs.reduce(
    (sum, { lengthM }, at) =>
      sum + 2 * callNumber('CONDUCTOR_MASS', sizes[at] ?? null, lengthM, 'm'),
    0,
  );

/** Volts at the far end of each run and amps in it, by the functions of feeders. */
function stateOf(runs: readonly ListedRun[], sizes: readonly string[], volts: number) {
  const names = column(runs.map((_, at) => nameOf(at)));
  const fedFrom = column(runs.map(feederOf));
  const ohms = runs.map(({ lengthM, joints }, at) =>
    call('RUN_OHMS', lengthM, 'm', sizes[at], null, null, joints),
  );
  const loads = column(runs.map(({ amps }) => amps));
  const numbers = (id: string, ...given: readonly TestArgument[]) =>
    callRange(id, ...given).map(([cell]) => (typeof cell === 'number' ? cell : Number.NaN));
  return {
    volts: numbers('FEED_VOLTS', volts, names, fedFrom, loads, 'A', column(ohms)),
    amps: numbers('FEED_AMPS', names, fedFrom, loads),
  };
}

describe('small trees', () => {
  test('use the copper that trying every wire finds, and none where it finds none', () => {
    let served = 0;
    for (const runs of fc.sample(tree, { seed: 31, numRuns: TREES })) {
      const sizes = callRange(
        'LIGHTEST_SIZES',
        column(runs.map((_, at) => nameOf(at))),
        column(runs.map(({ feeder }) => (feeder < 0 ? null : nameOf(feeder)))),
        column(runs.map(({ load }) => load)),
        column(runs.map(({ lengthM }) => lengthM)),
        'm',
        VOLTS,
        TARGET,
        undefined,
        'copper',
        30,
        JOINT_OHMS * 1000,
        75,
        30,
        2,
        'cable',
        true,
        'AWG',
        'NFPA 70 240.4(D)',
      ).map(([cell]) => cell!);
      const least = leastCopper(runs);
      if (least === undefined) {
        for (const cell of sizes) expect(cell).toMatchObject({ code: '#N/A' });
        continue;
      }
      served += 1;
      const chosen = sizes.map((name) =>
        SERIES_SIZES.AWG.find((size) => formatSize(size) === name)!,
      );
      expect(copperOf(runs, chosen), JSON.stringify(runs)).toBeCloseTo(least, 9);
    }
    expect(served).toBeGreaterThan(TREES * 0.7);
  });
});

describe('any list', () => {
  const volts = 12.6;
  const anyTarget = fc.constantFrom(0.02, 0.03, 0.05, 0.1);
  const anyLeast = fc.constantFrom(undefined, 11.5, 12.2);

  test('keeps target and least volts of every load, ampacity and fuse of every run', () => {
    let loads = 0;
    fc.assert(
      fc.property(listed, anyTarget, anyLeast, (runs, target, leastVolts) => {
        const sizes = sizesOf(runs, volts, target, leastVolts);
        const served = runs.filter((_, at) => typeof sizes[at] === 'string');
        // Runs of a tree without sizes hang together, so that what is left is whole trees.
        const places = new Map(served.map((run, at) => [runs.indexOf(run), at]));
        const left = served.map((run) => ({ ...run, feeder: places.get(run.feeder) ?? -1 }));
        if (left.length === 0) return;
        const names = sizes.filter((cell) => typeof cell === 'string');
        const state = stateOf(left, names, volts);
        for (const [at, { amps }] of left.entries()) {
          const carried = state.amps[at]!;
          expect(callNumber('FUSE_FOR', carried, names[at])).toBeGreaterThanOrEqual(carried);
          expect(callNumber('AMPACITY', names[at])).toBeGreaterThanOrEqual(carried * (1 - 1e-9));
          if (amps === 0) continue;
          loads += 1;
          expect(state.volts[at]!).toBeGreaterThanOrEqual(volts * (1 - target) - 1e-8);
          if (leastVolts !== undefined) {
            expect(state.volts[at]!).toBeGreaterThanOrEqual(leastVolts - 1e-8);
          }
        }
      }),
      { numRuns: TREES, seed: 32 },
    );
    expect(loads).toBeGreaterThan(TREES);
  });

  test('uses no more metal than the thinnest one size that serves all its runs', () => {
    let compared = 0;
    fc.assert(
      fc.property(listed, anyTarget, (runs, target) => {
        const one = SERIES_SIZES.AWG.map(formatSize).find((name) => {
          const state = stateOf(
            runs,
            runs.map(() => name),
            volts,
          );
          return runs.every(
            ({ amps }, at) =>
              typeof call('FUSE_FOR', state.amps[at], name) === 'number' &&
              (amps === 0 || state.volts[at]! >= volts * (1 - target)),
          );
        });
        if (one === undefined) return;
        compared += 1;
        const sizes = sizesOf(runs, volts, target) as string[];
        expect(massOf(runs, sizes)).toBeLessThanOrEqual(
          massOf(
            runs,
            runs.map(() => one),
          ) *
            (1 + 1e-9),
        );
      }),
      { numRuns: TREES, seed: 33 },
    );
    expect(compared).toBeGreaterThan(TREES / 3);
  });

  test('uses no more metal where more may be lost, and serves what it served', () => {
    fc.assert(
      fc.property(listed, anyTarget, (runs, target) => {
        const strict = sizesOf(runs, volts, target);
        const loose = sizesOf(runs, volts, target * 1.3);
        const served = runs.filter((_, at) => typeof strict[at] === 'string');
        const of = (cells: readonly Cell[]) =>
          massOf(
            served,
            served.map((run) => String(cells[runs.indexOf(run)])),
          );
        expect(of(loose)).toBeLessThanOrEqual(of(strict) * (1 + 1e-9));
      }),
      { numRuns: TREES, seed: 34 },
    );
  });

  test('is sized the same in any order of its rows', () => {
    const orders = listed.chain((runs) =>
      fc
        .shuffledSubarray([...runs.keys()], { minLength: runs.length })
        .map((order) => ({ runs, order })),
    );
    fc.assert(
      fc.property(orders, ({ runs, order }) => {
        const given = argumentsOf(runs, volts, 0.03);
        const shuffled = given.map((argument) =>
          Array.isArray(argument) ? order.map((at) => (argument as Column)[at]!) : argument,
        );
        const sizes = callRange('LIGHTEST_SIZES', ...given).map(([cell]) => cell);
        const mass = (cells: readonly unknown[], at: (row: number) => number) =>
          runs.reduce((sum, { lengthM }, row) => {
            const size = cells[at(row)];
            return typeof size === 'string'
              ? sum + callNumber('CONDUCTOR_MASS', size, lengthM, 'm')
              : sum;
          }, 0);
        const others = callRange('LIGHTEST_SIZES', ...shuffled).map(([cell]) => cell);
        const place = new Map(order.map((row, at) => [row, at]));
        expect(mass(others, (row) => place.get(row)!)).toBeCloseTo(
          mass(sizes, (row) => row),
          9,
        );
      }),
      { numRuns: TREES / 2, seed: 35 },
    );
  });
});

describe('prices', () => {
  const runs = [
    [['trunk'], ['relay']],
    [[null], ['trunk']],
    [[null], [6]],
    [[4], [3]],
  ] as const;
  const priced = (prices: TestArgument, series?: string) =>
    callRange(
      'LIGHTEST_SIZES',
      ...runs,
      'm',
      12.6,
      0.03,
      ...new Array<undefined>(9).fill(undefined),
      series,
      undefined,
      prices,
    );

  test('by the metal change nothing', () => {
    const byMetal = SERIES_SIZES.AWG.map((size): [string, number] => {
      const name = formatSize(size);
      return [name, 7 * callNumber('CONDUCTOR_AREA', name)];
    });
    expect(priced(byMetal)).toEqual(priced(undefined));
  });

  test('decide, and a size without one is not chosen', () => {
    // 4 m of 12 and 3 m of 10 AWG lose 0.25 + 0.12 of 0.38 V; no thinner pair does it.
    expect(priced(undefined)).toEqual([['12 AWG'], ['10 AWG']]);
    // 8 AWG at 2 is then cheaper than 10 AWG, and cheaper in the shorter run.
    const offered = [
      ['10 AWG', 2.4],
      ['12 AWG', 1.6],
      ['14 AWG', null],
      [8, 2],
    ];
    expect(priced(offered)).toEqual([['12 AWG'], ['8 AWG']]);
  });

  test.each<readonly [string, TestArgument]>([
    ['prices: give two columns, sizes and what a unit of length of each costs', [[10], [12]]],
    [
      'prices: 10 AWG stands there twice',
      [
        [10, 2],
        ['10 AWG', 3],
      ],
    ],
    ['prices: 10 AWG: 0 is not above 0; leave out what is not to be had', [[10, 0]]],
    [
      'prices: "thick" is not a size; write an AWG number such as "12 AWG" or an area such as "2.5 mm2"',
      [['thick', 2]],
    ],
  ])('%s', (sentence, prices) => {
    expect(priced(prices)).toEqual([[new CellError('#VALUE!', sentence)]]);
  });

  test('of another series leave nothing to choose', () => {
    const why = 'prices: no size of the series "AWG" that may be used has a price';
    const none = new CellError('#N/A', why);
    expect(priced([['2.5 mm2', 1]])).toEqual([[none], [none]]);
    expect(priced([['6 mm2', 1]], 'mm2')).toEqual([['6 mm2'], ['6 mm2']]);
  });
});

describe('what stands in the way is said', () => {
  const cells = (
    names: readonly Cell[],
    feeders: readonly Cell[],
    amps: readonly Cell[],
    lengths: readonly Cell[],
    ...others: readonly TestArgument[]
  ) =>
    callRange(
      'LIGHTEST_SIZES',
      column(names),
      column(feeders),
      column(amps),
      column(lengths),
      'm',
      ...others,
    ).map(([cell]) => (cell instanceof CellError ? `${cell.code} ${cell.sentence}` : cell));

  test('in every row of a tree that no sizes serve, and the others stand', () => {
    const answer = cells(
      ['trunk', 'pump', 'lamp'],
      [null, 'trunk', null],
      [null, 20, 1],
      [20, 20, 2],
      12,
      0.03,
    );
    const why =
      '#N/A no sizes serve this tree: on the way to "pump" the thickest sizes lose 0.257 V and its target allows 0.24 V; shorten its path, divide the load or raise the volts';
    expect(
      cells(['trunk', 'pump', 'lamp'], [null, 'trunk', null], [null, 20, 1], [20, 20, 2], 12, 0.02),
    ).toEqual([why, why, '18 AWG']);
    expect(answer).toEqual(['3/0 AWG', '3/0 AWG', '18 AWG']);
  });

  test('by heat, fuse and least volts', () => {
    expect(cells(['pump'], [null], [400], [0], 12, 0.03)).toEqual([
      '#N/A no sizes serve this tree: in "pump" no size may carry 400 A as installed; divide the load or use insulation of a higher rating',
    ]);
    expect(cells(['pump'], [null], [2], [1], 12, 0.03, 12.5)).toEqual([
      '#N/A no sizes serve this tree: "pump" needs 12.5 V and the source has 12 V',
    ]);
    expect(cells(['pump'], [null], [20], [10], 12, 0.03, 11.99)).toEqual([
      '#N/A no sizes serve this tree: on the way to "pump" the thickest sizes lose 0.0643 V and its 11.99 V allows 0.01 V; shorten its path, divide the load or raise the volts',
    ]);
  });

  test('where a row is not whole, in all that hang together with it', () => {
    expect(
      cells(
        ['trunk', 'pump', 'fan', 'lamp'],
        [null, 'trunk', 'trunk', null],
        [null, 'x', 2, 1],
        [2, 2, 2, 2],
        12,
        0.03,
      ),
    ).toEqual([
      '#VALUE! hangs together with "pump", whose row is not whole; fix it first',
      '#VALUE! amps: "x" is not a number',
      '#VALUE! hangs together with "pump", whose row is not whole; fix it first',
      '18 AWG',
    ]);
  });

  test('where a load has no target; a run without a load needs none', () => {
    expect(
      cells(['trunk', 'pump'], [null, 'trunk'], [null, 2], [2, 2], 12, column([null, 0.03])),
    ).toEqual(['18 AWG', '18 AWG']);
    expect(
      cells(['trunk', 'pump'], [null, 'trunk'], [null, 2], [2, 2], 12, column([0.03, null])),
    ).toEqual([
      '#VALUE! hangs together with "pump", whose row is not whole; fix it first',
      '#VALUE! max_drop: blank, and this run has a load; give its target',
    ]);
  });

  test('blank rows stay quiet, loops and strangers are named', () => {
    expect(cells(['pump', null], [null, null], [2, null], [2, null], 12, 0.03)).toEqual([
      '18 AWG',
      '',
    ]);
    const [one, other, third] = cells(
      ['a', 'b', 'c'],
      ['b', 'a', 'nobody'],
      [2, 2, 2],
      [2, 2, 2],
      12,
      0.03,
    );
    expect(one).toContain('"a" stands in a loop of feeders');
    expect(other).toContain('"b" stands in a loop of feeders');
    expect(third).toContain('"nobody", which is not in the list of runs');
  });

  test('lengths and amps come with their units', () => {
    expect(cells(['pump'], [null], ['5 A'], ['2,5 m'], 12, 0.03)).toEqual(['16 AWG']);
    expect(cells(['pump'], [null], ['2 A'], ['8 ft'], 12, 0.03)).toEqual([
      '#VALUE! lengths: "8 ft" says ft, and unit says m; give the length in m, or change unit',
    ]);
  });
});

test('the total and its bound are those of the metal of both conductors', () => {
  const runs: RunsToSize = {
    amps: Float64Array.of(0, 6, 0.5),
    lengthsM: Float64Array.of(4, 3, 8),
    maxDrops: Float64Array.of(0.03, 0.03, 0.03),
    leastVolts: new Float64Array(3),
    jointMilliohms: new Float64Array(3),
  };
  const rules: SizingRules = {
    volts: 12.6,
    material: 'copper',
    tempC: 20,
    insulationC: 75,
    ambientC: undefined,
    conductors: 2,
    installed: 'cable',
    continuous: true,
    series: 'AWG',
    fuseLimit: 'none',
  };
  const found = lightestSizes(
    buildFeederTree(['trunk', 'relay', 'camera'], [SOURCE, 'trunk', 'trunk']),
    runs,
    rules,
  );
  const areas = found.sizes.map((size) =>
    isRefusal(size) ? Number.NaN : callNumber('CONDUCTOR_AREA', formatSize(size)),
  );
  const mm2M = areas.reduce((sum, area, row) => sum + area * runs.lengthsM[row]!, 0);
  expect(found.total).toBeCloseTo((2 * mm2M * MATERIAL_CONSTANTS.copper.gramsPerCm3) / 1000, 9);
  expect(mostAboveBest(found)).toBe(0);
  expect(mostAboveBest({ ...found, atLeast: found.total / 1.02 })).toBeCloseTo(0.02, 9);
});
