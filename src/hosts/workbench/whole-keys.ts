/** The grid's caches by whole texts: a fault of its formula engine, put right before any formula is read. */
import { FORMULA_REF_TO_ARRAY_CACHE } from '@univerjs/engine-formula';

/** What all of the engine's caches have in common, with the part that it keeps to itself. */
interface Cache {
  _hash(text: string): string;
}

/**
 * Makes the engine (0.25.1) keep what it read of a formula, and texts, under the whole text. It keeps those of more than 64
 * characters under a number of 32 bits made of the text: two formulas that share the number are taken for one, and the
 * second answers with the first.
 */
export function keepByWholeText(): void {
  const caches = Object.getPrototypeOf(FORMULA_REF_TO_ARRAY_CACHE) as Cache;
  caches._hash = (text) => text;
}
