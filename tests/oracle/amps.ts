/** What the loads draw and the runs carry. */
import { fuseShare } from '../../src/core/fuse';
import type { House } from './house';
import type { Run } from './runs';

/** Of a load by itself. */
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

/** `assumedVolts`: the fewest volts of a load in watts that does not say its minimum. */
export function ownAmps(run: Run, assumedVolts: number): OwnAmps {
  const usual = run.isWatts ? run.load / run.volts : run.load;
  const most = run.isWatts ? run.load / (run.leastVolts ?? assumedVolts) : run.load;
  return { usual, most, once: most * run.atOnce, rest: most * (1 - run.atOnce) };
}

/** The run's own load and all that it feeds. */
export function summed(run: Run, of: (each: Run) => number): number {
  let sum = of(run);
  for (const fed of run.feeds) sum += summed(fed, of);
  return sum;
}

export const runAmps = (run: Run, own: readonly OwnAmps[]) =>
  summed(run, ({ row }) => own[row]!.most);
export const onceAmps = (run: Run, own: readonly OwnAmps[]) =>
  summed(run, ({ row }) => own[row]!.once);

/** Least rating of the run's fuse: 125 % of what flows for hours at the usual volts, and all that may ever flow. */
export function leastFuseA(run: Run, house: House, own: readonly OwnAmps[]): number {
  const usual = summed(run, ({ row }) => own[row]!.usual);
  return Math.max(usual * fuseShare(house.continuous), runAmps(run, own));
}
