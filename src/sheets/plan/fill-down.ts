/** Formulas filled down a column, as a spreadsheet fills them: rows without a "$" move along. */

/** What a formula's text is made of, as far as addresses go. Texts, sheet names and structured references hold none. */
const PARTS =
  /"(?:[^"]|"")*"|'(?:[^']|'')*'|\[[^[\]]*\]|(?<column>\$?[A-Z]{1,3})(?<pin>\$?)(?<row>\d+)(?![A-Za-z0-9_.(])|[A-Za-z_][A-Za-z0-9_.]*/g;

/** The formula of the first row, ready to be written for any row below it. */
export type FilledDown = (rowsBelow: number) => string;

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
  const last = formula.slice(from);
  if (rows.length === 0) return () => formula;
  return (rowsBelow) => {
    let text = '';
    for (const [index, before] of texts.entries())
      text += before + String(rows[index]! + rowsBelow);
    return text + last;
  };
}

/** The formula as it stands so many rows below the one that it is written for. Each formula is taken apart once. */
export function filledDown(formula: string): FilledDown {
  const known = made.get(formula);
  if (known !== undefined) return known;
  if (made.size >= MOST_KEPT) made.clear();
  const filled = take(formula);
  made.set(formula, filled);
  return filled;
}
