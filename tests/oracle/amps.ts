/** What the runs carry. */
import type { Run } from './runs';

/** Amps of the run's own load: watts at the least volts it works with, or else at what the target leaves. */
export function ownAmps(run: Run): number {
  if (!run.isWatts) return run.load;
  return run.load / (run.leastVolts ?? run.volts * (1 - run.target));
}

/** Its own load and all that it feeds. */
export function runAmps(run: Run): number {
  let amps = ownAmps(run);
  for (const fed of run.feeds) amps += runAmps(fed);
  return amps;
}
