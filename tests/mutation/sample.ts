/** Some of many, the same for the same seed: a longer sample begins with the shorter one. */
export function sampleOf<Item>(all: readonly Item[], size: number, seed: number): Item[] {
  let state = seed >>> 0;
  // mulberry32
  const random = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const left = [...all];
  const taken: Item[] = [];
  while (taken.length < size && left.length > 0) {
    const at = Math.floor(random() * left.length);
    taken.push(left[at]!);
    left[at] = left.at(-1)!;
    left.pop();
  }
  return taken;
}

/** 1.96 standard deviations hold 95 % of a normal distribution. */
const Z = 1.96;

/**
 * Between which shares of all the true one lies, 95 times of a hundred, where so many of so many tried were found: Wilson's
 * score interval, which stays inside 0 and 1 and is honest for small samples. A whole area that was tried has no doubt.
 */
export function interval(found: number, tried: number, all: number): readonly [number, number] {
  if (tried === 0) return [0, 1];
  const share = found / tried;
  if (tried >= all) return [share, share];
  const square = (Z * Z) / tried;
  const middle = (share + square / 2) / (1 + square);
  const half = (Z * Math.sqrt((share * (1 - share)) / tried + square / (4 * tried))) / (1 + square);
  return [Math.max(0, middle - half), Math.min(1, middle + half)];
}
