import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  ARCING_ALLOWANCE_S,
  estimatedOpeningSeconds,
  fuseGuards,
  fuseSeconds,
  lastPublishedI2t,
  leastOpeningAmps,
} from '../../src/core/fuse-time';
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

  test.each([
    // Rating, amps, the I^2 t of the last point (6 times; 0.1 s, 0.15 s, 1 s), seconds: that over amps squared, and 2 ms.
    [2, 1000, 14.4, 0.0020144],
    [15, 600, 810, 0.00425],
    [40, 1000, 8640, 0.01064],
    [80, 960, 230_400, 0.252],
  ])('%d A at %d A: melts at %d A2s, open after %d s', (ratingA, amps, i2t, seconds) => {
    expect(lastPublishedI2t(ratingA)).toBeCloseTo(i2t, 9);
    expect(fuseSeconds(ratingA, amps)).toBeCloseTo(seconds, 12);
  });

  test("a maker's I2t replaces that of the last point, beyond the last point alone", () => {
    expect(fuseSeconds(15, 600, 180)).toBeCloseTo(0.0005 + 0.002, 12);
    expect(fuseSeconds(15, 100, 1e6)).toBe(0.1);
    expect(fuseSeconds(15, 30, 180)).toBe(5);
    // 6 times 15 A: the last point itself is published.
    expect(fuseSeconds(15, 90, 180)).toBe(0.1);
  });

  test('no current is so great that the arc takes no time, and none gives a number that is none', () => {
    for (const amps of [1e9, 1e200, Number.MAX_VALUE]) {
      expect(fuseSeconds(10, amps)).toBeCloseTo(ARCING_ALLOWANCE_S, 9);
    }
    expect(ARCING_ALLOWANCE_S).toBe(0.002);
  });

  test('a rating that blade fuses do not have has no time, and the sentence lists those that have', () => {
    for (const ratingA of [12, 125, 500, 0.5]) {
      expect(refusalText(fuseSeconds(ratingA, 1000))).toMatch(/^none: .*7\.5, 10, 15.*100 A/);
      expect(refusalText(lastPublishedI2t(ratingA))).toMatch(/^none: .*100 A/);
    }
  });

  const blade = fc.constantFrom(...BLADES_A);
  const times = fc.oneof(
    fc.double({ min: 1.35, max: 12, noNaN: true }),
    fc.double({ min: 1.35, max: 1000, noNaN: true }),
  );
  const makers = fc.option(fc.double({ min: 1, max: 1e6, noNaN: true }), { nil: undefined });

  test('never longer at more amps', () => {
    fc.assert(
      fc.property(blade, times, times, makers, (ratingA, one, other, i2t) => {
        const at = (multiple: number) => fuseSeconds(ratingA, ratingA * multiple, i2t) as number;
        expect(at(Math.max(one, other))).toBeLessThanOrEqual(at(Math.min(one, other)) * (1 + 1e-9));
      }),
    );
  });

  test('beyond the last point it goes on where the limits end, never above them, and melts as 1 / I2', () => {
    const beyond = fc.double({ min: 6, max: 1000, noNaN: true });
    fc.assert(
      fc.property(blade, beyond, (ratingA, multiple) => {
        const last = fuseSeconds(ratingA, 6 * ratingA) as number;
        const amps = ratingA * multiple;
        const seconds = fuseSeconds(ratingA, amps) as number;
        expect(seconds).toBeLessThanOrEqual(last);
        const melting = last * (6 / multiple) ** 2;
        expect(seconds).toBeCloseTo(Math.min(last, melting + 0.002), 12);
        expect(estimatedOpeningSeconds(lastPublishedI2t(ratingA) as number, amps)).toBeCloseTo(
          melting + 0.002,
          12,
        );
        // Without a jump: a hair past the last point it is still the last time.
        expect(fuseSeconds(ratingA, ratingA * 6 * (1 + 1e-6))).toBe(last);
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
    // 100 A: the fuse 0.083 s (6.67 times), 14 AWG 5.7 s.
    expect(fuseGuards(15, awg(14), 100, PVC_COPPER)).toBe(true);
    // 1000 A: 2 ms, mostly arcing; 18 AWG bears 8.9 ms.
    expect(fuseGuards(2, awg(18), 1000, PVC_COPPER)).toBe(true);
    // 960 A: the fuse 0.252 s, 14 AWG bears 0.062 s, 10 AWG 0.396 s.
    expect(fuseGuards(80, awg(14), 960, PVC_COPPER)).toBe(false);
    expect(fuseGuards(80, awg(10), 960, PVC_COPPER)).toBe(true);
  });

  test("a maker's I2t counts", () => {
    // 960 A: 14 AWG bears 57,100 A2s; 30,000 of them melt the element and 1,843 pass in the arc.
    expect(fuseGuards(80, awg(14), 960, PVC_COPPER, 30_000)).toBe(true);
    expect(fuseGuards(80, awg(14), 960, PVC_COPPER, 56_000)).toBe(false);
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
        fc.option(fc.double({ min: 1, max: 1e6, noNaN: true }), { nil: undefined }),
        (ratingA, size, faults, i2t) => {
          const [far, between, near] = faults.sort((a, b) => a - b);
          const guarded = (faultA: number) => fuseGuards(ratingA, size, faultA, PVC_COPPER, i2t);
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
