/**
 * What people who wire 12 V equipment tell each other, with its arithmetic: common practice, no standard. All are
 * copper at 20 degC by the classic table (12 AWG 1.588, 14 AWG 2.525, 10 AWG 0.9989 ohm per 1000 ft), both conductors.
 */
import { describe, expect, test } from 'vitest';
import { call, callNumber } from '../functions/call';

describe('a 20 A transmitter 6 ft from a 13 V battery', () => {
  test('12 AWG loses 0.38 V, 2.93 %', () => {
    expect(callNumber('DCDROP', 20, 6, 'ft', '12 AWG').toFixed(2)).toBe('0.38');
    expect((100 * callNumber('DCDROP_PCT', 20, 6, 'ft', '12 AWG', 13)).toFixed(2)).toBe('2.93');
    expect(callNumber('LOAD_VOLTS', 13, 20, 6, 'ft', '12 AWG').toFixed(2)).toBe('12.62');
  });

  test('14 AWG loses about 4.7 %', () => {
    expect((100 * callNumber('DCDROP_PCT', 20, 6, 'ft', '14 AWG', 13)).toFixed(1)).toBe('4.7');
  });

  test('so 12 AWG is the thinnest that keeps 3 %', () => {
    const drop = (size: string) => callNumber('DCDROP_PCT', 20, 6, 'ft', size, 13);
    expect(drop('12 AWG')).toBeLessThanOrEqual(0.03);
    expect(drop('13 AWG')).toBeGreaterThan(0.03);
  });
});

test('12 AWG, 14 ft, 12 A at 17 V: slightly over 3 %', () => {
  const share = callNumber('DCDROP_PCT', 12, 14, 'ft', '12 AWG', 17);
  expect(share).toBeGreaterThan(0.03);
  expect(share).toBeLessThan(0.032);
});

test('14 AWG, 20 ft, 17 V: within 3 % at 5 A, not at 6 A', () => {
  expect(callNumber('DCDROP_PCT', 5, 20, 'ft', '14 AWG', 17)).toBeLessThan(0.03);
  expect(callNumber('DCDROP_PCT', 6, 20, 'ft', '14 AWG', 17)).toBeGreaterThan(0.03);
  const most = callNumber('MAX_AMPS', 20, 'ft', '14 AWG', 17, 0.03);
  expect(most).toBeGreaterThan(5);
  expect(most).toBeLessThan(6);
});

describe('10 AWG, 12 ft, 40 A: an ampacity table allows it, the drop does not', () => {
  test.each([
    // The cells of 10 AWG that say 40 A: insulation rating, how installed.
    [90, 'cable'], // NFPA 70 table 310.16, 90 degC
    [60, 'air'], // NFPA 70 table 310.17, 60 degC
    [60, 'craft'], // 33 CFR 183.425 table 5, 60 degC
    [75, 'craft'], // the same, 75 degC
  ] as const)('allowed: %i degC insulation, "%s"', (insulationC, installed) => {
    expect(callNumber('AMPACITY', '10 AWG', insulationC, 30, 2, installed)).toBe(40);
  });

  test('at 13 V it loses 7.4 %, far over 3 %', () => {
    expect((100 * callNumber('DCDROP_PCT', 40, 12, 'ft', '10 AWG', 13)).toFixed(1)).toBe('7.4');
    expect(
      call(
        'RUN_VERDICT',
        40,
        12,
        'ft',
        13,
        0.03,
        '10 AWG',
        undefined,
        undefined,
        undefined,
        90,
        undefined,
        undefined,
        'cable',
        false,
      ),
    ).toBe('drop over target');
  });
});
