/** Short-circuit current. */
import { noAnswer, type Outcome } from './outcome';

/**
 * Amps of a dead short at the far end of a run: source voltage over the resistance of source and run (Ohm's law; no
 * contact resistance in the short itself). None where nothing at all limits the current.
 */
export function faultAmps(volts: number, sourceMilliohms: number, ohms: number): Outcome<number> {
  const circuitOhms = sourceMilliohms / 1000 + ohms;
  return circuitOhms > 0
    ? volts / circuitOhms
    : noAnswer(
        'with no resistance at all nothing limits the current; give the source its milliohms',
      );
}
