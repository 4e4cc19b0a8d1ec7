import { describe, expect, it } from 'vitest';
import { habitOf, readNumeral } from '../../src/lists/numerals';

const NONE = habitOf([]);
const COMMA = habitOf(['2,5']);
const POINT = habitOf(['2.5']);
const BOTH = habitOf(['2.5', '2,5']);

describe('numbers as people write them', () => {
  it.each([
    ['12', 12],
    ['-3', -3],
    ['+4', 4],
    ['2.5', 2.5],
    ['2,5', 2.5],
    ['.5', 0.5],
    [',5', 0.5],
    ['0,125', 0.125],
    ['0.125', 0.125],
    ['12,3456', 12.3456],
    ['1,250.5', 1250.5],
    ['1.250,5', 1250.5],
    ['1,250,000', 1250000],
    ['1.250.000,75', 1250000.75],
    ['1 250', 1250],
    ["1'250,5", 1250.5],
    ['1\u00A0250', 1250],
    ['2e3', 2000],
    ['2,5e-3', 0.0025],
  ])('reads %s as %d, whatever else the list holds', (text, number) => {
    for (const habit of [NONE, COMMA, POINT, BOTH]) expect(readNumeral(text, habit)).toBe(number);
  });

  it.each([
    '',
    'abc',
    '1.2.3',
    '1,2,3',
    '12,34.5',
    '1,2500,3.1',
    '1..2',
    '--1',
    '1e',
    '1 25',
    '5 6',
  ])('sees no number in "%s"', (text) => {
    for (const habit of [NONE, COMMA, POINT, BOTH])
      expect(readNumeral(text, habit)).toBeUndefined();
  });

  it('takes one mark before three digits by what the list does elsewhere, and else does not guess', () => {
    expect(readNumeral('1,250', COMMA)).toBe(1.25);
    expect(readNumeral('1.250', POINT)).toBe(1.25);
    expect(readNumeral('1.250', NONE)).toBe(1.25);
    for (const [text, habit] of [
      ['1,250', NONE],
      ['1,250', POINT],
      ['1,250', BOTH],
      ['1.250', COMMA],
      ['1.250', BOTH],
    ] as const) {
      expect(readNumeral(text, habit)).toEqual({
        doubt: `"${text}" may be 1.25 or 1250; write it without a mark for thousands`,
      });
    }
  });

  it('reads a cell full of digits or marks in one pass', () => {
    for (const text of ['1'.repeat(200_000), '1,'.repeat(100_000), ' '.repeat(200_000) + 'x']) {
      expect(() => readNumeral(text, NONE)).not.toThrow();
    }
  });
});
