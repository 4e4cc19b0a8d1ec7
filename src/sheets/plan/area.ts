/** A block of cells by zero-based position, independent of any spreadsheet. */
export interface Area {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** The area that starts at a zero-based cell; one cell unless a size is given. */
export function area(row: number, column: number, rows = 1, columns = 1): Area {
  return { row, column, rows, columns };
}

/** Letters of a zero-based column: 0 is A, 26 is AA. */
export function columnLetters(column: number): string {
  let letters = '';
  for (let rest = column; rest >= 0; rest = Math.floor(rest / 26) - 1) {
    letters = String.fromCharCode(65 + (rest % 26)) + letters;
  }
  return letters;
}

/** The zero-based number of a column by its letters. */
export function columnNumber(letters: string): number {
  return [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}

/** Which parts of an address stay put when a formula is copied. */
export type Pinned = 'none' | 'row' | 'column' | 'both';

/** Address of one zero-based cell, such as C5 or $C$5. */
export function cellAddress(row: number, column: number, pinned: Pinned = 'none'): string {
  const columnMark = pinned === 'column' || pinned === 'both' ? '$' : '';
  const rowMark = pinned === 'row' || pinned === 'both' ? '$' : '';
  return `${columnMark}${columnLetters(column)}${rowMark}${row + 1}`;
}

/** Address of an area, such as A1:C4, or A1 where it is one cell. */
export function areaAddress(of: Area, pinned: Pinned = 'none'): string {
  const first = cellAddress(of.row, of.column, pinned);
  if (of.rows === 1 && of.columns === 1) return first;
  return `${first}:${cellAddress(of.row + of.rows - 1, of.column + of.columns - 1, pinned)}`;
}

/** A sheet name as it stands in front of an address: quoted where it has to be. */
export function quotedSheetName(name: string): string {
  return /^[A-Za-z_][A-Za-z0-9_]*$/.test(name) ? name : `'${name.replaceAll("'", "''")}'`;
}
