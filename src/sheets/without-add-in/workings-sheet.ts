/** The Workings sheet of a workbook without the add-in: one row a run, the steps between entries and results. */
import { area, areaAddress, cellAddress, quotedSheetName, type Area } from '../plan/area';
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
import { NAME_STEMS } from '../station/naming';
import { FEED_KEYS } from '../station/references';
import { BAD_ENTRY } from '../plan/formula';
import { PALETTE } from '../plan/palette';
import type { SheetPlan } from '../plan/plan';
import { COLUMN_KEYS, type ColumnKey } from '../station/schedule-keys';
import { SCHEDULE_FORMULAS } from '../schedule/formulas';
import { columnOf, columnReferences, FIRST_ROW, ROW, rowReferences } from '../schedule/layout';
import { TYPE_DATA } from '../protection/layout';
import { perLayout, type Layout } from '../station/layout';
import { nativeCall, STEP } from './native-calls';
import { branchUnsettled, TREE_WORKINGS } from './tree';

const HEAD = { title: 0, note: 1, moved: 2, header: 3, first: 4 } as const;

const COLUMNS = Object.entries({
  ...RUN_WORKINGS,
  ...TREE_WORKINGS,
  lookedAt: ({ lookedAt }: NativeReferences) => lookedAt,
}) as readonly (readonly [WorkKey, NativeFormula])[];
export const WORK_KEYS: readonly WorkKey[] = COLUMNS.map(([key]) => key);

function workArea(key: WorkKey, rows: number) {
  return area(HEAD.first, WORK_KEYS.indexOf(key), rows, 1);
}

function keyed<Key extends string>(keys: readonly Key[], point: (key: Key) => string) {
  return Object.fromEntries(keys.map((key) => [key, point(key)])) as Record<Key, string>;
}

/**
 * The place of a run, or an error where the row of this sheet at that place looks at another row of the schedule: one was
 * put in or taken out there alone, and what is looked up by places would be another run's. Rows that are sorted whole take
 * their entries with them and stay where they are looked at.
 */
const attachedPlace = (place: string, attached: string) =>
  `IF(IFERROR(INDEX(${attached},${place})=${place},FALSE),${place},${BAD_ENTRY})`;

/** The place of the schedule's row that a row of this sheet looks at. */
function placeLookedAt({ names }: Layout): string {
  const there = (at: Area, absolute: 'column' | 'both') =>
    `${quotedSheetName(names.sheet)}!${cellAddress(at.row, at.column, absolute)}`;
  return `ROW(${there(area(ROW.first, columnOf('run')), 'column')})-${there(FIRST_ROW, 'both')}+1`;
}

/**
 * The same where other sheets hold entries by rows that say nothing of their run: only in the order of the writing.
 */
function unsortedPlace(place: string, { names }: Layout): string {
  const own = `${quotedSheetName(names.workingsSheet)}!${cellAddress(HEAD.first, 0, 'column')}`;
  return `IF(${place}=ROW(${own})-${HEAD.first},${place},${BAD_ENTRY})`;
}

/** What a row's formulas point at on both sheets; all but what differs between them. */
function referencesOf(
  layout: Layout,
  own: Pick<NativeReferences, 'cell' | 'column' | 'work' | 'workColumn' | 'place'>,
): NativeReferences {
  const { data } = layout.names;
  const references = {
    ...rowReferences(layout, ROW.first),
    ...own,
    data,
    lookedAt: placeLookedAt(layout),
  };
  const { cell, work } = references;
  return {
    ...references,
    notSettled: `${branchUnsettled(references)}>0`,
    call: nativeCall(
      { data, types: TYPE_DATA },
      {
        [STEP.sizeRow(cell.size)]: work.sizeRow,
        [STEP.fuseNeeded(cell.fuseAmps, 'FALSE')]: work.fuseNeeded,
      },
    ),
  };
}

/**
 * References of the first run's formulas on the schedule. What stands on Workings is looked up by the run's place in the
 * columns' names, so that the formulas name no sheet and rows may share them.
 */
export function scheduleReferences(layout: Layout, maySort: boolean): NativeReferences {
  const own = rowReferences(layout, ROW.first);
  const workColumn = layout.names.named(NAME_STEMS.work, WORK_KEYS);
  return referencesOf(layout, {
    cell: own.cell,
    column: own.column,
    work: keyed(WORK_KEYS, (key) => `INDEX(${workColumn[key]},${own.cell.place})`),
    workColumn,
    place: maySort
      ? attachedPlace(own.place, workColumn.lookedAt)
      : unsortedPlace(own.place, layout),
  });
}

/**
 * Cells of the schedule that stand on Workings as well, right of its own columns, for its formulas to name no other sheet
 * either. By names and places instead, LibreOffice (7.4) calculates some rows before what they need.
 */
class SaidThere {
  private readonly keys: ColumnKey[] = [];
  readonly cell: NativeReferences['cell'];

  constructor() {
    const cells = {};
    for (const key of COLUMN_KEYS) Object.defineProperty(cells, key, { get: () => this.at(key) });
    this.cell = cells as NativeReferences['cell'];
  }

  private at(key: ColumnKey): string {
    if (!this.keys.includes(key)) this.keys.push(key);
    const column = WORK_KEYS.length + this.keys.indexOf(key);
    return cellAddress(HEAD.first, column, 'column');
  }

  /** The columns that were asked for, with their formulas. */
  columns({ names }: Layout): readonly (readonly [ColumnKey, string])[] {
    return this.keys.map((key) => {
      const there = `${quotedSheetName(names.sheet)}!${cellAddress(ROW.first, columnOf(key), 'column')}`;
      // A formula that only points at an empty cell shows 0.
      return [key, isComputed(key) ? there : `IF(${there}="","",${there})`];
    });
  }
}

const isComputed = (key: ColumnKey) => key in SCHEDULE_FORMULAS;

/** References of the first run's formulas on Workings. */
function workingsReferences(layout: Layout, there: SaidThere): NativeReferences {
  const { rows } = layout;
  return referencesOf(layout, {
    cell: there.cell,
    column: columnReferences(layout, true),
    work: keyed(WORK_KEYS, (key) => cellAddress(HEAD.first, WORK_KEYS.indexOf(key), 'column')),
    workColumn: keyed(WORK_KEYS, (key) => areaAddress(workArea(key, rows), 'both')),
    place: `ROW()-ROW(${cellAddress(HEAD.header, 0, 'both')})`,
  });
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
  const saidThere = new SaidThere();
  const references = workingsReferences(layout, saidThere);
  const own = COLUMNS.map(([key, formula]) => [key, formula(references)] as const);
  const columns = [...own, ...saidThere.columns(layout)];
  return {
    name: names.workingsSheet,
    columnWidths: columns.map(() => 10),
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
        area: area(HEAD.header, 0, 1, columns.length),
        cells: [columns.map(([key]) => key)],
        style: { ...quiet, bold: true },
      },
      {
        area: area(HEAD.first, 0, rows, columns.length),
        fill: columns.map(([, formula]) => `=${formula}`),
        style: quiet,
      },
    ],
    names: [
      ...FEED_KEYS.map((key) => ({ name: names.feed[key], area: workArea(key, rows) })),
      ...WORK_KEYS.map((key) => ({
        name: names.named(NAME_STEMS.work, WORK_KEYS)[key],
        area: workArea(key, rows),
      })),
    ],
    entries: [],
    highlights: [],
    notes: [],
    frozenRows: HEAD.first,
    frozenColumns: 0,
    hidden: true,
    print: {
      landscape: true,
      area: area(0, 0, HEAD.first + (layout.printedRows ?? rows), columns.length),
      footer: 'Workings of the run schedule.',
    },
  };
});
