/** Small pieces that formulas are made of. */
import { NAMESPACE } from '../../functions/catalogue';

/**
 * How a formula asks for what one of our worksheet functions answers: by calling it, or in functions that every
 * spreadsheet knows. Arguments are formulas without a leading "=".
 */
export type Call = (id: string, ...args: readonly string[]) => string;

/** A call of one of our worksheet functions, for workbooks with the add-in. */
export const callAddIn: Call = (id, ...args) => `${NAMESPACE}.${id}(${args.join(',')})`;

/**
 * A text as a formula writes it. A quote goes by its number: of two quotes in a row, which would stand for one, the grid
 * (0.25.1) loses one when it moves a formula to another row.
 */
export function text(content: string): string {
  const pieces = content.split('"').map((piece) => (piece === '' ? [] : [`"${piece}"`]));
  const joined = pieces.flatMap((piece, index) => (index === 0 ? piece : ['CHAR(34)', ...piece]));
  return joined.length === 0 ? '""' : joined.join('&');
}

/** #VALUE! in every spreadsheet: an entry that cannot be used. */
export const BAD_ENTRY = 'VALUE("check")';
