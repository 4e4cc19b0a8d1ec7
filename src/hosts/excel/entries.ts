/** What may be typed into cells, and the notes at headings, as data validation. */
import { areaAddress } from '../../sheets/plan/area';
import type { EntryPlan, NotePlan } from '../../sheets/plan/plan';

/** Excel's limits for the texts of a rule, and for a list that is written out in it. */
export const TEXT_LIMITS = {
  promptTitle: 32,
  prompt: 255,
  errorTitle: 32,
  error: 225,
  choices: 255,
} as const;

export const NOTE_TITLE = 'About this column';

/** A rule that everything satisfies: a prompt needs some rule to hang on. */
const ANYTHING: Excel.DataValidationRule = { custom: { formula: '=TRUE' } };

/** Excel holds a rule to what is typed alone, not to what a formula comes to. */
const NOTHING: Excel.DataValidationRule = { custom: { formula: '=FALSE' } };

/** A text within a limit: whole sentences as far as they fit, else whole words and "…". */
export function shortened(text: string, limit: number): string {
  if (text.length <= limit) return text;
  const sentences = /^.*[.!?](?=\s)/s.exec(text.slice(0, limit + 1))?.[0];
  if (sentences !== undefined) return sentences;
  return `${/^.*(?=\s)/s.exec(text.slice(0, limit))?.[0] ?? text.slice(0, limit - 1)}…`;
}

/** The validation rule of an entry. Throws where its list is longer than Excel takes. */
function ruleOf(entry: EntryPlan): Excel.DataValidationRule {
  if (entry.workedOut) return NOTHING;
  if (entry.choices !== undefined) {
    const source = entry.choices.join(',');
    if (source.length > TEXT_LIMITS.choices) {
      throw new Error(
        `the list of choices for “${entry.promptTitle}” has ${source.length} characters, Excel takes ${TEXT_LIMITS.choices}`,
      );
    }
    return { list: { inCellDropDown: true, source } };
  }
  if (entry.choicesFrom !== undefined) {
    const source = `=${areaAddress(entry.choicesFrom, 'both')}`;
    return { list: { inCellDropDown: true, source } };
  }
  if (entry.number !== undefined) {
    const { least, most } = entry.number;
    if (least !== undefined && most !== undefined) {
      return { decimal: { operator: 'Between', formula1: least, formula2: most } };
    }
    if (most !== undefined) return { decimal: { operator: 'LessThanOrEqualTo', formula1: most } };
    // Without a bound any number will do, and Excel's own range is the bound.
    return { decimal: { operator: 'GreaterThanOrEqualTo', formula1: least ?? -1e307 } };
  }
  return ANYTHING;
}

/** Sets what an entry's cells take; a refusal repeats the prompt, which says what to type. */
export function applyEntry(range: Excel.Range, entry: EntryPlan): void {
  const refuses =
    entry.workedOut === true ||
    (entry.choices !== undefined && entry.othersAllowed !== true) ||
    entry.number !== undefined;
  const validation = range.dataValidation;
  validation.rule = ruleOf(entry);
  validation.ignoreBlanks = true;
  validation.prompt = {
    showPrompt: entry.workedOut !== true,
    title: shortened(entry.promptTitle, TEXT_LIMITS.promptTitle),
    message: shortened(entry.prompt, TEXT_LIMITS.prompt),
  };
  validation.errorAlert = {
    showAlert: refuses,
    style: 'Stop',
    title: shortened(entry.promptTitle, TEXT_LIMITS.errorTitle),
    message: shortened(entry.prompt, TEXT_LIMITS.error),
  };
}

/**
 * Shows a note while its heading is selected. A prompt rather than a comment: comments need a newer Excel and
 * are threads that people answer.
 */
export function applyNote(range: Excel.Range, note: NotePlan): void {
  const validation = range.dataValidation;
  validation.rule = ANYTHING;
  validation.prompt = {
    showPrompt: true,
    title: NOTE_TITLE,
    message: shortened(note.text, TEXT_LIMITS.prompt),
  };
}
