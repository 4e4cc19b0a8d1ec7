/** Small pieces that formulas are made of. */
import { NAMESPACE } from '../../functions/catalogue';

/**
 * How a formula asks for what one of our worksheet functions answers: by calling it, or in functions that every
 * spreadsheet knows. Arguments are formulas without a leading "=".
 */
export type Call = (id: string, ...args: readonly string[]) => string;

/** A call of one of our worksheet functions, for workbooks with the add-in. */
export const callAddIn: Call = (id, ...args) => `${NAMESPACE}.${id}(${args.join(',')})`;

/** A text as a formula writes it. */
export function text(content: string): string {
  return `"${content.replaceAll('"', '""')}"`;
}

/** #VALUE! in every spreadsheet: an entry that cannot be used. */
export const BAD_ENTRY = 'VALUE("check")';
