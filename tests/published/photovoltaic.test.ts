/** Solar panels against the code's rules and published worked examples. */
import { describe, expect, test } from 'vitest';
import { callNumber } from '../functions/call';

describe('current of a panel, NFPA 70 690.8', () => {
  /** `digits` are the decimals that the source prints. */
  test.each([
    ['J. Wiles, Sandia, photovoltaic power systems and the code: 3.25 A', 3.25, 5.08, 2],
    ["a charge-controller maker's manual: 9.2 A", 9.2, 14.4, 1],
  ])('%s', (_source, shortCircuitAmps, published, digits) => {
    expect(callNumber('PV_DESIGN_AMPS', shortCircuitAmps)).toBeCloseTo(published, digits);
  });

  /** J. Wiles, code calculations for an off-grid system: 5.46 A gives 8.52 A. It uses 156 %, not 156.25 %. */
  test('an example worked with 156 % agrees to 0.2 %', () => {
    expect(Math.abs(callNumber('PV_DESIGN_AMPS', 5.46) / 8.52 - 1)).toBeLessThan(0.002);
  });
});

describe('volts of a panel on the coldest morning, NFPA 70 690.7', () => {
  /** amozeshbargh.ir, article on string voltage: 49.5 V, -0.28 % per degC, -5 degC gives 53.66 V. */
  test('a published worked example', () => {
    expect(callNumber('PV_COLD_VOLTS', 49.5, -5, -0.28)).toBeCloseTo(53.66, 2);
  });

  /**
   * NFPA 70 table 690.7(A), crystalline silicon, coldest temperature of each band and its factor (from memory). The
   * table is for panels whose coefficient is not known: a usual one of -0.35 % per degC lies 0 to 2.5 % under it.
   */
  test.each([
    [20, 1.02],
    [15, 1.04],
    [10, 1.06],
    [5, 1.08],
    [0, 1.1],
    [-5, 1.12],
    [-10, 1.14],
    [-15, 1.16],
    [-20, 1.18],
    [-25, 1.2],
    [-30, 1.21],
    [-35, 1.23],
    [-40, 1.25],
  ])('the code table at %f degC', (coldestC, factor) => {
    const share = callNumber('PV_COLD_VOLTS', 1, coldestC, -0.35) / factor;
    expect(share).toBeLessThan(1.0001);
    expect(share).toBeGreaterThan(0.975);
  });

  test('ours: at 25 degC the rated volts', () => {
    expect(callNumber('PV_COLD_VOLTS', 22, 25, -0.29)).toBe(22);
  });
});
