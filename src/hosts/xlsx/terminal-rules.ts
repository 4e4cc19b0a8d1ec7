/** House rules as they are given in a terminal: name=value, checked by the functions' own words. */
import { isRefusal } from '../../core/outcome';
import { readNumber } from '../../functions/word';
import { HOUSE_RULES, RULE_KEYS, type RuleKey } from '../../sheets/house-rules';
import type { GivenRules } from './read';

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
  const { word } = HOUSE_RULES[key];
  const choice = word.choices?.find((one) => one.toLowerCase() === text.toLowerCase());
  if (choice !== undefined) return choice;
  const read = word.read(text);
  if (isRefusal(read)) throw new UnknownRule(`${key}: ${read.why}.`);
  if (word.choices !== undefined && !word.choices.includes(String(read))) {
    throw new UnknownRule(`${key}: "${text}" is not one of ${word.choices.join(', ')}.`);
  }
  if (typeof read === 'string') return read;
  const number = readNumber(text);
  return isRefusal(number) ? text : number;
}

/** One line a rule: its name, what it means, and its choices. */
export function ruleLines(): readonly string[] {
  const width = Math.max(...RULE_KEYS.map((key) => key.length));
  return RULE_KEYS.map((key) => {
    const { label, word } = HOUSE_RULES[key];
    const choices = word.choices === undefined ? '' : ` (${word.choices.join(', ')})`;
    return `  ${key.padEnd(width)}  ${label}${choices}`;
  });
}
