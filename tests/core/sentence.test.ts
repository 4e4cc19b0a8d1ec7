import { describe, expect, test } from 'vitest';
import { amount, shortened } from '../../src/core/sentence';

describe('text that came, in a sentence', () => {
  test('short text stands as it is', () => {
    expect(shortened('2.5 mm')).toBe('2.5 mm');
    expect(shortened('x'.repeat(40))).toBe('x'.repeat(40));
  });

  test('a cell full of text is cut, and told to be cut', () => {
    expect(shortened('x'.repeat(32_767))).toBe(`${'x'.repeat(40)}…`);
  });

  test('no half of a character is left at the cut', () => {
    expect(shortened(`${'x'.repeat(39)}💡💡`)).toBe(`${'x'.repeat(39)}…`);
  });
});

describe('a computed amount, in a sentence', () => {
  test.each([
    [0.12345, '0.123 V'],
    [1234.5, '1230 V'],
    [21.000000000000004, '21 V'],
    [0, '0 V'],
    [Number.MAX_VALUE, 'countless V'], // to three figures it is 1.80e308, which no number holds
    [Number.POSITIVE_INFINITY, 'countless V'],
    [Number.NaN, 'countless V'],
  ])('%d', (value, told) => {
    expect(amount(value, 'V')).toBe(told);
  });
});
