/**
 * How wide a text is where no font can be asked. Widths are the widest of three common sans-serif families (DejaVu Sans,
 * Liberation Sans, which has the widths of Arial and Helvetica, and Carlito), measured in a browser: a text is never wider
 * than its place, whichever of them a reader has.
 */

/** Of the characters from the blank to "~", in hundredths of the type size. */
const FIRST = 32;
const PLAIN = [
  32, 41, 46, 84, 64, 96, 78, 28, 40, 40, 50, 84, 32, 37, 32, 34, 64, 64, 64, 64, 64, 64, 64, 64,
  64, 64, 34, 34, 84, 84, 84, 56, 102, 73, 69, 73, 78, 67, 62, 78, 76, 34, 50, 73, 62, 89, 75, 79,
  67, 79, 73, 67, 62, 74, 73, 99, 73, 73, 69, 40, 34, 40, 84, 56, 50, 62, 64, 55, 64, 62, 36, 64,
  64, 28, 28, 58, 28, 98, 64, 62, 64, 64, 42, 53, 40, 64, 60, 82, 60, 60, 53, 64, 34, 64, 84,
] as const;
const BOLD = [
  35, 46, 56, 84, 70, 101, 88, 31, 46, 46, 53, 84, 38, 42, 38, 37, 70, 70, 70, 70, 70, 70, 70, 70,
  70, 70, 40, 40, 84, 84, 84, 62, 100, 78, 77, 74, 84, 69, 69, 83, 84, 39, 56, 78, 67, 100, 84, 86,
  74, 86, 78, 73, 69, 82, 78, 111, 78, 73, 73, 46, 37, 46, 84, 56, 50, 68, 72, 60, 72, 68, 44, 72,
  72, 35, 35, 67, 35, 105, 72, 69, 72, 72, 50, 60, 48, 72, 66, 93, 65, 66, 59, 72, 37, 72, 84,
] as const;
/** Letters of other European scripts and punctuation; beyond them characters may be as wide as high. */
const OTHER = 90;
const WIDE_FROM = 0x2e80;
const WIDE = 110;

/** A blank at which no line is broken. */
export const NO_BREAK = '\u00A0';

export interface Type {
  readonly sizePt: number;
  readonly bold?: boolean;
}

/** Hundredths of the type's size that each character is wide. */
function* widths(text: string, bold: boolean): Generator<number> {
  const known: readonly number[] = bold ? BOLD : PLAIN;
  for (const character of text) {
    const code = (character === NO_BREAK ? ' ' : character).codePointAt(0)!;
    yield known[code - FIRST] ?? (code >= WIDE_FROM ? WIDE : OTHER);
  }
}

export function textWidthPt(text: string, { sizePt, bold = false }: Type): number {
  let hundredths = 0;
  for (const width of widths(text, bold)) hundredths += width;
  return (hundredths * sizePt) / 100;
}

/** How many characters of a text are within a width, and one more: no longer piece of it can be. */
function mostWithin(text: string, mostPt: number, { sizePt, bold = false }: Type): number {
  let hundredths = 0;
  let count = 0;
  for (const width of widths(text, bold)) {
    count += 1;
    hundredths += width;
    if ((hundredths * sizePt) / 100 > mostPt) break;
  }
  return count;
}

const DOTS = '…';

/** The text, or as much of it as fits with dots behind. */
export function fitted(text: string, mostPt: number, type: Type): string {
  if (textWidthPt(text, type) <= mostPt) return text;
  // A cell holds tens of thousands of characters: only those that may fit are tried one by one.
  const characters = [...text].slice(0, mostWithin(text, mostPt, type) + 1);
  while (characters.length > 1) {
    characters.pop();
    const shorter = `${characters.join('').trimEnd()}${DOTS}`;
    if (textWidthPt(shorter, type) <= mostPt) return shorter;
  }
  return DOTS;
}

/** The text in lines broken at blanks; a word that fits no line ends in dots, and so does the last line allowed. */
export function wrapped(
  text: string,
  mostPt: number,
  type: Type,
  mostLines = Number.POSITIVE_INFINITY,
): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/[ \t\r\n]+/).filter((one) => one !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line === '' || textWidthPt(longer, type) <= mostPt) {
      line = longer;
    } else {
      lines.push(line);
      line = word;
    }
  }
  if (line !== '') lines.push(line);
  if (lines.length > mostLines) {
    const last = lines.slice(mostLines - 1).join(' ');
    return [...lines.slice(0, mostLines - 1), last].map((one) => fitted(one, mostPt, type));
  }
  return lines.map((one) => fitted(one, mostPt, type));
}
