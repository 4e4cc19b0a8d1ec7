/** What is wrong with a run, as a set of the verdicts' keys. */
import { atMost } from '../../src/core/limits';
import type { VERDICT_WORDS } from '../../src/core/verdict';
import type { VerdictKey } from '../../src/sheets/station/verdicts';
import { NO_ANSWER } from './figures';
import type { Faults, Heat } from './faults';
import type { Protector } from './fuses';
import type { Run } from './runs';
import type { ArrivingVolts } from './volts';
import type { Wire } from './wires';

/** The words that a run earns by itself; their keys are those of the sheet. */
type OwnWord = keyof typeof VERDICT_WORDS & VerdictKey;

export interface Judged {
  readonly run: Run;
  readonly amps: number;
  readonly wire: Wire;
  readonly low: ArrivingVolts;
  readonly fuse: Protector | undefined;
  readonly faults: Faults | undefined;
  readonly heat: Heat | undefined;
}

function ownWords({ run, amps, wire }: Judged): readonly OwnWord[] {
  const { ohms, ampacityA, fittingA } = wire;
  const words: OwnWord[] = [];
  if (ohms !== NO_ANSWER && !atMost(amps * ohms, run.volts * run.target)) words.push('drop');
  if (ampacityA !== NO_ANSWER && !atMost(amps, ampacityA)) words.push('heat');
  if (fittingA === NO_ANSWER) words.push('fuse');
  return words;
}

/** Whether nothing is shown to protect the wire: no fuse above it, one beyond its ampacity, or no ampacity to hold it to. */
function needsFuse({ run, wire, fuse }: Judged): boolean {
  if (run.fused) return false;
  const { ampacityA } = wire;
  return fuse === undefined || ampacityA === NO_ANSWER || !atMost(fuse.ratingA, ampacityA);
}

function voltsWords({ run, low }: Judged): readonly VerdictKey[] {
  if (low.cannotBeServed) return ['cannotBeServed'];
  if (low.volts === NO_ANSWER) return ['voltsUnknown'];
  return run.leastVolts !== undefined && !atMost(run.leastVolts, low.volts) ? ['tooFewVolts'] : [];
}

export function verdictOf(judged: Judged): ReadonlySet<VerdictKey> {
  const { wire, faults, heat } = judged;
  if (wire.size === NO_ANSWER) return new Set<VerdictKey>(['noSize']);
  const words = new Set<VerdictKey>(voltsWords(judged));
  if (wire.ampacityA === NO_ANSWER) words.add('noAmpacity');
  else for (const word of ownWords(judged)) words.add(word);
  if (needsFuse(judged)) words.add('needsFuse');
  if (faults?.isWeak) words.add('faultTooWeak');
  if (faults?.isSlow) words.add('fuseTooSlow');
  if (faults?.isUnbroken) words.add('mayNotBreak');
  if (heat?.isTooHot) words.add('tooHot');
  if (faults?.far.faultA === NO_ANSWER) words.add('notJudged');
  return words.size === 0 ? new Set<VerdictKey>(['ok']) : words;
}
