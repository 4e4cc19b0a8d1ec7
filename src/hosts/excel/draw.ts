/**
 * Draws plans into a workbook. Everything is queued; nothing here waits for Excel but between the two stages, so the
 * number of round trips does not grow with sheets or rows. The order matters and is tested:
 * number formats before values, since a text format decides how a value is read; tables over their filled cells,
 * since filling a table grows slow; formulas after every sheet, name and table that they may refer to.
 */
import type { SheetPlan } from '../../sheets/plan/plan';
import { bodyColumn, compose, type Composition, type Write } from './composition';
import { applyEntry, applyNote } from './entries';
import { applyHighlight } from './highlights';
import { applyPage } from './page';
import { rangeOf } from './range-of';
import { applyStyle } from './styles';

/** A quiet table style; the plan's own fills and lines lie over it. */
const TABLE_STYLE = 'TableStyleLight1';

interface Drawing {
  readonly plan: SheetPlan;
  readonly sheet: Excel.Worksheet;
  readonly composition: Composition;
}

/** Adds and draws the sheets in their order and brings the first into view. Leaves clearing up to the caller. */
export async function drawPlans(
  context: Excel.RequestContext,
  plans: readonly SheetPlan[],
): Promise<void> {
  const compositions = plans.map(compose);
  holdStill(context);
  const drawings = plans.map((plan, index): Drawing => ({
    plan,
    sheet: context.workbook.worksheets.add(plan.name),
    composition: compositions[index]!,
  }));
  for (const { plan, sheet } of drawings) addNames(context, sheet, plan);
  for (const { sheet, composition } of drawings) writeConstants(sheet, composition);
  for (const { sheet, plan } of drawings) addTable(sheet, plan);
  await context.sync();

  holdStill(context);
  for (const { sheet, plan } of drawings) writeComputedColumns(sheet, plan);
  for (const { sheet, composition } of drawings) {
    // After the columns: Excel takes a column with one formula in it for calculated, and then bears exceptions.
    for (const write of [...composition.overtyped, ...composition.formulas]) {
      assignCells(sheet, write);
    }
  }
  for (const drawing of drawings) dress(drawing);
  const first = drawings[0]?.sheet;
  first?.activate();
  first?.getRange('A1').select();
  await context.sync();
}

/** Keeps Excel from repainting and calculating between the queued steps. */
function holdStill(context: Excel.RequestContext): void {
  context.application.suspendScreenUpdatingUntilNextSync();
  context.application.suspendApiCalculationUntilNextSync();
}

function addNames(context: Excel.RequestContext, sheet: Excel.Worksheet, plan: SheetPlan): void {
  for (const { name, area } of plan.names) {
    context.workbook.names.add(name, rangeOf(sheet, area));
  }
}

function assignCells(sheet: Excel.Worksheet, write: Write): void {
  rangeOf(sheet, write.area).formulas = write.rows as Excel.Range['formulas'];
}

function writeConstants(sheet: Excel.Worksheet, composition: Composition): void {
  for (const write of composition.formats) {
    rangeOf(sheet, write.area).numberFormat = write.rows as Excel.Range['numberFormat'];
  }
  for (const write of composition.constants) {
    rangeOf(sheet, write.area).values = write.rows as Excel.Range['values'];
  }
}

function addTable(sheet: Excel.Worksheet, plan: SheetPlan): void {
  if (plan.table === undefined) return;
  const table = sheet.tables.add(rangeOf(sheet, plan.table.area), true);
  table.name = plan.table.name;
  table.style = TABLE_STYLE;
  // Grey bands would look like highlights on a grey print.
  table.showBandedRows = false;
}

/** A formula in every cell of a column makes it a calculated column: Excel fills it down into new rows by itself. */
function writeComputedColumns(sheet: Excel.Worksheet, plan: SheetPlan): void {
  if (plan.table === undefined) return;
  const table = sheet.tables.getItem(plan.table.name);
  for (const [index, column] of plan.table.columns.entries()) {
    if (column.formula === undefined) continue;
    const formula = column.formula.startsWith('=') ? column.formula : `=${column.formula}`;
    const { rows } = bodyColumn(plan.table.area, index);
    table.columns.getItemAt(index).getDataBodyRange().formulas = Array.from(
      { length: rows },
      () => [formula],
    );
  }
}

/** Everything that is not content: looks, entries, highlights, notes, page. */
function dress({ plan, sheet }: Drawing): void {
  for (const { area, style } of plan.blocks) {
    if (style !== undefined) applyStyle(rangeOf(sheet, area).format, area, style);
  }
  for (const entry of plan.entries) applyEntry(rangeOf(sheet, entry.area), entry);
  for (const note of plan.notes) applyNote(rangeOf(sheet, note.area), note);
  // Excel puts each new rule on top, and the plan's first is to win.
  for (const highlight of [...plan.highlights].reverse()) {
    applyHighlight(rangeOf(sheet, highlight.area), highlight);
  }
  applyPage(sheet, plan);
}
