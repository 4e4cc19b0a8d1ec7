/** Filling spools and searching for packings: against trying everything, and within what may be spent. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { eachFilling, type Left } from '../../src/core/fillings';
import { searchPacking, type Spools } from '../../src/core/packing';
import type { Pieces } from '../../src/core/packing-bound';

const PLENTY = 1_000_000;

/** Lengths longest first, and how many of each. */
function piecesOf(longest: number, kinds: number, most: number): fc.Arbitrary<Pieces> {
  const length = fc.integer({ min: 1, max: longest });
  return fc
    .uniqueArray(fc.tuple(length, fc.integer({ min: 1, max: most })), {
      selector: ([each]) => each,
      minLength: 1,
      maxLength: kinds,
    })
    .map((drawn) => [...drawn].sort(([one], [other]) => other - one))
    .map((sorted) => ({
      lengths: sorted.map(([each]) => each),
      counts: sorted.map(([, count]) => count),
    }));
}

/** How many of each length are taken, in every way that goes into a space, with what it leaves. */
function waysInto({ lengths, counts }: Pieces, space: number) {
  const ways: { readonly numbers: readonly number[]; readonly slack: number }[] = [];
  const take = (numbers: readonly number[], left: number) => {
    if (left < 0) return;
    const at = numbers.length;
    if (at === lengths.length) ways.push({ numbers, slack: left });
    else for (let n = 0; n <= counts[at]!; n += 1) take([...numbers, n], left - n * lengths[at]!);
  };
  take([], space);
  return ways;
}

describe('eachFilling', () => {
  test('tells every filling that has room for no piece left out, once, the longest pieces first', () => {
    const cases = fc.tuple(piecesOf(12, 4, 4), fc.nat(30), fc.nat(12));
    fc.assert(
      fc.property(cases, ([pieces, space, mostSlack]) => {
        const { lengths, counts } = pieces;
        const left: Left = { lengths, counts: Int32Array.from(counts) };
        const told: number[][] = [];
        const whole = eachFilling(left, space, mostSlack, { steps: PLENTY }, (slack, taken) => {
          const numbers = lengths.map(() => 0);
          for (let at = 0; at < taken.length; at += 2) numbers[taken[at]!]! += taken[at + 1]!;
          told.push([...numbers, slack]);
          return mostSlack;
        });
        expect(whole).toBe(true);
        const wanted = waysInto(pieces, space)
          .filter(
            ({ numbers, slack }) =>
              slack <= mostSlack &&
              lengths.every((length, at) => numbers[at] === counts[at] || length > slack),
          )
          .map(({ numbers, slack }) => [...numbers, slack])
          .sort((one, other) => {
            const at = one.findIndex((number, index) => number !== other[index]);
            return at < 0 ? 0 : other[at]! - one[at]!;
          });
        expect(told).toEqual(wanted);
      }),
      { numRuns: 1000, seed: 41 },
    );
  });
});

/** Whether the pieces go into the spools, by trying each piece in each spool. */
function goesInto({ lengths, counts }: Pieces, { rooms, counts: spools }: Spools): boolean {
  const each = lengths.flatMap((length, at) => new Array<number>(counts[at]!).fill(length));
  const left = rooms.flatMap((room, at) => new Array<number>(spools[at]!).fill(room));
  const place = (piece: number): boolean => {
    if (piece === each.length) return true;
    const tried = new Set<number>();
    for (const [spool, room] of left.entries()) {
      if (room < each[piece]! || tried.has(room)) continue;
      tried.add(room);
      left[spool] = room - each[piece]!;
      if (place(piece + 1)) return true;
      left[spool] = room;
    }
    return false;
  };
  return place(0);
}

const spoolsToFill: fc.Arbitrary<Spools> = fc
  .tuple(fc.integer({ min: 10, max: 14 }), fc.integer({ min: 5, max: 9 }), fc.nat(3), fc.nat(3))
  .map(([long, short, longs, shorts]) => ({ rooms: [long, short], counts: [longs, shorts] }));

describe('searchPacking', () => {
  test('finds a packing where there is one; cut short it may not know, and is never wrong', () => {
    const seen = { found: 0, impossible: 0, unknown: 0 };
    const cases = fc.tuple(piecesOf(9, 4, 3), spoolsToFill, fc.nat(60));
    fc.assert(
      fc.property(cases, ([pieces, spools, few]) => {
        const isPossible = goesInto(pieces, spools);
        for (const steps of [PLENTY, few]) {
          const found = searchPacking(pieces, spools, { steps });
          if (found === 'unknown') expect(steps).toBe(few);
          else expect(found !== 'impossible').toBe(isPossible);
          seen[typeof found === 'string' ? found : 'found'] += 1;
        }
      }),
      { numRuns: 2000, seed: 42 },
    );
    // All three happen, or it would have proved little.
    for (const times of Object.values(seen)) expect(times).toBeGreaterThan(50);
  });

  test('a hundred thousand spools do not exhaust the stack', () => {
    const [pieces, spools] = [{ lengths: [6, 4] }, { rooms: [10] }];
    const count = 100_000;
    const search = () =>
      searchPacking(
        { ...pieces, counts: [count, count] },
        { ...spools, counts: [count] },
        { steps: 100 * count },
      );
    expect(search).not.toThrow();
  });
});
