/** The sheet on paper, and what stays in view on a screen. */
import type { PaperSize, Worksheet } from 'exceljs';
import { cellAddress } from '../../sheets/plan/area';
import type { SheetPlan, StockPrint } from '../../sheets/plan/plan';

/** ECMA-376 part 1, 18.3.1.63: paper size 9 is A4. */
const A4 = 9;
const MARGINS_INCHES = { left: 0.4, right: 0.4, top: 0.5, bottom: 0.6, header: 0.3, footer: 0.3 };

/** A footer's further lines want room above the edge. */
const FOOTER_LINE_INCHES = 0.17;

/** ECMA-376 part 1, 18.3.1.63. */
const PAPER_SIZES = { A4, Letter: 1 } as const;
const MM_PER_INCH = 25.4;

/** In a footer "&" starts a code; doubled it is itself. */
function applyFooter(sheet: Worksheet, footer: string): void {
  sheet.headerFooter.oddFooter = `&L${footer.replaceAll('&', '&&')}&R&P / &N`;
}

/** At full size, with a break after each page of the stock, and below only what the plan says. */
function applyStock(sheet: Worksheet, { print }: SheetPlan, stock: StockPrint): void {
  const inches = (mm: number) => mm / MM_PER_INCH;
  const { top, bottom, left, right } = stock.marginsMm;
  sheet.pageSetup = {
    ...sheet.pageSetup,
    paperSize: PAPER_SIZES[stock.paper] as PaperSize,
    orientation: print.landscape ? 'landscape' : 'portrait',
    fitToPage: false,
    scale: 100,
    margins: {
      top: inches(top),
      left: inches(left),
      bottom: inches(bottom),
      right: inches(right),
      header: 0,
      footer: print.footer === '' ? 0 : MARGINS_INCHES.footer,
    },
    ...(print.isWhole === true ? {} : { printArea: printedArea(print) }),
  };
  if (print.footer !== '') applyFooter(sheet, print.footer);
  const { row, rows, columns } = print.area;
  for (let end = row + stock.rowsPerPage; end < row + rows; end += stock.rowsPerPage) {
    sheet.getRow(end).addPageBreak(0, columns);
  }
}

/** The library puts a "$" ahead of each corner and no other: the row's own has to come with it. */
function printedArea({ area }: SheetPlan['print']): string {
  const first = cellAddress(area.row, area.column, 'row');
  const last = cellAddress(area.row + area.rows - 1, area.column + area.columns - 1, 'row');
  return `${first}:${last}`;
}

/** One page wide and as many high as the plan allows, with the heading on each; stock at its full size. */
export function applyPage(sheet: Worksheet, plan: SheetPlan): void {
  const { print, hidden } = plan;
  if (print.stock !== undefined) {
    applyStock(sheet, plan, print.stock);
    return;
  }
  const { repeatRows } = print;
  sheet.pageSetup = {
    ...sheet.pageSetup,
    paperSize: A4,
    orientation: print.landscape ? 'landscape' : 'portrait',
    fitToPage: true,
    fitToWidth: 1,
    fitToHeight: print.pagesHigh ?? 0,
    horizontalCentered: true,
    margins: {
      ...MARGINS_INCHES,
      bottom: MARGINS_INCHES.bottom + FOOTER_LINE_INCHES * (print.footer.split('\n').length - 1),
    },
    // LibreOffice prints a hidden sheet that has an area to print, and none without.
    ...(hidden === true || print.isWhole === true ? {} : { printArea: printedArea(print) }),
    ...(repeatRows === undefined
      ? {}
      : { printTitlesRow: `${repeatRows.first + 1}:${repeatRows.last + 1}` }),
  };
  applyFooter(sheet, print.footer);
}

/** Keeps the head and the first columns in view. */
export function applyPanes(sheet: Worksheet, { frozenRows, frozenColumns }: SheetPlan): void {
  if (frozenRows === 0 && frozenColumns === 0) return;
  sheet.views = [
    {
      state: 'frozen',
      xSplit: frozenColumns,
      ySplit: frozenRows,
      topLeftCell: cellAddress(frozenRows, frozenColumns),
      activeCell: cellAddress(frozenRows, 0),
    },
  ];
}
