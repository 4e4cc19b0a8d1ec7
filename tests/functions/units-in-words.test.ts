import { expect, test } from 'vitest';
import { METRES_PER } from '../../src/core/length';
import { call } from './call';

test.each([
  ['feet', 'ft'],
  ['foot', 'ft'],
  ['inches', 'in'],
  ['Inch', 'in'],
  ['metres', 'm'],
  ['METER', 'm'],
] as const)('%s are %s', (word, unit) => {
  const inWords = call('DCDROP', 20, 6, word, '12 AWG');
  expect(inWords).toBe(call('DCDROP', 20, 6, unit, '12 AWG'));
  expect(inWords).toBeCloseTo(Number(call('DCDROP', 20, 6 * METRES_PER[unit], 'm', '12 AWG')), 12);
});
