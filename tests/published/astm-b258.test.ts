/**
 * ASTM B258, standard nominal diameters of solid round wire, and the classic table of annealed copper at 20 degC that
 * rests on it (NBS Circular 31 lineage).
 *
 * Diameters in mil, printed to 0.1 mil: from memory, 14 to 30 AWG read in a data sheet of copper-clad wire.
 * Areas in mm2: computed from the standard's formula to four decimals.
 * Resistances in ohm per 1000 ft, four figures: read in a reproduction.
 * No misprints found.
 */
import { describe, expect, test } from 'vitest';
import { callNumber } from '../functions/call';

/** Gauge, diameter in mil, area in mm2, ohm per 1000 ft of annealed copper at 20 degC. */
const ASTM_B258_AND_CIRCULAR_31: readonly (readonly [string, number, number, number])[] = [
  ['4/0', 460.0, 107.2193, 0.04901],
  ['3/0', 409.6, 85.0288, 0.0618],
  ['2/0', 364.8, 67.4309, 0.07793],
  ['1/0', 324.9, 53.4751, 0.09827],
  ['1', 289.3, 42.4077, 0.1239],
  ['2', 257.6, 33.6308, 0.1563],
  ['3', 229.4, 26.6705, 0.197],
  ['4', 204.3, 21.1506, 0.2485],
  ['5', 181.9, 16.7732, 0.3133],
  ['6', 162.0, 13.3018, 0.3951],
  ['7', 144.3, 10.5488, 0.4982],
  ['8', 128.5, 8.3656, 0.6282],
  ['9', 114.4, 6.6342, 0.7921],
  ['10', 101.9, 5.2612, 0.9989],
  ['11', 90.7, 4.1723, 1.26],
  ['12', 80.8, 3.3088, 1.588],
  ['13', 72.0, 2.624, 2.003],
  ['14', 64.1, 2.0809, 2.525],
  ['15', 57.1, 1.6502, 3.184],
  ['16', 50.8, 1.3087, 4.016],
  ['17', 45.3, 1.0378, 5.064],
  ['18', 40.3, 0.823, 6.385],
  ['19', 35.9, 0.6527, 8.051],
  ['20', 32.0, 0.5176, 10.15],
  ['21', 28.5, 0.4105, 12.8],
  ['22', 25.3, 0.3255, 16.14],
  ['23', 22.6, 0.2582, 20.36],
  ['24', 20.1, 0.2047, 25.67],
  ['25', 17.9, 0.1624, 32.37],
  ['26', 15.9, 0.1288, 40.81],
  ['27', 14.2, 0.1021, 51.47],
  ['28', 12.6, 0.081, 64.9],
  ['29', 11.3, 0.0642, 81.83],
  ['30', 10.0, 0.0509, 103.2],
];

const MM_PER_MIL = 0.0254;

describe.each(ASTM_B258_AND_CIRCULAR_31)('%s AWG', (gauge, diameterMil, areaMm2, ohmsPer1000Ft) => {
  const size = `${gauge} AWG`;

  // Exact: the standard prints to 0.1 mil, and our diameter rounded to that is what it prints.
  test(`diameter ${diameterMil} mil`, () => {
    const ourDiameterMm = Math.sqrt((4 / Math.PI) * callNumber('CONDUCTOR_AREA', size));
    expect((ourDiameterMm / MM_PER_MIL).toFixed(1)).toBe(diameterMil.toFixed(1));
  });

  // Half a unit of the fourth decimal, as written.
  test(`area ${areaMm2} mm2`, () => {
    expect(Math.abs(callNumber('CONDUCTOR_AREA', size) - areaMm2)).toBeLessThanOrEqual(0.00005001);
  });

  // 0.05 %: printed to four figures, the worst row is off by 0.037 %.
  test(`${ohmsPer1000Ft} ohm per 1000 ft`, () => {
    const ours = callNumber('CONDUCTOR_OHMS', size, 1000, 'ft');
    expect(Math.abs(ours / ohmsPer1000Ft - 1)).toBeLessThan(0.0005);
  });
});

test('the two diameters that define the gauge are exact', () => {
  const areaMm2 = (diameterMm: number) => (Math.PI / 4) * diameterMm ** 2;
  expect(callNumber('CONDUCTOR_AREA', '36 AWG')).toBeCloseTo(areaMm2(0.127), 14);
  expect(callNumber('CONDUCTOR_AREA', '4/0')).toBeCloseTo(areaMm2(11.684), 11);
});
