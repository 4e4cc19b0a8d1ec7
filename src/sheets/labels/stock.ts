/** Label stock: how many labels a sheet of it has, and where they stand on the paper. */
import type { LabelCellKey, LabelsTyped } from '../station/labels';

/** ISO 216 and ANSI/ASME Y14.1, in millimetres. */
export const PAPERS = {
  A4: { widthMm: 210, heightMm: 297 },
  Letter: { widthMm: 215.9, heightMm: 279.4 },
} as const;
export type Paper = keyof typeof PAPERS;

type MeasureKey = Exclude<LabelCellKey, 'paper' | 'used'>;
/** Millimetres, counts, and a share of the columns' width. */
export type StockFigures = Readonly<Record<MeasureKey, number>>;

/** Stock of 24 labels of 70 by 35 mm: common practice, from memory. */
export const USUAL_STOCK: StockFigures & { readonly paper: Paper } = {
  paper: 'A4',
  columns: 3,
  rows: 8,
  top: 8.5,
  bottom: 8.5,
  left: 0,
  right: 0,
  across: 0,
  down: 0,
  widths: 1,
};

/** Smaller labels hold no text that could be read. */
const LEAST_LABEL_MM = { width: 15, height: 8 } as const;
const MOST_COUNT = { columns: 12, rows: 40 } as const;
const WIDTHS = { least: 0.5, most: 1.5 } as const;

export interface Stock extends StockFigures {
  readonly paper: Paper;
  readonly labelWidthMm: number;
  readonly labelHeightMm: number;
}

function sized(paper: Paper, figures: StockFigures): Stock | undefined {
  const { columns, rows, top, bottom, left, right, across, down, widths } = figures;
  const { widthMm, heightMm } = PAPERS[paper];
  const labelWidthMm = (widthMm - left - right - across * (columns - 1)) / columns;
  const labelHeightMm = (heightMm - top - bottom - down * (rows - 1)) / rows;
  const counted = [
    [columns, MOST_COUNT.columns],
    [rows, MOST_COUNT.rows],
  ] as const;
  const isSound =
    counted.every(([count, most]) => Number.isInteger(count) && count >= 1 && count <= most) &&
    [top, bottom, left, right, across, down].every((mm) => mm >= 0) &&
    widths >= WIDTHS.least &&
    widths <= WIDTHS.most &&
    labelWidthMm >= LEAST_LABEL_MM.width &&
    labelHeightMm >= LEAST_LABEL_MM.height;
  return isSound ? { paper, ...figures, labelWidthMm, labelHeightMm } : undefined;
}

/** The stock that is typed, blanks as usual; undefined where no labels can be drawn for it. */
export function typedStock({ cells = {} }: LabelsTyped): Stock | undefined {
  const { paper: usualPaper, ...usual } = USUAL_STOCK;
  const paper = (cells.paper ?? usualPaper) as Paper;
  const figures = Object.fromEntries(
    Object.entries(usual).map(([key, figure]) => [key, cells[key as MeasureKey] ?? figure]),
  ) as Readonly<Record<MeasureKey, number | string>>;
  const isRead = Object.values(figures).every((figure) => typeof figure === 'number');
  return !isRead || !Object.hasOwn(PAPERS, paper)
    ? undefined
    : sized(paper, figures as StockFigures);
}

/** The stock that the labels are drawn for: the one that is typed, or else the usual. */
export function drawnStock(typed: LabelsTyped): Stock {
  return typedStock(typed) ?? typedStock({})!;
}
