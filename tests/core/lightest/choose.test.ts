/** The least that a tree's sizes can cost: against trying everything, and against a general-purpose solver. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chooseLeast } from '../../../src/core/lightest/choose';
import { priceVolts } from '../../../src/core/lightest/price-of-volts';
import type { SizingTree } from '../../../src/core/lightest/sizing-tree';
import { samples } from '../../samples';
import { loadSolver, solved } from './integer-program';
import { addedUp, leastByTrying, sizingTree } from './sizing-trees';

const { count: SMALL } = samples({ all: 2000, usual: 300 });

const SMALL_TREES = { least: 1, most: 6, sizes: 5 };
/** As large as the solver proves in hundredths of a second each; prices out of order are easier for it than metal. */
const LARGER_TREES = { least: 10, most: 18, sizes: 7 };
const LARGER_PRICED_TREES = { least: 12, most: 24, sizes: 8 };

function isLeast(tree: SizingTree, least: number) {
  const choice = chooseLeast(tree)!;
  const { cost, keeps } = addedUp(tree, choice.chosen);
  expect(keeps).toBe(true);
  expect(cost).toBeCloseTo(choice.cost, 9);
  expect(choice.cost).toBeGreaterThanOrEqual(least * (1 - 1e-6) - 1e-9);
  expect(choice.cost).toBeLessThanOrEqual(least * (1 + 1e-6) + 1e-9);
  expect(choice.atLeast).toBe(choice.cost);
}

describe('small trees, tried in every way', () => {
  test.each([false, true])('priced out of order: %s', (isPriced) => {
    fc.assert(
      fc.property(sizingTree(SMALL_TREES, isPriced), (tree) => {
        isLeast(tree, leastByTrying(tree));
      }),
      { numRuns: SMALL, seed: 21 },
    );
  });

  test('where no sizes keep the budgets there is no choice', () => {
    fc.assert(
      fc.property(sizingTree(SMALL_TREES), fc.nat(5), (tree, pick) => {
        const at = pick % tree.budgets.length;
        const budgets = tree.budgets.with(
          at,
          tree.budgets[at] === Infinity ? -1 : -tree.budgets[at]! - 1,
        );
        const none = { ...tree, budgets };
        expect(leastByTrying(none)).toBe(Infinity);
        expect(chooseLeast(none)).toBeUndefined();
      }),
      { numRuns: 50, seed: 22 },
    );
  });
});

test('a long chain that loses its budget to the last digit is served, whichever way its drops are added up', () => {
  // Beside 1 V halves of the last digit, which round to even: from the source on they come to more than back from the end.
  const digit = Number.EPSILON;
  const tiny = Array.from({ length: 200 }, (_, at) => [1, 1.5, 2.5][at % 3]! * digit);
  const drops = [1, ...tiny];
  const lost = drops.reduce((sum, volts) => sum + volts, 0);
  expect(drops.reduceRight((left, volts) => left - volts, lost)).toBeLessThan(-20 * digit);
  const chain: SizingTree = {
    feederAt: drops.map((_, at) => at - 1),
    budgets: drops.map((_, at) => (at === drops.length - 1 ? lost : Infinity)),
    options: drops.map((volts) => ({ drops: [volts], costs: [1] })),
  };
  expect(chooseLeast(chain)?.cost).toBe(drops.length);
});

describe('fronts that had to be thinned', () => {
  test.each([1, 2, 3])(
    '%d times keep the budgets, and say how far from the best they can be',
    (times) => {
      let proved = 0;
      let missed = 0;
      fc.assert(
        fc.property(sizingTree(SMALL_TREES), fc.integer({ min: 1, max: 3 }), (tree, most) => {
          const rounds = Array.from({ length: times }, (_, round) => most + round);
          const { chosen, cost, atLeast } = chooseLeast(tree, rounds)!;
          const least = leastByTrying(tree);
          expect(addedUp(tree, chosen).keeps).toBe(true);
          expect(cost).toBeGreaterThanOrEqual(least * (1 - 1e-9));
          expect(atLeast).toBeLessThanOrEqual(least * (1 + 1e-9));
          if (atLeast === cost) proved += 1;
          if (cost > least * (1 + 1e-9)) missed += 1;
        }),
        { numRuns: 2 * SMALL, seed: 25 },
      );
      // Both happen, or it would have proved little.
      expect(proved).toBeGreaterThan(SMALL / 10);
      expect(missed).toBeGreaterThan(0);
    },
  );

  test('are no worse with more room', () => {
    const tree = sizingTree({ least: 20, most: 60, sizes: 12 });
    fc.assert(
      fc.property(tree, (larger) => {
        const [few, more] = [chooseLeast(larger, [3])!, chooseLeast(larger, [3, 50])!];
        const exact = chooseLeast(larger)!;
        expect(more.cost).toBeLessThanOrEqual(few.cost);
        expect(exact.cost).toBeLessThanOrEqual(more.cost);
        expect(more.atLeast).toBeGreaterThanOrEqual(few.atLeast);
        expect(few.atLeast).toBeLessThanOrEqual(exact.cost * (1 + 1e-9));
      }),
      { numRuns: 40, seed: 26 },
    );
  });
});

test.each([
  ['a chain', { least: 300, most: 300, sizes: 15 }, 1],
  ['a wide tree', { least: 300, most: 300, sizes: 15 }, 12],
] as const)('three hundred runs in %s are proved the best', (_, shape, near) => {
  for (const tree of fc.sample(sizingTree(shape, false, near), { seed: 27, numRuns: 2 })) {
    const { chosen, cost, atLeast } = chooseLeast(tree)!;
    expect(addedUp(tree, chosen).keeps).toBe(true);
    expect(atLeast).toBe(cost);
  }
});

test('a hundred larger trees cost what an integer programming solver finds', async () => {
  const solver = await loadSolver();
  const trees = [
    ...fc.sample(sizingTree(LARGER_TREES), { seed: 23, numRuns: 50 }),
    ...fc.sample(sizingTree(LARGER_PRICED_TREES, true), { seed: 23, numRuns: 50 }),
  ];
  for (const tree of trees) isLeast(tree, solved(solver, tree, true));
}, 60_000);

test('with mixed sizes the prices of volts give the least that a linear programming solver finds', async () => {
  const solver = await loadSolver();
  for (const tree of fc.sample(sizingTree(LARGER_TREES), { seed: 24, numRuns: 25 })) {
    const least = solved(solver, tree, false);
    const { leastOfAll } = priceVolts(tree);
    expect(leastOfAll).toBeLessThanOrEqual(least * (1 + 1e-6));
    expect(leastOfAll).toBeGreaterThanOrEqual(least * (1 - 1e-6));
  }
}, 60_000);
