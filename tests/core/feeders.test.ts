import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { steadyPowerAmps } from '../../src/core/drop';
import { buildFeederTree, SOURCE } from '../../src/core/feeder-tree';
import { isRefusal, type Outcome } from '../../src/core/outcome';
import { ampsOf, listOfRuns, regularRuns, voltsOf, type TestRun } from './feeder-trees';

const SOURCE_VOLTS = 12;
/** Volts that two ways of solving the same tree may differ by: it is solved to 1e-9 V, near collapse to less. */
const AGREE_V = 1e-6;

const EASY = listOfRuns(12, 0.02);
const HARD = listOfRuns(12, 0.6);
const AMPS_ONLY = listOfRuns(12, 0.05, ['A']);

function numbers(outcomes: readonly Outcome<number>[]): number[] {
  return outcomes.map((outcome) => (isRefusal(outcome) ? NaN : outcome));
}

/** Runs from the source down to a run, itself included. */
function pathTo(runs: readonly TestRun[], run: TestRun): TestRun[] {
  const path: TestRun[] = [];
  for (let at: TestRun | undefined = run; at !== undefined;) {
    path.push(at);
    const { fedFrom }: TestRun = at;
    at = runs.find(({ name }) => name === fedFrom);
  }
  return path;
}

/** Sum over all loads of amps times the ohms of the path that the load and the run have in common. */
function dropByPaths(runs: readonly TestRun[], run: TestRun, ampsOfLoad: (of: TestRun) => number) {
  const path = new Set(pathTo(runs, run));
  return runs.reduce((drop, other) => {
    const common = pathTo(runs, other).filter((shared) => path.has(shared));
    return drop + ampsOfLoad(other) * common.reduce((ohms, shared) => ohms + shared.ohms, 0);
  }, 0);
}

describe('current in feeders', () => {
  test('the runs off the source carry all loads together', () => {
    fc.assert(
      fc.property(HARD, (runs) => {
        const amps = ampsOf(runs) as number[];
        const fromSource = amps.filter((_, row) => runs[row]!.fedFrom === SOURCE);
        const total = (list: readonly number[]) => list.reduce((sum, each) => sum + each, 0);
        expect(total(fromSource)).toBeCloseTo(total(runs.map(({ load }) => load)), 9);
      }),
    );
  });

  test('each run carries the loads whose path it is part of', () => {
    fc.assert(
      fc.property(HARD, (runs) => {
        const amps = ampsOf(runs);
        for (const [row, run] of runs.entries()) {
          const fed = runs.filter((other) => pathTo(runs, other).includes(run));
          expect(amps[row]).toBeCloseTo(
            fed.reduce((sum, { load }) => sum + load, 0),
            9,
          );
        }
      }),
    );
  });
});

describe('volts in feeders', () => {
  test('loads of steady amps: the source less amps times ohms over the paths in common', () => {
    fc.assert(
      fc.property(AMPS_ONLY, (runs) => {
        const volts = voltsOf(1000, runs);
        for (const [row, run] of runs.entries()) {
          expect(volts[row]).toBeCloseTo(1000 - dropByPaths(runs, run, ({ load }) => load), 8);
        }
      }),
    );
  });

  test('loads of steady watts draw watts over volts, and the drops add up to 1e-9 V', () => {
    fc.assert(
      fc.property(EASY, (runs) => {
        const volts = numbers(voltsOf(SOURCE_VOLTS, runs));
        fc.pre(volts.every((each) => each > SOURCE_VOLTS / 2));
        const amps = new Map(
          runs.map((run, row) => [run, run.kind === 'W' ? run.load / volts[row]! : run.load]),
        );
        for (const [row, run] of runs.entries()) {
          const drop = dropByPaths(runs, run, (other) => amps.get(other)!);
          expect(Math.abs(volts[row]! - (SOURCE_VOLTS - drop))).toBeLessThan(1e-9);
        }
      }),
    );
  });

  test('one run with one load of steady watts is the closed form, up to the point of collapse', () => {
    const ohms = 0.5;
    const most = SOURCE_VOLTS ** 2 / (4 * ohms);
    for (const share of [0, 0.1, 0.5, 0.9, 0.999, 0.999999, 1]) {
      const load = share * most;
      const [volts] = voltsOf(SOURCE_VOLTS, [
        { name: 'radio', fedFrom: SOURCE, load, kind: 'W', ohms },
      ]);
      const amps = steadyPowerAmps(load, SOURCE_VOLTS, ohms) as number;
      expect(volts).toBeCloseTo(SOURCE_VOLTS - amps * ohms, 6);
    }
  });

  test('a load a billionth above what its path can deliver is not served', () => {
    const ohms = 0.5;
    const load = (SOURCE_VOLTS ** 2 / (4 * ohms)) * (1 + 1e-9);
    const [volts] = voltsOf(SOURCE_VOLTS, [
      { name: 'radio', fedFrom: SOURCE, load, kind: 'W', ohms },
    ]);
    expect(volts).toMatchObject({
      refused: 'none',
      why: expect.stringContaining('"radio"') as string,
    });
  });

  test('a load of steady amps may take the last volt and no more', () => {
    const run = { name: 'lamp', fedFrom: SOURCE, kind: 'A', ohms: 2 } as const;
    expect(voltsOf(SOURCE_VOLTS, [{ ...run, load: 6 }])).toEqual([0]);
    expect(voltsOf(SOURCE_VOLTS, [{ ...run, load: 6.001 }])[0]).toMatchObject({ refused: 'none' });
  });

  test('the rows may stand in any order', () => {
    fc.assert(
      fc.property(
        HARD.chain((runs) =>
          fc.tuple(
            fc.constant(runs),
            fc.shuffledSubarray(
              runs.map((_, row) => row),
              { minLength: runs.length },
            ),
          ),
        ),
        ([runs, order]) => {
          const volts = numbers(voltsOf(SOURCE_VOLTS, runs));
          const shuffled = numbers(
            voltsOf(
              SOURCE_VOLTS,
              order.map((row) => runs[row]!),
            ),
          );
          for (const [index, row] of order.entries()) {
            if (Number.isNaN(volts[row]!)) expect(shuffled[index]).toBeNaN();
            else expect(Math.abs(shuffled[index]! - volts[row]!)).toBeLessThan(AGREE_V);
          }
        },
      ),
      { numRuns: 400 },
    );
  });

  test('more ohms in a run never raise the volts of loads of steady amps', () => {
    fc.assert(
      fc.property(
        AMPS_ONLY,
        fc.nat(),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (runs, pick, more) => {
          const worse = runs.map((run, row) =>
            row === pick % runs.length ? { ...run, ohms: run.ohms + more } : run,
          );
          const volts = voltsOf(1000, runs) as number[];
          const worseVolts = voltsOf(1000, worse) as number[];
          for (const [row, each] of worseVolts.entries()) {
            expect(each).toBeLessThanOrEqual(volts[row]! + 1e-9);
          }
        },
      ),
    );
  });
});

describe('loads that cannot be served', () => {
  /** Lists in which some load goes unserved, and how often that came about. */
  function withUnserved(check: (runs: readonly TestRun[], unserved: readonly number[]) => void) {
    let seen = 0;
    fc.assert(
      fc.property(HARD, (runs) => {
        const unserved = voltsOf(SOURCE_VOLTS, runs).flatMap((each, row) =>
          isRefusal(each) ? [row] : [],
        );
        if (unserved.length === 0) return;
        seen += 1;
        check(runs, unserved);
      }),
      { numRuns: 400 },
    );
    expect(seen).toBeGreaterThan(100);
  }

  test('leave the others as though they were absent', () => {
    withUnserved((runs, unserved) => {
      const absent = runs.map((run, row) => (unserved.includes(row) ? { ...run, load: 0 } : run));
      const volts = voltsOf(SOURCE_VOLTS, runs);
      for (const [row, each] of (voltsOf(SOURCE_VOLTS, absent) as number[]).entries()) {
        if (unserved.includes(row)) continue;
        expect(Math.abs((volts[row] as number) - each)).toBeLessThan(AGREE_V);
      }
    });
  });

  test('are no more than need be: not one could be put back beside the others', () => {
    withUnserved((runs, unserved) => {
      for (const back of unserved) {
        const putBack = runs.map((run, row) =>
          unserved.includes(row) && row !== back ? { ...run, load: 0 } : run,
        );
        expect(voltsOf(SOURCE_VOLTS, putBack).some(isRefusal)).toBe(true);
      }
    });
  });

  test('are told apart: too much for the own path, or too much beside the others', () => {
    const run = { fedFrom: SOURCE, kind: 'W', ohms: 1 } as const;
    const [alone] = voltsOf(SOURCE_VOLTS, [{ ...run, name: 'heater', load: 40 }]);
    expect(alone).toMatchObject({
      refused: 'none',
      why: expect.stringMatching(
        /^"heater" cannot be served: even alone on its path, the cable cannot deliver 40 W: .* the most is 36(\.0)? W; the other rows are solved without it$/,
      ) as string,
    });
    const [, small, large] = voltsOf(SOURCE_VOLTS, [
      { ...run, name: 'trunk', load: 0 },
      { ...run, name: 'lamp', fedFrom: 'trunk', load: 10, ohms: 0 },
      { ...run, name: 'pump', fedFrom: 'trunk', load: 30, ohms: 0 },
    ]);
    expect(small).toBeCloseTo(SOURCE_VOLTS - (steadyPowerAmps(10, SOURCE_VOLTS, 1) as number), 6);
    expect(large).toMatchObject({
      refused: 'none',
      why: '"pump" cannot be served: the runs it shares with other loads cannot deliver it; the other rows are solved without it',
    });
  });

  test('one branch off the source does not move another', () => {
    const volts = voltsOf(SOURCE_VOLTS, [
      { name: 'weak', fedFrom: SOURCE, load: 400, kind: 'W', ohms: 1 },
      { name: 'strong', fedFrom: SOURCE, load: 2, kind: 'A', ohms: 0.1 },
    ]);
    expect(volts[0]).toMatchObject({ refused: 'none' });
    expect(volts[1]).toBeCloseTo(11.8, 12);
  });
});

describe('a hundred thousand runs', () => {
  const COUNT = 100_000;

  test.each(['chain', 'fan', 'star', 'in twos'] as const)('as a %s', (shape) => {
    const runs = regularRuns(shape, COUNT, 0.1);
    const volts = voltsOf(SOURCE_VOLTS, runs) as number[];
    expect(volts).toHaveLength(COUNT);
    expect(volts.every((each) => each > 6 && each < SOURCE_VOLTS)).toBe(true);
    expect(ampsOf(runs).some(isRefusal)).toBe(false);
  });

  test('in one loop, or under one name', () => {
    const names = Array.from({ length: COUNT }, (_, index) => `run ${index}`);
    const loop = buildFeederTree(
      names,
      names.map((_, index) => names[(index + 1) % COUNT]!),
    );
    expect(loop.refusals.size).toBe(COUNT);
    const same = buildFeederTree(
      names.map(() => 'run'),
      names.map(() => 'run'),
    );
    expect(same.refusals.size).toBe(COUNT);
  });
});
