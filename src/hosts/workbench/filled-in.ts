/**
 * New sheets with their values already in them: evaluated from their plans a piece at a time, before the grid has them. From
 * the first edit on they are evaluated as they stand there (`own-formulas.ts`).
 */
import {
  ObjectMatrix,
  type ICellData,
  type IObjectMatrixPrimitiveType,
  type Nullable,
} from '@univerjs/core';
import {
  FormulaDataModel,
  IActiveDirtyManagerService,
  SetDefinedNameMutation,
} from '@univerjs/engine-formula';
import { InsertSheetMutation } from '@univerjs/sheets';
import type { FWorksheet } from '@univerjs/sheets/facade';
import { CellError, type Cell } from '../../functions/cell';
import { calculate, type Calculated } from '../../sheets/calculate/calculate';
import { compileFormula } from '../../sheets/calculate/compile';
import { FormulaSyntaxError } from '../../sheets/calculate/syntax';
import { formulasOf } from '../../sheets/plan/formulas-of';
import type { SheetPlan } from '../../sheets/plan/plan';
import type { Grid } from './grid';
import type { Watch } from '../sheet-host';
import { stepOf } from './insertion';
import { gridValueOf } from './snapshot';
import { Turns } from './turns';

/** A sheet's name in front of an address. */
const SHEET_NAMED = /(?:'((?:[^']|'')+)'|\b([A-Za-z_]\w*))!/g;

/**
 * What the cells of the plans come to; nothing for plans that our evaluation does not know the language of, or that hang on
 * sheets which stand already: their cells would be taken for empty.
 */
export function valuesOf(plans: readonly SheetPlan[]): Calculated | undefined {
  const names = new Set(plans.map(({ name }) => name));
  const pointsElsewhere = (formula: string) =>
    [...formula.matchAll(SHEET_NAMED)].some(
      ([, quoted, plain = '']) => !names.has(quoted?.replaceAll("''", "'") ?? plain),
    );
  const formulas = plans.flatMap(formulasOf);
  if (formulas.some(pointsElsewhere)) return undefined;
  try {
    formulas.forEach(compileFormula);
  } catch (fault) {
    if (fault instanceof FormulaSyntaxError) return undefined;
    throw fault;
  }
  return calculate(plans);
}

/** The share of an insertion that is done when its formulas are evaluated. */
export const EVALUATED = 0.6;

/** Evaluates all that the plans have, a piece at a time, so that the page stands still for none of it. */
export async function evaluate(
  plans: readonly SheetPlan[],
  values: Calculated,
  watch: Watch,
): Promise<void> {
  const turns = new Turns();
  const blocks = plans.flatMap(({ name, blocks: of }) => of.map((block) => ({ name, ...block })));
  const filled = blocks.filter(({ cells, fill }) => cells !== undefined || fill !== undefined);
  const all = filled.reduce((sum, { area }) => sum + area.rows, 0);
  let done = 0;
  stepOf(watch, 0);
  for (const { name, area } of filled) {
    for (let row = area.row; row < area.row + area.rows; row += 1, done += 1) {
      for (let column = area.column; column < area.column + area.columns; column += 1) {
        values.at(name, row, column);
      }
      if (!turns.isDue()) continue;
      stepOf(watch, (EVALUATED * done) / all);
      await turns.take();
    }
  }
}

/** Commands after which the engine would calculate a new sheet. */
const NEW_SHEETS = [InsertSheetMutation.id, SetDefinedNameMutation.id];

/** Does something that adds sheets and names, without the engine calculating them. */
export function withoutCalculating(grid: Grid, add: () => void): void {
  const dirty = grid.univer.__getInjector().get(IActiveDirtyManagerService);
  const known = NEW_SHEETS.flatMap((id) => dirty.get(id) ?? []);
  for (const id of NEW_SHEETS) dirty.remove(id);
  try {
    add();
  } finally {
    for (const conversion of known) dirty.register(conversion.commandId, conversion);
  }
}

type SpilledCells = IObjectMatrixPrimitiveType<Nullable<ICellData>>;

/** Tells the engine what formulas of a new sheet spill, and keeps the sentences of its errors. */
export function tellEngine(
  grid: Grid,
  sheet: FWorksheet,
  plan: SheetPlan,
  values: Calculated,
): void {
  const unitId = grid.workbook.getId();
  const sheetId = sheet.getSheetId();
  const spilled: SpilledCells = {};
  const ranges: IObjectMatrixPrimitiveType<{
    startRow: number;
    endRow: number;
    startColumn: number;
    endColumn: number;
  }> = {};
  const keep = (row: number, column: number, cell: Cell) => {
    if (cell instanceof CellError) grid.sentences.keep(sheetId, row, column, [[cell]]);
  };
  for (const { area, cells, fill, spillRows } of plan.blocks) {
    if (cells === undefined && fill === undefined) continue;
    for (let row = area.row; row < area.row + area.rows; row += 1) {
      for (let column = area.column; column < area.column + area.columns; column += 1) {
        keep(row, column, values.at(plan.name, row, column));
      }
    }
    if (spillRows === undefined) continue;
    const { row: first, column } = area;
    ranges[first] = {
      ...ranges[first],
      [column]: {
        startRow: first,
        endRow: first + spillRows - 1,
        startColumn: column,
        endColumn: column,
      },
    };
    for (let row = first; row < first + spillRows; row += 1) {
      const value = values.at(plan.name, row, column);
      keep(row, column, value);
      spilled[row] = { ...spilled[row], [column]: gridValueOf(value ?? '') };
    }
  }
  if (Object.keys(ranges).length === 0) return;
  const model = grid.univer.__getInjector().get(FormulaDataModel);
  model.mergeArrayFormulaRange({ [unitId]: { [sheetId]: ranges } });
  model.mergeArrayFormulaCellData({
    [unitId]: { [sheetId]: new ObjectMatrix(spilled) },
  });
}
