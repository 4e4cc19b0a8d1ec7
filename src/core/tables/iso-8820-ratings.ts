/**
 * Rated currents of road-vehicle fuse-links, ISO 8820 series, amps, ascending. Blade types C, E and F of part 3 up to
 * 100 A (the ranges read in makers' lists; 35 A and 100 A from memory), bolt-in types of part 5 above (from memory).
 */
export const FUSE_RATINGS_SOURCE = 'ISO 8820 series, 35 A, 100 A and all above from memory';

export interface FuseRating {
  readonly ratingA: number;
  /** Which part of the series has it. */
  readonly kind: 'blade' | 'bolt-in';
}

const BLADE_A = [1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 50, 60, 70, 80, 100];
const BOLT_IN_ABOVE_100_A = [125, 150, 175, 200, 225, 250, 300, 350, 400, 450, 500];

export const FUSE_RATINGS: readonly FuseRating[] = [
  ...BLADE_A.map((ratingA): FuseRating => ({ ratingA, kind: 'blade' })),
  ...BOLT_IN_ABOVE_100_A.map((ratingA): FuseRating => ({ ratingA, kind: 'bolt-in' })),
];
