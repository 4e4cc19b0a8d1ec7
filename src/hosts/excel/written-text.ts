/** Text on its way into a cell, so that Excel keeps it as text. */

/** Words that Excel reads as something else than text: TRUE, and a word with a number that may be a month. */
const READ_AS_SOMETHING = [/^[^\p{L}]/u, /^(true|false)$/i, /^\p{L}+\.?[\s\-/.,]*\d/u];

/**
 * The text as it has to be written: unchanged into cells formatted as text, and elsewhere with the leading
 * apostrophe that marks text for Excel wherever it might read a number, a date, a formula or a truth value.
 */
export function writtenText(text: string, formattedAsText: boolean): string {
  if (text === '' || formattedAsText) return text;
  return READ_AS_SOMETHING.some((pattern) => pattern.test(text)) ? `'${text}` : text;
}
