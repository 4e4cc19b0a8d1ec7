/** Reading a schedule back from a sheet's values: its rows, how many of each verdict, and the worst. */
import { area, type Area } from '../plan/area';
import { SCHEDULE_COLUMNS } from './columns';
import { SHOWN_KEYS, type ShownKey } from '../station/schedule-keys';
import { rankOf, VERDICT_KEYS, verdictsIn } from '../station/verdicts';

type Value = string | number | boolean | null;

export interface ReadRow {
  /** Zero-based row of the sheet. */
  readonly row: number;
  readonly values: Readonly<Record<ShownKey, Value>>;
}

export interface ScheduleReading {
  readonly headerRow: number;
  /** Rows with something in them. */
  readonly rows: readonly ReadRow[];
  /** Zero-based sheet column of each key. */
  readonly columnOf: Readonly<Record<ShownKey, number>>;
}

const isEmpty = (value: Value | undefined) =>
  value === undefined || value === null || (typeof value === 'string' && value.trim() === '');

/** The schedule in a sheet's values, found by its headings wherever they stand; undefined where there is none. */
export function readSchedule(values: readonly (readonly Value[])[]): ScheduleReading | undefined {
  const keyOf = new Map(
    SHOWN_KEYS.map((key) => [SCHEDULE_COLUMNS[key].heading.toLowerCase(), key] as const),
  );
  for (const [headerRow, cells] of values.entries()) {
    const columnOf: Partial<Record<ShownKey, number>> = {};
    for (const [column, value] of cells.entries()) {
      const key = typeof value === 'string' ? keyOf.get(value.trim().toLowerCase()) : undefined;
      if (key !== undefined) columnOf[key] ??= column;
    }
    if (SHOWN_KEYS.every((key) => key in columnOf)) {
      const found = columnOf as Record<ShownKey, number>;
      return { headerRow, columnOf: found, rows: readRows(values, headerRow, found) };
    }
  }
  return undefined;
}

function readRows(
  values: readonly (readonly Value[])[],
  headerRow: number,
  columnOf: Readonly<Record<ShownKey, number>>,
): ReadRow[] {
  const rows: ReadRow[] = [];
  for (let row = headerRow + 1; row < values.length; row += 1) {
    const read = Object.fromEntries(
      SHOWN_KEYS.map((key) => [key, values[row]?.[columnOf[key]] ?? null]),
    ) as Record<ShownKey, Value>;
    // The cautions at the foot stand under the run names; a run has a verdict.
    if (!isEmpty(read.verdict)) rows.push({ row, values: read });
  }
  return rows;
}

/** How many runs have each verdict, the commonest first. */
export function countVerdicts(reading: ScheduleReading): readonly (readonly [string, number])[] {
  const counts = new Map<string, number>();
  for (const { values } of reading.rows) {
    const verdict = String(values.verdict);
    counts.set(verdict, (counts.get(verdict) ?? 0) + 1);
  }
  return [...counts].sort(([, a], [, b]) => b - a);
}

/** Lower is worse; Infinity is ok. A verdict that is none of ours comes after those that are. */
function rank(row: ReadRow): number {
  const [gravest] = verdictsIn(String(row.values.verdict));
  if (gravest === undefined) return VERDICT_KEYS.length;
  return gravest === 'ok' ? Number.POSITIVE_INFINITY : rankOf(gravest);
}

/** How many times its target a run loses; 0 where it cannot be told. */
function overshoot({ values }: ReadRow): number {
  const { dropShare, target } = values;
  return typeof dropShare === 'number' && typeof target === 'number' && target > 0
    ? dropShare / target
    : 0;
}

/** The worst run that is not ok: the gravest verdict, and among equals the greatest drop for its target. */
export function worstRow(reading: ScheduleReading): ReadRow | undefined {
  return [...reading.rows]
    .filter((row) => Number.isFinite(rank(row)))
    .sort((a, b) => rank(a) - rank(b) || overshoot(b) - overshoot(a))[0];
}

/** The cells of one row of a schedule, from its run's name to its verdict. */
export function rowArea(reading: ScheduleReading, row: number): Area {
  return area(row, reading.columnOf.run, 1, reading.columnOf.verdict - reading.columnOf.run + 1);
}
