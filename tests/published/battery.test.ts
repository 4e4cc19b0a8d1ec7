/** Batteries against published figures: Peukert's law, and resting volts by charge. */
import { describe, expect, test } from 'vitest';
import { RESTING_VOLTS } from '../../src/core/tables/resting-volts';
import { callNumber } from '../functions/call';

describe("Peukert's law", () => {
  /**
   * electrotechnik.net, article on Peukert's law: t = C / I^k, 100 Ah, k = 1.2, 5 A gives 14.5 h. Its C is the capacity at
   * 1 A, so in the rated form the rating is C hours long.
   */
  test('plain form, as published to a tenth of an hour', () => {
    const [ampHours, amps, peukert] = [100, 5, 1.2];
    const hours = callNumber('BATTERY_HOURS', ampHours, amps, 1, peukert, ampHours);
    expect(hours).toBeCloseTo(14.5, 1);
    expect(hours).toBeCloseTo(ampHours / amps ** peukert, 10);
  });

  /** The rated form is published with the article; its numbers for 100 Ah at 20 h were worked by hand. */
  test.each([
    [5, 20],
    [10, 8.706],
  ])('rated form, %f A: %f h', (amps, hours) => {
    expect(callNumber('BATTERY_HOURS', 100, amps, 1, 1.2)).toBeCloseTo(hours, 3);
  });

  test('ours: the usual 80 % of the capacity, the same at any current', () => {
    expect(callNumber('BATTERY_HOURS', 100, 4)).toBeCloseTo(20, 12);
  });
});

describe('lead-acid at rest', () => {
  /** Three published sets of resting volts of 12 V batteries; they lie within 0.1 V of one another from 50 % up. */
  const SETS: Readonly<Record<string, readonly (readonly [number, number])[]>> = {
    'a handbook': [
      [1, 12.66],
      [0.75, 12.45],
      [0.5, 12.3],
      [0.25, 12.15],
    ],
    'a data table': [
      [1, 12.6],
      [0.75, 12.4],
      [0.5, 12.2],
      [0.25, 12.0],
    ],
    "a maker's sheet, middle of its bands": [
      [1, 12.72],
      [0.75, 12.54],
    ],
  };
  test.each(Object.keys(SETS))('%s', (title) => {
    for (const [charge, volts] of SETS[title]!) {
      expect(Math.abs(callNumber('BATTERY_VOLTS', 'lead-acid', charge) - volts)).toBeLessThan(0.1);
    }
  });

  /** Rule of thumb (from memory): a cell's volts are its specific gravity plus 0.84 to 0.845; 1.280 is full (TM 5-1185). */
  test('full, by the specific gravity of the acid', () => {
    const byGravity = 6 * (1.28 + 0.8425);
    expect(Math.abs(callNumber('BATTERY_VOLTS', 'lead-acid', 1) - byGravity)).toBeLessThan(0.1);
  });
});

describe('lithium-ion at rest', () => {
  /**
   * A second nickel-rich cell of the same study (Sunil, Pattipati, Balasingam, 2025; a thirty-second of its capacity an
   * hour): what the table says of one cell holds for another.
   */
  test('another cell lies within 0.03 V from a tenth of the charge up', () => {
    const other = [
      [0.1508, 3.4218],
      [0.2915, 3.5737],
      [0.4573, 3.7017],
      [0.8342, 4.0637],
      [0.9497, 4.1009],
      [1, 4.1932],
    ] as const;
    for (const [charge, volts] of other) {
      const ours = callNumber('BATTERY_VOLTS', 'Li-ion', charge, 1);
      expect(Math.abs(ours - volts)).toBeLessThan(0.03);
    }
  });
});

describe('lithium iron phosphate at rest', () => {
  /** Four cells: 12.8 V nominal, cut-off 10.0 V, charged at 14.4 V (makers' data, read). */
  test('the plateau of four cells lies between nominal and charging volts', () => {
    for (const charge of [0.2, 0.5, 0.8, 1]) {
      const volts = callNumber('BATTERY_VOLTS', 'LiFePO4', charge);
      expect(volts).toBeGreaterThan(12.8);
      expect(volts).toBeLessThan(14.4);
    }
    expect(callNumber('BATTERY_VOLTS', 'LiFePO4', 0)).toBeLessThan(10);
  });
});

describe.each(Object.entries(RESTING_VOLTS))('the table of %s', (chemistry, { points, cells }) => {
  test('goes from empty to full, never sinks, and is given back at its points', () => {
    expect(points[0]![0]).toBe(0);
    expect(points.at(-1)![0]).toBe(1);
    for (const [index, [charge, volts]] of points.entries()) {
      expect(callNumber('BATTERY_VOLTS', chemistry, charge, cells)).toBeCloseTo(volts, 12);
      const before = points[index - 1];
      if (before === undefined) continue;
      expect(charge).toBeGreaterThan(before[0]);
      expect(volts).toBeGreaterThanOrEqual(before[1]);
      const halfway = callNumber('BATTERY_VOLTS', chemistry, (charge + before[0]) / 2, cells);
      expect(halfway).toBeCloseTo((volts + before[1]) / 2, 12);
    }
  });
});
