/** Runs in another order: what is typed goes along, and nothing else changes. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stationOf } from '../../src/lists/grids';
import {
  cellsInOrder,
  orderOf,
  rowSpan,
  withMovedRows,
  withoutRows,
  withRows,
  type RowOrder,
} from '../../src/lists/row-order';
import { scheduleSheets } from '../../src/sheets/new-schedule';
import { SCHEDULE_COLUMNS } from '../../src/sheets/schedule/columns';
import { levelOfRow, readSchedule } from '../../src/sheets/schedule/reading';
import type { StationContent } from '../../src/sheets/station/content';
import { EXTRA_KEYS } from '../../src/sheets/station/extras';
import { DEMO } from '../../src/sheets/station/demo';
import type { NamesInUse } from '../../src/sheets/station/naming';
import { COLUMN_KEYS } from '../../src/sheets/station/schedule-keys';
import { LEVELS } from '../../src/sheets/station/verdicts';
import { openGrids } from './open-grids';

const FREE: NamesInUse = { sheets: new Set(), names: new Set() };
const NAME = 'Run schedule';

/** With fuses, colours, contacts and readings of some runs on their sheets, and figures typed over formulas. */
const STATION: StationContent = {
  ...DEMO,
  runs: DEMO.runs.map((run, index) => (index % 5 === 2 ? { ...run, target: 0.04 } : run)),
  protection: {
    ...DEMO.protection,
    fuses: DEMO.runs.map((_, index) => (index % 3 === 1 ? { breaks: 1000 + index } : {})),
  },
  extras: EXTRA_KEYS,
  wireList: {
    ...DEMO.wireList,
    runs: DEMO.runs.map((_, index) => (index % 4 === 1 ? { plus: `colour ${index}` } : {})),
  },
  parts: {
    ...DEMO.parts,
    runs: DEMO.runs.map((_, index) =>
      index % 3 === 0 ? { sourceEnd: `lug ${index}`, farEnd: `pin ${index}` } : {},
    ),
  },
  fuseMap: {
    runs: DEMO.runs.map((_, index) => ({
      ...(index % 2 === 0 && { position: `P${index}` }),
      ...(index % 3 === 0 && { farPosition: `F${index}` }),
    })),
  },
  asBuilt: {
    runs: DEMO.runs.map((_, index) =>
      index % 4 === 2 ? { voltsIn: 12 + index, by: 'workshop' } : {},
    ),
  },
};
const start = openGrids(scheduleSheets(STATION, 'cells', FREE));
const span = rowSpan(start.find(({ sheetName }) => sheetName === NAME)!)!;

type Grids = typeof start;

/** What a host makes of it. */
function changed(grids: Grids, order: RowOrder): Grids {
  const after = structuredClone(grids);
  for (const { sheetName, cells, fills } of cellsInOrder(grids, NAME, order)) {
    const { values, computed } = after.find((grid) => grid.sheetName === sheetName)!;
    for (const { row, column, content } of cells) {
      values[row]![column] = content;
      computed[row]![column] = false;
    }
    for (const { from, to, columns } of fills) {
      for (const column of columns) {
        expect(grids.find((grid) => grid.sheetName === sheetName)!.computed[from]![column]).toBe(
          true,
        );
        computed[to]![column] = true;
      }
    }
  }
  return after;
}

/** The runs with their fuses, colours, contacts and readings, in their order. */
function runsOf(grids: Grids) {
  const { runs, protection, wireList, parts, fuseMap, asBuilt } = stationOf(grids, NAME)!;
  const fuses = protection?.fuses ?? [];
  const colours = wireList?.runs ?? [];
  return runs.map((run, index) => ({
    ...run,
    fuse: fuses[index] ?? {},
    colours: colours[index] ?? {},
    contacts: parts?.runs?.[index] ?? {},
    positions: fuseMap?.runs?.[index] ?? {},
    readings: asBuilt?.runs?.[index] ?? {},
  }));
}
const before = runsOf(start);

/** Which of the runs that stood there come in which order. */
const expected = (order: RowOrder) =>
  order.flatMap((place) => (place === undefined ? [] : (before[place] ?? [])));

const USUAL = COLUMN_KEYS.filter((key) => SCHEDULE_COLUMNS[key].kind === 'usual');

function typedOver(runs: typeof before): number {
  return runs.flatMap((run) => [
    ...USUAL.filter((key) => key in run),
    ...Object.keys(run.fuse).filter((key) => key === 'breaks'),
  ]).length;
}

const places = fc.nat({ max: span.used - 1 });
const order = fc.oneof(
  fc
    .tuple(fc.nat({ max: span.used }), fc.integer({ min: 1, max: span.rows - span.used }))
    .map(([at, count]) => withRows(span, at, count)!),
  fc
    .tuple(places, fc.integer({ min: 1, max: 9 }))
    .map(([at, count]) => withoutRows(span, at, count)),
  fc
    .tuple(places, fc.integer({ min: 1, max: 4 }), fc.nat({ max: span.used }))
    .map(([at, count, to]) => withMovedRows(span, Math.min(at, span.used - count), count, to)),
);

describe('runs in another order', () => {
  it('are all there, each with its fuse, and no formula is missing', () => {
    expect(before.filter(({ fuse }) => 'breaks' in fuse).length).toBeGreaterThan(5);
    expect(before.filter(({ target }) => target !== undefined).length).toBeGreaterThan(3);
    fc.assert(
      fc.property(order, (to) => {
        expect(to).toHaveLength(span.rows);
        const after = changed(start, to);
        expect(runsOf(after)).toEqual(expected(to));
        const typed = (grids: Grids) =>
          grids.flatMap(({ computed }) => computed.flat().filter((is) => !is)).length;
        // Where a figure is typed over a formula, and only there, a formula is missing.
        expect(typed(after) - typed(start)).toBe(typedOver(expected(to)) - typedOver(before));
      }),
      { numRuns: 30 },
    );
  });

  it('has no room for more rows than it has left', () => {
    expect(withRows(span, 0, span.rows - span.used)).toBeDefined();
    expect(withRows(span, 0, span.rows - span.used + 1)).toBeUndefined();
    expect(withRows(span, span.rows - 1, 1)).toBeDefined();
    expect(withRows(span, span.rows - 1, 2)).toBeUndefined();
  });

  it.each(['gravest', 'feeders', 'names'] as const)('stands by %s, and stays so', (key) => {
    const inOrder = orderOf(
      start.find(({ sheetName }) => sheetName === NAME)!,
      key,
    )!;
    expect([...inOrder].sort((a, b) => a! - b!)).toEqual(inOrder.map((_, place) => place));
    const reading = readSchedule(start.find(({ sheetName }) => sheetName === NAME)!.values)!;
    const levels = inOrder
      .slice(0, reading.rows.length)
      .map((place) => LEVELS.indexOf(levelOfRow(reading.rows[place!]!)));
    const runs = expected(inOrder);
    const names = runs.map(({ run }) => String(run));
    expect(runs).toHaveLength(before.length);
    if (key === 'gravest') expect(levels).toEqual([...levels].sort((a, b) => a - b));
    if (key === 'names') {
      expect(names).toEqual(
        [...names].sort((a, b) => a.localeCompare(b, 'en', { numeric: true, sensitivity: 'base' })),
      );
    }
    if (key === 'feeders') {
      const fed = runs.filter(({ fedFrom }) => names.includes(String(fedFrom)));
      expect(fed.length).toBeGreaterThan(5);
      for (const { run, fedFrom } of fed) {
        expect(names.indexOf(String(fedFrom))).toBeLessThan(names.indexOf(String(run)));
      }
    }
  });
});
