/** The length unit that a schedule's rules set. */
import type { LengthUnit } from '../core/length';
import { isRefusal } from '../core/outcome';
import { HOUSE_RULES, RULE_KEYS, type RuleReferences } from '../sheets/station/house-rules';

/** The usual unit is a value, no formula over other rules. */
const NO_REFERENCES = Object.fromEntries(RULE_KEYS.map((key) => [key, ''])) as RuleReferences;

/** The unit that a rule says; undefined where it says none. */
export function ruleUnit(given: string | number | undefined): LengthUnit | undefined {
  const unit = given === undefined ? undefined : HOUSE_RULES.unit.parameter.read(given);
  return unit === undefined || isRefusal(unit) ? undefined : (unit as LengthUnit);
}

/** The unit of a new schedule. */
export function usualUnit(): LengthUnit {
  const initial = HOUSE_RULES.unit.initial(NO_REFERENCES);
  return (typeof initial === 'string' ? ruleUnit(initial) : undefined) ?? 'm';
}
