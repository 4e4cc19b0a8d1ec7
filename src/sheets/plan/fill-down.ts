/** Formulas filled down a column, as a spreadsheet fills them: rows without a "$" move along. */

/** What a formula's text is made of, as far as addresses go. Texts, sheet names and structured references hold none. */
const PARTS =
  /"(?:[^"]|"")*"|'(?:[^']|'')*'|\[[^[\]]*\]|(?<column>\$?[A-Z]{1,3})(?<pin>\$?)(?<row>\d+)(?![A-Za-z0-9_.(])|[A-Za-z_][A-Za-z0-9_.]*/g;

/** The formula of the first row, ready to be written for any row below it. */
export interface FilledDown {
  /** What stands between the rows' numbers: one text more than there are numbers. */
  readonly texts: readonly string[];
  /** The numbers of rows that move along, as the first row has them. */
  readonly rows: readonly number[];
}

const made = new Map<string, FilledDown>();
const MOST_KEPT = 2000;

function take(formula: string): FilledDown {
  const texts: string[] = [];
  const rows: number[] = [];
  let from = 0;
  for (const match of formula.matchAll(PARTS)) {
    const { column, pin, row } = match.groups!;
    if (column === undefined || pin !== '') continue;
    const end = match.index + column.length;
    texts.push(formula.slice(from, end));
    rows.push(Number(row));
    from = end + row!.length;
  }
  return { texts: [...texts, formula.slice(from)], rows };
}

/** The formula taken apart, which is done once for each. */
export function partsToFill(formula: string): FilledDown {
  const known = made.get(formula);
  if (known !== undefined) return known;
  if (made.size >= MOST_KEPT) made.clear();
  const parts = take(formula);
  made.set(formula, parts);
  return parts;
}

/** Parts put together so many rows below the first. */
export function putTogether({ texts, rows }: FilledDown, rowsBelow: number): string {
  let text = texts[0]!;
  for (let index = 0; index < rows.length; index += 1) {
    text += String(rows[index]! + rowsBelow) + texts[index + 1]!;
  }
  return text;
}

/** The formula as it stands so many rows below the one that it is written for. */
export function filledDown(formula: string): (rowsBelow: number) => string {
  const parts = partsToFill(formula);
  return (rowsBelow) => putTogether(parts, rowsBelow);
}
