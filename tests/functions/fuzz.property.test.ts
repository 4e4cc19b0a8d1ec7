/**
 * Every function of the catalogue, fed by its own description and by harm: thousands of calls of single cells and of
 * small ragged ranges each. Out come finite numbers, text, truth, or errors with a sentence; nothing is thrown.
 * `npm run fuzz` makes a million, with another seed each time.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/functions/catalogue';
import { samples } from '../samples';
import { checkProperty } from './arbitrary-cells';
import {
  cellCalls,
  checkCall,
  checkSame,
  emptyTally,
  rangeCalls,
  type Tally,
} from './hostile-calls';

const { count: CALLS } = samples({ all: 10_000, usual: 5000 });
/** A ceiling for a busy machine, not a claim about speed. */
const TIMEOUT_MS = 120_000;
/** One call in so many is made twice. */
const REPEATED = 20;

/** The calls must have reached the computation as well as the refusals, or they would have proved little. */
function expectBothKinds(tally: Tally) {
  expect(tally.answers).toBeGreaterThan(CALLS / 400);
  expect(tally.errors).toBeGreaterThan(CALLS / 400);
}

describe.each(CATALOGUE.map((entry) => [entry.id, entry] as const))('%s', (_id, entry) => {
  test.each([
    ['single cells', cellCalls(entry), 3],
    ['ranges', rangeCalls(entry), 4],
  ] as const)(
    `${CALLS} hostile %s`,
    (_what, calls, seed) => {
      const tally = emptyTally();
      let made = 0;
      checkProperty(
        fc.property(calls, (given) => {
          const result = checkCall(entry, given, tally);
          made += 1;
          if (made % REPEATED === 0) checkSame(entry, given, result);
        }),
        { numRuns: CALLS, seed },
      );
      expectBothKinds(tally);
    },
    TIMEOUT_MS,
  );
});
