/** Batteries: how long a load runs, and the volts a rested pack stands at. */
import { noAnswer, type Outcome } from './outcome';
import { RESTING_VOLTS, type Chemistry } from './tables/resting-volts';

export interface Battery {
  /** Capacity at its rating, amp-hours. */
  readonly ampHours: number;
  /** Hours of the discharge that the capacity is rated for: 20 as a rule, 10 or 5 for some. */
  readonly ratedHours: number;
  /** Peukert's exponent: 1 where the capacity is the same at any current; lead-acid 1.1 to 1.3 (from memory). */
  readonly peukert: number;
  /** Share of the capacity that may be used. */
  readonly usable: number;
}

/**
 * Hours until the usable share is gone at a steady current: Peukert's law, H (C / (I H))^k, which gives the rated hours at
 * the rated current. Below the rated current the law promises more than the rated capacity. No answer for 0 amps.
 */
export function batteryHours(battery: Battery, amps: number): Outcome<number> {
  const { ampHours, ratedHours, peukert, usable } = battery;
  return amps > 0
    ? usable * ratedHours * (ampHours / (amps * ratedHours)) ** peukert
    : noAnswer('0 amps never empty a battery: there is no such time');
}

/** Volts of a rested pack at a share of its charge, 0 to 1; `cells` in series, left out the chemistry's usual pack. */
export function restingVolts(chemistry: Chemistry, charge: number, cells?: number): number {
  const table = RESTING_VOLTS[chemistry];
  const { points } = table;
  const above = Math.max(
    1,
    points.findIndex(([share]) => share >= charge),
  );
  const [lowCharge, lowVolts] = points[above - 1]!;
  const [highCharge, highVolts] = points[above]!;
  const volts =
    lowVolts + ((charge - lowCharge) / (highCharge - lowCharge)) * (highVolts - lowVolts);
  return (volts * (cells ?? table.usualCells)) / table.cells;
}
