/** The sheet as a page: widths, heights, frozen panes, print set-up. */
import { area } from '../../sheets/plan/area';
import type { SheetPlan, StockPrint } from '../../sheets/plan/plan';
import { rangeOf } from './range-of';

export function freeze(sheet: Excel.Worksheet, plan: SheetPlan): void {
  const { frozenRows: rows, frozenColumns: columns } = plan;
  const panes = sheet.freezePanes;
  if (rows > 0 && columns > 0) panes.freezeAt(rangeOf(sheet, area(0, 0, rows, columns)));
  else if (rows > 0) panes.freezeRows(rows);
  else if (columns > 0) panes.freezeColumns(columns);
}

const [MM_PER_INCH, POINTS_PER_INCH] = [25.4, 72];

const FOOTER_MARGIN_PT = 22;

/** A lone ampersand would begin one of Excel's footer codes. */
function applyFooter(layout: Excel.PageLayout, footer: string): void {
  layout.headersFooters.defaultForAllPages.centerFooter = footer.replaceAll('&', '&&');
}

/** At full size on paper of its own, with a break after each page of the stock. */
function setUpStock(sheet: Excel.Worksheet, { print }: SheetPlan, stock: StockPrint): void {
  const layout = sheet.pageLayout;
  const points = (mm: number) => (mm / MM_PER_INCH) * POINTS_PER_INCH;
  const { top, bottom, left, right } = stock.marginsMm;
  layout.orientation = print.landscape ? 'Landscape' : 'Portrait';
  layout.paperSize = stock.paper;
  layout.zoom = { scale: 100 };
  layout.topMargin = points(top);
  layout.leftMargin = points(left);
  layout.bottomMargin = points(bottom);
  layout.rightMargin = points(right);
  layout.headerMargin = 0;
  layout.footerMargin = print.footer === '' ? 0 : FOOTER_MARGIN_PT;
  if (print.footer !== '') applyFooter(layout, print.footer);
  if (print.isWhole !== true) layout.setPrintArea(rangeOf(sheet, print.area));
  const { row, column, rows } = print.area;
  for (let next = row + stock.rowsPerPage; next < row + rows; next += stock.rowsPerPage) {
    sheet.horizontalPageBreaks.add(rangeOf(sheet, area(next, column)));
  }
}

/** How many calls the print set-up takes, for the size of a request. */
export function pageCalls({ print: { stock, area: printed } }: SheetPlan): number {
  return stock === undefined ? 8 : 13 + printed.rows / stock.rowsPerPage;
}

export function setUpPage(sheet: Excel.Worksheet, plan: SheetPlan): void {
  const { print } = plan;
  if (print.stock !== undefined) {
    setUpStock(sheet, plan, print.stock);
    return;
  }
  const { landscape, area: printed, repeatRows, footer, pagesHigh } = print;
  const layout = sheet.pageLayout;
  layout.orientation = landscape ? 'Landscape' : 'Portrait';
  // A long list has only its width bound: it runs over several pages at a size one can read.
  layout.zoom = {
    horizontalFitToPages: 1,
    ...(pagesHigh !== undefined && { verticalFitToPages: pagesHigh }),
  };
  if (print.isWhole !== true) layout.setPrintArea(rangeOf(sheet, printed));
  if (repeatRows !== undefined) {
    layout.setPrintTitleRows(`$${repeatRows.first + 1}:$${repeatRows.last + 1}`);
  }
  applyFooter(layout, footer);
}
