/** A workbook that is given other values comes to what a new one with these values comes to, every cell of it. */
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { CellError, type Cell } from '../../../src/functions/cell';
import { workbookOf } from '../../../src/sheets/calculate/calculate';
import { Workbook } from '../../../src/sheets/calculate/workbook';
import { scheduleSheets } from '../../../src/sheets/new-schedule';
import { area, cellAddress } from '../../../src/sheets/plan/area';
import type { CellContent, SheetPlan } from '../../../src/sheets/plan/plan';
import { columnOf, ROW } from '../../../src/sheets/schedule/layout';
import { sharedCopy } from '../../../src/sheets/shared-copy';
import { DEMO } from '../../../src/sheets/station/demo';
import { EXTRA_KEYS } from '../../../src/sheets/station/extras';
import { samples } from '../../samples';
import { BARE_PLAN } from '../bare-plan';

interface Edit {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly to: Cell;
}

/** What every cell with content comes to; an error with its reason. */
function all(plans: readonly SheetPlan[], book: Workbook): ReadonlyMap<string, unknown> {
  const values = new Map<string, unknown>();
  for (const { name, blocks } of plans) {
    for (const { area: of, cells, fill } of blocks) {
      if (cells === undefined && fill === undefined) continue;
      for (let row = of.row; row < of.row + of.rows; row += 1) {
        for (let column = of.column; column < of.column + of.columns; column += 1) {
          const value = book.at(name, row, column);
          const told = value instanceof CellError ? `${value.code} ${value.sentence}` : value;
          values.set(`${name}!${cellAddress(row, column)}`, told);
        }
      }
    }
  }
  return values;
}

function differences(one: ReadonlyMap<string, unknown>, other: ReadonlyMap<string, unknown>) {
  return [...one]
    .filter(([at, value]) => !Object.is(value, other.get(at)))
    .map(([at, value]) => `${at}: ${String(value)} / ${String(other.get(at))}`);
}

/** Makes the edits one after the other; returns in how many of them something that a formula comes to has changed. */
function holdsAfterEach(plans: readonly SheetPlan[], edits: readonly Edit[]): number {
  const typed: Edit[] = [];
  const anew = (keeps: boolean) => {
    const book = workbookOf(plans, new Workbook(undefined, keeps));
    for (const of of typed) book.sheet(of.sheet).put(of.row, of.column, of.to ?? undefined);
    return book;
  };
  let kept = anew(true);
  let before = all(plans, kept);
  let changes = 0;
  for (const edit of edits) {
    const { sheet, row, column, to } = edit;
    if (kept.sheet(sheet).givenAt(row, column) === undefined) continue;
    // What comes of a circle hangs on who asked first: nobody goes on from there.
    if (kept.metCircle) kept = anew(true);
    kept.revise();
    kept.sheet(sheet).giveAnew(row, column, to);
    typed.push(edit);
    const fresh = anew(false);
    const [now, right] = [all(plans, kept), all(plans, fresh)];
    expect(kept.metCircle).toBe(fresh.metCircle);
    if (!fresh.metCircle) {
      expect(differences(now, right), `after ${JSON.stringify(typed)}`).toEqual([]);
    }
    if (differences(right, before).length > 1) changes += 1;
    before = right;
  }
  return changes;
}

const NOTHING_TAKEN = { sheets: new Set<string>(), names: new Set<string>() };
const RUNS = DEMO.runs.slice(0, 12);
const NAMES = RUNS.flatMap(({ run }) => run ?? []);
const TYPED: readonly Cell[] = [
  ...[null, '5 A', '30 A', '60 W', '3', '10 ft', '40 ft', '2.5 m', '12 AWG', '2/0 AWG'],
  ...['far', 0, -1, 'battery', 11.5, 9, 0.05, 'yes', 'no', 'aluminum', true, 1e9, ...NAMES],
  new CellError('#N/A', 'in an entry'),
];

function editsOf(plans: readonly SheetPlan[], seed: number, count: number): readonly Edit[] {
  const entries = plans.flatMap(({ name, entries: rules }) =>
    rules.filter(({ workedOut }) => workedOut !== true).map(({ area: of }) => ({ name, of })),
  );
  const edit = fc
    .tuple(fc.constantFrom(...entries), fc.nat(11), fc.nat(10), fc.constantFrom(...TYPED))
    .map(([{ name, of }, down, across, to]): Edit => {
      const row = of.row + (down % of.rows);
      return { sheet: name, row, column: of.column + (across % of.columns), to };
    });
  return fc.sample(edit, { seed, numRuns: count });
}

const content = { ...DEMO, runs: RUNS, extras: EXTRA_KEYS };

test('entries of a station with all its sheets', { timeout: 300_000 }, () => {
  const { count } = samples({ all: 600, usual: 60 });
  const plans = scheduleSheets(content, 'cells', NOTHING_TAKEN);
  expect(holdsAfterEach(plans, editsOf(plans, 41, count))).toBeGreaterThan(count / 3);
});

test('entries of a copy in native formulas', { timeout: 300_000 }, () => {
  const { count } = samples({ all: 200, usual: 20 });
  const { plans } = sharedCopy({ ...DEMO, runs: RUNS }, { rows: RUNS.length });
  expect(holdsAfterEach(plans, editsOf(plans, 42, count))).toBeGreaterThan(count / 3);
});

test('an edit works out little more than what it changes', () => {
  const plans = scheduleSheets(content, 'cells', NOTHING_TAKEN);
  const [{ name }] = plans as [SheetPlan];
  const book = workbookOf(plans, new Workbook(undefined, true));
  all(plans, book);
  const first = book.workedOut;
  const lamp = RUNS.findIndex(({ fedFrom, peak }) => fedFrom !== undefined && peak !== undefined);
  const before = all(plans, book);
  expect(book.workedOut).toBe(first);
  book.revise();
  book.sheet(name).giveAnew(ROW.first + lamp, columnOf('length'), '31 ft');
  const changed = differences(all(plans, book), before).length;
  expect(changed).toBeGreaterThan(10);
  // Ten columns of others read what may have changed, and come to the same.
  expect(book.workedOut - first).toBeLessThan(changed + first / 10);
});

/** Branches that are taken or not, circles that come and go, whole columns, and what is asked with a cell of its row. */
const SMALL: readonly (readonly CellContent[])[] = [
  [1, { formula: '=IF(A1>2,B2,A2)' }, { formula: '=IFERROR(10/A3,B1)' }],
  [2, { formula: '=IF(A1>2,A3,B1)' }, { formula: '=SUMPRODUCT(($A$1:$A$4=A2)*1)' }],
  [3, { formula: '=IF(A4="on",B4,7)' }, { formula: '=SUMPRODUCT(($A$1:$A$4=A3)*1)' }],
  ['on', { formula: '=IF(A2>2,B3,A1)' }, { formula: '=SUM($A$1:$A$4)+SUM(B1:B4)' }],
  [null, { formula: '=INDEX($A$1:$A$4,A1)' }, { formula: '=LEN(A5)&C1' }],
];

test('cells of a small sheet', () => {
  const plans = [
    {
      ...BARE_PLAN,
      blocks: [{ area: area(0, 0, 5, 3), cells: SMALL }],
    },
  ];
  const value = fc.constantFrom<Cell>(0, 1, 2, 3, 4, null, 'on', 'x', true);
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.nat(4), value), { maxLength: 12 }), (edits) => {
      holdsAfterEach(
        plans,
        edits.map(([row, to]) => ({ sheet: BARE_PLAN.name, row, column: 0, to })),
      );
    }),
    { seed: 43, numRuns: 400 },
  );
});
