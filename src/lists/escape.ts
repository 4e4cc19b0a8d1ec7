/**
 * Text that XML cannot carry as it is. ECMA-376 part 1, 22.9.2.19 (ST_Xstring) writes such a character as _xHHHH_, and
 * writes the underscore of text that merely looks like that as _x005F_.
 */

/** Control characters but tab and line feed, half characters, the two non-characters, and what looks like an escape. */
const UNWRITABLE =
  // eslint-disable-next-line no-control-regex
  /_(?=x[0-9A-F]{4}_)|[\u0000-\u0008\u000B-\u001F\u007F\uFFFE\uFFFF]|[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/gi;

/** The text as a workbook's XML carries it. */
export function escapeText(text: string): string {
  return text.replace(
    UNWRITABLE,
    (character) => `_x${character.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}_`,
  );
}

/** The text that a workbook's XML means. */
export function unescapeText(text: string): string {
  return text.replace(/_x([0-9A-F]{4})_/gi, (_, hex: string) =>
    String.fromCharCode(Number.parseInt(hex, 16)),
  );
}
