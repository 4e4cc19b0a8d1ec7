/** The greatest fuse that a rule allows on a small wire, whatever its ampacity. */
import { atMost } from './limits';
import { sizeAreaMm2, type ConductorSize } from './size';
import { gaugeAreaMm2 } from './tables/awg';
import { MATERIALS, type Material } from './tables/materials';
import { NFPA70_240_4_D, UNLIMITED_FROM_GAUGE } from './tables/nfpa70-240-4-d';

export const FUSE_LIMITS = ['none', 'NFPA 70 240.4(D)'] as const;
/** Which rule limits the fuses of small wires. */
export type FuseLimit = (typeof FUSE_LIMITS)[number];

const UNLIMITED_FROM_MM2 = gaugeAreaMm2(UNLIMITED_FROM_GAUGE);
/** The rule's rows by metal area, thickest first. */
const LIMITS = Object.fromEntries(
  MATERIALS.map((material) => [
    material,
    [...NFPA70_240_4_D[material]]
      .map(([gauge, limitA]) => ({ areaMm2: gaugeAreaMm2(gauge), limitA }))
      .reverse(),
  ]),
) as Record<Material, { areaMm2: number; limitA: number }[]>;

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
  const sizeMm2 = sizeAreaMm2(size);
  if (rule === 'none' || atMost(UNLIMITED_FROM_MM2, sizeMm2)) return undefined;
  for (const { areaMm2, limitA } of LIMITS[material]) {
    if (atMost(areaMm2, sizeMm2)) return limitA;
  }
  return 0;
}
