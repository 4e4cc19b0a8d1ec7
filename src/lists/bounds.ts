/** How much of a file is read. A workbook of 1,000 runs stays far below; a file made to fill the memory ends here. */
export const MOST = {
  /** Bytes of all parts that are read, as they come out of the archive: some seconds of reading. */
  inflatedBytes: 200_000_000,
  parts: 10_000,
  /** Elements of all parts that are read. */
  elements: 10_000_000,
  sheets: 300,
  /** Cells with something in them, of all sheets. */
  cells: 2_000_000,
  rowsOfSheet: 50_000,
  columns: 2_000,
  /** Cells that merged areas are spread over. */
  spread: 100_000,
  /** Lines of a text of values. */
  lines: 100_000,
  /** Lines of a text in which a quote is opened and never closed: after each, the rest is read anew. */
  openQuotes: 50,
} as const;

const SAID: Readonly<Record<keyof typeof MOST, (most: string) => string>> = {
  inflatedBytes: () => `it unpacks to more than ${MOST.inflatedBytes / 1e6} MB`,
  elements: (most) => `it unpacks to more than ${most} elements`,
  parts: (most) => `it has more than ${most} parts`,
  sheets: (most) => `it has more than ${most} sheets`,
  cells: (most) => `it has more than ${most} cells`,
  rowsOfSheet: (most) => `a sheet of it has more than ${most} rows with something in them`,
  columns: (most) => `a sheet of it has something in a column beyond the ${most}th`,
  spread: (most) => `its merged areas cover more than ${most} cells`,
  lines: (most) => `it has more than ${most} lines`,
  openQuotes: (most) => `quotes are opened and never closed in more than ${most} of its lines`,
};

/** A file has more of something than is read; the message says of what. */
export class TooMuch extends Error {
  constructor(of: keyof typeof MOST) {
    super(SAID[of](MOST[of].toLocaleString('en-US')));
  }
}
