/** How the schedule in view stands: its runs by verdict. */
import type { SheetGrid } from '../sheets/plan/grid';
import { countVerdicts, readSchedule } from '../sheets/schedule/reading';
import { levelOf, WORD, type Level } from '../sheets/station/verdicts';

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
      readonly notOk: number;
      readonly verdicts: readonly VerdictCount[];
    };

const ERRORS_IN_WORDS: Readonly<Record<string, string>> = {
  '#BUSY!': 'still being calculated',
  '#GETTING_DATA': 'still being calculated',
  '#NAME?': 'not calculated: the LOOM functions are not loaded',
};

/** A verdict as a person reads it, an error value included. */
export function verdictInWords(verdict: string): string {
  const inWords = ERRORS_IN_WORDS[verdict];
  if (inWords !== undefined) return inWords;
  return verdict.startsWith('#') ? `no verdict (${verdict})` : verdict;
}

/** The standing of what is in view; an empty sheet is null. */
export function standingOf(grid: SheetGrid | null): Standing {
  const reading = grid === null ? undefined : readSchedule(grid.values);
  if (grid === null || reading === undefined) return { kind: 'no schedule' };
  const counts = countVerdicts(reading);
  const runs = reading.rows.length;
  const ok = counts.find(([verdict]) => verdict === WORD.ok)?.[1] ?? 0;
  return {
    kind: 'schedule',
    sheetName: grid.sheetName,
    runs,
    notOk: runs - ok,
    verdicts: counts.map(([verdict, count]) => ({
      verdict: verdictInWords(verdict),
      runs: count,
      level: levelOf(verdict),
    })),
  };
}

const counted = (runs: number) => (runs === 1 ? '1 run' : `${runs} runs`);

/** The standing in a sentence or two. */
export function standingSentence(standing: Standing): string {
  if (standing.kind === 'no schedule') {
    return 'The sheet in view is no run schedule. Insert one above, or bring one into view.';
  }
  const { sheetName, runs, notOk } = standing;
  if (runs === 0) {
    return `“${sheetName}” has no runs yet. Give a row its load and its length.`;
  }
  const judged = notOk === 0 ? 'all ok by the published figures' : `${notOk} not ok`;
  return `“${sheetName}”: ${counted(runs)}, ${judged}.`;
}
