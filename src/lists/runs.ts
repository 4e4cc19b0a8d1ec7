/** Rows of a list as runs; what can't be read comes back with its line. */
import { CAUTIONS } from '../sheets/plan/cautions';
import { nameKey } from '../core/feeder-tree';
import { LOAD_KINDS } from '../core/feeders';
import type { LengthUnit } from '../core/length';
import { SCHEDULE_COLUMNS } from '../sheets/schedule/columns';
import type { ScheduleRun } from '../sheets/station/run';
import type { SupplyValues } from '../sheets/station/supply';
import { isKnownFeeder, readFeeders } from './feeders';
import { readHeading, RUN_COLUMNS } from './headings';
import { habitOf, type NumeralHabit } from './numerals';
import { cellText, isEmpty, rowText, type RawRow } from './raw';
import { readPercents } from './percents';
import type { RowProblem } from './problem';
import { namedSources } from './source-list';
import { bodyOf, isOfSources, type FoundList } from './table';
import type { TypedColumn } from './list-columns';
import type { Unit } from '../core/units';
import { kindOf, readValue, type ListHabits } from './values';
import { BATTERY } from './words';

export interface ReadRows {
  readonly runs: readonly ScheduleRun[];
  /** Rows under the headings at which the runs stand, from 0. */
  readonly places: readonly number[];
  readonly problems: readonly RowProblem[];
  /** The columns as they were read. */
  readonly columns: readonly TypedColumn[];
  readonly remarks: readonly string[];
  /** Those given, and those that the list only names. */
  readonly sources: readonly SupplyValues[];
}

/** Most characters that a cell holds (Excel's limit). */
const CELL_MOST = 32_767;

/** Between the notes of several columns. */
const BETWEEN_NOTES = '; ';

/** What stands before the sums under a list. */
const SUMS = /^(?:(?:grand |sub-?)?totals?|sums?)\s*:?$/i;

/** A column of notes by its own heading; of another that was chosen for one, the heading says what the note is of. */
function isNote({ heading, said }: TypedColumn): boolean {
  const meaning = said === true ? readHeading(heading) : undefined;
  return meaning === undefined || (meaning.is === 'typed' && meaning.key === 'notes');
}

const NOT_RUNS: ReadonlySet<string> = new Set(CAUTIONS);

/** The rows under the headings. */
export function readRows(
  found: FoundList,
  lengths: { readonly given: LengthUnit; readonly wanted: LengthUnit },
  sources: readonly SupplyValues[] = [],
): ReadRows {
  const body = bodyOf(found);
  const numerals = numeralHabit(found, body);
  const { list, remarks } = readPercents(found, { numerals });
  const habits: ListHabits = {
    numerals,
    givenLength: lengths.given,
    wantedLength: lengths.wanted,
    keepsLengths: list.ours && lengths.given === lengths.wanted,
    isText: list.table.separator !== undefined,
  };
  const taken: { readonly row: RawRow; readonly run: ScheduleRun }[] = [];
  const problems: RowProblem[] = list.table.broken.map((broken) => ({ ...broken, taken: false }));
  const note = (row: RawRow, why: string, isTaken: boolean) =>
    problems.push({ line: row.line, text: rowText(row), why, taken: isTaken });
  for (const row of body) {
    const read = readRow(list, row, habits);
    if (read.run !== undefined) taken.push({ row, run: read.run });
    for (const why of read.problems) note(row, why, read.run !== undefined);
  }
  const runs = taken.map(({ run }) => run);
  const ofSources = list.columns.find((column) => column.key === 'fedFrom' && isOfSources(column));
  const known = namedSources(
    ofSources === undefined
      ? []
      : taken
          .map(({ row }) => cellText(row.cells[ofSources.index]))
          .filter((name) => !isKnownFeeder(name, runs)),
    sources,
  );
  const feeders = readFeeders(
    runs,
    // The first is meant by a blank too, by which a list may mean the battery.
    known.flatMap(({ name = '' }, place) =>
      place === 0 && nameKey(String(name)) === BATTERY ? [] : [String(name)],
    ),
  );
  const headerLine = found.table.rows[found.headerIndex]!.line;
  const heading = list.columns.find(({ key }) => key === 'fedFrom')?.heading ?? '';
  for (const [index, { doubt }] of feeders.entries()) {
    if (doubt !== undefined) note(taken[index]!.row, `${heading}: ${doubt}`, true);
  }
  return {
    runs: feeders.map(({ run }) => run),
    places: taken.map(({ row }) => row.line - headerLine - 1),
    problems: problems.sort((a, b) => a.line - b.line),
    columns: list.columns,
    remarks,
    sources: known,
  };
}

function numeralHabit({ columns, table }: FoundList, body: readonly RawRow[]): NumeralHabit {
  const numbers = columns.filter(({ key }) => RUN_COLUMNS[key].quantities.length > 0);
  const texts = body.flatMap((row) =>
    numbers.flatMap(({ index }) => {
      const value = row.cells[index]?.value;
      return typeof value === 'string' ? [/^[^\p{L}%°'"]*/u.exec(value)?.[0] ?? ''] : [];
    }),
  );
  const found = habitOf(texts);
  // Semicolons stand between cells where the comma is the decimal mark.
  const commaCountry = table.separator === ';' && !found.decimalPoint;
  return { ...found, decimalComma: found.decimalComma || commaCountry };
}

interface ReadRow {
  readonly run?: ScheduleRun;
  readonly problems: readonly string[];
}

function readRow(list: FoundList, row: RawRow, habits: ListHabits): ReadRow {
  const { columns, table, headerIndex, ours } = list;
  const filled = row.cells.flatMap((cell, index) => (isEmpty(cell) ? [] : [index]));
  if (filled.length === 0) return { problems: [] };
  if (NOT_RUNS.has(cellText(row.cells[filled[0]!]))) return { problems: [] };
  const header = table.rows[headerIndex]!;
  if (rowText(row) === rowText(header)) return { problems: ['the headings again'] };
  const last = header.cells.findLastIndex((cell) => !isEmpty(cell));
  if (table.separator !== undefined && filled.some((index) => index > last)) {
    return {
      problems: [
        'it has more cells than there are headings; put a text with commas in it, or a decimal comma, in quotes',
      ],
    };
  }
  if (row.cells.some(({ value }) => typeof value === 'string' && value.length > CELL_MOST)) {
    return { problems: [`a cell holds more than ${CELL_MOST} characters`] };
  }

  if (!ours && SUMS.test(cellText(row.cells[filled[0]!]))) {
    return { problems: ['it sums up other rows and is no run'] };
  }

  const run: Record<string, string | number> = {};
  const notes: string[] = [];
  const problems: string[] = [];
  let loadUnit: Unit | undefined;
  for (const column of columns) {
    const cell = row.cells[column.index];
    // Where the schedule's own formula stands in a cell, the run says nothing of its own.
    if (ours && cell?.computed === true && SCHEDULE_COLUMNS[column.key].kind !== 'typed') continue;
    const { value, unit, doubt } = readValue(cell, column, habits);
    if (value === undefined) continue;
    if (column.key === 'notes')
      notes.push(isNote(column) ? `${value}` : `${column.heading}: ${value}`);
    if (column.key in run) continue;
    run[column.key] = value;
    if (doubt !== undefined) problems.push(`${column.heading}: ${doubt}`);
    if (column.key === 'peak') loadUnit = unit ?? column.unit;
  }
  const kind = kindOf(loadUnit);
  if (kind !== undefined && run['kind'] !== undefined && run['kind'] !== kind) {
    problems.push(`the load is in ${kind}, and its row says ${run['kind']}`);
    // As text, so that the sheet takes it for neither.
    run['peak'] = `${run['peak']} ${kind}`;
  } else if (kind === LOAD_KINDS[1]) {
    run['kind'] = kind;
  }
  if (notes.length > 0) run['notes'] = notes.join(BETWEEN_NOTES);
  // Formulas of ours fill every row of a schedule, used or not, and a text of values does not tell them from entries.
  if (Object.keys(run).every((key) => ours && key === 'kind')) {
    return ours ? { problems: [] } : { problems: ['nothing under a heading that was understood'] };
  }
  if (!ours && run['peak'] === undefined && run['length'] === undefined) {
    return { problems: ['it has neither a load nor a length'] };
  }
  return { run, problems };
}
