/**
 * What every cell of a set of sheets comes to, without any spreadsheet: the formulas of their plans, evaluated. Sheets
 * point at each other by address and by defined name, so they are calculated together.
 */
import type { Cell } from '../../functions/cell';
import { hasContent } from '../plan/lay-blocks';
import type { SheetPlan } from '../plan/plan';
import { Formula, SpilledCell, Workbook, type Sheet } from './workbook';

/** Calculated sheets, read by zero-based place. */
export interface Calculated {
  /** The value of a cell; null where nothing stands. */
  at(sheet: string, row: number, column: number): Cell;
}

function fill(sheet: Sheet, plan: SheetPlan): void {
  for (const block of plan.blocks) {
    if (!hasContent(block)) continue;
    const { area, cells, fill, spillRows } = block;
    const filled = fill?.map((formula) =>
      formula === null ? undefined : new Formula(formula, area.row),
    );
    for (let down = 0; down < area.rows; down += 1) {
      const typed = cells?.[down];
      for (let across = 0; across < area.columns; across += 1) {
        const [row, column] = [area.row + down, area.column + across];
        const given = typed?.[across] ?? null;
        if (given === null) {
          sheet.put(row, column, filled?.[across]);
        } else if (typeof given === 'object') {
          sheet.put(row, column, new Formula(given.formula, row, spillRows));
          for (let below = 1; below < (spillRows ?? 1); below += 1) {
            sheet.put(row + below, column, new SpilledCell(row, below));
          }
        } else sheet.put(row, column, given);
      }
    }
  }
}

/**
 * Calculates sheets, each cell when it is first asked for. Formulas are written in cell addresses; those of a table's own
 * columns (structured references) are not calculated. A formula that is none throws FormulaSyntaxError where its cell is
 * asked for.
 */
export function calculate(plans: readonly SheetPlan[]): Calculated {
  return workbookOf(plans, new Workbook());
}

/** Puts sheets into a workbook that evaluates them. */
export function workbookOf(plans: readonly SheetPlan[], workbook: Workbook): Workbook {
  const sheets = plans.map((plan) => workbook.addSheet(plan.name));
  for (const [index, { names }] of plans.entries()) {
    for (const { name, area } of names) workbook.addName(name, sheets[index]!, area);
  }
  for (const [index, plan] of plans.entries()) fill(sheets[index]!, plan);
  return workbook;
}
