/**
 * IEC 60228 (2004), conductors of insulated cables, maximum resistance at 20 degC, ohm per km.
 * Class 5 (table 3) plain and metal-coated copper, class 2 (table 2) plain copper and aluminium: read in three
 * reproductions that agree. The temperature factors Kt of its annex: read.
 *
 * The 50 mm2 row of class 2 stands out by nature, not by misprint: its metal is about 47 mm2.
 */
import { describe, expect, test } from 'vitest';
import { callNumber } from '../functions/call';

/** Area in mm2; class 5 plain, class 5 metal-coated; class 2 plain; class 2 aluminium where it is listed. */
const TABLES_2_AND_3: readonly (readonly [number, number, number, number, number | undefined])[] = [
  [0.5, 39.0, 40.1, 36.0, undefined],
  [0.75, 26.0, 26.7, 24.5, undefined],
  [1, 19.5, 20.0, 18.1, undefined],
  [1.5, 13.3, 13.7, 12.1, undefined],
  [2.5, 7.98, 8.21, 7.41, undefined],
  [4, 4.95, 5.09, 4.61, undefined],
  [6, 3.3, 3.39, 3.08, undefined],
  [10, 1.91, 1.95, 1.83, 3.08],
  [16, 1.21, 1.24, 1.15, 1.91],
  [25, 0.78, 0.795, 0.727, 1.2],
  [35, 0.554, 0.565, 0.524, 0.868],
  [50, 0.386, 0.393, 0.387, 0.641],
  [70, 0.272, 0.277, 0.268, 0.443],
  [95, 0.206, 0.21, 0.193, 0.32],
  [120, 0.161, 0.164, 0.153, 0.253],
  [150, 0.129, 0.132, 0.124, 0.206],
  [185, 0.106, 0.108, 0.0991, 0.164],
  [240, 0.0801, 0.0817, 0.0754, 0.125],
  [300, 0.0641, 0.0654, 0.0601, 0.1],
  [400, 0.0486, 0.0495, 0.047, 0.0778],
];

const perKm = (areaMm2: number, material: string, tempC = 20) =>
  callNumber('CONDUCTOR_OHMS', `${areaMm2} mm2`, 1000, 'm', material, tempC);

/** 100 % IACS, the resistivity of annealed copper (IEC 60028), ohm mm2 per m. */
const COPPER_OHM_MM2_PER_M = 1 / 58;

/** Equal but for the last binary digits of multiplying by a thousand and back. */
const DIGITS = 12;

describe.each(TABLES_2_AND_3)('%d mm2', (areaMm2, plain5, tinned5, plain2) => {
  test(`class 5, plain: ${plain5}`, () => {
    expect(perKm(areaMm2, 'copper')).toBeCloseTo(plain5, DIGITS);
  });

  test(`class 5, metal-coated: ${tinned5}`, () => {
    expect(perKm(areaMm2, 'tinned copper')).toBeCloseTo(tinned5, DIGITS);
  });

  // The standard limits resistance, not area: bare resistivity over the nominal area is always less. How much less
  // is a property of the printed table, and a digit typed wrongly falls out of these bounds.
  test('the limit lies above resistivity over nominal area, by a known margin', () => {
    const solid = (1000 * COPPER_OHM_MM2_PER_M) / areaMm2;
    const ratio = perKm(areaMm2, 'copper') / solid;
    expect(ratio).toBeGreaterThan(1.1);
    expect(ratio).toBeLessThan(1.16);
    const ratio2 = plain2 / solid;
    expect(ratio2).toBeGreaterThan(1.04);
    expect(ratio2).toBeLessThan(areaMm2 === 50 ? 1.123 : 1.095);
  });
});

test.each(
  TABLES_2_AND_3.flatMap(([areaMm2, , , , aluminium2]) =>
    aluminium2 === undefined ? [] : [[areaMm2, aluminium2] as const],
  ),
)('%d mm2, class 2, aluminium: %d', (areaMm2, aluminium2) => {
  expect(perKm(areaMm2, 'aluminium')).toBeCloseTo(aluminium2, DIGITS);
});

test('an area that the standard does not list follows from resistivity', () => {
  expect(perKm(3, 'copper')).toBeCloseTo((1000 * COPPER_OHM_MM2_PER_M) / 3, DIGITS);
});

/** Kt, by which a resistance measured at T is brought to 20 degC: R20 = R x Kt. */
const KT: readonly (readonly [number, number])[] = [
  [5, 1.064],
  [10, 1.042],
  [15, 1.02],
  [20, 1.0],
  [25, 0.98],
  [30, 0.962],
  [40, 0.926],
  [50, 0.893],
  [60, 0.862],
  [75, 0.82],
  [90, 0.781],
];

// 0.5 %: Kt is 250 / (230 + T), a coefficient rounded to 0.004 where copper's is 0.00393.
test.each(KT)('temperature factor at %d degC: %d', (tempC, kt) => {
  const ours = perKm(2.5, 'copper', 20) / perKm(2.5, 'copper', tempC);
  expect(Math.abs(ours / kt - 1)).toBeLessThan(0.005);
});
