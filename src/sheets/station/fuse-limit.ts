/** The rule for fuses of small wires, as figures that a formula can pick from. */
import { FUSE_LIMITS, fuseLimitA } from '../../core/fuse-limit';
import type { ConductorSize } from '../../core/size';
import { MATERIALS, type Material } from '../../core/tables/materials';
import { text } from '../plan/formula';
import { fuseLimitInForce, type RuleReferences } from './house-rules';

const [NONE, SMALL_WIRES] = FUSE_LIMITS;

/** More amps than any fuse: what stands where the rule sets no limit. */
export const UNLIMITED_A = 1e9;

/** The greatest fuse of a size by the rule, in each material. */
export function smallWireLimits(size: ConductorSize): readonly (readonly [Material, number])[] {
  return MATERIALS.map((material) => [
    material,
    fuseLimitA(SMALL_WIRES, size, material) ?? UNLIMITED_A,
  ]);
}

/** The limit in force, as a formula; `limit` is that of the rule for the material in force. */
export function limitInForce(rule: RuleReferences, limit: string): string {
  return `IF(${fuseLimitInForce(rule)}=${text(NONE)},${UNLIMITED_A},${limit})`;
}

/** The limit of one size for the house rules in force, as a formula. */
export function fuseLimitAt(size: ConductorSize, rule: RuleReferences): string {
  const limits = smallWireLimits(size);
  if (limits.every(([, limitA]) => limitA === UNLIMITED_A)) return String(UNLIMITED_A);
  const [[, usual], ...others] = limits as [[Material, number], ...[Material, number][]];
  const byMaterial = others.reduceRight(
    (further, [material, limitA]) =>
      `IF(${rule.material}=${text(material)},${limitA},${further})`,
    String(usual),
  );
  return limitInForce(rule, byMaterial);
}
