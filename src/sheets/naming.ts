/** Names for a new schedule that nothing in the workbook has yet. */
import { RULE_KEYS, type RuleReferences } from './house-rules';

export interface ScheduleNames {
  readonly sheet: string;
  readonly table: string;
  readonly rule: RuleReferences;
}

function namesNumbered(number: number): ScheduleNames {
  const suffix = number === 1 ? '' : String(number);
  const rule = Object.fromEntries(RULE_KEYS.map((key) => [key, `LoomRules${suffix}_${key}`]));
  return {
    sheet: number === 1 ? 'Run schedule' : `Run schedule ${number}`,
    table: `LoomRuns${suffix}`,
    rule: rule as RuleReferences,
  };
}

/**
 * The first numbering of which no name is taken; the sets hold lower-case names, since spreadsheets do not tell case
 * apart.
 */
export function freeScheduleNames(taken: {
  readonly sheets: ReadonlySet<string>;
  readonly names: ReadonlySet<string>;
}): ScheduleNames {
  for (let number = 1; ; number += 1) {
    const names = namesNumbered(number);
    const wanted = [names.table, ...Object.values(names.rule)];
    const free =
      !taken.sheets.has(names.sheet.toLowerCase()) &&
      !wanted.some((name) => taken.names.has(name.toLowerCase()));
    if (free) return names;
  }
}
