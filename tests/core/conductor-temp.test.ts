import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ohmsPerM } from '../../src/core/conductor';
import { conductorTempC, type StillAirCable } from '../../src/core/conductor-temp';
import { isRefusal } from '../../src/core/outcome';
import { awg, mm2 } from '../../src/core/size';
import { convectionWattsPerM, radiationWattsPerM } from '../../src/core/still-air';
import { MATERIALS } from '../../src/core/tables/materials';
import { refusalText } from './refusal-text';

const CABLE: StillAirCable = {
  size: awg(10),
  material: 'copper',
  ambientC: 30,
  insulationMm: undefined,
};

/** A cable that a workbook might hold, and a current that does not melt it. */
const anyCable = fc.record<StillAirCable>({
  size: fc.oneof(
    fc.integer({ min: -3, max: 30 }).map(awg),
    fc.constantFrom(0.5, 2.5, 16, 120).map(mm2),
  ),
  material: fc.constantFrom(...MATERIALS),
  ambientC: fc.double({ min: -20, max: 60, noNaN: true }),
  insulationMm: fc.option(fc.double({ min: 0, max: 2, noNaN: true }), { nil: undefined }),
});
const anyAmps = fc.double({ min: 0.01, max: 500, noNaN: true });

/** Temperature, or beyond the law's end as the hottest of all, so that the two kinds of answer compare. */
function tempOrEndless(amps: number, cable: StillAirCable): number {
  const tempC = conductorTempC(amps, cable);
  return isRefusal(tempC) ? Number.POSITIVE_INFINITY : tempC;
}

/** Twice what the answer may be off, and both sides of a comparison are. */
const SLACK_K = 0.01;

describe('the balance', () => {
  test('0 A leaves the conductor exactly at the temperature of the air', () => {
    for (const ambientC of [-40, 0, 30, 85.3, 300]) {
      expect(conductorTempC(0, { ...CABLE, ambientC })).toBe(ambientC);
    }
  });

  test('a bare conductor sheds from its surface what it makes at its answer, to 0.01 K', () => {
    const bare = { ...CABLE, insulationMm: 0 };
    const diameterM = 2.588e-3;
    for (const amps of [1, 20, 55, 90]) {
      const tempC = conductorTempC(amps, bare) as number;
      const shedW = (surfaceC: number) =>
        convectionWattsPerM(diameterM, surfaceC, 30) +
        radiationWattsPerM(diameterM, surfaceC, 30, 0.9);
      const madeW = (metalC: number) => amps ** 2 * ohmsPerM(bare.size, 'copper', metalC);
      expect(shedW(tempC + 0.01)).toBeGreaterThan(madeW(tempC + 0.01));
      expect(shedW(tempC - 0.01)).toBeLessThan(madeW(tempC - 0.01));
    }
  });

  test('heat crosses the wall: the metal is hotter than the surface by watts x ln(outside / metal) / 2 pi k', () => {
    // Worked apart from the code, by repeated substitution: 30 A in 10 AWG with 0.508 mm of PVC in 30 degC.
    expect(conductorTempC(30, { ...CABLE, insulationMm: 0.508 })).toBeCloseTo(47.2346, 2);
  });

  test('beyond 300 degC there is no answer, with a sentence', () => {
    expect(refusalText(conductorTempC(200, CABLE))).toMatch(/^none: .*300 degC/);
    expect(isRefusal(conductorTempC(1e300, CABLE))).toBe(true);
    expect(isRefusal(conductorTempC(1, { ...CABLE, ambientC: 300 }))).toBe(true);
    let lastC = 30;
    for (let amps = 1; amps < 200; amps += 1) {
      const tempC = conductorTempC(amps, CABLE);
      if (!isRefusal(tempC)) lastC = tempC;
    }
    expect(lastC).toBeGreaterThan(290);
    expect(lastC).toBeLessThanOrEqual(300);
  });
});

describe('which way it moves', () => {
  test('up with the current', () => {
    fc.assert(
      fc.property(anyCable, anyAmps, anyAmps, (cable, one, other) => {
        const [less, more] = [Math.min(one, other), Math.max(one, other)];
        expect(tempOrEndless(less, cable)).toBeLessThanOrEqual(
          tempOrEndless(more, cable) + SLACK_K,
        );
      }),
    );
  });

  test('up with the air around it', () => {
    fc.assert(
      fc.property(
        anyCable,
        anyAmps,
        fc.double({ min: 0.1, max: 40, noNaN: true }),
        (cable, amps, warmerK) => {
          const warmer = { ...cable, ambientC: cable.ambientC + warmerK };
          expect(tempOrEndless(amps, cable)).toBeLessThanOrEqual(
            tempOrEndless(amps, warmer) + SLACK_K,
          );
        },
      ),
    );
  });

  test('down with the wall, up to 1.5 mm and 100 degC: the wider surface sheds more than the wall holds back', () => {
    const wall = fc.double({ min: 0, max: 1.5, noNaN: true });
    fc.assert(
      fc.property(anyCable, anyAmps, wall, wall, (cable, amps, one, other) => {
        const thinC = tempOrEndless(amps, { ...cable, insulationMm: Math.min(one, other) });
        const thickC = tempOrEndless(amps, { ...cable, insulationMm: Math.max(one, other) });
        fc.pre(thinC <= 100);
        expect(thickC).toBeLessThanOrEqual(thinC + SLACK_K);
      }),
    );
  });

  test('a wall of many millimetres keeps the heat of a thick conductor in', () => {
    const at = (insulationMm: number) =>
      conductorTempC(405, { ...CABLE, size: awg(-3), insulationMm }) as number;
    expect(at(20)).toBeGreaterThan(at(4));
  });

  test('never below the air, and down with a thicker conductor of the same wall', () => {
    fc.assert(
      fc.property(anyAmps, fc.integer({ min: -3, max: 29 }), (amps, gauge) => {
        const cable = (of: number) => ({ ...CABLE, size: awg(of), insulationMm: 0.8 });
        const thickC = tempOrEndless(amps, cable(gauge));
        expect(thickC).toBeGreaterThanOrEqual(30);
        expect(thickC).toBeLessThanOrEqual(tempOrEndless(amps, cable(gauge + 1)) + SLACK_K);
      }),
    );
  });
});
