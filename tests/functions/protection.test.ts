/** Wiring of the protection functions: defaults, error kinds, blanks. Their numbers are tested in the core. */
import { describe, expect, test } from 'vitest';
import { CellError } from '../../src/functions/cell';
import { call, callNumber, callRange } from './call';

const errorOf = (
  id: string,
  ...given: Parameters<typeof call> extends [string, ...infer Rest] ? Rest : never
) => {
  const result = call(id, ...given);
  return result instanceof CellError ? `${result.code} ${result.sentence}` : result;
};

describe('defaults', () => {
  test('WITHSTAND_SECONDS: 70 to 160 degC, copper', () => {
    expect(callNumber('WITHSTAND_SECONDS', '2.5 mm2', 500)).toBe(
      callNumber('WITHSTAND_SECONDS', '2.5 mm2', 500, 70, 160, 'copper'),
    );
  });
  test('FUSE_GUARDS: 70 to 160 degC, copper', () => {
    expect(call('FUSE_GUARDS', 15, '14 AWG', 100)).toBe(true);
    expect(call('FUSE_GUARDS', 15, '14 AWG', 100, 70, 160, 'copper')).toBe(true);
    expect(call('FUSE_GUARDS', 15, '14 AWG', 100, 159.9, 160, 'copper')).toBe(false);
  });
  test('CONDUCTOR_TEMP: 30 degC around it, the usual wall, copper', () => {
    expect(callNumber('CONDUCTOR_TEMP', 40, '10 AWG')).toBe(
      callNumber('CONDUCTOR_TEMP', 40, '10 AWG', 30, 0.508, 'copper'),
    );
    expect(callNumber('CONDUCTOR_TEMP', 0, '10 AWG', 21.5)).toBe(21.5);
  });
});

describe('errors say which argument and how to fix it', () => {
  test.each([
    [['FAULT_AMPS', 0, 10, 0.1], /^#VALUE! volts: /],
    [['FAULT_AMPS', 12, -1, 0.1], /^#VALUE! source_milliohms: /],
    [['FAULT_AMPS', 12, 0, 0], /^#N\/A .*milliohms/],
    [['WITHSTAND_SECONDS', '12 AWG', 100, 160, 70], /^#VALUE! limit_c: /],
    [['WITHSTAND_SECONDS', '12 AWG', 100, 70, 2000], /^#VALUE! limit_c: /],
    [['WITHSTAND_SECONDS', '12 AWG', 0], /^#N\/A /],
    [['FUSE_SECONDS', 0, 100], /^#VALUE! rating: /],
    [['FUSE_SECONDS', 15, 20], /^#N\/A 20 A .*20\.25 A up/],
    [['FUSE_SECONDS', 12, 100], /^#N\/A .*blade ratings/],
    [['FUSE_GUARDS', 150, '2 AWG', 900], /^#N\/A .*150 A/],
    [['FUSE_GUARDS', 15, 2.5, 900], /^#VALUE! size: .*mm2/],
    [['CONDUCTOR_TEMP', 500, '12 AWG'], /^#N\/A .*300 degC/],
    [['CONDUCTOR_TEMP', 10, '12 AWG', 30, -1], /^#VALUE! insulation_mm: /],
    [['CONDUCTOR_TEMP', 10, '12 AWG', 400], /^#VALUE! ambient_c: /],
  ] as const)('%j', ([id, ...given], expected) => {
    expect(errorOf(id, ...given)).toMatch(expected);
  });
});

test('blank rows stay quiet and an error in one row is its own', () => {
  expect(callRange('FUSE_SECONDS', 15, [[30], [null], ['']])).toEqual([[5], [''], ['']]);
  const [[first], [second], [third]] = callRange('FUSE_GUARDS', 15, '14 AWG', [
    [100],
    ['x'],
    [10],
  ]) as [[unknown], [unknown], [unknown]];
  expect(first).toBe(true);
  expect(second).toBeInstanceOf(CellError);
  expect(third).toBe(false);
});
