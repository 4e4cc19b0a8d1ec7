/**
 * Faults of the sheets that the oracle found and that are not fixed yet, each by name. What they touch, and nothing else,
 * is left out of the comparison and counted; the test fails when one of them no longer occurs, so that it is taken out here.
 */
import { CellError } from '../../src/functions/cell';
import type { StationValues } from '../../src/sheets/station-values';
import { verdictsIn, type VerdictKey } from '../../src/sheets/station/verdicts';
import type { OracleRun, OracleStation } from './oracle';
import { NO_ANSWER } from './figures';

export const SET_ASIDE = {
  rooms:
    'the room of a run that feeds others is rounded to 6e-8 V per ampere and unit of weight: sizes differ in long runs of small units',
  steady:
    'a wire hotter than 300 degC makes an error of all that the Protection sheet finds wrong with the run',
  branchFuse:
    'a branch without a fuse is judged by the kind and the I2t of its own row, not by those of the fuse upstream',
  makersI2t:
    "a maker's I2t counts below the last published point, where a fuse loses heat, and not where it is above the estimate",
  robbed:
    'a run of which the runs above leave nothing is told that no wire is thick enough, where its own joints outweigh the lack',
  craftFuse:
    'in craft a fuse within 150 % of the ampacity is taken only where 125 % of the load is within the ampacity too',
  noCover:
    'a fuse above that has no rating, since none fits its run, counts as one that breaks the fault',
  mainVolts:
    'the main fuse is held against the charging volts, even where the resting volts are above them',
} as const;

export type SetAside = keyof typeof SET_ASIDE;

/** Half the distance between doubles next to 1e9, which the sheet adds and takes off again. */
const ROUNDING = 2 ** -24;

/** Whether the rounding alone makes some run of the station another size. */
export function isRoundedElsewhere(ours: OracleStation, sheets: StationValues): boolean {
  return ours.runs.some((run, row) => {
    const { room, suggested, setBy } = sheets.runs[row]!;
    if (run.room === NO_ANSWER || typeof room !== 'number' || !run.feedsOthers) return false;
    const apart = Math.abs(run.room - room);
    const isOther =
      run.setBy !== setBy ||
      run.suggestedText !== (suggested instanceof CellError ? undefined : suggested);
    return isOther && apart > 0 && apart <= 1.01 * ROUNDING * run.roomPerRounding;
  });
}

/** With a word more or less a row may be ok. */
const FUSE_WORDS: readonly VerdictKey[] = ['fuseTooSlow', 'faultTooWeak', 'ok'];

function differing(run: OracleRun, text: string): readonly VerdictKey[] {
  const theirs = new Set(verdictsIn(text));
  return [
    ...[...run.verdict].filter((key) => !theirs.has(key)),
    ...[...theirs].filter((key) => !run.verdict.has(key)),
  ];
}

/** The fault that a difference in one cell of a row is put down to; nothing where it is none of these. */
export function reasonOf(
  run: OracleRun,
  sheets: StationValues,
  row: number,
  key: string,
): SetAside | undefined {
  const protection = sheets.protection.rows[row]!;
  const text = String(sheets.runs[row]!.verdict);
  const words = differing(run, text);
  const isOfVerdict = key === 'verdict' || key === 'level';
  const only = (...keys: readonly VerdictKey[]) =>
    words.length > 0 && words.every((word) => keys.includes(word));
  const isOfTimes =
    key === 'nearOpens' || key === 'farOpens' || (isOfVerdict && only(...FUSE_WORDS));

  if (isOfVerdict && protection.steady instanceof CellError && words.includes('tooHot'))
    return 'steady';
  if (isOfTimes && run.leansOnOtherFigures) return 'branchFuse';
  if (isOfTimes && key !== 'farOpens' && run.protector?.makersI2t !== undefined) return 'makersI2t';
  if (isOfVerdict && only('noRoom', 'noSize')) return 'robbed';
  if (isOfVerdict && only('mayNotBreak', 'coveredByMain')) return 'noCover';
  if (run.verdict.has('craftFuse') && !verdictsIn(text).includes('craftFuse')) return 'craftFuse';
  if (isOfVerdict && only('mainVolts') && run.verdict.has('mainVolts')) return 'mainVolts';
  return undefined;
}
