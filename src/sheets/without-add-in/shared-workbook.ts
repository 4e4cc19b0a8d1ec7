/**
 * A workbook that needs no add-in: the schedule, its Supply and Protection sheets with formulas that every spreadsheet knows, and the
 * sheets of data and workings that they look things up in.
 */
import { conductorsSheet } from './conductors-sheet';
import { formulaOf } from '../evaluate';
import { fusesSheet } from './fuses-sheet';
import { freeScheduleNames, scheduleNames, type NamesInUse } from '../station/naming';
import { NATIVE_FORMULAS } from './gauge';
import { NATIVE_DUTY, nativeSupplyFormulas } from './native-supply';
import type { StationContent } from '../book';
import type { Formula, SheetPlan } from '../plan/plan';
import { protectionSheet } from '../protection/sheet';
import { steadyInputs } from '../protection-values';
import { roomyRows, scheduleSheet } from '../schedule/sheet';
import { SCHEDULE_FORMULAS, type FormulaKey } from '../schedule/formulas';
import { madeOnce, type Layout } from '../schedule/layout';
import { stationValues } from '../schedule-values';
import { supplySheet } from '../supply/sheet';
import { nativeReferences, workingsSheet } from './workings-sheet';

/** Rows that a shared schedule has room for, if its list is not longer. */
const SHARED_ROWS = 200;

/** The sheets, the schedule first; `taken` are names of a workbook that they are added to. */
export function sharedWorkbook(
  content: StationContent,
  options: { readonly rows?: number; readonly taken?: NamesInUse } = {},
): readonly SheetPlan[] {
  const layout: Layout = {
    names: options.taken === undefined ? scheduleNames() : freeScheduleNames(options.taken),
    references: 'cells',
    rows: options.rows ?? Math.max(SHARED_ROWS, content.runs.length),
    printedRows: roomyRows(content.runs.length),
  };
  const values = stationValues(content);
  const { data } = layout.names.native;
  const references = nativeReferences(layout, 0, 'schedule');
  const formula = (key: FormulaKey): string =>
    key in NATIVE_FORMULAS
      ? NATIVE_FORMULAS[key as keyof typeof NATIVE_FORMULAS](references)
      : SCHEDULE_FORMULAS[key](references);
  const typedSizes = content.runs.flatMap(({ ownSize }) =>
    ownSize === undefined ? [] : [ownSize],
  );
  return [
    scheduleSheet(layout, content, { formula }),
    supplySheet(layout, content, {
      cells: nativeSupplyFormulas(data),
      duty: NATIVE_DUTY,
      values: values.supply,
    }),
    protectionSheet(layout, content, {
      values: values.protection,
      sizes: data,
      sizeRow: nativeReferences(layout, 0, 'schedule').workColumn.sizeRow,
      steady: steadyInputs(values),
    }),
    conductorsSheet(layout.names, typedSizes, values.rules),
    fusesSheet(layout.names),
    workingsSheet(layout),
  ];
}
