/** Text of values as rows. */
import Papa from 'papaparse';
import { MOST, TooMuch } from './bounds';
import type { RawRow, RawTable } from './raw';

/** What may stand between cells. */
export const SEPARATORS = [',', ';', '\t', '|'] as const;

interface Parsed {
  readonly rows: RawRow[];
  /** Where a quote opens that nothing closes: the line, and the text from it on. */
  readonly open?: { readonly line: number; readonly rest: string };
}

function countBreaks(text: string): number {
  return text.split('\n').length - 1;
}

/** Rows up to the end, or to a quote that is never closed and would swallow all that follows. Throws TooMuch. */
function parse(text: string, separator: string, firstLine: number): Parsed {
  const rows: RawRow[] = [];
  let line = firstLine;
  let from = 0;
  let open: Parsed['open'];
  Papa.parse<string[]>(text, {
    delimiter: separator,
    newline: '\n',
    step({ data, errors, meta }, parser) {
      // A stray quote that ends at another one, lines below, has swallowed the rows between.
      const spansLines = text.slice(from, meta.cursor).trimEnd().includes('\n');
      const isOpen = ({ code }: Papa.ParseError) =>
        code === 'MissingQuotes' || (code === 'InvalidQuotes' && spansLines);
      if (errors.some(isOpen)) {
        open = { line, rest: text.slice(from) };
        parser.abort();
        return;
      }
      if (rows.length >= MOST.lines) throw new TooMuch('lines');
      rows.push({ line, cells: data.map((value) => ({ value: value === '' ? null : value })) });
      line += countBreaks(text.slice(from, meta.cursor));
      from = meta.cursor;
    },
  });
  return open === undefined ? { rows } : { rows, open };
}

/** Some spreadsheets say the separator in a line of its own. */
const SAID_SEPARATOR = /^sep=(.)\n/i;

/** The rows of a text, by one separator. Throws TooMuch. */
export function readCsv(text: string, separator: string): RawTable {
  const rows: RawRow[] = [];
  const broken: RawTable['broken'][number][] = [];
  let rest = text.replace(/\r\n?/g, '\n');
  let line = 1;
  const said = SAID_SEPARATOR.exec(rest);
  if (said !== null) {
    rest = rest.slice(said[0].length);
    line += 1;
  }
  for (;;) {
    const parsed = parse(rest, separator, line);
    for (const row of parsed.rows) rows.push(row);
    if (rows.length > MOST.lines) throw new TooMuch('lines');
    if (parsed.open === undefined) return { rows, broken, separator };
    if (broken.length >= MOST.openQuotes) throw new TooMuch('openQuotes');
    const end = parsed.open.rest.indexOf('\n');
    const lineText = end < 0 ? parsed.open.rest : parsed.open.rest.slice(0, end);
    broken.push({
      line: parsed.open.line,
      text: lineText,
      why: 'a quote is opened and never closed',
    });
    if (end < 0) return { rows, broken, separator };
    rest = parsed.open.rest.slice(end + 1);
    line = parsed.open.line + 1;
  }
}
