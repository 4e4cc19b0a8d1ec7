/** A plan's picture laid out: its figure, and the page set-up that prints it without cutting through anything. */
import { area } from '../sheets/plan/area';
import type { SheetPlan } from '../sheets/plan/plan';
import type { Figure } from './figure';
import { oneLine } from './one-line';
import { HEAD_ROWS, PAPER_MARGINS_MM, ROW_PT } from './paper';

export interface PlanOnPaper {
  readonly plan: SheetPlan;
  readonly figure?: Figure;
}

/** The head over the picture: as high as so many of the rows below, whichever rows it has. */
function headHeights(rows: number, known: Readonly<Record<number, number>> = {}) {
  const others = Array.from({ length: rows - 1 }, (_, row) => [row, known[row] ?? ROW_PT] as const);
  const rest = HEAD_ROWS * ROW_PT - others.reduce((sum, [, height]) => sum + height, 0);
  return Object.fromEntries([...others, [rows - 1, rest]]);
}

/** Where the picture is wider than the paper, the page is shrunk to it, and breaks where the spreadsheet likes. */
export function onPaper(plan: SheetPlan): PlanOnPaper {
  if (plan.picture === undefined) return { plan };
  const { first, diagram } = plan.picture;
  const { figure, paper } = oneLine(diagram);
  const rows = Math.ceil(figure.heightPt / ROW_PT);
  const { columns } = plan.print.area;
  const isWide = figure.widthPt > paper.widthPt;
  return {
    figure,
    plan: {
      ...plan,
      rowHeightsPt: {
        ...plan.rowHeightsPt,
        ...headHeights(first.row, plan.rowHeightsPt),
        ...Object.fromEntries(Array.from({ length: rows }, (_, row) => [first.row + row, ROW_PT])),
      },
      print: {
        ...plan.print,
        landscape: paper.landscape,
        area: area(0, first.column, first.row + rows, columns),
        ...(!isWide && {
          stock: {
            paper: 'A4' as const,
            marginsMm: PAPER_MARGINS_MM,
            rowsPerPage: paper.rowsPerPage,
          },
        }),
      },
    },
  };
}
