/** Whether a change leaves every run at least as well judged as it was. */
import { VERDICT_JOINT } from '../core/verdict';
import type { ResultCell } from '../functions/cell';
import type { RunValues, StationValues } from './station-values';
import { LEVELS } from './station/verdicts';

/** A run of which something worse is said than before, by its place in the list from 0. */
export interface Worsened {
  readonly run: number;
  /** The words that are new. */
  readonly words: readonly string[];
}

const wordsOf = (verdict: ResultCell): readonly string[] => String(verdict).split(VERDICT_JOINT);

/** A verdict that was still to come counts as the gravest. */
const levelOf = ({ level }: RunValues): number => (typeof level === 'number' ? level : 0);

/**
 * The runs that are graver than before, or of which a word is said that was not said before; "ok" is no such word. Where
 * nothing is said of a run, nothing can be worse.
 */
export function worsened(before: StationValues, after: StationValues): readonly Worsened[] {
  return after.runs.flatMap((now, run): Worsened[] => {
    const was = before.runs[run]!;
    if (now.verdict === was.verdict) return [];
    const said = new Set(wordsOf(was.verdict));
    const words = levelOf(now) === LEVELS.length ? [] : wordsOf(now.verdict);
    const added = words.filter((word) => !said.has(word));
    return added.length > 0 || levelOf(now) < levelOf(was) ? [{ run, words: added }] : [];
  });
}
