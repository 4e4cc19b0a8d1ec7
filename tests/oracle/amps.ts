/** What the loads draw and the runs carry. */
import { fuseShare } from '../../src/core/fuse';
import { from, NO_ANSWER, type Figure } from './figures';
import type { House } from './house';
import type { Run } from './runs';

/** Of a load by itself; NaN throughout where it cannot be told. */
export interface OwnAmps {
  /** At the usual volts. */
  readonly usual: number;
  /** The most it may draw: for watts at the fewest volts that it is sized for. */
  readonly most: number;
  /** Of the most, what counts while volts are judged. */
  readonly once: number;
  /** The rest of it, which counts for nobody but itself. */
  readonly rest: number;
}

/**
 * `assumedVolts`: the fewest volts of a load in watts that does not say its minimum. At more than its source volts no load
 * draws, so it is sized for those at most.
 */
export function ownAmps(run: Run, assumedVolts: number): OwnAmps {
  const usual = run.isWatts ? run.load / run.volts : run.load;
  const fewest = run.leastVolts === undefined ? assumedVolts : Math.min(run.leastVolts, run.volts);
  const most = run.isWatts ? run.load / fewest : run.load;
  return { usual, most, once: most * run.atOnce, rest: most * (1 - run.atOnce) };
}

/** The run's own load and all that it feeds. */
export function summed(run: Run, of: (each: Run) => number): number {
  let sum = of(run);
  for (const fed of run.feeds) sum += summed(fed, of);
  return sum;
}

/** None where some load below cannot be told, or the tree cannot be followed. */
export function runAmps(run: Run, own: readonly OwnAmps[]): Figure {
  const amps = summed(run, ({ row }) => own[row]!.most);
  return run.standing === 'followed' && !Number.isNaN(amps) ? amps : NO_ANSWER;
}

/** Of a run whose amps are known. */
export const onceAmps = (run: Run, own: readonly OwnAmps[]) =>
  summed(run, ({ row }) => own[row]!.once);

/** Least rating of the run's fuse: 125 % of what flows for hours at the usual volts, and all that may ever flow. */
export function leastFuseA(run: Run, house: House, own: readonly OwnAmps[]): Figure {
  const usual = summed(run, ({ row }) => own[row]!.usual);
  return from(runAmps(run, own), (amps) => Math.max(usual * fuseShare(house.continuous), amps));
}
