/** Solar panels as sources: the current their wiring is chosen for, and their volts on the coldest morning. */

/** Sun brighter than the test's, NFPA 70 690.8(A)(1): the most a panel may deliver, as a share of its short circuit. */
export const BRIGHT_SUN = 1.25;
/** Continuous current, NFPA 70 690.8(B): conductors and fuses are chosen for this share of it. */
export const CONTINUOUS = 1.25;
/** Temperature at which data sheets give a panel's volts (IEC 61215 standard test conditions), degC. */
export const RATED_AT_C = 25;

/** Amps that a panel's conductors and fuse are chosen for: its short-circuit amps times 1.25 times 1.25. */
export function pvDesignAmps(shortCircuitAmps: number): number {
  return shortCircuitAmps * BRIGHT_SUN * CONTINUOUS;
}

/**
 * Open-circuit volts at the coldest expected temperature, from those at 25 degC and the data sheet's temperature
 * coefficient in per cent per degC (a negative number); a straight line, NFPA 70 690.7(A)(1).
 */
export function pvColdVolts(
  openCircuitVolts: number,
  coldestC: number,
  percentPerC: number,
): number {
  return openCircuitVolts * (1 + (percentPerC / 100) * (coldestC - RATED_AT_C));
}
