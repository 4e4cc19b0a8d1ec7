/** Plans as an .xlsx file. Everything is as the plan says; the same plans give the same bytes. */
import ExcelJS, { type Worksheet } from 'exceljs';
import { escapeText } from '../../lists/escape';
import type { Calculated } from '../../sheets/calculate/calculate';
import { areaAddress, quotedSheetName } from '../../sheets/plan/area';
import type { HighlightPlan, SheetPlan } from '../../sheets/plan/plan';
import type { Figure } from '../../drawing/figure';
import { onPaper } from '../../drawing/on-paper';
import { sheetCells, type Shares } from './cells';
import { chartAnchor, chartXml } from './chart';
import { CHART_ID, drawingElement, type SheetDrawing } from './drawings';
import { applyEntry } from './entries';
import { ChoiceLists } from './lists';
import { applyPage, applyPanes } from './page';
import { takeSheets } from './sheet-parts';
import { figureAnchor } from './shapes';
import { highlightStyle } from './styles';
import { repacked } from './zip';

const CREATOR = 'Loomsheet';
/** A fixed moment, so that only what changed differs between two files. */
const CREATED = new Date(Date.UTC(2000, 0, 1));

const LIBRARY_COLUMN_WIDTH = 9;

/** Of the library, whose types leave it out: a zip of unpacked files. */
const STORED = { zip: { compression: 'STORE' } } as const;

/**
 * The workbook with these sheets, in their order, the first in view. `values` are what its formulas come to, for viewers
 * that do not calculate.
 */
export async function writeWorkbook(
  given: readonly SheetPlan[],
  values?: Calculated,
): Promise<Uint8Array> {
  const laidOut = given.map(onPaper);
  const plans = laidOut.map(({ plan }) => plan);
  const workbook = new ExcelJS.Workbook();
  workbook.creator = CREATOR;
  workbook.lastModifiedBy = CREATOR;
  workbook.created = CREATED;
  workbook.modified = CREATED;
  // Values travel along for viewers that do not calculate; a spreadsheet that does shall trust none of them.
  workbook.calcProperties.fullCalcOnLoad = true;

  const sheets = plans.map(
    (plan) =>
      [
        workbook.addWorksheet(plan.name, plan.hidden === true ? { state: 'hidden' } : {}),
        plan,
      ] as const,
  );
  const lists = new ChoiceLists(workbook, plans);
  for (const [sheet, plan] of sheets) drawSheet(sheet, plan, lists);
  const drawings = new Map(
    sheets.flatMap(([{ id }, plan], index) => {
      const drawing = drawingOf(plan, laidOut[index]?.figure, values);
      return drawing === undefined ? [] : [[id, drawing] as const];
    }),
  );
  const taken = takeSheets(
    workbook,
    new Map(
      sheets.map(([{ id }, plan]) => [id, (shares: Shares) => sheetCells(plan, values, shares)]),
    ),
    (id) => (drawings.has(id) ? drawingElement : ''),
    plans.flatMap(({ name: sheet, names }) =>
      names.map(({ name, area }) => ({
        name,
        ranges: [`${quotedSheetName(sheet)}!${areaAddress(area, 'both')}`],
      })),
    ),
  );

  const stored = await workbook.xlsx.writeBuffer(STORED);
  return repacked(new Uint8Array(stored), taken, drawings);
}

/** What lies over the cells of a sheet: its picture, or its chart. */
function drawingOf(
  plan: SheetPlan,
  figure: Figure | undefined,
  values: Calculated | undefined,
): SheetDrawing | undefined {
  const { picture, chart } = plan;
  if (picture !== undefined && figure !== undefined) {
    return { anchor: figureAnchor(figure, picture.first.row, picture.first.column) };
  }
  return chart === undefined
    ? undefined
    : { anchor: chartAnchor(chart, CHART_ID), chart: chartXml(plan, chart, values) };
}

/** Draws all of the sheet but its cells. */
function drawSheet(sheet: Worksheet, plan: SheetPlan, lists: ChoiceLists): void {
  // The library leaves out columns of its default width, so that has to be the file's default too.
  sheet.properties.defaultColWidth = LIBRARY_COLUMN_WIDTH;
  for (const [index, width] of plan.columnWidths.entries())
    sheet.getColumn(index + 1).width = width;
  for (const column of plan.hiddenColumns ?? []) sheet.getColumn(column + 1).hidden = true;
  // A list that can be filtered and sorted, rather than a table: tables bring structured references and resizing
  // that not every spreadsheet keeps.
  if (plan.table !== undefined) sheet.autoFilter = areaAddress(plan.table.area);
  for (const entry of plan.entries) applyEntry(sheet, entry, lists);
  applyHighlights(sheet, plan.highlights);
  for (const { area, text } of plan.notes) {
    sheet.getCell(area.row + 1, area.column + 1).note = { texts: [{ text: escapeText(text) }] };
  }
  applyPanes(sheet, plan);
  applyPage(sheet, plan);
}

/** Rules over the same cells stand together, the plan's first on top. */
function applyHighlights(sheet: Worksheet, highlights: readonly HighlightPlan[]): void {
  const byArea = new Map<string, HighlightPlan[]>();
  for (const highlight of highlights) {
    const where = areaAddress(highlight.area);
    byArea.set(where, [...(byArea.get(where) ?? []), highlight]);
  }
  for (const [ref, rules] of byArea) {
    sheet.addConditionalFormatting({
      ref,
      rules: rules.map((highlight) => ({
        type: 'expression',
        priority: highlights.indexOf(highlight) + 1,
        formulae: [highlight.formula],
        style: highlightStyle(highlight.style),
      })),
    });
  }
}
