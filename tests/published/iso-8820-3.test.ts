/**
 * ISO 8820-3 (road vehicles, fuse-links with tabs: blade fuses), the band of opening times that makers print beside each
 * multiple of the rating: shortest, longest. From memory, the standard not opened; the shortest times vary by rating and
 * maker.
 */
import { describe, expect, test } from 'vitest';
import { assumedFuseType } from '../../src/core/tables/iso-8820-types';

type Band = readonly (readonly [timesRating: number, shortestS: number, longestS: number])[];

const TYPES_C_F: Band = [
  [1.35, 0.75, 600],
  [1.6, 0.25, 50],
  [2, 0.15, 5],
  [3.5, 0.04, 0.5],
  [6, 0.02, 0.1],
];
/** It prints nothing at 1.6 times the rating. */
const TYPE_E: Band = [
  [1.35, 60, 1800],
  [2, 2, 60],
  [3.5, 0.2, 7],
  [6, 0.04, 1],
];

describe.each([
  ['types C and F', 1, TYPES_C_F],
  ['types C and F', 35, TYPES_C_F],
  ['type E', 50, TYPE_E],
  ['type E', 100, TYPE_E],
] as const)('%s, as %i A', (_, ratingA, band) => {
  const { limits, shortest } = assumedFuseType(ratingA);

  test('opens within the printed band', () => {
    expect(
      shortest!.map(({ timesRating, seconds }, at) => [timesRating, seconds, limits![at]!.seconds]),
    ).toEqual(band);
    expect(limits!.map(({ timesRating }) => timesRating)).toEqual(band.map(([times]) => times));
  });
});

test('of 40 A the band is that of type C, but for the slower end at 6 times', () => {
  expect(assumedFuseType(40).shortest).toEqual(assumedFuseType(35).shortest);
  expect(assumedFuseType(40).limits!.at(-1)).toEqual({ timesRating: 6, seconds: 0.15 });
});
