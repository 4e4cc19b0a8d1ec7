/**
 * The runs of a schedule in another order, or with rows put in or taken out: which cells to type. Formulas stay where they
 * are, and so do colours and rules; only what a person typed moves, on the schedule and on the sheets that hold entries
 * run by run. To move the sheet's rows themselves would leave the fuses of Protection with other runs.
 */
import { isBlank, type ComputedGrid, type GridValue } from '../sheets/plan/grid';
import { SCHEDULE_COLUMNS } from '../sheets/schedule/columns';
import { levelOfRow, readSchedule } from '../sheets/schedule/reading';
import { extentOf } from '../sheets/schedule/repair';
import { LEVELS } from '../sheets/station/verdicts';
import { gridTable } from './raw-grid';
import { companion } from './labelled';
import type { RawTable } from './raw';
import { RUN_ENTRY_SHEETS, type RunEntrySheet } from './run-entries';

/** For each row of the schedule the row, counted from its first, that it takes its entries from; undefined for none. */
export type RowOrder = readonly (number | undefined)[];

export interface RowCells {
  readonly sheetName: string;
  /** Cells to type into; null empties one. */
  readonly cells: readonly {
    readonly row: number;
    readonly column: number;
    readonly content: GridValue;
  }[];
  /** Formulas to put back where a figure was typed over one that has moved on. */
  readonly fills: readonly {
    readonly from: number;
    readonly to: number;
    readonly columns: readonly number[];
  }[];
}

/** The rows of a schedule on its sheet, and how many of them hold entries, down to the last that does. */
export interface RowSpan {
  readonly first: number;
  readonly rows: number;
  readonly used: number;
}

/** Where rows stand, and the columns in which something may be typed. */
interface Part {
  readonly grid: ComputedGrid;
  readonly first: number;
  readonly columns: readonly number[];
}

function schedulePart(grid: ComputedGrid): (Part & { readonly rows: number }) | undefined {
  const extent = extentOf(grid);
  if (extent === undefined) return undefined;
  const { first, last, columnOf } = extent;
  const columns = [...columnOf].flatMap(([key, column]) =>
    SCHEDULE_COLUMNS[key].kind === 'working' ? [] : [column],
  );
  return { grid, first, rows: last - first + 1, columns };
}

function entryPart(
  grids: readonly ComputedGrid[],
  tables: readonly RawTable[],
  schedule: string,
  { signs, headings }: RunEntrySheet,
): Part | undefined {
  const name = companion(tables, schedule, signs)?.sheetName;
  const grid = grids.find(({ sheetName }) => sheetName === name);
  if (name === undefined || grid === undefined) return undefined;
  for (const [row, cells] of grid.values.entries()) {
    const columns = headings.map((heading) => cells.indexOf(heading));
    if (columns.every((column) => column >= 0)) return { grid, first: row + 1, columns };
  }
  return undefined;
}

/** What is typed in a cell: nothing where a formula computes it. */
function typedAt({ values, computed }: ComputedGrid, row: number, column: number): GridValue {
  return computed[row]?.[column] === true ? null : (values[row]?.[column] ?? null);
}

function inOrder({ grid, first, columns }: Part, order: RowOrder): RowCells {
  const cells: RowCells['cells'][number][] = [];
  const fills: RowCells['fills'][number][] = [];
  const computes = (row: number, column: number) => grid.computed[row]?.[column] === true;
  // A column's formula is copied from any row that has it.
  const formulaRow = new Map(
    columns.map((column) => [
      column,
      order.findIndex((_, place) => computes(first + place, column)),
    ]),
  );
  for (const [place, from] of order.entries()) {
    const row = first + place;
    for (const column of columns) {
      const content = from === undefined ? null : typedAt(grid, first + from, column);
      const isTyped = !isBlank(content);
      if (isTyped) {
        if (computes(row, column) || content !== typedAt(grid, row, column)) {
          cells.push({ row, column, content });
        }
        continue;
      }
      if (computes(row, column)) continue;
      const formulaAt = formulaRow.get(column)!;
      const emptied = from !== undefined && !computes(first + from, column);
      // What a person emptied stays empty; a formula that was typed over comes back with its row.
      if (formulaAt >= 0 && !emptied) {
        fills.push({ from: first + formulaAt, to: row, columns: [column] });
      } else if (!isBlank(typedAt(grid, row, column))) cells.push({ row, column, content: null });
    }
  }
  return { sheetName: grid.sheetName, cells, fills };
}

/** The rows of the schedule on a sheet; undefined where there is none. */
export function rowSpan(grid: ComputedGrid): RowSpan | undefined {
  const part = schedulePart(grid);
  if (part === undefined) return undefined;
  const { first, rows, columns } = part;
  const isUsed = (place: number) =>
    columns.some((column) => !isBlank(typedAt(grid, first + place, column)));
  const places = Array.from({ length: rows }, (_, place) => place);
  return { first, rows, used: places.findLastIndex(isUsed) + 1 };
}

/** What to type so that the runs of a schedule stand in this order. Nothing where the sheet holds none. */
export function cellsInOrder(
  grids: readonly ComputedGrid[],
  sheetName: string,
  order: RowOrder,
): readonly RowCells[] {
  const grid = grids.find((one) => one.sheetName === sheetName);
  const schedule = grid === undefined ? undefined : schedulePart(grid);
  if (schedule === undefined) return [];
  const tables = grids.map(gridTable);
  const others = RUN_ENTRY_SHEETS.flatMap(
    (sheet) => entryPart(grids, tables, sheetName, sheet) ?? [],
  );
  return [schedule, ...others]
    .map((part) => inOrder(part, order))
    .filter(({ cells, fills }) => cells.length > 0 || fills.length > 0);
}

const upTo = (count: number, from = 0) => Array.from({ length: count }, (_, index) => from + index);

/** The order with so many empty rows put in before a place; undefined where the schedule has no room for them. */
export function withRows({ rows, used }: RowSpan, at: number, count: number): RowOrder | undefined {
  if (Math.max(used, at) + count > rows) return undefined;
  const none: undefined[] = upTo(count).map(() => undefined);
  return [...upTo(at), ...none, ...upTo(rows - at - count, at)];
}

/** The order with so many rows taken out from a place on. */
export function withoutRows({ rows }: RowSpan, at: number, count: number): RowOrder {
  const taken = Math.min(count, rows - at);
  const none: undefined[] = upTo(taken).map(() => undefined);
  return [...upTo(at), ...upTo(rows - at - taken, at + taken), ...none];
}

/** The order with so many rows from a place on moved to before another place. */
export function withMovedRows({ rows }: RowSpan, at: number, count: number, to: number): RowOrder {
  const moved = upTo(count, at);
  const others = (from: number, end: number) =>
    upTo(end - from, from).filter((place) => place < at || place >= at + count);
  return [...others(0, to), ...moved, ...others(to, rows)];
}

/** How a schedule can be put in order; runs that are alike keep theirs. */
export const ORDERS = {
  gravest: 'worst first',
  feeders: 'by feeder, each with its branches below it',
  names: 'by name',
} as const;
export type OrderKey = keyof typeof ORDERS;

interface Run {
  readonly place: number;
  readonly name: string;
  readonly fedFrom: string;
  readonly level: number;
}

const plain = (value: GridValue | undefined) =>
  String(value ?? '')
    .trim()
    .toLowerCase();

/** Each run with all that it feeds below it, in the order in which they stand; those in a circle come last. */
function byFeeder(runs: readonly Run[]): Run[] {
  const names = new Set(runs.map(({ name }) => name).filter((name) => name !== ''));
  const ordered = new Set<Run>();
  const add = (run: Run) => {
    if (ordered.has(run)) return;
    ordered.add(run);
    if (run.name === '') return;
    for (const branch of runs) if (branch.fedFrom === run.name) add(branch);
  };
  for (const run of runs) if (!names.has(run.fedFrom)) add(run);
  for (const run of runs) add(run);
  return [...ordered];
}

const IN_ORDER: Readonly<Record<OrderKey, (runs: readonly Run[]) => readonly Run[]>> = {
  gravest: (runs) => [...runs].sort((a, b) => a.level - b.level),
  feeders: byFeeder,
  names: (runs) => [...runs].sort((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true })),
};

/** The order of a schedule's rows when its runs stand as asked for, empty rows last; undefined where there is none. */
export function orderOf(grid: ComputedGrid, key: OrderKey): RowOrder | undefined {
  const span = rowSpan(grid);
  const reading = readSchedule(grid.values);
  if (span === undefined || reading === undefined) return undefined;
  const { run, fedFrom } = reading.columnOf;
  const levels = new Map(
    reading.rows.map((row) => [row.row, LEVELS.indexOf(levelOfRow(row))] as const),
  );
  const runs = upTo(span.used).map((place): Run => {
    const row = span.first + place;
    return {
      place,
      name: plain(grid.values[row]?.[run]),
      fedFrom: plain(grid.values[row]?.[fedFrom]),
      level: levels.get(row) ?? LEVELS.length,
    };
  });
  const order = IN_ORDER[key](
    runs.filter(({ name, level }) => name !== '' || level < LEVELS.length),
  );
  const taken = new Set(order.map(({ place }) => place));
  return [
    ...order.map(({ place }) => place),
    ...upTo(span.rows).filter((place) => !taken.has(place)),
  ];
}
