/** The Workings sheet of a workbook without the add-in: one row a run, the steps between entries and results. */
import { area, areaAddress, cellAddress, quotedSheetName } from '../plan/area';
import { RUN_WORKINGS } from './gauge';
import {
  CHARGES,
  LAST_ROUND,
  SETTLED_V,
  type Charge,
  type NativeFormula,
  type NativeReferences,
  type Round,
  type WorkKey,
} from './references';
import { FEED_KEYS } from '../station/references';
import { BAD_ENTRY } from '../plan/formula';
import { PALETTE } from '../plan/palette';
import type { SheetPlan } from '../plan/plan';
import { COLUMN_KEYS } from '../station/schedule-keys';
import { columnOf, columnReferences, ROW, rowReferences } from '../schedule/layout';
import { TYPE_DATA } from '../protection/layout';
import { perLayout, type Layout } from '../station/layout';
import { nativeCall, STEP } from './native-calls';
import { branchUnsettled, TREE_WORKINGS } from './tree';

const COLUMNS = Object.entries({ ...RUN_WORKINGS, ...TREE_WORKINGS }) as readonly (readonly [
  WorkKey,
  NativeFormula,
])[];
export const WORK_KEYS: readonly WorkKey[] = COLUMNS.map(([key]) => key);

const HEAD = { title: 0, note: 1, moved: 2, header: 3, first: 4 } as const;

function workArea(key: WorkKey, rows: number) {
  return area(HEAD.first, WORK_KEYS.indexOf(key), rows, 1);
}

function keyed<Key extends string>(keys: readonly Key[], point: (key: Key) => string) {
  return Object.fromEntries(keys.map((key) => [key, point(key)])) as Record<Key, string>;
}

/**
 * The place of a run, or an error where its row of this sheet is not at the same place: a row was put in or taken out on
 * the schedule alone, and what is looked up by places would be another run's.
 */
function attachedPlace(place: string, { names }: Layout, index: number): string {
  const own = `${quotedSheetName(names.workingsSheet)}!${cellAddress(HEAD.first + index, 0, 'column')}`;
  return `IF(${place}=ROW(${own})-${HEAD.first},${place},${BAD_ENTRY})`;
}

/**
 * References of the run at a place of the list, from 0: `from` is the sheet that the formula stands on. Cells of the
 * other sheet carry its name.
 */
export function nativeReferences(
  layout: Layout,
  index: number,
  from: 'schedule' | 'workings',
): NativeReferences {
  const { names, rows } = layout;
  const onSchedule = from === 'schedule';
  const schedule = onSchedule ? '' : `${quotedSheetName(names.sheet)}!`;
  const workings = onSchedule ? `${quotedSheetName(names.workingsSheet)}!` : '';
  const row = ROW.first + index;
  const references = {
    ...rowReferences(layout, row),
    cell: keyed(COLUMN_KEYS, (key) => `${schedule}${cellAddress(row, columnOf(key), 'column')}`),
    column: columnReferences(layout, !onSchedule),
    work: keyed(
      WORK_KEYS,
      (key) => `${workings}${cellAddress(HEAD.first + index, WORK_KEYS.indexOf(key), 'column')}`,
    ),
    workColumn: keyed(WORK_KEYS, (key) => `${workings}${areaAddress(workArea(key, rows), 'both')}`),
    data: names.data,
    place: onSchedule
      ? attachedPlace(rowReferences(layout, row).place, layout, index)
      : `ROW()-ROW(${cellAddress(HEAD.header, 0, 'both')})`,
  };
  const { cell, work } = references;
  return {
    ...references,
    notSettled: `${branchUnsettled(references)}>0`,
    call: nativeCall(
      { data: names.data, types: TYPE_DATA },
      {
        [STEP.sizeRow(cell.size)]: work.sizeRow,
        [STEP.fuseNeeded(cell.fuseAmps, 'FALSE')]: work.fuseNeeded,
      },
    ),
  };
}

/** The most that the last round still moved the volts of any run. */
function lastMove(charge: Charge, rows: number): string {
  const volts = (round: Round) => areaAddress(workArea(`${charge}${round}volts`, rows), 'both');
  return `SUMPRODUCT(MAX(ABS(${volts(LAST_ROUND)}-${volts((LAST_ROUND - 1) as Round)})))`;
}

/** The plan of the Workings sheet. */
export const workingsSheet = perLayout((layout): SheetPlan => {
  const { names, rows } = layout;
  const quiet = { fontColour: PALETTE.quietText, fontSizePt: 8 };
  const references = nativeReferences(layout, 0, 'workings');
  const fill = COLUMNS.map(([, formula]) => `=${formula(references)}`);
  return {
    name: names.workingsSheet,
    columnWidths: COLUMNS.map(() => 10),
    blocks: [
      {
        area: area(HEAD.title, 0),
        cells: [['Workings']],
        style: { bold: true, fontSizePt: 14, fontColour: PALETTE.title },
      },
      {
        area: area(HEAD.note, 0),
        cells: [
          [
            `Steps between the entries and the results of the schedule, one row a run; nothing to fill in. Currents and volts reach four runs up and down; loads in watts are solved by ${LAST_ROUND} rounds. What the last round still moved stands below; where more than ${SETTLED_V} V may be missing, the rows of the branch say that their volts are not settled. In a branch that cannot serve all its loads together, this copy counts every load that could be served alone, where the add-in leaves the heaviest out.`,
          ],
        ],
        style: { italic: true, ...quiet },
      },
      {
        area: area(HEAD.moved, 0, 1, 2),
        cells: [
          [
            'Last round moved, V',
            { formula: `=MAX(${CHARGES.map((charge) => lastMove(charge, rows)).join(',')})` },
          ],
        ],
        style: quiet,
      },
      {
        area: area(HEAD.header, 0, 1, COLUMNS.length),
        cells: [WORK_KEYS],
        style: { ...quiet, bold: true },
      },
      { area: area(HEAD.first, 0, rows, COLUMNS.length), fill, style: quiet },
    ],
    names: [...FEED_KEYS.map((key) => ({ name: names.feed[key], area: workArea(key, rows) }))],
    entries: [],
    highlights: [],
    notes: [],
    frozenRows: HEAD.first,
    frozenColumns: 0,
    hidden: true,
    print: {
      landscape: true,
      area: area(0, 0, HEAD.first + (layout.printedRows ?? rows), COLUMNS.length),
      footer: 'Workings of the run schedule.',
    },
  };
});
