/** The verdict of each row: everything that is wrong with it, in words. */
import { VERDICT_JOINT, VERDICT_WORDS } from '../../core/verdict';
import { isBlank, type ResultCell } from '../../functions/cell';
import type { ScheduleRun } from '../station/run';
import { SCHEDULE_WORDS } from '../station/verdicts';
import type { EntryColumns } from './entries';
import { isError, isNA, typed, type Column, type ReadyRows } from './rows';
import { isFused, type SizingColumns } from './sizing';
import type { PathColumns, TreeColumns } from './tree';

export interface VerdictColumns {
  readonly words: Column;
  readonly verdict: Column;
}

const wrong = (word: string) => VERDICT_JOINT + word;

/** Of the volts at low charge. */
function servedWords(low: ResultCell, short: ResultCell): string {
  if (isNA(low)) return wrong(SCHEDULE_WORDS.cannotBeServed);
  if (isError(low)) return wrong(SCHEDULE_WORDS.voltsUnknown);
  return short === 1 ? wrong(SCHEDULE_WORDS.tooFewVolts) : '';
}

/** Of the run by itself: RUN_VERDICT's own words. */
function ownWords(judged: ResultCell, ampacity: ResultCell): string {
  if (isNA(ampacity)) return wrong(SCHEDULE_WORDS.noAmpacity);
  return judged === VERDICT_WORDS.ok ? '' : wrong(String(judged));
}

/** Of the fuse upstream, for a run that has none. */
function branchWords(run: ScheduleRun, upstream: ResultCell, ampacity: ResultCell): string {
  const protects =
    typeof upstream === 'number' && typeof ampacity === 'number' && upstream <= ampacity;
  return isFused(run) || protects ? '' : wrong(SCHEDULE_WORDS.needsFuse);
}

export function verdictColumns(
  runs: readonly ScheduleRun[],
  { ownLoad, volts, target }: EntryColumns,
  { size, ampacity, judged }: SizingColumns,
  { treeWord, feederFuse }: TreeColumns,
  { lowVolts, shortLow }: PathColumns,
  protection: Column,
  { each }: ReadyRows,
): VerdictColumns {
  const words = each((run, row) => {
    const tree = treeWord[row]!;
    if (isError(tree)) return tree;
    if (tree !== '') return wrong(String(tree));
    if (isNA(size[row]!)) return wrong(SCHEDULE_WORDS.noSize);
    const own = judged[row]!;
    if (!isNA(ampacity[row]!) && isError(own)) return own;
    return (
      ownWords(own, ampacity[row]!) +
      servedWords(lowVolts[row]!, shortLow[row]!) +
      branchWords(run, feederFuse[row]!, ampacity[row]!) +
      String(protection[row])
    );
  });
  const verdict = runs.map((run, row): ResultCell => {
    const lengthBlank = isBlank(typed(run, 'length'));
    if (lengthBlank && isBlank(typed(run, 'peak'))) return '';
    if (lengthBlank) return SCHEDULE_WORDS.lengthMissing;
    if (ownLoad[row] === '') return SCHEDULE_WORDS.peakMissing;
    if (isBlank(volts[row]!) || isBlank(target[row]!)) return SCHEDULE_WORDS.voltsMissing;
    const said = words[row]!;
    if (isError(said)) return SCHEDULE_WORDS.checkEntries;
    if (said === '' && judged[row] === VERDICT_WORDS.ok) return VERDICT_WORDS.ok;
    return String(said).slice(VERDICT_JOINT.length) || SCHEDULE_WORDS.checkEntries;
  });
  return { words, verdict };
}
