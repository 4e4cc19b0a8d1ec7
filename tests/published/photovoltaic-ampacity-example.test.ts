/**
 * A worked example of photovoltaic wiring to NFPA 70 (J. Wiles, Sandia National Laboratories), read in a reproduction:
 * conductors behind modules at 68 degC, 90 degC insulation in free air (table 310.17: 14, 12, 10, 8 AWG 35, 40, 55,
 * 80 A), factor 0.58 for the band 66 to 70 degC: 20.3, 23.2, 31.9, 46.4 A.
 */
import { describe, expect, test } from 'vitest';
import { callNumber } from '../functions/call';

const EXAMPLE: readonly (readonly [number, number, number])[] = [
  [14, 35, 20.3],
  [12, 40, 23.2],
  [10, 55, 31.9],
  [8, 80, 46.4],
];

describe.each(EXAMPLE)('%i AWG, %d A at 30 degC: %d A', (gauge, amps, corrected) => {
  const at = (ambientC: number) => callNumber('AMPACITY', gauge, 90, ambientC, undefined, 'air');

  // The factor is printed to two decimals and stands for the hot end of its band, 70 degC: 0.005 of the row.
  test('at the hot end of the band', () => {
    expect(Math.abs(at(70) - corrected)).toBeLessThan(0.005 * amps);
  });

  // At the example's own 68 degC the equation, which knows no bands, leaves a little more (0.606).
  test('at 68 degC itself', () => {
    expect(at(68)).toBeGreaterThan(corrected);
    expect(at(68)).toBeCloseTo(amps * Math.sqrt(22 / 60), 10);
  });
});
