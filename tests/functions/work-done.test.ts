/**
 * What a call of a thousand rows does, counted: nothing is done for every row that can be done once for all. Counts stand
 * for time, which no test can hold.
 */
import { afterEach, describe, expect, test, vi } from 'vitest';
import { CATALOGUE } from '../../src/functions/catalogue';
import type { Cell, Matrix } from '../../src/functions/cell';
import type { WorksheetFunction } from '../../src/functions/worksheet-function';
import { NFPA70_310_16 } from '../../src/core/tables/nfpa70-310-16';
import { benchCalls, withTextSizes } from '../bench/bare-loops';
import { readsLists } from './arbitrary-cells';
import { callRange } from './call';

const ROWS = 1000;
const CALLS = benchCalls(ROWS);
const IDS = CATALOGUE.map((entry) => [entry.id, entry] as const);

afterEach(() => {
  vi.restoreAllMocks();
});

/** How often each argument of a call was read. */
function readsOf(entry: WorksheetFunction, given: readonly Matrix[]): readonly number[] {
  const spies = entry.takes.map((parameter) => vi.spyOn(parameter, 'read'));
  entry.evaluate(given);
  return spies.map(({ mock }) => mock.calls.length);
}

function textsIn(matrix: Matrix): ReadonlySet<Cell> {
  return new Set(matrix.flat().filter((cell) => typeof cell === 'string'));
}

describe.each(IDS)('%s', (id, entry) => {
  const call = CALLS[id]!;

  test('a single value is read once, a column once a row, and each text of few only once', () => {
    for (const given of [call.given, withTextSizes(call)]) {
      const reads = readsOf(entry, given);
      for (const [at, matrix] of given.entries()) {
        if ('readWhole' in entry.takes[at]!) continue; // reads by the parameter that it was made of
        const texts = textsIn(matrix);
        const cells = matrix.flat().filter((cell) => cell !== null).length;
        const isOfFew = texts.size > 0 && texts.size < 100;
        expect(reads[at], entry.takes[at]!.name).toBe(isOfFew ? texts.size : cells);
      }
      expect(reads.slice(given.length).every((count) => count === 0)).toBe(true);
      vi.restoreAllMocks();
    }
  });
});

describe('texts of every argument', () => {
  const cellByCell = IDS.filter(([, { takes }]) => !readsLists(takes));

  test.each(cellByCell)(
    '%s: a few texts a column are read a few times, bad ones too',
    (id, entry) => {
      const given = CALLS[id]!.given.map((matrix, at): Matrix => {
        const cell = matrix[0]![0]!;
        const [one, other] = [String(cell), `${String(cell)} `];
        const bad = entry.takes[at]!.bounds === undefined ? 'no such word' : 'many';
        return Array.from({ length: ROWS }, (_, row) => [
          row % 100 === 99 ? bad : row % 2 === 0 ? one : other,
        ]);
      });
      for (const [at, count] of readsOf(entry, given).entries()) {
        // A length is read anew where what stands in its unit's place is another than in the row before.
        const anew = entry.takes[at]!.besideName === undefined ? 1 : 2 * (ROWS / 100) + 1;
        expect(count, entry.takes[at]!.name).toBeLessThanOrEqual(3 * anew);
      }
    },
  );
});

test.each(['AMPACITY', 'FUSE_FOR', 'RUN_VERDICT', 'MINGAUGE', 'GAUGE_LIMIT'])(
  '%s looks nothing up in the printed table once its rows are arrays',
  (id) => {
    const { given } = CALLS[id]!;
    callRange(id, ...given);
    const rows = NFPA70_310_16.copper;
    const looks = (['get', 'has', 'keys', 'entries', 'values', 'forEach'] as const).map((how) =>
      vi.spyOn(rows, how),
    );
    callRange(id, ...given);
    expect(looks.flatMap(({ mock }) => mock.calls)).toEqual([]);
  },
);

test('a steady temperature takes a dozen heat balances at most', () => {
  // One cube root a balance.
  const roots = vi.spyOn(Math, 'cbrt');
  callRange('CONDUCTOR_TEMP', ...CALLS['CONDUCTOR_TEMP']!.given);
  expect(roots.mock.calls.length).toBeGreaterThan(ROWS);
  expect(roots.mock.calls.length).toBeLessThanOrEqual(12 * ROWS);
});
