/**
 * Constants of the adiabatic equation, IEC 60949 (the same in IEC 60364-5-54, annex A), from memory; they reproduce
 * the printed k factors of IEC 60364-5-54. Melting points from memory.
 */
import type { Material } from './materials';

export interface ShortCircuitConstants {
  /** Heat capacity per volume of the metal at 20 degC. */
  readonly joulePerKelvinMm3: number;
  readonly ohmMmAt20C: number;
  /** Reciprocal of the resistance's temperature coefficient at 0 degC. */
  readonly betaK: number;
  readonly meltsC: number;
}

const COPPER: ShortCircuitConstants = {
  joulePerKelvinMm3: 3.45e-3,
  ohmMmAt20C: 17.241e-6,
  betaK: 234.5,
  meltsC: 1083,
};

const ALUMINIUM: ShortCircuitConstants = {
  joulePerKelvinMm3: 2.5e-3,
  ohmMmAt20C: 28.264e-6,
  betaK: 228,
  meltsC: 658,
};

/**
 * Tinned copper counts as copper: the coat is too thin to matter. Copper-clad aluminium counts as plain aluminium,
 * which stores less heat and resists more than the clad metal, so its time is told too short rather than too long.
 */
export const SHORT_CIRCUIT_CONSTANTS: Readonly<Record<Material, ShortCircuitConstants>> = {
  copper: COPPER,
  'tinned copper': COPPER,
  aluminium: ALUMINIUM,
  'copper-clad aluminium': ALUMINIUM,
};
