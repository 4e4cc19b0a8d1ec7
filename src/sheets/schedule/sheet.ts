/** The run schedule: house rules and one row a run, as a plan that any host can draw. */
import { formatSize, SERIES_SIZES, type Series } from '../../core/size';
import { area, areaAddress } from '../plan/area';
import { CAUTIONS, PRINT_FOOTER } from '../plan/cautions';
import { entry } from '../plan/entries';
import { callAddIn } from '../plan/formula';
import { HIGHLIGHT_STYLES } from '../plan/highlight-styles';
import { HOUSE_RULES } from '../station/house-rules';
import { HEADING_STYLE, PALETTE } from '../plan/palette';
import type { Block, CellContent, EntryPlan, SheetPlan, TablePlan } from '../plan/plan';
import type { ScheduleContent } from '../station/content';
import type { Layout } from '../station/layout';
import { FEED_KEYS, ofSource, type FeedKey, type RowReferences } from '../station/references';
import { ASSUMED } from '../station/assumed-battery';
import { HEADINGS, SCHEDULE_COLUMNS } from './columns';
import { SCHEDULE_FORMULAS, type FormulaKey } from './formulas';
import { scheduleHighlights } from './highlights';
import { COLUMN_KEYS, SHOWN_KEYS, type ColumnKey } from '../station/schedule-keys';
import { LEVELS, type Level } from '../station/verdicts';
import {
  columnArea,
  columnOf,
  columnReferences,
  feedArea,
  ROW,
  rowReferences,
  RULE_GROUPS,
  ruleAreas,
} from './layout';
import type { ScheduleRun } from '../station/run';

const LEAST_ROWS = 25;
const SPARE_ROWS = 8;

/** Rows that leave room below a list of runs. */
export function roomyRows(runs: number): number {
  return Math.max(LEAST_ROWS, runs + SPARE_ROWS);
}

function headBlocks(title: string): Block[] {
  return [
    {
      area: area(ROW.title, 0),
      cells: [[title]],
      style: { bold: true, fontSizePt: 16, fontColour: PALETTE.title },
    },
    {
      area: area(ROW.title, 4),
      cells: [['Fill in the green cells; the rest computes. Advice, not approval: see the foot.']],
      style: { italic: true, fontColour: PALETTE.quietText },
    },
  ];
}

/** Says once, at the top and on paper, why rows are left to confirm while nothing is known of the battery. */
function batteryBlock({ names }: Layout): Block {
  const supply = ofSource(names.supply, '1');
  const breaks = `IFERROR(": a fuse right at it would have to break "&ROUND(${supply.breakAmps},0)&" A","")`;
  return {
    area: area(ROW.title, columnOf('setBy')),
    cells: [
      [
        {
          formula: `=IF(${supply.stated}="no","Battery assumed (${ASSUMED.ampHours} Ah ${ASSUMED.chemistry})"&${breaks}&". Describe yours on the Supply sheet.","")`,
        },
      ],
    ],
    style: { bold: true, fontColour: PALETTE.title },
    afterTable: true,
  };
}

/** Where the counts of the levels begin: a label and a figure each. */
const COUNTS_FROM = 7;
/** A label spreads to the left, over an empty cell. */
const COUNTS_STEP = 3;

/** How many rows have a level; one whose verdict is an error was not understood. */
function countOf(level: Level, levels: string): string {
  const count = `COUNTIF(${levels},${LEVELS.indexOf(level) + 1})`;
  return level === 'unclear' ? `${count}+SUMPRODUCT(--ISERROR(${levels}))` : count;
}

function summaryBlocks(layout: Layout): Block[] {
  const { length, level: levels } = columnReferences(layout);
  const pairs: readonly {
    readonly label: number;
    readonly text: string;
    readonly formulas: readonly string[];
    readonly numberFormat: string;
  }[] = [
    { label: 0, text: 'Runs', formulas: [`COUNT(${length})`], numberFormat: '0' },
    {
      label: 2,
      text: 'Total one-way length',
      formulas: [`SUM(${length})`, layout.names.rule.unit],
      numberFormat: '0.0',
    },
    ...LEVELS.map((level, index) => ({
      label: COUNTS_FROM + COUNTS_STEP * index,
      text: level,
      formulas: [countOf(level, levels)],
      numberFormat: '0',
    })),
  ];
  return pairs.flatMap(({ label, text, formulas, numberFormat }): Block[] => [
    {
      area: area(ROW.summary, label),
      cells: [[text]],
      style: { bold: true, align: label === 0 ? 'left' : 'right' },
    },
    {
      area: area(ROW.summary, label + 1, 1, formulas.length),
      cells: [formulas.map((formula) => ({ formula: `=${formula}` }))],
      style: { bold: true, align: 'left', numberFormat },
      afterTable: true,
    },
  ]);
}

function ruleBlocks({ names }: Layout, { rules }: ScheduleContent): Block[] {
  return RULE_GROUPS.flatMap(({ label, value, keys }) =>
    keys.flatMap((key, index): Block[] => {
      const rule = HOUSE_RULES[key];
      return [
        { area: area(ROW.rules + index, label), cells: [[rule.label]] },
        {
          area: area(ROW.rules + index, value),
          cells: [[rules?.[key] ?? rule.initial(names.rule)]],
          style: { fill: PALETTE.input, border: 'all', ...rule.style, align: 'left' },
        },
      ];
    }),
  );
}

const LEGEND = [
  { column: 0, columns: 2, text: 'Heat or fuse: fire risk', style: HIGHLIGHT_STYLES.danger },
  { column: 2, columns: 1, text: 'Over target, few volts', style: HIGHLIGHT_STYLES.fails },
  { column: 3, columns: 2, text: 'Close to target', style: HIGHLIGHT_STYLES.close },
  { column: 5, columns: 3, text: 'Entry missing or unclear', style: HIGHLIGHT_STYLES.unclear },
  { column: 8, columns: 3, text: 'One thing to confirm', style: HIGHLIGHT_STYLES.check },
] as const;

function legendBlocks(): Block[] {
  return LEGEND.map(({ column, columns, text, style }) => ({
    area: area(ROW.legend, column, 1, columns),
    cells: [Array.from({ length: columns }, (_, index) => (index === 0 ? text : null))],
    style,
  }));
}

/** The formula of a column in the first row. */
type ColumnFormula = (key: FormulaKey) => string;

const hasFormula = (key: ColumnKey): key is FormulaKey => key in SCHEDULE_FORMULAS;

function usualFormula(layout: Layout): ColumnFormula {
  const references = rowReferences(layout, ROW.first);
  return (key) => SCHEDULE_FORMULAS[key](references);
}

/** What a person typed into a cell of a run. */
function typedIn(run: ScheduleRun, key: ColumnKey): CellContent {
  const typed = key in run ? run[key as keyof ScheduleRun] : undefined;
  return typed === undefined || typed === '' ? null : typed;
}

/** With real tables the formulas are the table's own; only typed values are then written as cells. */
function runBlocks(layout: Layout, { runs }: ScheduleContent, formulaAt: ColumnFormula): Block[] {
  const isTable = layout.references === 'table';
  return COLUMN_KEYS.map((key): Block => {
    const { kind, style } = SCHEDULE_COLUMNS[key];
    const look =
      kind === 'working'
        ? { fontColour: PALETTE.quietText, fontSizePt: 8 }
        : { border: 'all' as const, ...(kind === 'computed' ? {} : { fill: PALETTE.input }) };
    return {
      area: columnArea(key, layout.rows),
      cells: Array.from({ length: layout.rows }, (_, index) => [typedIn(runs[index] ?? {}, key)]),
      ...(isTable || !hasFormula(key) ? {} : { fill: [`=${formulaAt(key)}`] }),
      style: { ...style, ...look },
    };
  });
}

function tablePlan(layout: Layout): TablePlan {
  const formulaAt = usualFormula(layout);
  return {
    name: layout.names.table,
    area: area(ROW.header, 0, layout.rows + 1, COLUMN_KEYS.length),
    columns: COLUMN_KEYS.map((key) => {
      const { heading } = SCHEDULE_COLUMNS[key];
      return hasFormula(key) ? { heading, formula: `=${formulaAt(key)}` } : { heading };
    }),
  };
}

/** Headings and calls of the columns that list functions fill beside the table. */
function feedCalls(layout: Layout): Readonly<Record<FeedKey, readonly [string, string]>> {
  const { run, feeder, ownAmps, onceLoad, kind, ohms, fullSource, lowSource } =
    columnReferences(layout);
  const volts = (source: string) =>
    callAddIn('FEED_VOLTS', source, run, feeder, onceLoad, kind, ohms);
  return {
    amps: ['Amps of the tree', callAddIn('FEED_AMPS', run, feeder, ownAmps)],
    fullVolts: ['Volts, full', volts(fullSource)],
    lowVolts: ['Volts, low', volts(lowSource)],
  };
}

function feedBlocks(layout: Layout): Block[] {
  const calls = feedCalls(layout);
  const style = { fontColour: PALETTE.quietText, fontSizePt: 8 };
  return FEED_KEYS.flatMap((key): Block[] => {
    const { column } = feedArea(key, layout);
    const [heading, formula] = calls[key];
    return [
      { area: area(ROW.header, column), cells: [[heading]], style: { ...style, wrap: true } },
      {
        area: area(ROW.first, column),
        cells: [[{ formula: `=${formula}` }]],
        spillRows: layout.rows,
        style,
        afterTable: true,
      },
    ];
  });
}

/** Sizes offered for a run's own choice: those in stock, thinnest first. */
export const OFFERED_SIZES: readonly string[] = (['AWG', 'mm2'] satisfies Series[]).flatMap(
  (series) => SERIES_SIZES[series].map(formatSize),
);

function entries({ rows }: Layout): EntryPlan[] {
  const forRules = ruleAreas().map(([key, of]) => {
    const { label, parameter, hint } = HOUSE_RULES[key];
    return entry(of, { title: label, sentences: [parameter.meaning, hint ?? ''] }, { parameter });
  });
  const typedKeys = COLUMN_KEYS.filter((key) =>
    ['typed', 'usual'].includes(SCHEDULE_COLUMNS[key].kind),
  );
  const forColumns = typedKeys.map((key): EntryPlan => {
    const { heading, note, parameter, choices } = SCHEDULE_COLUMNS[key];
    const of = columnArea(key, rows);
    const texts = { title: heading, sentences: [note] };
    return key === 'ownSize'
      ? { ...entry(of, texts, { choices: OFFERED_SIZES }), othersAllowed: true }
      : entry(of, texts, { parameter, choices });
  });
  return [...forRules, ...forColumns];
}

/** The sheet row that a print ends before, where it leaves rows out. */
export function printedTo({ rows, printedRows = rows }: Layout): number | undefined {
  return printedRows < rows ? ROW.first + printedRows : undefined;
}

/** Says how many runs stand below what is printed, so that nobody hands out half a list. */
function unprintedBlock(layout: Layout): Block[] {
  const end = printedTo(layout);
  if (end === undefined) return [];
  const below = areaAddress(
    area(end, columnOf('verdict'), ROW.first + layout.rows - end, 1),
    'both',
  );
  const count = `SUMPRODUCT(--(LEN(${below})>0))`;
  return [
    {
      area: area(ROW.summary, columnOf('ampacity')),
      cells: [
        [
          {
            formula: `=IF(${count}=0,"","Widen the print area: "&${count}&" runs stand below it, from row ${end + 1} on")`,
          },
        ],
      ],
      style: { bold: true, fontColour: PALETTE.danger },
    },
  ];
}

/** What a workbook without the add-in brings: how its formulas point at things, and the columns of a form of their own. */
export interface NativeSchedule {
  readonly references: RowReferences;
  readonly columns: Readonly<Partial<Record<FormulaKey, string>>>;
}

function nativeFormula({ references, columns }: NativeSchedule): ColumnFormula {
  return (key) => columns[key] ?? SCHEDULE_FORMULAS[key](references);
}

/** The plan of a run schedule; row heights follow from what its cells come to (see row-heights). */
export function scheduleSheet(
  layout: Layout,
  content: ScheduleContent,
  native?: NativeSchedule,
): SheetPlan {
  const { names, rows } = layout;
  const foot = ROW.first + rows + 1;
  return {
    name: names.sheet,
    columnWidths: COLUMN_KEYS.map((key) => SCHEDULE_COLUMNS[key].widthChars),
    blocks: [
      ...headBlocks(content.title),
      batteryBlock(layout),
      ...summaryBlocks(layout),
      ...unprintedBlock(layout),
      ...ruleBlocks(layout, content),
      ...legendBlocks(),
      {
        area: area(ROW.header, 0, 1, COLUMN_KEYS.length),
        cells: [HEADINGS],
        style: HEADING_STYLE,
      },
      ...runBlocks(
        layout,
        content,
        native === undefined ? usualFormula(layout) : nativeFormula(native),
      ),
      ...(native === undefined ? feedBlocks(layout) : []),
      {
        area: area(foot, 0, CAUTIONS.length, 1),
        cells: CAUTIONS.map((caution) => [caution]),
        style: { italic: true, fontColour: PALETTE.quietText },
      },
    ],
    // Without the add-in every row carries its formulas, which point at its own cells.
    ...(native === undefined ? { table: tablePlan(layout) } : {}),
    names: [
      ...ruleAreas().map(([key, of]) => ({ name: names.rule[key], area: of })),
      ...(native === undefined
        ? FEED_KEYS.map((key) => ({ name: names.feed[key], area: feedArea(key, layout) }))
        : []),
    ],
    entries: entries(layout),
    highlights: scheduleHighlights(rows),
    notes: COLUMN_KEYS.map((key, column) => ({
      area: area(ROW.header, column),
      text: SCHEDULE_COLUMNS[key].note,
    })),
    frozenRows: ROW.first,
    frozenColumns: 1,
    rowHeightsPt: { [ROW.title]: 24, [ROW.header]: 46 },
    print: {
      landscape: true,
      area: area(0, 0, printedTo(layout) ?? foot + CAUTIONS.length, SHOWN_KEYS.length),
      repeatRows: { first: ROW.header, last: ROW.header },
      footer: PRINT_FOOTER,
    },
  };
}
