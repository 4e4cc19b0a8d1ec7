/** How many spools are needed at least, where it can be seen without packing them. */
import { describe, expect, test } from 'vitest';
import { leastSpoolsFor } from '../../src/core/packing-bound';

const least = (room: number, pieces: Readonly<Record<number, number>>) => {
  const lengths = Object.keys(pieces)
    .map(Number)
    .sort((a, b) => b - a);
  return leastSpoolsFor({ lengths, counts: lengths.map((length) => pieces[length]!) }, room);
};

describe('leastSpoolsFor', () => {
  test('what is over half a spool shares with nothing that is longer than what is left', () => {
    // Each 6 has room for 4 alone; of the 5 two share one. Their sum of 39 would go into 4.
    expect(least(10, { 6: 4, 5: 3 })).toBe(6);
    // Beside each 7 a 3 fits, and two 4 share one: 2 and 2, though 14 and 16 are 3 spools of 10.
    expect(least(10, { 7: 2, 4: 4 })).toBe(4);
  });

  test('small pieces fill what the long ones leave', () => {
    expect(least(10, { 6: 4, 4: 4 })).toBe(4);
    // One 4 more than there are gaps.
    expect(least(10, { 6: 4, 4: 5 })).toBe(5);
    expect(least(10, { 7: 3, 3: 3 })).toBe(3);
    expect(least(10, { 7: 3, 3: 4 })).toBe(4);
  });

  test('of pieces just over a third of a spool two share it', () => {
    // 7 x 34 = 238 would go into 3.
    expect(least(100, { 34: 7 })).toBe(4);
    // Of those just over a quarter three: 7 x 26 = 182 would go into 2.
    expect(least(100, { 26: 7 })).toBe(3);
  });

  test('pieces that go into a spool exactly three times, or fill it, count as what they are', () => {
    // A spool with a 5 in it holds two pieces, one of 4 alone three: 6 / 2 + 4 / 3. Their sum of 46 would go into 4.
    expect(least(12, { 5: 6, 4: 4 })).toBe(5);
    // Five are full, and of the others two share one. Their sum of 55 would go into 7.
    expect(least(8, { 8: 5, 3: 5 })).toBe(8);
  });

  test('whole spools and nothing at all', () => {
    expect(least(10, { 10: 3 })).toBe(3);
    expect(least(10, { 5: 4 })).toBe(2);
    expect(least(10, { 1: 20 })).toBe(2);
    expect(least(10, {})).toBe(0);
  });
});
