import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { faultAmps } from '../../src/core/fault';
import { awg, mm2 } from '../../src/core/size';
import { MATERIALS } from '../../src/core/tables/materials';
import { shortCircuitK, withstandSeconds, type HeatSpan } from '../../src/core/withstand';
import { refusalText } from './refusal-text';

const PVC = { startC: 70, limitC: 160 };

describe('withstandSeconds', () => {
  test('2.5 mm2 of copper at 500 A, by the printed k of 115: (115 x 2.5 / 500)^2 s within its rounding', () => {
    const seconds = withstandSeconds(mm2(2.5), 500, { ...PVC, material: 'copper' }) as number;
    expect(Math.abs(seconds / (115 * 2.5 * (1 / 500)) ** 2 - 1)).toBeLessThan(0.01);
  });

  test('goes as 1 / I^2 and as the square of the area', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 100, noNaN: true }),
        fc.double({ min: 1, max: 5000, noNaN: true }),
        fc.constantFrom(...MATERIALS),
        (areaMm2, amps, material) => {
          const at = (area: number, current: number) =>
            withstandSeconds(mm2(area), current, { ...PVC, material }) as number;
          expect(at(areaMm2, 2 * amps) / at(areaMm2, amps)).toBeCloseTo(1 / 4, 9);
          expect(at(2 * areaMm2, amps) / at(areaMm2, amps)).toBeCloseTo(4, 9);
        },
      ),
    );
  });

  test('tin changes nothing, copper-clad aluminium bears what aluminium bears', () => {
    const of = (material: (typeof MATERIALS)[number]) => shortCircuitK({ ...PVC, material });
    expect(of('tinned copper')).toBe(of('copper'));
    expect(of('copper-clad aluminium')).toBe(of('aluminium'));
    expect(of('aluminium')).toBeLessThan(of('copper') as number);
  });

  test('plain aluminium is the cautious stand-in: the clad metal stores more heat and resists less', () => {
    // 15 % copper by volume; ASTM B566 class 15A conducts at least 64.4 % IACS.
    const cladJoulePerKelvinMm3 = 0.15 * 3.45e-3 + 0.85 * 2.5e-3;
    const cladOhmMm = 17.241e-6 / 0.644;
    const cladK = Math.sqrt(
      ((cladJoulePerKelvinMm3 * (228 + 20)) / cladOhmMm) * Math.log((228 + 160) / (228 + 70)),
    );
    expect(shortCircuitK({ ...PVC, material: 'copper-clad aluminium' })).toBeLessThan(cladK);
  });

  test('refuses a limit that is not above the start or that melts the metal; 0 A has no longest time', () => {
    const why = (amps: number, span: HeatSpan) =>
      refusalText(withstandSeconds(awg(12), amps, span));
    expect(why(100, { startC: 160, limitC: 160, material: 'copper' })).toMatch(
      /^invalid: limit_c: 160 is not above start_c, 160/,
    );
    expect(why(100, { startC: 20, limitC: 700, material: 'aluminium' })).toMatch(
      /^invalid: .*melts/,
    );
    expect(why(0, { ...PVC, material: 'copper' })).toMatch(/^none: /);
  });
});

describe('faultAmps', () => {
  test('source and run in series', () => {
    expect(faultAmps(12.8, 20, 0.108)).toBeCloseTo(100, 9);
    expect(faultAmps(12.8, 4, 0)).toBeCloseTo(3200, 9);
    expect(faultAmps(12.8, 0, 0.1)).toBeCloseTo(128, 9);
  });

  test('nothing limits the current where there is no resistance', () => {
    expect(faultAmps(12, 0, 0)).toMatchObject({ refused: 'none' });
  });
});
