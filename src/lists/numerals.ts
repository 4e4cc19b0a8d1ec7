/**
 * Numbers as people write them in lists: decimal points or commas, thousands apart or not. What can be read in two
 * ways is not guessed at: a length a thousand times too short is a wire that burns.
 */
import { TWOFOLD, twofold } from '../core/quantity';

/** What the unmistakable numbers of a list say about the others. */
export interface NumeralHabit {
  readonly decimalComma: boolean;
  readonly decimalPoint: boolean;
}

export type Numeral = number | { readonly doubt: string } | undefined;

/** Digits with marks between them, and perhaps an exponent. No two parts match the same characters. */
const SHAPE = /^([+-]?)((?:\d+(?:[.,]\d+)*)|(?:[.,]\d+))(e[+-]?\d{1,3})?$/i;
/** Blanks and apostrophes between groups of three digits. */
const GROUP_BLANKS = /(?<=\d)[ \u00A0\u202F'’](?=\d{3}(?!\d))/g;
const GROUPED = /^\d{1,3}(?:[.,]\d{3})+$/;

interface Parts {
  readonly sign: string;
  readonly digits: string;
  readonly exponent: string;
}

function partsOf(text: string): Parts | undefined {
  const match = SHAPE.exec(text.trim().replace(GROUP_BLANKS, ''));
  return match === null
    ? undefined
    : { sign: match[1] ?? '', digits: match[2] ?? '', exponent: match[3] ?? '' };
}

/** The decimal mark of digits that can be read in one way only; empty where they have none. */
function certainMark(digits: string): '.' | ',' | '' | undefined {
  const marks = digits.replace(/\d/g, '');
  if (marks === '') return '';
  const last = marks.at(-1) as '.' | ',';
  const others = new Set(marks.slice(0, -1));
  if (marks.length === 1) return TWOFOLD.test(digits) ? undefined : last;
  const [integer = ''] = digits.split(last);
  if (others.size === 1 && !others.has(last)) return GROUPED.test(integer) ? last : undefined;
  return others.size === 1 && GROUPED.test(digits) ? '' : undefined;
}

/** What the numbers among these texts have in common. */
export function habitOf(texts: readonly string[]): NumeralHabit {
  const marks = new Set(
    texts.map((text) => {
      const parts = partsOf(text);
      return parts === undefined ? undefined : certainMark(parts.digits);
    }),
  );
  return { decimalComma: marks.has(','), decimalPoint: marks.has('.') };
}

function valueOf({ sign, digits, exponent }: Parts, mark: string): number {
  const thousands = mark === ',' ? /\./g : mark === '.' ? /,/g : /[.,]/g;
  return Number(`${sign}${digits.replace(thousands, '').replace(',', '.')}${exponent}`);
}

/** The number a text says; a doubt where it says two; nothing where it is no number. */
export function readNumeral(text: string, habit: NumeralHabit): Numeral {
  const parts = partsOf(text);
  if (parts === undefined) return undefined;
  const mark = certainMark(parts.digits);
  if (mark !== undefined) return valueOf(parts, mark);
  if (!TWOFOLD.test(parts.digits)) return undefined;
  const found = parts.digits.includes(',') ? ',' : '.';
  const clear = found === ',' ? habit.decimalComma && !habit.decimalPoint : !habit.decimalComma;
  if (clear) return valueOf(parts, found);
  return {
    doubt: twofold(text.trim(), valueOf(parts, found), valueOf(parts, '')),
  };
}
