/**
 * Insulation wall of single PVC-insulated conductors by size: UL 83, building wire with a nylon coat (the PVC wall
 * alone, without the nylon), printed in thousandths of an inch; read in two makers' lists up to 500 kcmil, above that
 * from memory. Thinner than 14 AWG keeps the thinnest wall (hook-up wire of UL 758 has 15 mils as well; from memory).
 * These are thin walls; most flexible cable has thicker ones and, at working temperatures, runs cooler for the wider
 * surface.
 */
import { gaugeAreaMm2 } from './awg';

export interface InsulationWall {
  /** The thinnest conductor that has this wall. */
  readonly fromAreaMm2: number;
  readonly wallMm: number;
}

const MM_PER_MIL = 0.0254;
const MM2_PER_KCMIL = (Math.PI / 4) * 0.0254 ** 2 * 1000;

/** Ascending. */
export const INSULATION_WALLS: readonly InsulationWall[] = [
  { fromAreaMm2: 0, wallMm: 15 * MM_PER_MIL },
  { fromAreaMm2: gaugeAreaMm2(10), wallMm: 20 * MM_PER_MIL },
  { fromAreaMm2: gaugeAreaMm2(8), wallMm: 30 * MM_PER_MIL },
  { fromAreaMm2: gaugeAreaMm2(4), wallMm: 40 * MM_PER_MIL },
  { fromAreaMm2: gaugeAreaMm2(1), wallMm: 50 * MM_PER_MIL },
  { fromAreaMm2: 250 * MM2_PER_KCMIL, wallMm: 60 * MM_PER_MIL },
  { fromAreaMm2: 550 * MM2_PER_KCMIL, wallMm: 70 * MM_PER_MIL },
];

/** Wall in mm that is assumed where none is given: that of the listed size that is not thicker. */
export function usualWallMm(areaMm2: number): number {
  return INSULATION_WALLS.findLast((row) => row.fromAreaMm2 <= areaMm2)!.wallMm;
}
