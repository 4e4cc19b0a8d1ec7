/** The benchmark measures every function, against a loop that gives the same answers. */
import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/functions/catalogue';
import { CellError } from '../../src/functions/cell';
import { benchCalls, withTextSizes } from './bare-loops';

const ROWS = 300;
const CALLS = benchCalls(ROWS);

/** Those whose loop tells less than the function does: pieces without their runs, and what is lost without the words. */
const TELLS_LESS: ReadonlySet<string> = new Set(['SPOOL_PLAN', 'SHOW_WORKING']);

test('every function of the catalogue has its bare loop, and no loop is left of one that went', () => {
  expect(Object.keys(CALLS).sort()).toEqual(CATALOGUE.map(({ id }) => id).sort());
});

describe.each(CATALOGUE.map((entry) => [entry.id, entry] as const))('%s', (id, entry) => {
  test('answers as its bare loop does, without an error, sizes as numbers or as text', () => {
    const call = CALLS[id]!;
    const bare = call.bare();
    for (const given of [call.given, withTextSizes(call)]) {
      const answers = entry.evaluate(given);
      expect(answers.flat().filter((cell) => cell instanceof CellError)).toEqual([]);
      expect(answers).toHaveLength(bare.length);
      if (TELLS_LESS.has(id)) continue;
      for (const [row, [cell]] of answers.entries()) {
        const [expected] = bare[row]!;
        if (typeof expected === 'number') expect(cell).toBeCloseTo(expected, 9);
        else expect(cell).toBe(expected);
      }
    }
  });
});
