/** The sheet as a page: widths, heights, frozen panes, print set-up. */
import { area } from '../../sheets/plan/area';
import type { SheetPlan } from '../../sheets/plan/plan';
import { rangeOf } from './range-of';

/**
 * A width in characters as points. ECMA-376 part 1, 18.3.1.13: a column of n characters is n times the width of a
 * digit plus 5 pixels; a digit of the default font (Calibri 11) has 7 pixels, and a pixel is 0.75 points at 96 dpi.
 */
export function columnWidthPt(characters: number): number {
  return (characters * 7 + 5) * 0.75;
}

export function freeze(sheet: Excel.Worksheet, plan: SheetPlan): void {
  const { frozenRows: rows, frozenColumns: columns } = plan;
  const panes = sheet.freezePanes;
  if (rows > 0 && columns > 0) panes.freezeAt(rangeOf(sheet, area(0, 0, rows, columns)));
  else if (rows > 0) panes.freezeRows(rows);
  else if (columns > 0) panes.freezeColumns(columns);
}

export function setUpPage(sheet: Excel.Worksheet, { print }: SheetPlan): void {
  const { landscape, area: printed, repeatRows, footer } = print;
  const layout = sheet.pageLayout;
  layout.orientation = landscape ? 'Landscape' : 'Portrait';
  // Only the width is bound, so that a long list runs over several pages at a size one can read.
  layout.zoom = { horizontalFitToPages: 1 };
  layout.setPrintArea(rangeOf(sheet, printed));
  if (repeatRows !== undefined) {
    layout.setPrintTitleRows(`$${repeatRows.first + 1}:$${repeatRows.last + 1}`);
  }
  // A lone ampersand would begin one of Excel's footer codes.
  layout.headersFooters.defaultForAllPages.centerFooter = footer.replaceAll('&', '&&');
}
