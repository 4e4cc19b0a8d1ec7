/** What is wrong with a run of a given size, in words. */
import { ampacity } from './ampacity';
import { lostVolts, runOhms } from './drop';
import { fuseOf, type RunDemand } from './gauge';
import { atMost } from './limits';
import { isRefusal, type Outcome } from './outcome';
import type { ConductorSize } from './size';

/** The words of a verdict, in the order they are told. */
export const VERDICT_WORDS = {
  ok: 'ok',
  drop: 'drop over target',
  heat: 'over ampacity',
  fuse: 'no fuse fits',
} as const;

export const VERDICT_JOINT = '; ';

/** "ok", or all that is wrong; none where the size has no published ampacity to judge by. */
export function runVerdict(demand: RunDemand, size: ConductorSize): Outcome<string> {
  const ampacityA = ampacity(size, demand);
  if (isRefusal(ampacityA)) return ampacityA;
  const wrong: string[] = [];
  if (!atMost(lostVolts(demand.amps, runOhms(size, demand)), demand.volts * demand.maxDrop)) {
    wrong.push(VERDICT_WORDS.drop);
  }
  if (!atMost(demand.amps, ampacityA)) wrong.push(VERDICT_WORDS.heat);
  if (isRefusal(fuseOf(demand, size, ampacityA))) {
    wrong.push(VERDICT_WORDS.fuse);
  }
  return wrong.length === 0 ? VERDICT_WORDS.ok : wrong.join(VERDICT_JOINT);
}
