/** What a schedule that stands already lacks, and where its next run goes. Pure: it reads cells and names others. */
import { HEADINGS, SCHEDULE_COLUMNS } from './columns';
import { isBlank, type ComputedGrid } from '../plan/grid';
import { readSchedule, type ScheduleReading } from './reading';
import { COLUMN_KEYS, type ColumnKey } from '../station/schedule-keys';

/** Formulas of a row that are to be copied into another. */
export interface LackingRow {
  readonly from: number;
  readonly to: number;
  readonly columns: readonly number[];
}

interface Extent {
  readonly reading: ScheduleReading;
  readonly first: number;
  readonly last: number;
  /** Columns by key, workings too. */
  readonly columnOf: ReadonlyMap<ColumnKey, number>;
}

const KEY_OF = new Map(COLUMN_KEYS.map((key, index) => [HEADINGS[index]!.toLowerCase(), key]));

/** The rows of the schedule on a sheet: from under its headings to the last that computes a verdict. */
export function extentOf({ values, computed }: ComputedGrid): Extent | undefined {
  const reading = readSchedule(values);
  if (reading === undefined) return undefined;
  const columnOf = new Map<ColumnKey, number>();
  for (const [column, heading] of (values[reading.headerRow] ?? []).entries()) {
    const key = KEY_OF.get(String(heading).trim().toLowerCase());
    if (key !== undefined && !columnOf.has(key)) columnOf.set(key, column);
  }
  const { verdict } = reading.columnOf;
  const last = computed.findLastIndex((row) => row[verdict] === true);
  return last <= reading.headerRow
    ? undefined
    : { reading, first: reading.headerRow + 1, last, columnOf };
}

/**
 * Rows among those of the schedule that lack a computed column's formula; filled from the first row that has them all. A
 * usual figure that was typed over stays.
 */
export function lackingRows(grid: ComputedGrid): readonly LackingRow[] {
  const extent = extentOf(grid);
  if (extent === undefined) return [];
  const { values, computed } = grid;
  const { first, last, columnOf } = extent;
  const must = [...columnOf].filter(([key]) =>
    ['computed', 'working'].includes(SCHEDULE_COLUMNS[key].kind),
  );
  const usual = [...columnOf].filter(([key]) => SCHEDULE_COLUMNS[key].kind === 'usual');
  const rows = Array.from({ length: last - first + 1 }, (_, index) => first + index);
  const isWhole = (row: number) => must.every(([, column]) => computed[row]?.[column] === true);
  const from =
    rows.find((row) => isWhole(row) && usual.every(([, at]) => computed[row]?.[at])) ??
    rows.find(isWhole);
  if (from === undefined) return [];
  return rows.flatMap((to): LackingRow[] => {
    const columns = [
      ...must.filter(([, column]) => computed[to]?.[column] !== true),
      ...usual.filter(
        ([, column]) => computed[to]?.[column] !== true && isBlank(values[to]?.[column]),
      ),
    ].map(([, column]) => column);
    // An emptied usual figure is a person's choice where all else stands.
    const lacksMust = must.some(([, column]) => computed[to]?.[column] !== true);
    return lacksMust ? [{ from, to, columns }] : [];
  });
}

/**
 * Rows right below the schedule in which a run was typed. Formulas copied there would answer, but no column of the schedule
 * reaches so far: the run's current would be missing from the runs that feed it.
 */
export function rowsBelow(grid: ComputedGrid): readonly number[] {
  const extent = extentOf(grid);
  if (extent === undefined) return [];
  const { peak, length } = extent.reading.columnOf;
  const isTyped = (row: number) =>
    [peak, length].some((column) => !isBlank(grid.values[row]?.[column]));
  const rows: number[] = [];
  for (let row = extent.last + 1; isTyped(row); row += 1) rows.push(row);
  return rows;
}

/** The first row behind the last run in which nothing is typed; undefined where the schedule is full. */
export function nextFreeRow(grid: ComputedGrid): number | undefined {
  const extent = extentOf(grid);
  if (extent === undefined) return undefined;
  const { first, last, columnOf } = extent;
  const typed = [...columnOf].filter(([key]) => SCHEDULE_COLUMNS[key].kind === 'typed');
  const isUsed = (row: number) => typed.some(([, column]) => !isBlank(grid.values[row]?.[column]));
  let free = last + 1;
  for (let row = last; row >= first && !isUsed(row); row -= 1) free = row;
  return free > last ? undefined : free;
}
