/** The grid's formula engine without its page: enough to see what our functions are given and what becomes of it. */
import { LocaleType, LogLevel, Univer, type ICellData, type IWorksheetData } from '@univerjs/core';
import { FUniver } from '@univerjs/core/facade';
import { UniverFormulaEnginePlugin } from '@univerjs/engine-formula';
import { UniverSheetsPlugin } from '@univerjs/sheets';
import { UniverSheetsFormulaPlugin } from '@univerjs/sheets-formula';
import '@univerjs/engine-formula/facade';
import '@univerjs/sheets/facade';
import '@univerjs/sheets-formula/facade';
import type { WorksheetFunction } from '../../../src/functions/worksheet-function';
import { mendEngine } from '../../../src/hosts/workbench/engine-mends';
import { causeOf } from '../../../src/hosts/workbench/cause';
import { watchChanges } from '../../../src/hosts/workbench/changes';
import { gridFunctions } from '../../../src/hosts/workbench/functions';
import type { Grid } from '../../../src/hosts/workbench/grid';
import { insertName } from '../../../src/hosts/workbench/names';
import { calculateOwnSheets } from '../../../src/hosts/workbench/own-formulas';
import { readCell } from '../../../src/hosts/workbench/read';
import { Sentences } from '../../../src/hosts/workbench/sentences';
import { gridContent, sheetSnapshot } from '../../../src/hosts/workbench/snapshot';
import type { GridValue } from '../../../src/sheets/plan/grid';
import { areaAddress, cellAddress, quotedSheetName } from '../../../src/sheets/plan/area';
import type { CellContent, SheetPlan } from '../../../src/sheets/plan/plan';

const ROWS = 1200;
const COLUMNS = 30;

export interface Engine {
  /** The calculated value at an address. */
  readonly value: (address: string) => GridValue;
  /** The sentence that explains the error at an address. */
  readonly sentence: (address: string) => string | null;
  /** Where the error at an address comes from, such as "B1: size: ...", or null. */
  readonly cause: (address: string) => string | null;
  /** Puts a content into a cell and waits until everything is calculated. */
  readonly put: (address: string, content: CellContent) => Promise<void>;
  readonly insertRowBefore: (row: number) => Promise<void>;
  readonly close: () => void;
}

/** Who calculates the formulas of sheets that were laid out by a plan: in the workbench, our own evaluation does. */
export type Calculates = 'the engine' | 'our evaluation';

/** Opens the grid's engine with these sheets in it and our functions in its formulas, uncalculated. */
export function openBareGrid(
  catalogue: readonly WorksheetFunction[],
  sheets: readonly Partial<IWorksheetData>[],
  calculates: Calculates = 'the engine',
): Grid {
  const sentences = new Sentences();
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: {} },
    logLevel: LogLevel.ERROR,
  });
  univer.registerPlugin(UniverFormulaEnginePlugin, {
    function: gridFunctions(catalogue, sentences),
  });
  univer.registerPlugin(UniverSheetsPlugin);
  univer.registerPlugin(UniverSheetsFormulaPlugin);
  const api = FUniver.newAPI(univer);
  mendEngine(univer);
  if (calculates === 'our evaluation') calculateOwnSheets(univer, sentences);
  const keyed = sheets.map((sheet, index) => [`s${index}`, { id: `s${index}`, ...sheet }] as const);
  const workbook = api.createWorkbook({
    sheetOrder: keyed.map(([id]) => id),
    sheets: Object.fromEntries(keyed),
  });
  return { univer, api, workbook, sentences };
}

/** Opens the engine with the sheets of a station as the add-in inserts them, and calculates all of it. */
export async function openPlans(
  catalogue: readonly WorksheetFunction[],
  plans: readonly SheetPlan[],
  calculates: Calculates = 'the engine',
): Promise<Grid> {
  const grid = openBareGrid(
    catalogue,
    plans.map((plan) => sheetSnapshot(plan)),
    calculates,
  );
  for (const { name: sheetName, names } of plans) {
    for (const { name, area } of names) {
      insertName(grid, name, `${quotedSheetName(sheetName)}!${areaAddress(area, 'both')}`);
    }
  }
  await calculateGrid(grid);
  return grid;
}

/** Calculates everything and waits until it stands in the cells. */
export async function calculateGrid({ api }: Grid): Promise<void> {
  api.getFormula().executeCalculation();
  await api.getFormula().onCalculationResultApplied(60_000);
}

/** Opens a workbook of one sheet with these contents, row by row from A1, and calculates it. */
export async function openEngine(
  catalogue: readonly WorksheetFunction[],
  rows: readonly (readonly CellContent[])[],
): Promise<Engine> {
  const cellData: Record<number, Record<number, ICellData>> = {};
  for (const [row, contents] of rows.entries()) {
    cellData[row] = Object.fromEntries(
      contents.map((content, column) => [column, gridContent(content)]),
    );
  }
  const grid = openBareGrid(catalogue, [
    { name: 'One', rowCount: ROWS, columnCount: COLUMNS, cellData },
  ]);
  const { univer, api, workbook, sentences } = grid;
  watchChanges(grid);
  const sheet = workbook.getActiveSheet();
  const calculated = () => api.getFormula().onCalculationResultApplied(30_000);
  await calculateGrid(grid);

  const value = (address: string) => {
    const range = sheet.getRange(address);
    return readCell(grid, sheet, range.getRow(), range.getColumn());
  };
  return {
    value,
    sentence(address) {
      const range = sheet.getRange(address);
      const code = String(value(address));
      return sentences.find(sheet.getSheetId(), range.getRow(), range.getColumn(), code);
    },
    cause(address) {
      const range = sheet.getRange(address);
      const [row, column] = [range.getRow(), range.getColumn()];
      const found = causeOf(grid, { sheet, row, column }, String(value(address)));
      return found === null ? null : `${cellAddress(found.row, found.column)}: ${found.sentence}`;
    },
    async put(address, content) {
      sheet.getRange(address).setValue({ v: null, f: null, ...gridContent(content) });
      await calculated();
    },
    async insertRowBefore(row) {
      sheet.insertRowBefore(row);
      await calculated();
    },
    close() {
      univer.dispose();
    },
  };
}
