/**
 * A copy that needs no add-in: the schedule with its sheets in formulas that every spreadsheet knows, and the sheets of
 * data and workings that they look things up in.
 */
import { BOOK, nativeSheets } from './book';
import type { Calculated } from './calculate/calculate';
import { area, columnNumber } from './plan/area';
import { formulasOf } from './plan/formulas-of';
import type { SheetPlan } from './plan/plan';
import { CREW_ROW } from './crew/layout';
import { DRAWING_ROW, drawingName, PICTURE_COLUMN } from './drawing/layout';
import { withRowHeights } from './row-heights';
import { PROTECTION_ROW, protectionColumn } from './protection/layout';
import { ROW } from './schedule/layout';
import { roomyRows } from './schedule/sheet';
import { withDiagrams } from './station-diagram';
import { stationValues, type StationValues } from './station-values';
import type { StationContent } from './station/content';
import type { ExtraKey } from './station/extras';
import type { Layout } from './station/layout';
import {
  freeScheduleNames,
  NAME_STEMS,
  scheduleNames,
  type NamesInUse,
  type ScheduleNames,
} from './station/naming';
import { PROTECTION_WORKING_KEYS } from './station/protection-keys';
import { nativeParts } from './without-add-in/native-parts';
import type { SteadyAtWriting } from './without-add-in/steady-heat';
import { WORK_KEYS } from './without-add-in/workings-sheet';

/** Rows that a shared schedule has room for at least, and beyond its list: each row is written out in full. */
const LEAST_ROWS = 50;
const SPARE_ROWS = 25;

export interface SharedCopy {
  /** The sheets, the schedule first. */
  readonly plans: readonly SheetPlan[];
  /** What their cells come to, for viewers that do not calculate; workings stay without. */
  readonly values: Calculated;
}

export interface CopyOptions {
  readonly rows?: number;
  /** Names of a workbook that the sheets are added to. */
  readonly taken?: NamesInUse;
  /** The station's values, where they are known already. */
  readonly station?: StationValues;
}

/** What the steady temperatures were worked out from. */
function steadyInputs({ rules, runs, protection }: StationValues): readonly SteadyAtWriting[] {
  return protection.rows.map(({ steady }, row) => ({
    amps: runs[row]!.runAmps,
    size: runs[row]!.size,
    airC: protection.cells.airC,
    material: rules.material,
    steady,
  }));
}

/**
 * The values of a list's sheets without what stands below its rows there: the copy has more rows, and in them formulas.
 */
function ofRunsOnly(sheets: Calculated, { names }: Layout, runs: number): Calculated {
  const rows = Math.max(1, runs);
  const ends = new Map([
    [names.sheet, ROW.first + rows],
    [names.protectionSheet, PROTECTION_ROW.first + rows],
  ]);
  // The copy prints what its lines need, and is drawn as it stands: there is nothing to warn of.
  const warnings = new Map([
    [names.crewSheet, area(CREW_ROW.warning, 0)],
    [drawingName(names), area(DRAWING_ROW.warning, PICTURE_COLUMN)],
  ]);
  const isWarning = (sheet: string, row: number, column: number) =>
    row === warnings.get(sheet)?.row && column === warnings.get(sheet)?.column;
  return {
    ...sheets,
    at: (sheet, row, column) =>
      !isWarning(sheet, row, column) && row < (ends.get(sheet) ?? Number.POSITIVE_INFINITY)
        ? sheets.at(sheet, row, column)
        : null,
  };
}

/** Columns that a formula points at. */
function columnsIn(formula: string): readonly number[] {
  return [...formula.matchAll(/(?<![A-Za-z0-9_.!])\$?([A-Z]{1,3})\$?\d+(?![A-Za-z0-9_.(])/g)].map(
    ([, letters]) => columnNumber(letters!),
  );
}

/**
 * The values of columns in sight, and of those that colours or charts go by, without workings. A viewer that does not
 * calculate shows no others, and one that does needs none.
 */
function seenOnly(
  values: Calculated,
  plans: readonly SheetPlan[],
  { protectionSheet }: ScheduleNames,
): Calculated {
  const unseen = new Map(
    plans.map(({ name, hiddenColumns = [], highlights, chart }) => {
      const looked = new Set(highlights.flatMap(({ formula }) => columnsIn(formula)));
      const workings =
        name === protectionSheet ? PROTECTION_WORKING_KEYS.map(protectionColumn) : hiddenColumns;
      return [
        name,
        new Set(chart === undefined ? workings.filter((column) => !looked.has(column)) : []),
      ];
    }),
  );
  return {
    at: (sheet, row, column) =>
      unseen.get(sheet)?.has(column) === true ? null : values.at(sheet, row, column),
  };
}

/** The sheets without the names of columns that no formula points at: whoever lists names need not see hundreds. */
function withNamesInUse(plans: readonly SheetPlan[], names: ScheduleNames): readonly SheetPlan[] {
  const ofColumns = new Set([
    ...Object.values(names.column),
    ...Object.values(names.named(NAME_STEMS.work, WORK_KEYS)),
  ]);
  const words = plans.flatMap(formulasOf).flatMap((formula) => formula.match(/\w+/g) ?? []);
  const inUse = new Set(words);
  return plans.map((plan) => ({
    ...plan,
    names: plan.names.filter(({ name }) => !ofColumns.has(name) || inUse.has(name)),
  }));
}

/** Sheets whose entries stand by rows and say nothing of their run. */
const BY_ROWS: readonly ExtraKey[] = ['wireList', 'parts', 'fuseMap'];
const maySort = ({ extras = [] }: StationContent) =>
  !extras.some((extra) => BY_ROWS.includes(extra));

/** The copy of a station. */
export function sharedCopy(content: StationContent, options: CopyOptions = {}): SharedCopy {
  const names =
    options.taken === undefined ? scheduleNames() : freeScheduleNames(options.taken, BOOK);
  const layout: Layout = {
    names,
    references: 'names',
    rows: options.rows ?? Math.max(LEAST_ROWS, content.runs.length + SPARE_ROWS),
    printedRows: roomyRows(content.runs.length),
  };
  const station = options.station ?? stationValues(content, names);
  const native = nativeParts(layout, steadyInputs(station), maySort(content));
  const sheets = withNamesInUse(nativeSheets(layout, content, native), names);
  const plans = withRowHeights(sheets, names, station);
  return {
    plans: withDiagrams(plans, layout, content, station),
    values: seenOnly(ofRunsOnly(station.sheets, layout, content.runs.length), plans, names),
  };
}
