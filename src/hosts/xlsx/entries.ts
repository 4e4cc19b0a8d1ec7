/** What may be typed into cells, as the rules of a workbook. */
import type { DataValidation, Worksheet } from 'exceljs';
import { areaAddress } from '../../sheets/plan/area';
import type { EntryPlan } from '../../sheets/plan/plan';
import type { ChoiceLists } from './lists';

/** The most characters that Excel shows of a refusal. */
const REFUSAL_MOST = 225;

/** Rules are kept by address; the types of the library do not tell. */
interface RuleKeeper {
  readonly dataValidations: { add(address: string, rule: EntryRule): void };
}

/** The library writes "any" (a prompt without a rule), which its types leave out. */
type EntryRule = Omit<DataValidation, 'type' | 'formulae'> & {
  readonly type: DataValidation['type'] | 'any';
  readonly formulae: readonly (string | number)[];
};

type Limit = Pick<EntryRule, 'type' | 'formulae'> & Partial<Pick<EntryRule, 'operator'>>;

const ANYTHING: Limit = { type: 'any', formulae: [] };

function numberLimit({ least, most }: NonNullable<EntryPlan['number']>): Limit {
  if (least !== undefined && most !== undefined) {
    return { type: 'decimal', operator: 'between', formulae: [least, most] };
  }
  if (least !== undefined) {
    return { type: 'decimal', operator: 'greaterThanOrEqual', formulae: [least] };
  }
  return most === undefined
    ? ANYTHING
    : { type: 'decimal', operator: 'lessThanOrEqual', formulae: [most] };
}

/** Spreadsheets hold rules to what is typed alone, not to what a formula comes to. */
const NOTHING: Limit = { type: 'custom', formulae: ['FALSE'] };

function refusal({ choices, number, workedOut, prompt }: EntryPlan): string {
  if (workedOut) return prompt;
  if (choices !== undefined) return `Choose one of the list: ${choices.join(', ')}.`;
  const { least, most } = number ?? {};
  const bounds = [
    ...(least === undefined ? [] : [`from ${least}`]),
    ...(most === undefined ? [] : [`up to ${most}`]),
  ].join(' ');
  return `Give a number ${bounds}.`;
}

/** Lets the cells of an entry take only what it says, and tells a person so. */
export function applyEntry(sheet: Worksheet, entry: EntryPlan, lists: ChoiceLists): void {
  const limit: Limit = entry.workedOut
    ? NOTHING
    : entry.choices !== undefined
      ? { type: 'list', formulae: [lists.formulaFor(entry.choices)] }
      : entry.choicesFrom !== undefined
        ? { type: 'list', formulae: [areaAddress(entry.choicesFrom, 'both')] }
        : entry.number !== undefined
          ? numberLimit(entry.number)
          : ANYTHING;
  const refuses =
    limit.type !== 'any' && entry.othersAllowed !== true && entry.choicesFrom === undefined;
  (sheet as unknown as RuleKeeper).dataValidations.add(areaAddress(entry.area), {
    ...limit,
    allowBlank: true,
    showInputMessage: entry.workedOut !== true,
    promptTitle: entry.promptTitle,
    prompt: entry.prompt,
    ...(refuses
      ? {
          showErrorMessage: true,
          errorStyle: 'stop',
          errorTitle: entry.promptTitle,
          error: refusal(entry).slice(0, REFUSAL_MOST),
        }
      : {}),
  });
}
