/** How the schedule in view stands: its runs by verdict. */
import type { SheetGrid } from '../hosts/sheet-host';
import { VERDICT_JOINT, VERDICT_WORDS } from '../core/verdict';
import { countVerdicts, readSchedule } from '../sheets/schedule/reading';
import { SCHEDULE_WORDS } from '../sheets/station/verdicts';

/** How grave a verdict is, as the sheet colours it; "unfinished" has too little to be judged. */
export type Gravity = 'ok' | 'over' | 'danger' | 'unfinished';

export interface VerdictCount {
  /** In words; what a spreadsheet shows while it has no verdict is put into words too. */
  readonly verdict: string;
  readonly runs: number;
  readonly gravity: Gravity;
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

type Values<T> = T[keyof T];
export type VerdictWord = Values<typeof VERDICT_WORDS> | Values<typeof SCHEDULE_WORDS>;

/** One for every word that a verdict can have, so that a new word does not compile until it is judged. */
const GRAVITY_OF: Readonly<Record<VerdictWord, Gravity>> = {
  [VERDICT_WORDS.ok]: 'ok',
  [VERDICT_WORDS.heat]: 'danger',
  [VERDICT_WORDS.fuse]: 'danger',
  [SCHEDULE_WORDS.needsFuse]: 'danger',
  [SCHEDULE_WORDS.fuseTooSlow]: 'danger',
  [SCHEDULE_WORDS.faultTooWeak]: 'danger',
  [SCHEDULE_WORDS.mayNotBreak]: 'danger',
  [SCHEDULE_WORDS.tooHot]: 'danger',
  [SCHEDULE_WORDS.noSize]: 'danger',
  [SCHEDULE_WORDS.noAmpacity]: 'danger',
  [VERDICT_WORDS.drop]: 'over',
  [SCHEDULE_WORDS.tooFewVolts]: 'over',
  [SCHEDULE_WORDS.cannotBeServed]: 'over',
  [SCHEDULE_WORDS.peakMissing]: 'unfinished',
  [SCHEDULE_WORDS.lengthMissing]: 'unfinished',
  [SCHEDULE_WORDS.voltsMissing]: 'unfinished',
  [SCHEDULE_WORDS.nameMissing]: 'unfinished',
  [SCHEDULE_WORDS.nameTwice]: 'unfinished',
  [SCHEDULE_WORDS.feederNotListed]: 'unfinished',
  [SCHEDULE_WORDS.inLoop]: 'unfinished',
  [SCHEDULE_WORDS.tiedToAnother]: 'unfinished',
  [SCHEDULE_WORDS.voltsUnknown]: 'unfinished',
  [SCHEDULE_WORDS.checkEntries]: 'unfinished',
  [SCHEDULE_WORDS.notJudged]: 'unfinished',
};
const GRAVITIES = new Map<string, Gravity>(Object.entries(GRAVITY_OF));
const GRAVEST_FIRST: readonly Gravity[] = ['danger', 'over', 'unfinished', 'ok'];

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

function gravityOf(verdict: string): Gravity {
  const found = verdict.split(VERDICT_JOINT).map((word) => GRAVITIES.get(word) ?? 'unfinished');
  return GRAVEST_FIRST.find((gravity) => found.includes(gravity)) ?? 'unfinished';
}

/** The standing of what is in view; an empty sheet is null. */
export function standingOf(grid: SheetGrid | null): Standing {
  const reading = grid === null ? undefined : readSchedule(grid.values);
  if (grid === null || reading === undefined) return { kind: 'no schedule' };
  const counts = countVerdicts(reading);
  const runs = reading.rows.length;
  const ok = counts.find(([verdict]) => verdict === VERDICT_WORDS.ok)?.[1] ?? 0;
  return {
    kind: 'schedule',
    sheetName: grid.sheetName,
    runs,
    notOk: runs - ok,
    verdicts: counts.map(([verdict, count]) => ({
      verdict: verdictInWords(verdict),
      runs: count,
      gravity: gravityOf(verdict),
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
