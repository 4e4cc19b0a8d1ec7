/** SPOOL_PLAN's fewest spools against the published fewest bins of bin-packing instances. */
import { describe, expect, test } from 'vitest';
import { planSpools } from '../../src/core/spools';
import { callRange } from '../functions/call';
import { CUTTING_STOCK_INSTANCES } from './cutting-stock-instances';

describe.each(CUTTING_STOCK_INSTANCES)('$name', ({ lengths, room, pieces, fewest }) => {
  test('is copied whole', () => {
    expect(lengths.length).toBe(pieces);
    expect(Math.max(...lengths)).toBeLessThanOrEqual(room);
  });

  test(`${fewest} spools, and no bound above them`, () => {
    const plan = planSpools(lengths, [room]);
    expect(plan.spools.length).toBe(fewest);
    expect(plan.leastSpools).toBeLessThanOrEqual(fewest);
  });

  test('the same in cells, lengths in a hundredth of the unit', () => {
    const names = lengths.map((_, place) => [`piece ${place}`]);
    const table = callRange(
      'SPOOL_PLAN',
      names,
      lengths.map((length) => [length / 100]),
      [[room / 100]],
    );
    expect(table.length).toBe(lengths.length);
    expect(Math.max(...table.map(([spool]) => spool as number))).toBe(fewest);
  });
});

test('the bound is the published optimum itself in all but one', () => {
  const open = CUTTING_STOCK_INSTANCES.filter(
    ({ lengths, room, fewest }) => planSpools(lengths, [room]).leastSpools < fewest,
  );
  expect(open.map(({ name }) => name)).toEqual(['N1W1B1R0']);
});
