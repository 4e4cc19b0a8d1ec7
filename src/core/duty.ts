/** Loads that come and go: the mean current empties the battery, the r.m.s. current warms the conductor. */
import { atMost } from './limits';
import { invalid, type Outcome } from './outcome';

/** One state of a load: transmitting, receiving, on standby. */
export interface DutyState {
  readonly amps: number;
  /** Share of its time that the load spends in it. */
  readonly share: number;
}

/** The shares' sum is at most the whole time; the rest of it the load is off. */
function checkShares(states: readonly DutyState[]): Outcome<readonly DutyState[]> {
  const whole = states.reduce((sum, { share }) => sum + share, 0);
  return atMost(whole, 1)
    ? states
    : invalid(
        `share: the shares sum to ${Number(whole.toPrecision(6))}; they are parts of one load's time, at most 1 together`,
      );
}

/** Mean amps over all states, the rest off; refused where the shares sum to more than 1. */
export function dutyAmps(states: readonly DutyState[]): Outcome<number> {
  const checked = checkShares(states);
  return 'refused' in checked
    ? checked
    : checked.reduce((sum, { amps, share }) => sum + amps * share, 0);
}

/**
 * R.m.s. amps over all states, the rest off: the steady current that would heat a conductor as much (Joule's law). Good
 * for states that change faster than the conductor warms, which takes minutes; a longer one counts by itself.
 */
export function heatingAmps(states: readonly DutyState[]): Outcome<number> {
  const checked = checkShares(states);
  return 'refused' in checked
    ? checked
    : Math.sqrt(checked.reduce((sum, { amps, share }) => sum + amps ** 2 * share, 0));
}
