/** How the resistance of wire follows its temperature, as a formula. */
import { MATERIAL_CONSTANTS, MATERIALS } from '../../core/tables/materials';
import { text } from '../plan/formula';
import { conductorTempInForce, type RuleReferences } from './house-rules';

/**
 * Resistance at a temperature in degC, over that at the conductor temperature of the house rules: of their material, by
 * 1 + a (T - 20), as resistanceRatio of the core. An error where the temperature is none.
 */
export function warmthOver(rule: RuleReferences, tempC: string): string {
  const perKelvin = MATERIALS.reduceRight(
    (further, material) =>
      `IF(${rule.material}=${text(material)},${MATERIAL_CONSTANTS[material].perKelvin},${further})`,
    String(MATERIAL_CONSTANTS[MATERIALS[0]].perKelvin),
  );
  const ratio = (temperature: string) => `(1+${perKelvin}*(${temperature}-20))`;
  return `${ratio(tempC)}/${ratio(conductorTempInForce(rule))}`;
}
