/** How the schedule in view stands: its runs by level and by verdict. */
import type { Calculation } from '../hosts/sheet-host';
import type { SheetGrid } from '../sheets/plan/grid';
import {
  countLevels,
  countVerdicts,
  readSchedule,
  type ReadRow,
  type ScheduleReading,
} from '../sheets/schedule/reading';
import { levelOf, LEVELS, type Level } from '../sheets/station/verdicts';

export interface VerdictCount {
  /** In words; what a spreadsheet shows while it has no verdict is put into words too. */
  readonly verdict: string;
  readonly runs: number;
  readonly level: Level;
}

export type Standing =
  | { readonly kind: 'no schedule' }
  | {
      readonly kind: 'schedule';
      readonly sheetName: string;
      readonly runs: number;
      /** How many runs there are of each level. */
      readonly levels: Readonly<Record<Level, number>>;
      /** Rows, as a person counts them, whose formulas are missing. */
      readonly unfilled: readonly number[];
      readonly verdicts: readonly VerdictCount[];
    };

const BEING_CALCULATED = 'still being calculated';
const ERRORS_IN_WORDS: Readonly<Record<string, string>> = {
  '#BUSY!': BEING_CALCULATED,
  '#GETTING_DATA': BEING_CALCULATED,
  '#NAME?': 'not calculated: the LOOM functions are not loaded',
};

/** A verdict as a person reads it, an error value included. */
export function verdictInWords(verdict: string): string {
  const inWords = ERRORS_IN_WORDS[verdict];
  if (inWords !== undefined) return inWords;
  return verdict.startsWith('#') ? `no verdict (${verdict})` : verdict;
}

const CALCULATING = new Set(
  Object.keys(ERRORS_IN_WORDS).filter((error) => ERRORS_IN_WORDS[error] === BEING_CALCULATED),
);

/** A row that is still being calculated has no verdict yet, whatever a formula makes of it meanwhile. */
function whileCalculating(row: ReadRow): ReadRow {
  const busy = Object.values(row.values).find(
    (value) => typeof value === 'string' && CALCULATING.has(value),
  );
  return busy === undefined ? row : { ...row, values: { ...row.values, verdict: busy } };
}

/** Sheet rows that have a load or a length but no verdict: their formulas were not filled down. */
function unfilledRows(
  { headerRow, columnOf }: ScheduleReading,
  values: SheetGrid['values'],
): readonly number[] {
  return values.flatMap((cells, row) => {
    const isTyped = (key: 'peak' | 'length') => String(cells[columnOf[key]] ?? '').trim() !== '';
    const hasVerdict = String(cells[columnOf.verdict] ?? '').trim() !== '';
    return row > headerRow && !hasVerdict && (isTyped('peak') || isTyped('length'))
      ? [row + 1]
      : [];
  });
}

/**
 * The standing of what is in view; an empty sheet is null. While it is calculated, a row without a verdict is not said to
 * lack its formulas.
 */
export function standingOf(grid: SheetGrid | null, calculation: Calculation = 'done'): Standing {
  const read = grid === null ? undefined : readSchedule(grid.values);
  if (grid === null || read === undefined) return { kind: 'no schedule' };
  const reading = { ...read, rows: read.rows.map(whileCalculating) };
  const verdicts = countVerdicts(reading).map(([verdict, count]) => ({
    verdict: verdictInWords(verdict),
    runs: count,
    level: levelOf(verdict),
  }));
  const gravity = ({ level }: VerdictCount) => LEVELS.indexOf(level);
  return {
    kind: 'schedule',
    sheetName: grid.sheetName,
    runs: reading.rows.length,
    levels: countLevels(reading),
    unfilled: calculation === 'under way' ? [] : unfilledRows(reading, grid.values),
    verdicts: verdicts.sort((a, b) => gravity(a) - gravity(b)),
  };
}

/** Whether every run was judged and holds. */
export function isAllOk(standing: Standing): boolean {
  return standing.kind === 'schedule' && standing.levels.ok === standing.runs;
}

const counted = (runs: number) => (runs === 1 ? '1 run' : `${runs} runs`);
const countedRows = (rows: number) => (rows === 1 ? '1 row' : `${rows} rows`);

/** The standing in a sentence or two. Rows without formulas are no runs, and nothing is all well while there are some. */
export function standingSentence(standing: Standing, calculation: Calculation = 'done'): string {
  if (standing.kind === 'no schedule') {
    return 'The sheet in view is no run schedule. Insert one above, or select its sheet.';
  }
  const { sheetName, runs, levels } = standing;
  if (runs === 0 && calculation === 'under way') return `“${sheetName}” is being calculated.`;
  const unfilled = standing.unfilled.length;
  const without = `${countedRows(unfilled)} without formulas`;
  if (runs === 0 && unfilled > 0) return `“${sheetName}”: no row has a verdict, ${without}.`;
  if (runs === 0) {
    return `“${sheetName}” has no runs yet. Give a row its load and its length.`;
  }
  const found = LEVELS.filter((level) => levels[level] > 0);
  const judged =
    isAllOk(standing) && unfilled === 0
      ? ['all ok by the published figures']
      : found.map((level) => `${levels[level]} ${level}`);
  return `“${sheetName}”: ${[counted(runs), ...judged, ...(unfilled > 0 ? [without] : [])].join(', ')}.`;
}

const COPY_DOWN = 'Copy the computed cells of the row above down.';
const FILLING_IN_EXCEL =
  'File, Options, Proofing, AutoCorrect Options, AutoFormat As You Type, “Include new rows and columns in table” and “Fill formulas in tables to create calculated columns”';

/** What to know of new rows, once it was found out that they get no formulas; empty where they do or nobody knows. */
export function newRowsSentence(fillsRows: boolean | undefined): string {
  if (fillsRows !== false) return '';
  return ` A row that was added to its table, to try it, got no formulas. Tick ${FILLING_IN_EXCEL} and insert it again; or, whenever you add a row: ${COPY_DOWN[0]!.toLowerCase()}${COPY_DOWN.slice(1)}`;
}

const ROWS = new Intl.ListFormat('en-GB');
const MOST_ROWS_NAMED = 5;

/** What to do about rows without formulas; empty where there are none. */
export function unfilledSentence(standing: Standing): string {
  const unfilled = standing.kind === 'schedule' ? standing.unfilled : [];
  if (unfilled.length === 0) return '';
  const named = unfilled.slice(0, MOST_ROWS_NAMED).map(String);
  const more = unfilled.length - named.length;
  const rows = ROWS.format(more > 0 ? [...named, `${more} more`] : named);
  const [which, have] = unfilled.length === 1 ? ['Row', 'has'] : ['Rows', 'have'];
  return `${which} ${rows} ${have} entries but no formulas, so no size, fuse or verdict. ${COPY_DOWN} In Excel, new rows fill by themselves where ${FILLING_IN_EXCEL} are ticked.`;
}

const CALCULATION_IN_WORDS: Readonly<Record<Calculation, string>> = {
  done: '',
  'under way': 'The spreadsheet is still calculating; the figures may change.',
  manual:
    'This workbook calculates only when asked (manual calculation): the figures may be older than the entries.',
};

/** Whether the figures can be trusted to follow the entries; empty where they can. */
export function calculationSentence(calculation: Calculation): string {
  return CALCULATION_IN_WORDS[calculation];
}
