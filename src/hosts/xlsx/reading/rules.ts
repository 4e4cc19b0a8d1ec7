/** The house rules that a shared workbook carries in its named cells. */
import type { Workbook } from 'exceljs';
import { RULE_KEYS, type RuleKey } from '../../../sheets/house-rules';
import { isEmpty } from './raw';
import { rawCell } from './workbook';

export type GivenRules = Readonly<Partial<Record<RuleKey, string | number>>>;

/** The part of the names of our rule cells that says which rule it is. */
const RULE_NAME = /^LoomRules\d*_(\w+)$/i;
const KEY_OF: ReadonlyMap<string, RuleKey> = new Map(
  RULE_KEYS.map((key) => [key.toLowerCase(), key]),
);

/** Rules that a person set, on one sheet; one that still follows its formula says nothing. */
export function readHouseRules(workbook: Workbook, sheetName: string): GivenRules {
  const rules: Partial<Record<RuleKey, string | number>> = {};
  for (const { name, ranges } of workbook.definedNames.model) {
    const key = KEY_OF.get(RULE_NAME.exec(name)?.[1]?.toLowerCase() ?? '');
    const place = /^(.*)!\$?([A-Z]+)\$?(\d+)$/.exec(ranges[0] ?? '');
    if (key === undefined || place === null) continue;
    const [, sheet = '', column = '', row = ''] = place;
    if (sheet.replace(/^'|'$/g, '').replaceAll("''", "'") !== sheetName) continue;
    const cell = rawCell(workbook.getWorksheet(sheetName)!.getCell(`${column}${row}`));
    if (cell.computed === true || isEmpty(cell)) continue;
    rules[key] = typeof cell.value === 'number' ? cell.value : String(cell.value);
  }
  return rules;
}
