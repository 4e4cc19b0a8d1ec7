/** How many random samples a property is tried on: as many as `npm run thorough` takes, or enough for every day. */
const IS_THOROUGH = process.env['LOOM_THOROUGH'] === '1';

export interface Samples {
  readonly count: number;
  /** Of a number of things that all of the samples have, those that so many of them must have at least. */
  readonly ofAll: (things: number) => number;
}

/**
 * Samples of a fixed seed, the same ones each time. `usual` is what still catches what was broken on purpose in the code
 * that the property is about.
 */
export function samples({ all, usual }: { readonly all: number; readonly usual: number }): Samples {
  const count = IS_THOROUGH ? all : usual;
  return { count, ofAll: (things) => Math.floor((things * count) / all) };
}
