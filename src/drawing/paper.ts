/** The paper that a diagram is laid out for: A4, upright or lying, with room for the head of its sheet and a footer. */

const MM_PER_INCH = 25.4;
const POINTS_PER_INCH = 72;
/** ISO 216. */
const A4_MM = { short: 210, long: 297 } as const;
export const PAPER_MARGINS_MM = { top: 12, bottom: 15, left: 10, right: 10 } as const;
/** Sheet rows under the picture, all of one height: pages break between rows. */
export const ROW_PT = 15;
/** The head of the sheet takes as much as so many rows. */
export const HEAD_ROWS = 4;

/** Columns of sheets are as wide as whole pixels and rounded once more by some spreadsheets. */
const SPARE_PT = 12;

const points = (mm: number) => (mm / MM_PER_INCH) * POINTS_PER_INCH;

export interface Paper {
  readonly landscape: boolean;
  readonly widthPt: number;
  readonly rowsPerPage: number;
}

function paper(landscape: boolean): Paper {
  const [widthMm, heightMm] = landscape ? [A4_MM.long, A4_MM.short] : [A4_MM.short, A4_MM.long];
  const { top, bottom, left, right } = PAPER_MARGINS_MM;
  return {
    landscape,
    widthPt: Math.floor(points(widthMm - left - right)) - SPARE_PT,
    rowsPerPage: Math.floor(points(heightMm - top - bottom) / ROW_PT),
  };
}

export const UPRIGHT = paper(false);
export const LYING = paper(true);

/** Where the page ends that a height of the picture lies on; at the end of one, the end of the next. */
export const pageEnd =
  ({ rowsPerPage }: Paper) =>
  (yPt: number): number => {
    const first = (rowsPerPage - HEAD_ROWS) * ROW_PT;
    const each = rowsPerPage * ROW_PT;
    return yPt < first ? first : first + each * (Math.floor((yPt - first) / each) + 1);
  };

export function pageCount(of: Paper, heightPt: number): number {
  let pages = 1;
  for (let end = pageEnd(of)(0); end < heightPt; end = pageEnd(of)(end)) pages += 1;
  return pages;
}
