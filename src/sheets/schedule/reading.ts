/** Reading a schedule back from a sheet's values: its rows, how many of each verdict, and the worst. */
import { area, type Area } from '../plan/area';
import { SCHEDULE_COLUMNS } from './columns';
import { FORMER_HEADINGS, LATER_COLUMNS } from '../station/former';
import { SHOWN_KEYS, type ShownKey } from '../station/schedule-keys';
import { levelOf, LEVELS, rankOf, VERDICT_KEYS, verdictsIn, type Level } from '../station/verdicts';

type Value = string | number | boolean | null;

/** What is read of each row: all that is shown, and the level beside it. */
const READ_KEYS = [...SHOWN_KEYS, 'level'] as const satisfies readonly (ShownKey | 'level')[];
type ReadKey = (typeof READ_KEYS)[number];
/** Without these a sheet is none of ours; old schedules lack the others. */
type LastingKey = Exclude<ShownKey, (typeof LATER_COLUMNS)[number]>;
const LASTING_KEYS = SHOWN_KEYS.filter(
  (key): key is LastingKey => !LATER_COLUMNS.some((later) => later === key),
);

export interface ReadRow {
  /** Zero-based row of the sheet. */
  readonly row: number;
  /** Null for a column that the sheet lacks. */
  readonly values: Readonly<Record<ReadKey, Value>>;
}

type ColumnOf = Readonly<Partial<Record<ReadKey, number>>>;

export interface ScheduleReading {
  readonly headerRow: number;
  /** Rows with something in them. */
  readonly rows: readonly ReadRow[];
  /** Zero-based sheet column of each key; old schedules lack the later ones. */
  readonly columnOf: ColumnOf & Readonly<Record<LastingKey, number>>;
}

const isEmpty = (value: Value | undefined) =>
  value === undefined || value === null || (typeof value === 'string' && value.trim() === '');

const KEY_OF: ReadonlyMap<string, ReadKey> = new Map(
  READ_KEYS.flatMap((key): [string, ReadKey][] =>
    [SCHEDULE_COLUMNS[key].heading, FORMER_HEADINGS[key] ?? []]
      .flat()
      .map((heading) => [heading.toLowerCase(), key]),
  ),
);

/** The schedule in a sheet's values, found by its headings wherever they stand; undefined where there is none. */
export function readSchedule(values: readonly (readonly Value[])[]): ScheduleReading | undefined {
  for (const [headerRow, cells] of values.entries()) {
    const columnOf: Partial<Record<ReadKey, number>> = {};
    for (const [column, value] of cells.entries()) {
      const key = typeof value === 'string' ? KEY_OF.get(value.trim().toLowerCase()) : undefined;
      if (key !== undefined) columnOf[key] ??= column;
    }
    if (LASTING_KEYS.every((key) => key in columnOf)) {
      const found = columnOf as ScheduleReading['columnOf'];
      return { headerRow, columnOf: found, rows: readRows(values, headerRow, found) };
    }
  }
  return undefined;
}

function readRows(
  values: readonly (readonly Value[])[],
  headerRow: number,
  columnOf: ColumnOf,
): ReadRow[] {
  const rows: ReadRow[] = [];
  for (let row = headerRow + 1; row < values.length; row += 1) {
    const read = Object.fromEntries(
      READ_KEYS.map((key) => {
        const column = columnOf[key];
        return [key, column === undefined ? null : (values[row]?.[column] ?? null)];
      }),
    ) as Record<ReadKey, Value>;
    // The cautions at the foot stand under the run names; a run has a verdict.
    if (!isEmpty(read.verdict)) rows.push({ row, values: read });
  }
  return rows;
}

/** How grave a row is: by the sheet's own column, or by the words of its verdict; an error is unclear. */
export function levelOfRow({ values }: ReadRow): Level {
  const verdict = String(values.verdict);
  const own = typeof values.level === 'number' ? LEVELS[values.level - 1] : undefined;
  return verdict.startsWith('#') ? 'unclear' : (own ?? levelOf(verdict));
}

/** How many rows there are of each level. */
export function countLevels({ rows }: ScheduleReading): Readonly<Record<Level, number>> {
  const counts = { danger: 0, fails: 0, unclear: 0, check: 0, ok: 0 };
  for (const row of rows) counts[levelOfRow(row)] += 1;
  return counts;
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

/** Lower is worse: among rows of a level. A verdict that is none of ours comes after those that are. */
function rank(row: ReadRow): number {
  const [gravest] = verdictsIn(String(row.values.verdict));
  return gravest === undefined ? VERDICT_KEYS.length : rankOf(gravest);
}

const gravity = (row: ReadRow) => LEVELS.indexOf(levelOfRow(row));

/** How many times its target a run loses, alone or with its path; 0 where it cannot be told. */
function overshoot({ values }: ReadRow): number {
  const { dropShare, pathDrop, target } = values;
  const lost = [dropShare, pathDrop].filter((share) => typeof share === 'number');
  return typeof target === 'number' && target > 0 ? Math.max(0, ...lost) / target : 0;
}

const ampsOf = ({ values }: ReadRow) => (typeof values.runAmps === 'number' ? values.runAmps : 0);

/**
 * The worst run that is not ok: the gravest level, then the most amps that hang on it, then the gravest verdict and the
 * greatest drop for its target.
 */
export function worstRow(reading: ScheduleReading): ReadRow | undefined {
  return reading.rows
    .filter((row) => levelOfRow(row) !== 'ok')
    .sort(
      (a, b) =>
        gravity(a) - gravity(b) ||
        ampsOf(b) - ampsOf(a) ||
        rank(a) - rank(b) ||
        overshoot(b) - overshoot(a),
    )[0];
}

/** The cells of one row of a schedule, from its run's name to its verdict and fix. */
export function rowArea({ columnOf }: ScheduleReading, row: number): Area {
  const last = Math.max(columnOf.verdict, columnOf.mend ?? 0);
  return area(row, columnOf.run, 1, last - columnOf.run + 1);
}
