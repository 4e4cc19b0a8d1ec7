/** Plans as an .xlsx file. Everything is as the plan says; the same plans give the same bytes. */
import ExcelJS, { type CellFormulaValue, type Worksheet } from 'exceljs';
import { CellError, type ResultCell } from '../../functions/cell';
import type { Calculated } from '../../sheets/calculate/calculate';
import { areaAddress, cellAddress, quotedSheetName } from '../../sheets/plan/area';
import { filledDown } from '../../sheets/plan/fill-down';
import { layBlocks } from '../../sheets/plan/lay-blocks';
import type { CellContent, CellStyle, HighlightPlan, SheetPlan } from '../../sheets/plan/plan';
import { applyEntry } from './entries';
import { escapeText } from '../../lists/escape';
import { unmark, type Place, type UnmarkedCells } from './ignored-errors';
import { ChoiceLists } from './lists';
import { applyPage, applyPanes } from './page';
import { cellStyle, highlightStyle } from './styles';
import { fixZipTimes } from './zip-times';

const CREATOR = 'Loomsheet';
/** A fixed moment, so that only what changed differs between two files. */
const CREATED = new Date(Date.UTC(2000, 0, 1));

const LIBRARY_COLUMN_WIDTH = 9;

const TEXT_FORMAT = '@';
/** What a spreadsheet would take for a formula when someone edits the cell. */
const FORMULA_LIKE = /^[=+\-@]/;

/**
 * The workbook with these sheets, in their order, the first in view. `values` are what its formulas come to, for viewers
 * that do not calculate.
 */
export async function writeWorkbook(
  plans: readonly SheetPlan[],
  values?: Calculated,
): Promise<Uint8Array> {
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
  unmark(
    workbook,
    new Map(sheets.map(([sheet, plan]) => [sheet.id, drawSheet(sheet, plan, lists, values)])),
  );
  for (const plan of plans) {
    for (const { name, area } of plan.names) {
      const where = `${quotedSheetName(plan.name)}!${areaAddress(area, 'both')}`;
      workbook.definedNames.add(where, name);
    }
  }

  const bytes = new Uint8Array(await workbook.xlsx.writeBuffer());
  fixZipTimes(bytes);
  return bytes;
}

/** Draws the sheet, and tells which of its cells are to carry no mark of a fault. */
function drawSheet(
  sheet: Worksheet,
  plan: SheetPlan,
  lists: ChoiceLists,
  values: Calculated | undefined,
): UnmarkedCells {
  // The library leaves out columns of its default width, so that has to be the file's default too.
  sheet.properties.defaultColWidth = LIBRARY_COLUMN_WIDTH;
  for (const [index, width] of plan.columnWidths.entries())
    sheet.getColumn(index + 1).width = width;
  for (const column of plan.hiddenColumns ?? []) sheet.getColumn(column + 1).hidden = true;
  const unmarked = drawCells(sheet, plan, values);
  for (const [row, heightPt] of Object.entries(plan.rowHeightsPt ?? {})) {
    sheet.getRow(Number(row) + 1).height = heightPt;
  }
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
  return unmarked;
}

function drawCells(
  sheet: Worksheet,
  plan: SheetPlan,
  values: Calculated | undefined,
): UnmarkedCells {
  const texts: Place[] = [];
  const unlikes: Place[] = [];
  const styles = new Map<string, ReturnType<typeof cellStyle>>();
  const formulas = new FilledFormulas();
  for (const { row, column, content, style } of layBlocks(plan.blocks)) {
    const cell = sheet.getCell(row + 1, column + 1);
    if (typeof content === 'object' && content !== null) {
      const formula = formulas.at(row, column, unlike(content.formula.replace(/^=/, ''), row));
      const value = values?.at(plan.name, row, column) ?? undefined;
      cell.value = value === undefined ? formula : { ...formula, result: resultOf(value) };
    } else if (content !== null) {
      cell.value = typeof content === 'string' ? escapeText(content) : content;
    }
    const own = styleFor(content, style);
    const key = JSON.stringify(own);
    let shared = styles.get(key);
    if (shared === undefined) styles.set(key, (shared = cellStyle(own)));
    // One object for all cells that look alike: the library looks styles up by identity.
    cell.style = shared;
    if (own.numberFormat === TEXT_FORMAT) texts.push({ row, column });
    // The first row has none above it to differ from.
    if (typeof content === 'object' && content !== null && row > 0 && isUnlike(row)) {
      unlikes.push({ row, column });
    }
  }
  return { texts, unlike: unlikes };
}

/** A formula in a cell formatted as text would turn into its own text when edited, and the reverse. */
function styleFor(content: CellContent, style: CellStyle): CellStyle {
  const isFormula = typeof content === 'object' && content !== null;
  if (isFormula && style.numberFormat === TEXT_FORMAT) return { ...style, numberFormat: 'General' };
  if (typeof content === 'string' && FORMULA_LIKE.test(content)) {
    return { ...style, numberFormat: TEXT_FORMAT };
  }
  return style;
}

/**
 * LibreOffice calculates a hundred and more alike formulas one below the other in parallel, and then takes a column that
 * leads to a sum and back to another column of the same rows for a circle (seen in 7.4: Err:522). So no stretch of
 * formulas is as long as that: every so many rows one stands in brackets.
 */
const ALIKE_AT_MOST = 64;

const isUnlike = (row: number) => row % ALIKE_AT_MOST === 0;

function unlike(formula: string, row: number): string {
  return isUnlike(row) ? `(${formula})` : formula;
}

/**
 * Formulas that are filled down, each written out once: the cells below say that they share it. The long ones of a copy
 * without the add-in make a file of megabytes otherwise. One that names another sheet is written out in every row, since
 * the older format of workbooks knew no such formula that is shared.
 */
class FilledFormulas {
  private readonly firstOf = new Map<number, { row: number; formula: string; last: number }>();

  at(
    row: number,
    column: number,
    formula: string,
  ): { formula: string } | { sharedFormula: string } {
    const first = this.firstOf.get(column);
    if (first?.last === row - 1 && filledDown(first.formula)(row - first.row) === formula) {
      first.last = row;
      return { sharedFormula: cellAddress(first.row, column) };
    }
    if (formula.includes('!')) this.firstOf.delete(column);
    else this.firstOf.set(column, { row, formula, last: row });
    return { formula };
  }
}

function resultOf(value: ResultCell): NonNullable<CellFormulaValue['result']> {
  if (value instanceof CellError) {
    return { error: value.code };
  }
  return typeof value === 'string' ? escapeText(value) : value;
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
