/** The Protection sheet as the add-in inserts it, calculated by the grid's engine with our functions in it. */
import { LocaleType, LogLevel, Univer, type IWorksheetData } from '@univerjs/core';
import { FUniver } from '@univerjs/core/facade';
import { UniverFormulaEnginePlugin } from '@univerjs/engine-formula';
import { UniverSheetsPlugin } from '@univerjs/sheets';
import { UniverSheetsFormulaPlugin } from '@univerjs/sheets-formula';
import '@univerjs/engine-formula/facade';
import '@univerjs/sheets/facade';
import '@univerjs/sheets-formula/facade';
import { afterEach, expect, test } from 'vitest';
import { CATALOGUE } from '../../../src/functions/catalogue';
import { CellError, type ResultCell } from '../../../src/functions/cell';
import { compareAfresh } from '../../../src/hosts/workbench/comparisons';
import { gridFunctions } from '../../../src/hosts/workbench/functions';
import type { Grid } from '../../../src/hosts/workbench/grid';
import { readCell } from '../../../src/hosts/workbench/read';
import { Sentences } from '../../../src/hosts/workbench/sentences';
import { sheetSnapshot } from '../../../src/hosts/workbench/snapshot';
import type { GridValue } from '../../../src/sheets/plan/grid';
import { areaAddress, quotedSheetName } from '../../../src/sheets/plan/area';
import { DEMO } from '../../../src/sheets/station/demo';
import { scheduleNames } from '../../../src/sheets/station/naming';
import type { SheetPlan } from '../../../src/sheets/plan/plan';
import { PROTECTION_COLUMNS } from '../../../src/sheets/protection/columns';
import { PROTECTION_CELL_KEYS, PROTECTION_KEYS } from '../../../src/sheets/station/protection-keys';
import {
  PROTECTION_ROW,
  protectionCell,
  protectionColumn,
} from '../../../src/sheets/protection/layout';
import { columnOf, ROW } from '../../../src/sheets/schedule/layout';
import { scheduleSheets } from '../../../src/sheets/new-schedule';
import type { StationContent } from '../../../src/sheets/station/content';
import { stationValues } from '../../../src/sheets/station-values';

let univer: Univer | undefined;
afterEach(() => {
  univer?.dispose();
  univer = undefined;
});

const NOTHING_TAKEN = { sheets: new Set<string>(), names: new Set<string>() };
const names = scheduleNames();

/** The plans' sheets in a workbook of the engine, calculated. */
async function calculated(
  plans: readonly SheetPlan[],
): Promise<(sheet: string, row: number, column: number) => GridValue> {
  compareAfresh();
  const sentences = new Sentences();
  univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: {} },
    logLevel: LogLevel.ERROR,
  });
  univer.registerPlugin(UniverFormulaEnginePlugin, {
    function: gridFunctions(CATALOGUE, sentences),
  });
  univer.registerPlugin(UniverSheetsPlugin);
  univer.registerPlugin(UniverSheetsFormulaPlugin);
  const api = FUniver.newAPI(univer);
  const sheets = Object.fromEntries(
    plans.map((plan, index): [string, Partial<IWorksheetData>] => [
      `s${index}`,
      { id: `s${index}`, ...sheetSnapshot(plan) },
    ]),
  );
  const workbook = api.createWorkbook({ sheetOrder: Object.keys(sheets), sheets });
  for (const plan of plans) {
    for (const { name, area } of plan.names) {
      const where = `${quotedSheetName(plan.name)}!${areaAddress(area, 'both')}`;
      workbook.insertDefinedName(name, where);
    }
  }
  const grid: Grid = { univer, api, workbook, sentences };
  api.getFormula().executeCalculation();
  await api.getFormula().onCalculationResultApplied(60_000);
  return (sheet, row, column) => readCell(grid, workbook.getSheetByName(sheet)!, row, column);
}

function isAlike(ours: ResultCell, theirs: GridValue): boolean {
  if (ours instanceof CellError) return theirs === ours.code;
  if (ours === '') return theirs === null;
  if (typeof ours !== 'number' || typeof theirs !== 'number') return ours === theirs;
  return Math.abs(ours - theirs) <= 1e-9 * Math.max(Math.abs(ours), Math.abs(theirs));
}

/** A stiff and a weak battery, and every series. */
const STATIONS: readonly StationContent[] = [
  DEMO,
  {
    ...DEMO,
    title: 'Stiff',
    rules: { ...DEMO.rules, series: 'AWG all' },
    supply: { ...DEMO.supply, milliohms: 3 },
  },
  {
    ...DEMO,
    title: 'Weak',
    rules: { ...DEMO.rules, series: 'mm2', insulationC: 90 },
    supply: { ...DEMO.supply, milliohms: 60 },
    protection: { startC: 90, limitC: 250 },
  },
];

test.each(STATIONS.map((content) => [content.title, content] as const))(
  'comes to what the functions answer: %s',
  async (_, content) => {
    const at = await calculated(scheduleSheets(content, 'cells', NOTHING_TAKEN));
    const { protection, runs } = stationValues(content);
    const differing: string[] = [];
    const compare = (where: string, ours: ResultCell, theirs: GridValue) => {
      if (!isAlike(ours, theirs)) differing.push(`${where}: ${JSON.stringify([ours, theirs])}`);
    };
    for (const key of PROTECTION_CELL_KEYS) {
      const { row, column } = protectionCell(key);
      compare(key, protection.cells[key], at(names.protectionSheet, row, column));
    }
    for (const [index, row] of protection.rows.entries()) {
      for (const key of PROTECTION_KEYS) {
        compare(
          `${content.runs[index]!.run}, ${PROTECTION_COLUMNS[key].heading}`,
          row[key],
          at(names.protectionSheet, PROTECTION_ROW.first + index, protectionColumn(key)),
        );
      }
      for (const key of ['protection', 'guardedFrom', 'verdict', 'mend'] as const) {
        compare(
          `${content.runs[index]!.run}, schedule ${key}`,
          runs[index]![key],
          at(names.sheet, ROW.first + index, columnOf(key)),
        );
      }
    }
    expect(differing).toEqual([]);
  },
);
