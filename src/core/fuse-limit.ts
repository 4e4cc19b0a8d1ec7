/** The greatest fuse that a rule allows on a small wire, whatever its ampacity. */
import { atMost } from './limits';
import { sizeAreaMm2, type ConductorSize } from './size';
import { gaugeAreaMm2 } from './tables/awg';
import type { Material } from './tables/materials';
import { NFPA70_240_4_D, UNLIMITED_FROM_GAUGE } from './tables/nfpa70-240-4-d';

export const FUSE_LIMITS = ['none', 'NFPA 70 240.4(D)'] as const;
/** Which rule limits the fuses of small wires. */
export type FuseLimit = (typeof FUSE_LIMITS)[number];

/**
 * Amps of the greatest fuse that the rule allows on a conductor; undefined where it sets no limit. A size that the rule
 * does not list, and an area in mm2, counts as the thickest listed gauge that is not thicker than it (6 mm2 as 10 AWG,
 * 10 mm2 as 8 AWG, which has no limit). A conductor thinner than every gauge of the rule may have no fuse at all: 0.
 */
export function fuseLimitA(
  rule: FuseLimit,
  size: ConductorSize,
  material: Material,
): number | undefined {
  const isAtLeast = (gauge: number) => atMost(gaugeAreaMm2(gauge), sizeAreaMm2(size));
  if (rule === 'none' || isAtLeast(UNLIMITED_FROM_GAUGE)) return undefined;
  const row = [...NFPA70_240_4_D[material]].findLast(([gauge]) => isAtLeast(gauge));
  return row?.[1] ?? 0;
}
