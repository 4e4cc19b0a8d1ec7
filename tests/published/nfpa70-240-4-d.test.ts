/**
 * NFPA 70 (National Electrical Code), 240.4(D), greatest fuse or breaker of small conductors, after the corrections of
 * their ampacity: read in reproductions of the 2014 and 2017 editions. Copper-clad aluminium of 14 AWG, 10 A: 2023
 * edition, from memory.
 */
import { describe, expect, test } from 'vitest';
import { fuseLimitA } from '../../src/core/fuse-limit';
import { awg, mm2, parseSize, type ConductorSize } from '../../src/core/size';
import { MATERIALS, type Material } from '../../src/core/tables/materials';
import { CellError } from '../../src/functions/cell';
import { call } from '../functions/call';

const RULE = 'NFPA 70 240.4(D)';

const TABLE: readonly (readonly [Material, number, number])[] = [
  ['copper', 18, 7],
  ['copper', 16, 10],
  ['copper', 14, 15],
  ['copper', 12, 20],
  ['copper', 10, 30],
  ['tinned copper', 18, 7],
  ['tinned copper', 16, 10],
  ['tinned copper', 14, 15],
  ['tinned copper', 12, 20],
  ['tinned copper', 10, 30],
  ['aluminium', 12, 15],
  ['aluminium', 10, 25],
  ['copper-clad aluminium', 14, 10],
  ['copper-clad aluminium', 12, 15],
  ['copper-clad aluminium', 10, 25],
];

test.each(TABLE)('%s, %i AWG: %i A', (material, gauge, amps) => {
  expect(fuseLimitA(RULE, awg(gauge), material)).toBe(amps);
  expect(fuseLimitA('none', awg(gauge), material)).toBeUndefined();
});

test.each(MATERIALS)('%s of 8 AWG and thicker has no limit', (material) => {
  for (const gauge of [8, 6, 2, 0, -3]) {
    expect(fuseLimitA(RULE, awg(gauge), material)).toBeUndefined();
  }
});

test('a conductor thinner than all that the rule lists may have no fuse at all', () => {
  expect(fuseLimitA(RULE, awg(20), 'copper')).toBe(0);
  expect(fuseLimitA(RULE, awg(14), 'aluminium')).toBe(0);
  expect(fuseLimitA(RULE, mm2(0.75), 'copper')).toBe(0);
});

/** A size between two listed gauges, and an area: the thickest gauge that is not thicker. Ours. */
describe('sizes that the rule does not list', () => {
  test.each([
    ['1 mm2', 7], // 18 AWG is 0.823 mm2, 16 AWG 1.31
    ['1.5 mm2', 10], // 14 AWG is 2.08
    ['2.5 mm2', 15], // 12 AWG is 3.31
    ['4 mm2', 20], // 10 AWG is 5.26
    ['6 mm2', 30], // 8 AWG is 8.37
    ['10 mm2', undefined],
    ['9 AWG', 30],
    ['11 AWG', 20],
    ['13 AWG', 15],
  ])('%s in copper: %s A', (size, amps) => {
    expect(fuseLimitA(RULE, parseSize(size) as ConductorSize, 'copper')).toBe(amps);
  });
});

describe('the functions obey it', () => {
  // 40 degC around it and eight together: 12 AWG at 75 degC carries 25 x 0.88 x 0.7 = 15.4 A, less than its 20 A.
  const fuse = (amps: number, size: string, ...corrections: readonly (number | null)[]) => {
    const [ambientC = null, together = null] = corrections;
    return call('FUSE_FOR', amps, size, 75, ambientC, together, 'cable', 'copper', false, RULE);
  };

  test.each([
    ['18 AWG', 5, 5], // 7 A; the ratings go on at 7.5
    ['16 AWG', 8, 10],
    ['14 AWG', 15, 15],
    ['12 AWG', 20, 20],
    ['10 AWG', 30, 30],
    ['8 AWG', 45, 50],
  ])('%s: %d A get %d A', (size, amps, rating) => {
    expect(fuse(amps, size)).toBe(rating);
  });

  test.each([
    ['18 AWG', 5.1],
    ['16 AWG', 10.1],
    ['14 AWG', 15.1],
    ['12 AWG', 20.1],
    ['10 AWG', 30.1],
  ])('%s has none for %d A', (size, amps) => {
    expect(fuse(amps, size)).toBeInstanceOf(CellError);
  });

  test('after corrections, the ampacity limits where it is less', () => {
    expect(fuse(15, '12 AWG', 40, 8)).toBe(15);
    expect(fuse(16, '12 AWG', 40, 8)).toMatchObject({ code: '#N/A' });
  });

  test('a size is chosen that leaves room for a fuse under it, and the verdict says where none fits', () => {
    const run = [18, 1, 'm', 12, 0.1] as const;
    const rest = ['copper', 20, 0, 75, 30, 2, 'cable', true] as const;
    // 22.5 A of continuous load ask for 25 A: 12 AWG carries 25 A but may have 20 A.
    expect(call('MINGAUGE', ...run, ...rest, 'AWG')).toBe('12 AWG');
    expect(call('MINGAUGE', ...run, ...rest, 'AWG', RULE)).toBe('10 AWG');
    expect(call('MINGAUGE', ...run, ...rest, 'mm2', RULE)).toBe('6 mm2');
    expect(call('GAUGE_LIMIT', ...run, ...rest, 'AWG', RULE)).toBe('fuse');
    expect(call('RUN_VERDICT', ...run, '12 AWG', ...rest)).toBe('ok');
    expect(call('RUN_VERDICT', ...run, '12 AWG', ...rest, RULE)).toBe('no fuse fits');
    expect(call('RUN_VERDICT', ...run, '10 AWG', ...rest, RULE)).toBe('ok');
  });
});
