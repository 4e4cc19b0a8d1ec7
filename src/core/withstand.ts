/** How long a conductor bears a short circuit. */
import { invalid, noAnswer, type Outcome } from './outcome';
import { sizeAreaMm2, type ConductorSize } from './size';
import type { Material } from './tables/materials';
import { SHORT_CIRCUIT_CONSTANTS } from './tables/short-circuit-constants';

/** PVC insulation, IEC 60364-5-54: warm from its load, and the most it bears for up to 5 s. */
export const USUAL_START_C = 70;
export const USUAL_LIMIT_C = 160;

export interface HeatSpan {
  /** Conductor before the short circuit. */
  readonly startC: number;
  /** What the insulation bears briefly, or the metal. */
  readonly limitC: number;
  readonly material: Material;
}

/**
 * k in A s^0.5 per mm2 of the adiabatic equation I^2 t = (k S)^2: sqrt(Qc (b + 20) / rho20 x ln((b + limit) /
 * (b + start))), IEC 60949, IEC 60364-5-54 annex A. Refuses a limit not above the start, or beyond the melting point.
 */
export function shortCircuitK({ startC, limitC, material }: HeatSpan): Outcome<number> {
  const { joulePerKelvinMm3, ohmMmAt20C, betaK, meltsC } = SHORT_CIRCUIT_CONSTANTS[material];
  if (limitC <= startC) {
    return invalid(
      `limit_c: ${limitC} is not above start_c, ${startC}; the metal is as hot already`,
    );
  }
  if (limitC > meltsC) {
    return invalid(`limit_c: ${limitC} is beyond ${meltsC} degC, at which ${material} melts`);
  }
  const heating = Math.log((betaK + limitC) / (betaK + startC));
  return Math.sqrt(((joulePerKelvinMm3 * (betaK + 20)) / ohmMmAt20C) * heating);
}

/**
 * Seconds until a current in amps has heated a conductor from start to limit, all heat staying in the metal. The area
 * is the nominal one, as the standard takes it. Heat that leaves meanwhile makes the true time longer, noticeably so
 * beyond about 5 s; but the limits published for insulation also hold for no longer than 5 s.
 */
export function withstandSeconds(
  size: ConductorSize,
  amps: number,
  span: HeatSpan,
): Outcome<number> {
  const k = shortCircuitK(span);
  if (typeof k !== 'number') return k;
  return amps > 0
    ? ((k * sizeAreaMm2(size)) / amps) ** 2
    : noAnswer('0 amps never heat the conductor: there is no longest time');
}
