/**
 * NFPA 70, 310.15(C)(1) (310.15(B)(3)(a) in 2011 to 2017): share of the ampacity that remains where more than three
 * current-carrying conductors lie together. Read in a reproduction of the 2014 edition.
 */
export const BUNDLING_310_15: readonly {
  readonly conductorsFrom: number;
  readonly share: number;
}[] = [
  { conductorsFrom: 1, share: 1 },
  { conductorsFrom: 4, share: 0.8 },
  { conductorsFrom: 7, share: 0.7 },
  { conductorsFrom: 10, share: 0.5 },
  { conductorsFrom: 21, share: 0.45 },
  { conductorsFrom: 31, share: 0.4 },
  { conductorsFrom: 41, share: 0.35 },
];
