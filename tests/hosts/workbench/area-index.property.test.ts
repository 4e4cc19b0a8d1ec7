/** The index of areas against the plainest one there is: a list of all areas, looked through one by one. */
import { RTree, type IRTreeItem, type IUnitRange } from '@univerjs/core';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { AreaIndex } from '../../../src/hosts/workbench/area-index';

const UNIT = 'book';
const SHEETS = ['a', 'b'] as const;

const range = fc
  .tuple(fc.nat(9), fc.nat(9), fc.nat(5), fc.nat(5))
  .map(([startRow, startColumn, more, wider]) => ({
    startRow,
    startColumn,
    endRow: startRow + more,
    endColumn: startColumn + wider,
  }));
const place = fc.record({
  unitId: fc.constant(UNIT),
  sheetId: fc.constantFrom(...SHEETS),
  range,
});
const item = fc.tuple(place, fc.nat(8)).map(([of, id]) => ({ ...of, id }));
const step = fc.oneof(
  { weight: 6, arbitrary: item.map((added) => ({ added })) },
  { weight: 2, arbitrary: item.map((removed) => ({ removed })) },
  { weight: 6, arbitrary: place.map((searched) => ({ searched })) },
  { weight: 1, arbitrary: fc.constantFrom(...SHEETS).map((emptied) => ({ emptied })) },
);

const meets = (a: IUnitRange, b: IUnitRange) =>
  a.sheetId === b.sheetId &&
  a.range.startRow <= b.range.endRow &&
  b.range.startRow <= a.range.endRow &&
  a.range.startColumn <= b.range.endColumn &&
  b.range.startColumn <= a.range.endColumn;

it('finds what a list looked through would find, whatever was added and removed before', () => {
  let found = 0;
  fc.assert(
    fc.property(fc.array(step, { minLength: 30, maxLength: 60 }), (steps) => {
      const index = new AreaIndex();
      let list: IRTreeItem[] = [];
      for (const taken of steps) {
        if ('added' in taken) {
          index.bulkInsert([taken.added]);
          list.push(taken.added);
        } else if ('removed' in taken) {
          index.bulkRemove([taken.removed]);
          const { sheetId, id } = taken.removed;
          list = list.filter((of) => of.sheetId !== sheetId || of.id !== id);
        } else if ('emptied' in taken) {
          index.removeById(UNIT, taken.emptied);
          list = list.filter(({ sheetId }) => sheetId !== taken.emptied);
        } else {
          const expected = new Set(
            list.filter((of) => meets(of, taken.searched)).map(({ id }) => id),
          );
          found += expected.size;
          expect(index.bulkSearch([taken.searched])).toEqual(expected);
        }
      }
    }),
    { numRuns: 300 },
  );
  expect(found).toBeGreaterThan(300);
});

it('finds whole rows and columns, as the index of the engine does', () => {
  const open = { startRow: Number.NaN, endRow: Number.NaN, startColumn: 3, endColumn: 3 };
  const cell = { startRow: 400, endRow: 400, startColumn: 3, endColumn: 3 };
  for (const index of [new AreaIndex(), new RTree(true)]) {
    index.insert({ unitId: UNIT, sheetId: 'a', range: open, id: 1 });
    expect([...index.bulkSearch([{ unitId: UNIT, sheetId: 'a', range: cell }])]).toEqual([1]);
  }
  const index = new AreaIndex();
  index.insert({ unitId: UNIT, sheetId: 'a', range: cell, id: 2 });
  index.insert({ unitId: UNIT, sheetId: 'a', range: { ...cell, endRow: 500 }, id: 3 });
  expect([...index.bulkSearch([{ unitId: UNIT, sheetId: 'a', range: open }])]).toEqual([2, 3]);
});
