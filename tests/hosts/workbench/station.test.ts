/** The sheets of a station as the add-in inserts them, calculated by the grid's engine with our functions in it. */
import { afterEach, expect, test } from 'vitest';
import { CATALOGUE } from '../../../src/functions/catalogue';
import { CellError, ERROR_CODES, type Cell, type ErrorCode } from '../../../src/functions/cell';
import type { Grid } from '../../../src/hosts/workbench/grid';
import { readCell } from '../../../src/hosts/workbench/read';
import { calculate, type Calculated } from '../../../src/sheets/calculate/calculate';
import { CREW_KEYS, CREW_ROW, crewColumn } from '../../../src/sheets/crew/layout';
import { layBlocks } from '../../../src/sheets/plan/lay-blocks';
import type { SheetPlan } from '../../../src/sheets/plan/plan';
import { cellAddress, quotedSheetName } from '../../../src/sheets/plan/area';
import type { GridValue } from '../../../src/sheets/plan/grid';
import { scheduleSheets } from '../../../src/sheets/new-schedule';
import { readStationValues } from '../../../src/sheets/station-values';
import type { StationContent } from '../../../src/sheets/station/content';
import { withNumbersAsText } from '../../../src/sheets/plan/typed-text';
import { EXTRA_KEYS, EXTRAS } from '../../../src/sheets/station/extras';
import { DEMO } from '../../../src/sheets/station/demo';
import { scheduleNames } from '../../../src/sheets/station/naming';
import { compareStations, summary, toldDifferences } from '../../sheets/station-differences';
import { distance, RELATIVE, told } from '../../closeness';
import { openPlans } from './engine';

const NOTHING_TAKEN = { sheets: new Set<string>(), names: new Set<string>() };

let grid: Grid | undefined;
afterEach(() => {
  grid?.univer.dispose();
  grid = undefined;
});

/** A value as the grid shows it, errors by their kind. */
function cellOf(value: GridValue): Cell {
  const isError = typeof value === 'string' && ERROR_CODES.includes(value as ErrorCode);
  return isError ? new CellError(value as ErrorCode, 'in the grid') : value;
}

/**
 * A stiff and a weak battery, and every series. Stations with mistakes are not held to it: dividing by text is #DIV/0! to
 * the grid's engine, and empty text counts as 0, where Excel and LibreOffice say #VALUE!.
 */
const STATIONS: readonly StationContent[] = [
  { ...DEMO, extras: EXTRA_KEYS },
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

/** Lines of the crew's page that the grid has otherwise than we do. */
function differingLines(plans: readonly SheetPlan[], theirs: Calculated): readonly string[] {
  const ours = calculate(plans);
  const { crewSheet } = scheduleNames();
  const line = (of: Calculated, row: number) =>
    CREW_KEYS.map((key) => {
      const cell = of.at(crewSheet, row, crewColumn(key));
      return cell instanceof CellError ? cell.code : (cell ?? '');
    });
  const different: string[] = [];
  for (let row = 0; row < CREW_ROW.first + 3 * DEMO.runs.length; row += 1) {
    const [own, other] = [line(ours, row), line(theirs, row)];
    const isSame = own.every((cell, at) =>
      typeof cell === 'number' && typeof other[at] === 'number'
        ? Math.abs(cell - other[at]) < 1e-9
        : cell === other[at],
    );
    if (!isSame) different.push(`${own.join(' | ')} / ${other.join(' | ')}`);
  }
  return different;
}

/** Computed cells of the sheets beyond the sizing that the grid has otherwise than we do. */
function differingExtras(plans: readonly SheetPlan[], theirs: Calculated) {
  const ours = calculate(plans);
  const names = new Set(EXTRA_KEYS.map((key) => EXTRAS[key].sheetName));
  let compared = 0;
  const different: string[] = [];
  for (const { name, blocks } of plans.filter((plan) => names.has(plan.name))) {
    for (const { row, column, content } of layBlocks(blocks)) {
      if (typeof content !== 'object' || content === null) continue;
      compared += 1;
      const [own, other] = [ours.at(name, row, column), theirs.at(name, row, column)];
      if (distance(own, other) > RELATIVE) {
        different.push(
          `${quotedSheetName(name)}!${cellAddress(row, column)} ${content.formula.slice(0, 100)}: ${told(own)} / ${told(other)}`,
        );
      }
    }
  }
  return { compared, different };
}

test.each(STATIONS.map((content) => [content.title, content] as const))(
  'come to what our own evaluation says: %s',
  async (_, content) => {
    const plans = scheduleSheets(content, 'cells', NOTHING_TAKEN).map(withNumbersAsText);
    grid = await openPlans(CATALOGUE, plans);
    const { workbook } = grid;
    const calculated = {
      at: (sheet: string, row: number, column: number) =>
        cellOf(readCell(grid!, workbook.getSheetByName(sheet)!, row, column)),
    };
    const theirs = readStationValues(calculated, content, scheduleNames());
    const comparison = compareStations(
      content,
      readStationValues(calculate(plans), content, scheduleNames()),
      theirs,
    );
    console.info(summary(`The grid, ${content.title}`, comparison));
    expect(comparison.compared).toBeGreaterThan(1000);
    expect(toldDifferences(comparison.differences)).toEqual([]);
    expect(comparison.setAside).toEqual([]);
    expect(differingLines(plans, calculated)).toEqual([]);
    const { compared, different } = differingExtras(plans, calculated);
    if (content.extras !== undefined) expect(compared).toBeGreaterThan(1000);
    expect(different.slice(0, 20)).toEqual([]);
  },
  120_000,
);
