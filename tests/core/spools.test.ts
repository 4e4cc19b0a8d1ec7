/** Cutting plans: every piece once, no spool overfull, no bound above the plan; and the best there is, by trying all. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planCuts } from '../../src/core/spool-plan';
import { planSpools, type SpoolPlan } from '../../src/core/spools';
import { refusalText } from './refusal-text';

/** A thousandth of a millimetre over kilometres. */
const ROUNDING_SHARE = 1e-7;

function wireOn(plan: SpoolPlan): number {
  return plan.spools.reduce((sum, { length }) => sum + length, 0);
}

/** What must hold of any plan, whatever the list. */
function expectSound(plan: SpoolPlan, lengths: readonly number[], offered: readonly number[]) {
  const cut = plan.spools.flatMap(({ pieces }) => pieces);
  expect([...cut].sort((a, b) => a - b)).toEqual([...lengths.keys()]);
  for (const { length, pieces, leftOver } of plan.spools) {
    expect(offered).toContain(length);
    expect(pieces.length).toBeGreaterThan(0);
    const used = pieces.reduce((sum, piece) => sum + lengths[piece]!, 0);
    expect(used).toBeLessThanOrEqual(length * (1 + ROUNDING_SHARE));
    expect(leftOver).toBeGreaterThanOrEqual(0);
    expect(Math.abs(used + leftOver - length)).toBeLessThanOrEqual(length * ROUNDING_SHARE);
  }
  expect(plan.leastSpools).toBeLessThanOrEqual(plan.spools.length);
  expect(plan.leastLength).toBeLessThanOrEqual(wireOn(plan) * (1 + ROUNDING_SHARE));
}

/** The best by trying every way to share out the pieces: fewest spools, and of those the least wire. */
function bestByTryingAll(lengths: readonly number[], offered: readonly number[]) {
  const longest = Math.max(...offered);
  const shortestFor = (load: number) =>
    Math.min(...offered.filter((length) => load <= length * (1 + 1e-9)));
  const loads: number[] = [];
  let best = { spools: Infinity, wire: Infinity };
  const place = (piece: number) => {
    if (loads.length > best.spools) return;
    if (piece === lengths.length) {
      const wire = loads.reduce((sum, load) => sum + shortestFor(load), 0);
      if (loads.length < best.spools || wire < best.wire) best = { spools: loads.length, wire };
      return;
    }
    const length = lengths[piece]!;
    for (let at = 0; at < loads.length; at += 1) {
      const before = loads[at]!;
      if (before + length > longest * (1 + 1e-9)) continue;
      loads[at] = before + length;
      place(piece + 1);
      loads[at] = before;
    }
    loads.push(length);
    place(piece + 1);
    loads.pop();
  };
  place(0);
  return best;
}

/** Lengths to a centimetre, from short tails to pieces that fill a spool of 10; spools of up to four lengths. */
function lists(most: number) {
  const hundredths = (min: number, max: number) =>
    fc.integer({ min, max }).map((whole) => whole / 100);
  return fc.record({
    lengths: fc.oneof(
      fc.array(hundredths(20, 1000), { minLength: 1, maxLength: most, size: 'max' }),
      // Whole parts of a spool, which fill it to the last grain.
      fc.array(fc.integer({ min: 1, max: 10 }), { minLength: 1, maxLength: most, size: 'max' }),
      // Two to four to a spool, where rules of thumb go wrong.
      fc.array(hundredths(240, 520), { minLength: 1, maxLength: most, size: 'max' }),
    ),
    offered: fc
      .array(hundredths(300, 999), { maxLength: 3 })
      .map((others) => [10, ...others] as readonly number[]),
  });
}

describe('planSpools', () => {
  test('of up to 8 pieces: as few spools as trying all finds, as little wire, and it knows', () => {
    fc.assert(
      fc.property(lists(8), ({ lengths, offered }) => {
        const plan = planSpools(lengths, offered);
        expectSound(plan, lengths, offered);
        const best = bestByTryingAll(lengths, offered);
        expect(plan.spools.length).toBe(best.spools);
        expect(wireOn(plan)).toBeCloseTo(best.wire, 6);
        expect(plan.leastSpools).toBe(best.spools);
        // Rounding is no doubt of what is proven.
        expect(plan.leastLength).toBe(wireOn(plan));
      }),
      { numRuns: 1500, seed: 21 },
    );
  });

  test('of up to 20 pieces: the fewest spools, proven', () => {
    fc.assert(
      fc.property(lists(20), ({ lengths, offered }) => {
        const plan = planSpools(lengths, offered);
        expectSound(plan, lengths, offered);
        expect(plan.leastSpools).toBe(plan.spools.length);
      }),
      { numRuns: 400, seed: 22 },
    );
  });

  test('of 5,000 pieces: sound, and at most a thousandth more spools than the bound', () => {
    let state = 5;
    const chance = () => (state = (Math.imul(state, 1664525) + 1013904223) >>> 0) / 2 ** 32;
    const lengths = Array.from({ length: 5000 }, () => Math.round(50 + 2000 * chance() ** 2) / 100);
    for (const offered of [[100], [25], [100, 50, 25], [25, 22]]) {
      const plan = planSpools(lengths, offered);
      expectSound(plan, lengths, offered);
      expect(plan.spools.length).toBeLessThanOrEqual(Math.ceil(1.001 * plan.leastSpools));
      expect(wireOn(plan)).toBeLessThanOrEqual(1.001 * plan.leastLength);
    }
  });

  test('a length that no decimal holds goes three times into its spool', () => {
    const third = 10 / 3;
    expect(planSpools(new Array<number>(6).fill(third), [10]).spools.length).toBe(2);
    expect(planSpools(new Array<number>(10).fill(0.1), [1]).spools).toMatchObject([
      { leftOver: 0 },
    ]);
  });

  test('a hundredth too long does not go in', () => {
    expect(planSpools([5, 5.01], [10]).spools.length).toBe(2);
  });

  test('the short spool holds what the long one need not', () => {
    expect(planSpools([60, 30, 9], [100, 10]).spools.map(({ length }) => length)).toEqual([100]);
    expect(planSpools([60, 30, 11], [100, 20]).spools.map(({ length }) => length)).toEqual([
      100, 20,
    ]);
  });

  test('a spool that is short beside the others is proven as well as they', () => {
    // 7 of 1009 is no whole number of grains.
    for (const offered of [
      [1009, 7],
      [7, 1009, 31],
    ]) {
      const plan = planSpools([6], offered);
      expect([wireOn(plan), plan.leastLength]).toEqual([7, 7]);
    }
  });

  test('pieces of no length need no spool of their own, and one where there is no other', () => {
    expect(planSpools([0, 10, 0], [10]).spools).toMatchObject([{ pieces: [1, 0, 2], leftOver: 0 }]);
    const alone = planSpools([0], [10, 5]);
    expect(alone.spools).toMatchObject([{ length: 5, leftOver: 5 }]);
    expect(alone.leastSpools).toBe(1);
    expect(planSpools([], [10]).spools).toEqual([]);
  });

  test('the same list, the same plan', () => {
    fc.assert(
      fc.property(lists(40), ({ lengths, offered }) => {
        expect(planSpools(lengths, offered)).toEqual(planSpools(lengths, offered));
      }),
      { numRuns: 30 },
    );
  });
});

describe('planCuts', () => {
  const refused = (...given: Parameters<typeof planCuts>) =>
    [...planCuts(...given).refusals].map(([place, refusal]) => [place, refusalText(refusal)]);

  test('a run longer than any spool says so, with its spare; the others are planned', () => {
    const runs = [
      { name: 'relay', length: 24.8 },
      { name: 'camera', length: 9.1 },
    ];
    expect(refused(runs, [10, 25], 0.3)).toEqual([
      [
        0,
        'none: "relay" wants 25.1 in one piece and the longest spool has 25; find a longer spool, or make it two runs with a joint between',
      ],
    ]);
    expect(planCuts(runs, [10, 25], 0.3).plan.spools).toMatchObject([{ length: 10, pieces: [1] }]);
    expect(refused(runs, [10, 25], 0.2)).toEqual([]);
  });

  test('a name twice: both, whatever the case of their letters', () => {
    const runs = [
      { name: 'relay', length: 1 },
      { name: ' Relay', length: 2 },
      { name: 'camera', length: 3 },
    ];
    const why =
      'names 2 runs of the list; give each piece a name of its own, such as "relay +" and "relay -"';
    expect(refused(runs, [10], 0)[0]).toEqual([0, `invalid: "relay" ${why}`]);
    expect(refused(runs, [10], 0)[1]![0]).toBe(1);
    expect(planCuts(runs, [10], 0).plan.spools).toMatchObject([{ pieces: [2] }]);
  });
});
