import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fuseGuards, fuseSeconds, leastOpeningAmps } from '../../src/core/fuse-time';
import { isRefusal } from '../../src/core/outcome';
import { awg, SERIES_SIZES, type ConductorSize } from '../../src/core/size';
import { FUSE_RATINGS } from '../../src/core/tables/iso-8820-ratings';
import { assumedFuseType, FUSE_TYPES } from '../../src/core/tables/iso-8820-types';
import { MATERIALS } from '../../src/core/tables/materials';
import { withstandSeconds } from '../../src/core/withstand';
import { refusalText } from './refusal-text';

const BLADES_A = FUSE_RATINGS.filter(({ kind }) => kind === 'blade').map(({ ratingA }) => ratingA);
const PVC_COPPER = { startC: 70, limitC: 160, material: 'copper' } as const;

describe('fuseSeconds', () => {
  test.each([
    // Types C and F, then type E: the printed points.
    [15, 1.35, 600],
    [15, 1.6, 50],
    [15, 2, 5],
    [15, 3.5, 0.5],
    [15, 6, 0.1],
    [60, 1.35, 1800],
    [60, 2, 60],
    [60, 3.5, 7],
    [60, 6, 1],
  ])('%d A at %d times its rating: %d s', (ratingA, times, seconds) => {
    expect(fuseSeconds(ratingA, ratingA * times)).toBeCloseTo(seconds, 9);
  });

  test('half way between two points on logarithmic axes is their geometric mean', () => {
    expect(fuseSeconds(10, 10 * Math.sqrt(2 * 3.5))).toBeCloseTo(Math.sqrt(5 * 0.5), 9);
  });

  test('every blade rating opens from exactly 1.35 times it up, whatever the last binary digit', () => {
    for (const ratingA of BLADES_A) {
      expect(isRefusal(fuseSeconds(ratingA, 1.35 * ratingA))).toBe(false);
      expect(isRefusal(fuseSeconds(ratingA, Number((1.35 * ratingA).toPrecision(10))))).toBe(false);
      expect(refusalText(fuseSeconds(ratingA, 1.349 * ratingA))).toContain(
        `must open from ${Number((1.35 * ratingA).toPrecision(6))} A up`,
      );
    }
    expect(leastOpeningAmps(20)).toBeCloseTo(27, 9);
  });

  test('a rating up to 40 A is taken as type C or F, one from 50 A up as type E', () => {
    for (const ratingA of [1, 7.5, 15, 20, 25, 30, 35, 40]) {
      expect(fuseSeconds(ratingA, 2 * ratingA)).toBe(5);
    }
    for (const ratingA of [50, 60, 70, 80, 100]) expect(fuseSeconds(ratingA, 2 * ratingA)).toBe(60);
  });

  test('40 A keeps the slower of the figures that are printed at 6 times', () => {
    expect(fuseSeconds(40, 240)).toBe(0.15);
    expect(fuseSeconds(35, 210)).toBe(0.1);
  });

  test('beyond 6 times the rating no shorter time is claimed', () => {
    expect(fuseSeconds(10, 1e9)).toBe(0.1);
    expect(fuseSeconds(80, 1e9)).toBe(1);
  });

  test('a rating that blade fuses do not have has no time, and the sentence lists those that have', () => {
    for (const ratingA of [12, 125, 500, 0.5]) {
      expect(refusalText(fuseSeconds(ratingA, 1000))).toMatch(/^none: .*7\.5, 10, 15.*100 A/);
    }
  });

  test('never longer at more amps', () => {
    const times = fc.double({ min: 1.35, max: 12, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom(...BLADES_A), times, times, (ratingA, one, other) => {
        const at = (multiple: number) => fuseSeconds(ratingA, ratingA * multiple) as number;
        expect(at(Math.max(one, other))).toBeLessThanOrEqual(at(Math.min(one, other)) * (1 + 1e-9));
      }),
    );
  });
});

test('types follow one another by rating, and limits fall ever less steeply on logarithmic axes', () => {
  expect(FUSE_TYPES.map(({ fromA }) => fromA)).toEqual(
    FUSE_TYPES.map(({ fromA }) => fromA).sort((a, b) => a - b),
  );
  for (const { ratingA, kind } of FUSE_RATINGS) {
    const { limits, breakingA } = assumedFuseType(ratingA);
    expect(limits === undefined).toBe(kind === 'bolt-in');
    expect(breakingA).toBe(kind === 'blade' ? 1000 : 2000);
    // A sheet judges many sizes at once by this: the time is then the greatest of all chords.
    const steepness = (limits ?? []).slice(1).map((to, index) => {
      const from = limits![index]!;
      return Math.log(from.seconds / to.seconds) / Math.log(to.timesRating / from.timesRating);
    });
    expect(steepness).toEqual([...steepness].sort((a, b) => b - a));
  }
});

describe('fuseGuards', () => {
  test('true where the longest opening time is within what the conductor bears', () => {
    // 100 A: the fuse 0.1 s (6.67 times), 14 AWG 5.7 s.
    expect(fuseGuards(15, awg(14), 100, PVC_COPPER)).toBe(true);
    // 600 A: the fuse is promised no sooner than 0.1 s, 18 AWG bears 0.025 s.
    expect(fuseGuards(15, awg(18), 600, PVC_COPPER)).toBe(false);
  });

  test('a fault too weak to open the fuse is not guarded, however thick the wire', () => {
    for (const faultA of [0, 5, 1.349 * 30]) {
      expect(fuseGuards(30, awg(-3), faultA, PVC_COPPER)).toBe(false);
    }
    expect(fuseGuards(30, awg(-3), 1.35 * 30, PVC_COPPER)).toBe(true);
  });

  test('a fault beyond what blade fuses are proved to break is not guarded', () => {
    expect(fuseGuards(30, awg(-3), 1000, PVC_COPPER)).toBe(true);
    expect(fuseGuards(30, awg(-3), 1001, PVC_COPPER)).toBe(false);
  });

  test('a rating without times, and a senseless span, are refused whatever the fault', () => {
    for (const faultA of [0, 10, 500, 5000]) {
      expect(fuseGuards(150, awg(2), faultA, PVC_COPPER)).toMatchObject({ refused: 'none' });
      expect(fuseGuards(30, awg(2), faultA, { ...PVC_COPPER, limitC: 70 })).toMatchObject({
        refused: 'invalid',
      });
    }
  });

  test('says what its parts say', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...BLADES_A),
        fc.integer({ min: -3, max: 30 }).map(awg),
        fc.double({ min: 0, max: 1000, noNaN: true }),
        fc.constantFrom(...MATERIALS),
        (ratingA, size, faultA, material) => {
          const span = { ...PVC_COPPER, material };
          const opens = fuseSeconds(ratingA, faultA);
          const bears = withstandSeconds(size, faultA, span);
          const expected = typeof opens === 'number' && opens <= (bears as number) * (1 + 1e-9);
          expect(fuseGuards(ratingA, size, faultA, span)).toBe(expected);
        },
      ),
    );
  });

  test('guarded at both ends of a run is guarded at every fault between', () => {
    const fault = fc.double({ min: 1, max: 1000, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom(...BLADES_A),
        fc.integer({ min: -3, max: 24 }).map(awg),
        fc.tuple(fault, fault, fault),
        (ratingA, size, faults) => {
          const [far, between, near] = faults.sort((a, b) => a - b);
          const guarded = (faultA: number) => fuseGuards(ratingA, size, faultA, PVC_COPPER);
          fc.pre(guarded(far) === true && guarded(near) === true);
          expect(guarded(between)).toBe(true);
        },
      ),
    );
  });

  test('a thicker wire is never less guarded', () => {
    const series = fc.constantFrom(...Object.values(SERIES_SIZES));
    fc.assert(
      fc.property(
        series.chain((sizes) => fc.subarray([...sizes], { minLength: 2, maxLength: 2 })),
        fc.constantFrom(...BLADES_A),
        fc.double({ min: 1, max: 2000, noNaN: true }),
        fc.constantFrom(...MATERIALS),
        (pair, ratingA, faultA, material) => {
          const [thin, thick] = pair as [ConductorSize, ConductorSize];
          const guarded = (size: ConductorSize) =>
            fuseGuards(ratingA, size, faultA, { ...PVC_COPPER, material });
          if (guarded(thin) === true) expect(guarded(thick)).toBe(true);
        },
      ),
    );
  });
});
