/** A run in one line, as a person says it. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isSameName, readRunLine } from '../../src/lists/run-line';

describe('a run in one line', () => {
  test.each([
    [
      'Van HF, 22 A, 10 ft, from Van main, at least 11.7 V',
      { run: 'Van HF', peak: '22 A', length: '10 ft', fedFrom: 'Van main', leastVolts: 11.7 },
    ],
    ['10 ft, 22 A, Van HF', { run: 'Van HF', peak: '22 A', length: '10 ft' }],
    ['Fan,5 A,3 ft', { run: 'Fan', peak: '5 A', length: '3 ft' }],
    ['Lamp; 2,5 A; 3,2 m', { run: 'Lamp', peak: '2,5 A', length: '3,2 m' }],
    [
      'Horn, 60 W, 8\' 6", Fog horn',
      { run: 'Horn', peak: '60 W', length: '8\' 6"', load: 'Fog horn' },
    ],
    [
      'Pump, 800 mA, 2 m, surge 4 A, no fuse, 6 mm2, 2 %, chassis, 24 V, at most 30 V',
      {
        run: 'Pump',
        peak: '800 mA',
        length: '2 m',
        surge: 4,
        fused: 'no',
        ownSize: '6 mm2',
        target: 0.02,
        returns: 'chassis',
        volts: 24,
        mostVolts: 30,
      },
    ],
    [
      'Set, 20 A, 5 ft, 1/0 AWG, target 3 %',
      { run: 'Set', peak: '20 A', length: '5 ft', ownSize: '1/0 AWG', target: 0.03 },
    ],
  ])('%s', (line, run) => {
    const read = readRunLine(line);
    expect(read.run).toEqual(run);
    expect(read.unclear).toEqual([]);
    expect(read.understood).toHaveLength(Object.keys(run).length);
  });

  test.each([
    ['Lamp, 22, 3 ft', ['22']],
    ['Lamp, 2 A, 3 A', ['3 A']],
    ['Lamp, Deck, blue, 2 A', ['blue']],
    ['Lamp, at least many, 2 A, Deck', ['at least many']],
  ])('%s names what it does not take', (line, unclear) => {
    const { unclear: found, run } = readRunLine(line);
    if (line.includes('at least')) expect(run.leastVolts).toBeUndefined();
    else expect(found).toEqual(unclear);
  });

  test('means the same in any order', () => {
    const parts = ['Lamp', '5 A', '10 ft', 'from Trunk', 'at least 11 V', '10 AWG', 'no fuse'];
    fc.assert(
      fc.property(fc.shuffledSubarray(parts, { minLength: parts.length }), (order) => {
        expect(readRunLine(order.join(', ')).run).toEqual(readRunLine(parts.join(', ')).run);
      }),
    );
  });

  test('takes or names every part, whatever is written', () => {
    fc.assert(
      fc.property(fc.string(), (line) => {
        const { understood, unclear, run } = readRunLine(line);
        expect(Object.keys(run)).toHaveLength(understood.length);
        for (const part of unclear) expect(line).toContain(part);
      }),
    );
  });
});

test('names are the same without case and outer blanks', () => {
  expect(isSameName(' Van Main', 'van main ')).toBe(true);
  expect(isSameName('Van main', 'Van main 2')).toBe(false);
});
