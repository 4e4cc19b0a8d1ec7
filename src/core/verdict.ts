/** What is wrong with a run of a given size, in words. */
import { ampacity } from './ampacity';
import { ohmsPerM } from './conductor';
import { keepsTarget, mayHaveFuse, type RunDemand } from './gauge';
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

/** What a run of a size is held to, and whether it keeps it. */
export interface RunFindings {
  readonly ampacityA: number;
  /** Ohms per metre of one conductor at its temperature. */
  readonly ohmsPerM: number;
  readonly keepsDrop: boolean;
  readonly keepsHeat: boolean;
  readonly hasFuse: boolean;
}

/** Holds a run of a size to its limits; none where the size has no published ampacity to judge by. */
export function judgeRun(demand: RunDemand, size: ConductorSize): Outcome<RunFindings> {
  const ampacityA = ampacity(size, demand);
  if (isRefusal(ampacityA)) return ampacityA;
  const perM = ohmsPerM(size, demand.material, demand.tempC);
  return {
    ampacityA,
    ohmsPerM: perM,
    keepsDrop: keepsTarget(demand, perM),
    keepsHeat: atMost(demand.amps, ampacityA),
    hasFuse: mayHaveFuse(demand, size, ampacityA),
  };
}

/** Every verdict, by what is wrong: 1 for the drop, 2 for the heat, 4 for the fuse, added up. */
const VERDICTS = Array.from({ length: 8 }, (_, wrong) => {
  const words = (['drop', 'heat', 'fuse'] as const)
    .filter((_limit, at) => (wrong & (1 << at)) !== 0)
    .map((limit) => VERDICT_WORDS[limit]);
  return words.length === 0 ? VERDICT_WORDS.ok : words.join(VERDICT_JOINT);
});

/** "ok", or all that is wrong. */
export function verdictOf({ keepsDrop, keepsHeat, hasFuse }: RunFindings): string {
  return VERDICTS[(keepsDrop ? 0 : 1) + (keepsHeat ? 0 : 2) + (hasFuse ? 0 : 4)]!;
}

/** "ok", or all that is wrong; none where the size has no published ampacity to judge by. */
export function runVerdict(demand: RunDemand, size: ConductorSize): Outcome<string> {
  const found = judgeRun(demand, size);
  return isRefusal(found) ? found : verdictOf(found);
}
