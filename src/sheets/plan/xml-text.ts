/** Text for XML, whichever file it goes into. */

const MARKS: Readonly<Record<string, string>> = {
  '"': '&quot;',
  '&': '&amp;',
  "'": '&apos;',
  '<': '&lt;',
  '>': '&gt;',
};

/** Marks of XML's own, and characters that it knows in no form, halves of characters among them. */
const SPECIAL =
  // eslint-disable-next-line no-control-regex
  /["&'<>\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F\uFFFE\uFFFF]|[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g;

/** The text as XML carries it, without what it cannot carry. */
export function xmlText(text: string): string {
  return text.replace(SPECIAL, (mark) => MARKS[mark] ?? '');
}
