/** How many random samples a property is tried on: as many as `npm run thorough` takes, or enough for every day. */
const IS_THOROUGH = process.env['LOOM_THOROUGH'] === '1';

export interface Samples {
  readonly count: number;
  /** Of a number of things that all of the samples have, what these must have at least: a fifth less than their share. */
  readonly ofAll: (things: number) => number;
}

/**
 * Samples of a fixed seed, the same ones each time. `usual` is what still catches what was broken on purpose in the code
 * that the property is about.
 */
export function samples({ all, usual }: { readonly all: number; readonly usual: number }): Samples {
  const count = IS_THOROUGH ? all : usual;
  const least = count === all ? 1 : (0.8 * count) / all;
  return { count, ofAll: (things) => Math.floor(things * least) };
}
