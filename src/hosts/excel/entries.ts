/** What may be typed into cells, and the notes at headings, as data validation. */
import type { EntryPlan, NotePlan } from '../../sheets/plan/plan';

/** Excel's limits for a prompt and for a list that is written out in the rule. */
export const PROMPT_TITLE_LIMIT = 32;
export const PROMPT_LIMIT = 255;
export const CHOICES_LIMIT = 255;

/** A rule that everything satisfies: a prompt needs some rule to hang on. */
const ANYTHING: Excel.DataValidationRule = { custom: { formula: '=TRUE' } };

function within(text: string, limit: number, what: string): string {
  if (text.length > limit) {
    throw new Error(`the ${what} "${text}" has ${text.length} characters, Excel allows ${limit}`);
  }
  return text;
}

/** The validation rule of an entry. Throws where its list is longer than Excel takes. */
function ruleOf(entry: EntryPlan): Excel.DataValidationRule {
  if (entry.choices !== undefined) {
    const source = within(entry.choices.join(','), CHOICES_LIMIT, 'list of choices');
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
  const title = within(entry.promptTitle, PROMPT_TITLE_LIMIT, 'prompt title');
  const message = within(entry.prompt, PROMPT_LIMIT, 'prompt');
  const refuses =
    (entry.choices !== undefined && entry.othersAllowed !== true) || entry.number !== undefined;
  const validation = range.dataValidation;
  validation.rule = ruleOf(entry);
  validation.ignoreBlanks = true;
  validation.prompt = { showPrompt: true, title, message };
  validation.errorAlert = { showAlert: refuses, style: 'Stop', title, message };
}

/**
 * Shows a note while its heading is selected. A prompt rather than a comment: comments need a newer Excel and
 * are threads that people answer.
 */
export function applyNote(range: Excel.Range, note: NotePlan): void {
  const message = within(note.text, PROMPT_LIMIT, 'note');
  const validation = range.dataValidation;
  validation.rule = ANYTHING;
  validation.prompt = { showPrompt: true, title: 'About this column', message };
}
