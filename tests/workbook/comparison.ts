/** Every computed cell of a recalculated workbook beside the functions' own value. */
import { CellError, type ResultCell } from '../../src/functions/cell';
import type { StationContent } from '../../src/sheets/new-schedule';
import { scheduleNames } from '../../src/sheets/naming';
import { SCHEDULE_COLUMNS } from '../../src/sheets/schedule-columns';
import { SCHEDULE_FORMULAS, type FormulaKey } from '../../src/sheets/schedule-formulas';
import { columnOf, ROW } from '../../src/sheets/schedule-layout';
import { stationValues } from '../../src/sheets/schedule-values';
import { SUPPLY_CELLS, SUPPLY_KEYS } from '../../src/sheets/supply-cells';
import { sharedWorkbook } from '../../src/sheets/shared-workbook';
import { DUTY, DUTY_HEADINGS } from '../../src/sheets/supply-sheet';
import type { PlainCell, WorkbookCells } from './cells';

/** The two may differ by this much of the larger, for numbers. */
export const RELATIVE = 1e-9;

export interface Difference {
  readonly where: string;
  readonly ours: ResultCell;
  readonly theirs: PlainCell;
}

export interface Comparison {
  readonly compared: number;
  readonly differences: readonly Difference[];
  /** Greatest relative difference of two numbers. */
  readonly farthest: number;
}

/** How far apart two values are: 0 for the same, infinitely for different kinds. */
export function distance(ours: ResultCell, theirs: PlainCell): number {
  // Which error it is matters where a formula asks for it, and then shows in what that formula says.
  const isError = typeof theirs === 'object' && theirs !== null;
  if (ours instanceof CellError || isError) {
    return ours instanceof CellError && isError ? 0 : Infinity;
  }
  // A spreadsheet stores an empty text as no value.
  if (ours === '') return theirs === null || theirs === '' ? 0 : Infinity;
  if (typeof ours === 'number' && typeof theirs === 'number') {
    const size = Math.max(Math.abs(ours), Math.abs(theirs));
    return size === 0 ? 0 : Math.abs(ours - theirs) / size;
  }
  return ours === theirs ? 0 : Infinity;
}

const FORMULA_KEYS = Object.keys(SCHEDULE_FORMULAS) as FormulaKey[];

/** Where things stand on the Supply sheet, as its own plan says. */
function supplyPlaces(content: StationContent) {
  const name = scheduleNames().supplySheet;
  const plan = sharedWorkbook(content).find((sheet) => sheet.name === name)!;
  const heading = plan.blocks.find(({ cells }) => cells?.[0]?.join() === DUTY_HEADINGS.join())!;
  return {
    cell: (named: string) => plan.names.find((one) => one.name === named)!.area,
    dutyFirst: heading.area.row + 1,
  };
}

/** Compares the schedule and the Supply sheet of a shared workbook. */
export function compareStation(content: StationContent, cells: WorkbookCells): Comparison {
  const names = scheduleNames();
  const values = stationValues(content);
  const pairs: { where: string; ours: ResultCell; theirs: PlainCell }[] = [];
  for (const [index, run] of values.runs.entries()) {
    for (const key of FORMULA_KEYS) {
      pairs.push({
        where: `${content.title}, row ${index + 1} (${content.runs[index]?.run ?? ''}), ${SCHEDULE_COLUMNS[key].heading}`,
        ours: run[key],
        theirs: cells.at(names.sheet, ROW.first + index, columnOf(key)),
      });
    }
  }
  const supply = supplyPlaces(content);
  for (const key of SUPPLY_KEYS) {
    const { row, column } = supply.cell(names.supply[key]);
    pairs.push({
      where: `${content.title}, ${SUPPLY_CELLS[key].label}`,
      ours: values.supply.cells[key],
      theirs: cells.at(names.supplySheet, row, column),
    });
  }
  for (const [index, duty] of values.supply.duty.entries()) {
    for (const key of ['mean', 'heating', 'daily'] as const) {
      pairs.push({
        where: `${content.title}, duty ${index + 1}, ${key}`,
        ours: duty[key],
        theirs: cells.at(names.supplySheet, supply.dutyFirst + index, DUTY[key]),
      });
    }
  }
  const distances = pairs.map(({ ours, theirs }) => distance(ours, theirs));
  return {
    compared: pairs.length,
    differences: pairs.filter((_, index) => distances[index]! > RELATIVE),
    farthest: Math.max(...distances.filter(Number.isFinite)),
  };
}
