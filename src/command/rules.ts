/** House rules as they are given in a terminal: name=value, checked by the functions' own words. */
import { isRefusal } from '../core/outcome';
import { readNumber } from '../functions/parameter';
import { HOUSE_RULES, RULE_KEYS, type RuleKey } from '../sheets/station/house-rules';
import type { GivenRules } from '../lists/read-runs';

/** A rule that cannot be taken; the message says which names or values exist. */
export class UnknownRule extends Error {
  override readonly name = 'UnknownRule';
}

function isRuleKey(name: string): name is RuleKey {
  return (RULE_KEYS as readonly string[]).includes(name);
}

/** Reads "target=2%" and the like. Throws UnknownRule. */
export function readRules(given: readonly string[]): GivenRules {
  const rules: Partial<Record<RuleKey, string | number>> = {};
  for (const pair of given) {
    const [, name = '', value = ''] = /^([^=]*)=(.*)$/s.exec(pair) ?? [];
    const key = name.trim();
    if (!isRuleKey(key)) {
      throw new UnknownRule(
        `"${pair}" is no house rule. Write name=value; the names are ${RULE_KEYS.join(', ')}.`,
      );
    }
    rules[key] = ruleValue(key, value.trim());
  }
  return rules;
}

function ruleValue(key: RuleKey, text: string): string | number {
  const { parameter } = HOUSE_RULES[key];
  const choice = parameter.choices?.find((one) => one.toLowerCase() === text.toLowerCase());
  if (choice !== undefined) return choice;
  const read = parameter.read(text);
  if (isRefusal(read)) throw new UnknownRule(`${key}: ${read.why}.`);
  if (parameter.choices !== undefined && !parameter.choices.includes(String(read))) {
    throw new UnknownRule(`${key}: "${text}" is not one of ${parameter.choices.join(', ')}.`);
  }
  if (typeof read === 'string') return read;
  const number = readNumber(text);
  return isRefusal(number) ? text : number;
}

/** One line a rule: its name, what it means, and its choices. */
export function ruleLines(): readonly string[] {
  const width = Math.max(...RULE_KEYS.map((key) => key.length));
  return RULE_KEYS.map((key) => {
    const { label, parameter } = HOUSE_RULES[key];
    const choices = parameter.choices === undefined ? '' : ` (${parameter.choices.join(', ')})`;
    return `  ${key.padEnd(width)}  ${label}${choices}`;
  });
}
