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

/** Sets widths and heights, frozen panes and print set-up. */
export function applyPage(sheet: Excel.Worksheet, plan: SheetPlan): void {
  for (const [column, characters] of plan.columnWidths.entries()) {
    rangeOf(sheet, area(0, column)).format.columnWidth = columnWidthPt(characters);
  }
  for (const [row, heightPt] of Object.entries(plan.rowHeightsPt ?? {})) {
    rangeOf(sheet, area(Number(row), 0)).format.rowHeight = heightPt;
  }
  freeze(sheet, plan.frozenRows, plan.frozenColumns);
  const { landscape, area: printed, repeatRows, footer } = plan.print;
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

function freeze(sheet: Excel.Worksheet, rows: number, columns: number): void {
  const panes = sheet.freezePanes;
  if (rows > 0 && columns > 0) panes.freezeAt(rangeOf(sheet, area(0, 0, rows, columns)));
  else if (rows > 0) panes.freezeRows(rows);
  else if (columns > 0) panes.freezeColumns(columns);
}
