/** Where the house rules stand on their sheet. */
import { area, type Area } from '../plan/area';
import { RULE_KEYS, type RuleKey } from '../station/house-rules';

/** Zero-based rows of the sheet's parts. */
export const RULES_ROW = { title: 0, of: 1, header: 2, first: 3 } as const;
export const RULES_COLUMN = { label: 0, value: 1, meaning: 2 } as const;

export function ruleArea(key: RuleKey): Area {
  return area(RULES_ROW.first + RULE_KEYS.indexOf(key), RULES_COLUMN.value);
}

export function ruleAreas(): readonly (readonly [RuleKey, Area])[] {
  return RULE_KEYS.map((key) => [key, ruleArea(key)] as const);
}
