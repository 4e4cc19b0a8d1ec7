/**
 * FAA Advisory Circular 43.13-1B (change 1, 2001), chapter 11, examples of voltage drop: tables 11-7 and 11-8 and
 * example No. 1, read.
 *
 * The circular counts one conductor (the airframe returns the current) and takes ohm per foot from a specification of
 * tin-plated aircraft wire, 12 to 22 % above bare copper, so its figures cannot judge our resistances. What they judge
 * is the drop made from a given resistance: it enters our functions as the joints of a run of no length.
 *
 * Misprints: table 11-7's third drop, 3.60 V, is 88 x 20 x 0.00202 = 3.555 V. Table 11-8's second check, 0.366 V, is
 * 19.5 x 20 x 0.00126 = 0.491 V; it is left out.
 */
import { describe, expect, test } from 'vitest';
import { call, callNumber } from '../functions/call';

function given(ohmsPerFt: number, lengthFt: number, size: string) {
  const milliohms = 1000 * ohmsPerFt * lengthFt;
  return [0, 'ft', size, undefined, undefined, milliohms] as const;
}

describe('table 11-7: drop of a run', () => {
  test.each([
    // Run ft, amps, size, ohm per ft, allowed V, published drop V, relative tolerance.
    [107, 20, '6 AWG', 0.00044, 1, 0.942, 0.001], // three figures
    [90, 20, '4 AWG', 0.00028, 0.5, 0.504, 0.001], // the circular lets it pass 0.8 % over its own limit
    [88, 20, '12 AWG', 0.00202, 4, 3.6, 0.015], // the misprint, 1.3 % high
    [100, 20, '14 AWG', 0.00306, 7, 6.12, 0.001],
  ] as const)(
    '%i ft, %i A, %s',
    (lengthFt, amps, size, ohmsPerFt, allowedV, publishedV, relative) => {
      const run = given(ohmsPerFt, lengthFt, size);
      const drop = callNumber('DCDROP', amps, ...run);
      expect(Math.abs(drop / publishedV - 1)).toBeLessThan(relative);
      expect(callNumber('LOAD_VOLTS', 28, amps, ...run)).toBeCloseTo(28 - drop, 12);
      expect(drop).toBeLessThan(allowedV * 1.01);
    },
  );
});

// Ours is longest for two conductors of bare copper; the circular's is for one of its own wire. The length that a
// given drop allows goes inversely with resistance, so the two are brought together by that ratio alone.
describe('table 11-8: longest run of No. 10, 20 A, 0.00126 ohm per ft', () => {
  test.each([
    [14, 0.5, 19.5],
    [28, 1, 39],
    [115, 4, 156],
    [200, 7, 273],
  ] as const)('%i V system, %d V allowed: %d ft', (volts, allowedV, publishedFt) => {
    const ours = callNumber('MAX_LENGTH', 20, 'ft', '10 AWG', volts, allowedV / volts);
    const loop = callNumber('RUN_OHMS', 1, 'ft', '10 AWG');
    // 2 %: read off a chart by its authors; all four come out 1.7 % short.
    expect(Math.abs((ours * loop) / 0.00126 / publishedFt - 1)).toBeLessThan(0.02);
  });

  test.each([
    [39, 0.98, 0.004], // two figures
    [156, 3.93, 0.001],
    [273, 6.88, 0.001],
  ] as const)('check: %d ft loses %d V', (lengthFt, publishedV, relative) => {
    const drop = callNumber('DCDROP', 20, ...given(0.00126, lengthFt, '10 AWG'));
    expect(Math.abs(drop / publishedV - 1)).toBeLessThan(relative);
  });
});

describe('example No. 1: 50 ft with the return, 28 V system, 1 V allowed, 20 A: between 8 and 10, so No. 8', () => {
  test("by the circular's own resistances", () => {
    const drop = (ohmsPerFt: number) => callNumber('DCDROP', 20, ...given(ohmsPerFt, 50, '8 AWG'));
    expect(drop(0.0007)).toBeLessThan(1); // No. 8
    expect(drop(0.00126)).toBeGreaterThan(1); // No. 10
  });

  // Length 25 ft one way: the example's 50 ft include the way back.
  test('by ours, in tinned copper as in the example', () => {
    const size = (material: string) => call('MINGAUGE', 20, 25, 'ft', 28, 1 / 28, material);
    expect(size('tinned copper')).toBe('8 AWG');
    expect(call('GAUGE_LIMIT', 20, 25, 'ft', 28, 1 / 28, 'tinned copper')).toBe('drop');
    // Bare solid copper would do it in No. 10 by a hair: 0.9989 V.
    expect(size('copper')).toBe('10 AWG');
  });
});
