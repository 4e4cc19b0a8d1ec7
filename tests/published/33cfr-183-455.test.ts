/**
 * 33 CFR 183.455(c), greatest fuse in boats: read in a reproduction of the regulation. Under 50 V at most 150 % of the
 * conductor's current of table 5, from 50 V on at most that current.
 */
import { expect, test } from 'vitest';
import { greatestCraftFuseA } from '../../src/core/fuse';
import { callNumber } from '../functions/call';

/** Gauge, amps of table 5 at 105 degC, greatest fuse under 50 V and from 50 V on. */
test.each([
  ['16 AWG', 25, 37.5, 25],
  ['10 AWG', 60, 90, 60],
  ['2 AWG', 210, 315, 210],
])('%s carries %d A: %d A under 50 V, %d A from 50 V on', (size, carries, under50, from50) => {
  const ampacity = callNumber('AMPACITY', size, 105, undefined, undefined, 'craft');
  expect(ampacity).toBe(carries);
  expect(greatestCraftFuseA(ampacity, 12)).toBe(under50);
  expect(greatestCraftFuseA(ampacity, 49.9)).toBe(under50);
  expect(greatestCraftFuseA(ampacity, 50)).toBe(from50);
});
