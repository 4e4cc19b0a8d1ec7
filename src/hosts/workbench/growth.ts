/**
 * A schedule that grows by what is written below its last row, as a table of a spreadsheet does: it and every sheet that
 * follows its runs are laid out for more of them, with the entries where they are. One step of undo takes back what was
 * written and the growth with it.
 */
import { deserializeRangeWithSheet, IDefinedNamesService } from '@univerjs/engine-formula';
import { SetWorksheetRowCountMutation, type ISetRangeValuesMutationParams } from '@univerjs/sheets';
import type { FWorksheet } from '@univerjs/sheets/facade';
import { stationOf } from '../../lists/grids';
import { protectionOf } from '../../lists/run-entries';
import { addInSheets } from '../../sheets/book';
import { CAUTIONS } from '../../sheets/plan/cautions';
import type { ComputedGrid } from '../../sheets/plan/grid';
import type { SheetPlan } from '../../sheets/plan/plan';
import { ROW as SCHEDULE_ROW } from '../../sheets/schedule/layout';
import { roomyRows } from '../../sheets/schedule/sheet';
import { scheduleNames, type ScheduleNames } from '../../sheets/station/naming';
import { COLUMN_KEYS } from '../../sheets/station/schedule-keys';
import type { Grid } from './grid';
import { readComputed, readSheet } from './read';
import { formulasOf, hasFormula, relaid, type SheetCells } from './relay';
import { entrySteps, highlightSteps, nameSteps } from './relay-rules';
import { sheetSnapshot } from './snapshot';
import { cellSteps, takeSteps, type Step } from './steps';
import { afterCellsWritten } from './written-cells';

/** A schedule of the workbook, and how many rows it is laid out for. */
interface StandingSchedule {
  readonly sheet: FWorksheet;
  readonly names: ScheduleNames;
  readonly rows: number;
}

/** More schedules than anyone has in a workbook. */
const MOST_SCHEDULES = 200;

const BY_RUNS_NAME = new Map(
  Array.from({ length: MOST_SCHEDULES }, (_, index) => scheduleNames(index + 1)).map(
    (names) => [names.schedule.runs.toLowerCase(), names] as const,
  ),
);

/** The schedule on a sheet, known by the name of its runs; undefined where there is none, or one of an older make. */
function scheduleOn({ univer, workbook }: Grid, sheet: FWorksheet): StandingSchedule | undefined {
  const defined = univer.__getInjector().get(IDefinedNamesService);
  const all = Object.values(defined.getDefinedNameMap(workbook.getId()) ?? {});
  for (const { name, formulaOrRefString } of all) {
    const names = BY_RUNS_NAME.get(name.toLowerCase());
    if (names === undefined) continue;
    const { sheetName, range } = deserializeRangeWithSheet(formulaOrRefString);
    if (sheetName !== sheet.getSheetName() || range.startRow !== SCHEDULE_ROW.first) continue;
    return { sheet, names, rows: range.endRow - range.startRow + 1 };
  }
  return undefined;
}

const ENTRY_COLUMNS = (['run', 'fedFrom', 'load', 'peak', 'length'] as const).map((key) =>
  COLUMN_KEYS.indexOf(key),
);

/** How many rows right below the schedule hold something that belongs to a run. */
function rowsWrittenBelow({ sheet, rows }: StandingSchedule): number {
  const cells = sheet.getSheet();
  const isWritten = (row: number) =>
    ENTRY_COLUMNS.some((column) => {
      const written = String(cells.getCellRaw(row, column)?.v ?? '').trim();
      return written !== '' && !CAUTIONS.includes(written);
    });
  let below = 0;
  while (isWritten(SCHEDULE_ROW.first + rows + below)) below += 1;
  return below;
}

/** Why a schedule could not grow. */
export class GrowthFault extends Error {}

const OLDER_MAKE =
  'this schedule is of another make than this page lays out. Save a copy and open it here: it comes with room for more runs.';

/** All sheets with what formulas compute in them. */
function allGrids(grid: Grid): ComputedGrid[] {
  return grid.workbook.getSheets().flatMap((sheet) => {
    const used = readSheet(grid, sheet);
    return used === null ? [] : [{ ...used, computed: readComputed(grid, sheet, used) }];
  });
}

interface Laid {
  readonly plan: SheetPlan;
  readonly cells: SheetCells;
}

const laid = (plan: SheetPlan): Laid => ({ plan, cells: sheetSnapshot(plan).cellData ?? {} });

/** A formula as it is compared: the grid quotes names of sheets that need none where it has renamed one. */
const plainly = (formula: string) => formula.replace(/'([A-Za-z_]\w*)'!/g, '$1!');

/** Whether the formulas of a layout stand on a sheet; those that a person typed over are passed by. */
function standsOn({ cells }: Laid, sheet: FWorksheet): boolean {
  const formula = formulasOf(cells);
  let found = 0;
  for (const [row, line] of Object.entries(cells)) {
    for (const [column, cell] of Object.entries(line ?? {})) {
      if (typeof cell?.f !== 'string') continue;
      const range = sheet.getRange(Number(row), Number(column));
      const stands = sheet.getSheet().getCellRaw(Number(row), Number(column));
      if (!hasFormula(stands)) continue;
      if (plainly(range.getFormula()) !== plainly(formula(Number(row), Number(column))))
        return false;
      found += 1;
    }
  }
  return found > 0;
}

/** The sheets of a schedule as they are laid out for so many rows. */
function layouts(grid: Grid, { sheet, names }: StandingSchedule, rows: readonly number[]) {
  const grids = allGrids(grid);
  const sheetName = sheet.getSheetName();
  const content = stationOf(grids, sheetName);
  const protectionSheet = protectionOf(grids, sheetName);
  if (content === undefined || protectionSheet === undefined) throw new GrowthFault(OLDER_MAKE);
  // What was typed for a run stays where it stands.
  const bare = { ...content, runs: [] };
  const named = { ...names, sheet: sheetName, protectionSheet };
  return rows.map((count) =>
    addInSheets({ names: named, references: 'cells', rows: count }, bare).map(laid),
  );
}

/**
 * The sheet that stands as laid out; undefined where a person has removed it. Throws a GrowthFault where it stands
 * otherwise: half of its formulas would follow the new rows, and half not.
 */
function standingSheet({ workbook }: Grid, layout: Laid): FWorksheet | undefined {
  const named = workbook.getSheetByName(layout.plan.name);
  if (named !== null) {
    if (!standsOn(layout, named)) throw new GrowthFault(OLDER_MAKE);
    return named;
  }
  return workbook.getSheets().find((sheet) => standsOn(layout, sheet));
}

/** Room for what the layout has, and for going on below it. */
function roomSteps({ workbook }: Grid, sheet: FWorksheet, { plan }: Laid): Step[] {
  const wanted = sheetSnapshot(plan).rowCount ?? 0;
  const stands = sheet.getMaxRows();
  if (stands >= wanted) return [];
  const set = (rowCount: number) => ({
    id: SetWorksheetRowCountMutation.id,
    params: { unitId: workbook.getId(), subUnitId: sheet.getSheetId(), rowCount },
  });
  return [{ does: set(wanted), undoes: set(stands) }];
}

/** What makes a schedule one of so many rows. Throws a GrowthFault where that cannot be. */
function growthSteps(
  grid: Grid,
  schedule: StandingSchedule,
  rows: number,
  change?: ISetRangeValuesMutationParams,
): Step[] {
  const [before, after] = layouts(grid, schedule, [schedule.rows, rows]) as [Laid[], Laid[]];
  const below = SCHEDULE_ROW.first + schedule.rows;
  const written = rowsWrittenBelow(schedule);
  return before.flatMap((old, index): Step[] => {
    const now = after[index]!;
    // Sheets that are the same however many runs there are need not even stand.
    if (JSON.stringify(old.cells) === JSON.stringify(now.cells)) return [];
    const sheet = standingSheet(grid, old);
    if (sheet === undefined) return [];
    const isSchedule = sheet.getSheetId() === schedule.sheet.getSheetId();
    const isEntry = (row: number, column: number) =>
      now.plan.entries.some(
        ({ area, workedOut }) =>
          workedOut !== true &&
          row >= area.row &&
          row < area.row + area.rows &&
          column >= area.column &&
          column < area.column + area.columns,
      );
    const changed = relaid(
      old.cells,
      now.cells,
      {
        cellAt: (row, column) => sheet.getSheet().getCellRaw(row, column),
        isTaken: (row, column) =>
          isSchedule &&
          row >= below &&
          row < below + written &&
          (isEntry(row, column) || change?.cellValue?.[row]?.[column] !== undefined),
        isEntry,
      },
      `to ${rows}`,
    );
    if ('inTheWay' in changed) {
      const { row, column } = changed.inTheWay;
      const address = sheet.getRange(row, column).getA1Notation();
      throw new GrowthFault(
        `something stands in ${address} of “${sheet.getSheetName()}”, where the rows would go. Move it, and write the run again.`,
      );
    }
    return [
      ...roomSteps(grid, sheet, now),
      ...cellSteps(grid, sheet, changed.cells),
      ...nameSteps(grid, sheet, old.plan, now.plan),
      ...entrySteps(grid, sheet, old.plan, now.plan),
      ...highlightSteps(grid, sheet, old.plan, now.plan),
    ];
  });
}

/** The rows that a schedule is laid out for when it has to hold so many; with room for more where nothing is in the way. */
function stepsToHold(
  grid: Grid,
  schedule: StandingSchedule,
  needed: number,
  change?: ISetRangeValuesMutationParams,
): Step[] {
  try {
    return growthSteps(grid, schedule, roomyRows(needed), change);
  } catch (fault) {
    if (!(fault instanceof GrowthFault)) throw fault;
    return growthSteps(grid, schedule, needed, change);
  }
}

/** Makes room for so many rows more than a schedule has. Throws a GrowthFault where that cannot be. */
export function growBy(grid: Grid, sheet: FWorksheet, count: number): void {
  const schedule = scheduleOn(grid, sheet);
  if (schedule === undefined) throw new GrowthFault(OLDER_MAKE);
  takeSteps(grid, stepsToHold(grid, schedule, schedule.rows + count));
}

/**
 * Takes runs that stand right below a schedule into it; true where there were some. Throws a GrowthFault where that cannot
 * be. `change` is the one by which they came to stand there.
 */
export function takeInBelow(
  grid: Grid,
  sheet: FWorksheet,
  change?: ISetRangeValuesMutationParams,
): boolean {
  const schedule = scheduleOn(grid, sheet);
  const written = schedule === undefined ? 0 : rowsWrittenBelow(schedule);
  if (schedule === undefined || written === 0) return false;
  takeSteps(grid, stepsToHold(grid, schedule, schedule.rows + written, change), change);
  return true;
}

/** Whether a change of cells is one that a person made, and reaches below a schedule. */
function reachesBelow(grid: Grid, sheet: FWorksheet, { cellValue }: ISetRangeValuesMutationParams) {
  const rows = Object.keys(cellValue ?? {}).map(Number);
  const schedule = scheduleOn(grid, sheet);
  return schedule !== undefined && Math.max(...rows) >= SCHEDULE_ROW.first + schedule.rows;
}

/** Grows schedules from now on. `refuse` is told why one stays as it is. */
export function growSchedules(grid: Grid, refuse: (sentence: string) => void): void {
  const grow = (sheet: FWorksheet, change: ISetRangeValuesMutationParams) => {
    try {
      takeInBelow(grid, sheet, change);
    } catch (fault) {
      refuse(
        fault instanceof GrowthFault
          ? `This run has no answer: ${fault.message}`
          : 'This run has no answer: the schedule could not be made longer.',
      );
    }
  };
  afterCellsWritten(grid, (sheet, change) => reachesBelow(grid, sheet, change), grow);
}
