/** Headings in one row, or in two: a row of units under them, or of what tells two columns under one heading apart. */
import { columnLetters } from '../sheets/plan/area';
import { findUnit, plain } from '../core/units';
import { readHeading } from './headings';
import { cellText, isEmpty, type RawRow } from './raw';

export interface Heading {
  readonly index: number;
  /** What it is called; one that comes twice says which column it is. */
  readonly heading: string;
  /** What it says. */
  readonly text: string;
  /** As the first row alone has it, where there are two. */
  readonly above?: string;
  /** The column has none, and is called by its letters. */
  readonly unheaded?: true;
}

export interface JoinedHeadings {
  readonly headings: readonly Heading[];
  /** How many rows they take. */
  readonly rows: 1 | 2;
}

/** A unit by itself, in brackets or without. */
const unitOf = (text: string) => findUnit(text.replace(/^[([{]\s*(.*?)\s*[)\]}]$/, '$1'));

/** A cell of a second row that says nothing. */
const SAYS_NOTHING = /^(?:[-–—.]|n\/a|text)$/i;

/** A heading and what stands under it as one heading. */
function joined(above: string, below: string): string {
  if (below === '') return above;
  const unit = unitOf(below);
  if (unit === undefined) return `${above} ${below}`;
  const said = readHeading(above);
  return said.is === 'typed' && said.unit?.label === unit.label
    ? above
    : `${above} (${below.replace(/[()[\]{}]/g, '').trim()})`;
}

/** Whether the row under the headings goes on with them: each of its cells is a unit or makes a heading more exact. */
function goesOn(header: RawRow, below: RawRow): boolean {
  let isExact = false;
  for (const [index, cell] of below.cells.entries()) {
    if (isEmpty(cell)) continue;
    const text = cellText(cell);
    if (typeof cell.value !== 'string' || isEmpty(header.cells[index])) return false;
    const before = readHeading(cellText(header.cells[index]));
    const after = readHeading(joined(cellText(header.cells[index]), text));
    const isMore =
      after.is === 'typed' &&
      (after.unit !== undefined || after.bothWays) &&
      (before.is !== 'typed' || before.key === after.key);
    if (!isMore && unitOf(text) === undefined && !SAYS_NOTHING.test(text)) return false;
    isExact ||= isMore;
  }
  return isExact;
}

/** The headings of a row, with what the next one adds to them. */
export function joinedHeadings(header: RawRow, below: RawRow | undefined): JoinedHeadings {
  const isTwo = below !== undefined && goesOn(header, below);
  const seen = new Set<string>();
  const headings = header.cells.flatMap((cell, index): Heading[] => {
    if (typeof cell.value !== 'string' || isEmpty(cell)) return [];
    const above = cellText(cell);
    const under = isTwo ? cellText(below.cells[index]) : '';
    const text = SAYS_NOTHING.test(under) ? above : joined(above, under);
    const isAgain = seen.has(plain(text));
    seen.add(plain(text));
    const heading = isAgain ? `${text} (column ${columnLetters(index)})` : text;
    return [{ index, heading, text, ...(text !== above && { above }) }];
  });
  return { headings, rows: isTwo ? 2 : 1 };
}
