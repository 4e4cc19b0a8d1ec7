/** The run schedule: one row a run, as a plan that any host can draw. */
import { LOAD_KINDS } from '../../core/feeders';
import { formatSize, SERIES_SIZES, type Series } from '../../core/size';
import { area, areaAddress, cellAddress } from '../plan/area';
import { CAUTIONS, PRINT_FOOTER } from '../plan/cautions';
import { entry } from '../plan/entries';
import { callAddIn } from '../plan/formula';
import { text } from '../plan/formula';
import { HEADING_STYLE, PALETTE, SMALL_STYLE } from '../plan/palette';
import { plainDigits } from '../plan/plain-digits';
import type { Block, CellContent, EntryPlan, SheetPlan, TablePlan } from '../plan/plan';
import type { ScheduleContent } from '../station/content';
import { perLayout, type Layout } from '../station/layout';
import { FEED_KEYS, ofSource, type FeedKey, type RowReferences } from '../station/references';
import { ASSUMED } from '../station/assumed-battery';
import { HEADINGS, SCHEDULE_COLUMNS } from './columns';
import { SCHEDULE_FORMULAS, type FormulaKey } from './formulas';
import { scheduleHighlights } from './highlights';
import { COLUMN_KEYS, RARE_KEYS, WORKING_KEYS, type ColumnKey } from '../station/schedule-keys';
import { SOURCE_COLUMNS } from '../station/sources';
import { LEVELS, type Level } from '../station/verdicts';
import {
  FEEDER_CHOICES_HEADING,
  columnArea,
  columnOf,
  columnReferences,
  feedArea,
  feederChoicesArea,
  FIRST_ROW,
  ROW,
  rowReferences,
} from './layout';
import type { ScheduleRun } from '../station/run';

/** The number format of text cells. */
const TEXT = '@';
const LEAST_ROWS = 25;
const SPARE_ROWS = 8;

/** Rows that leave room below a list of runs. */
export function roomyRows(runs: number): number {
  return Math.max(LEAST_ROWS, runs + SPARE_ROWS);
}

/** What stands over the headings, in the one row that stays in view with them; the title itself is the list's. */
const headBlocks = perLayout((layout): readonly Block[] => {
  const { rule } = layout.names;
  const runs = columnReferences(layout).run;
  return [
    ...(layout.references === 'table'
      ? []
      : [
          {
            area: FIRST_ROW,
            cells: [[{ formula: `=SUMPRODUCT(MIN(ROW(${runs})))` }]],
            style: SMALL_STYLE,
            afterTable: true,
          },
        ]),
    {
      area: area(ROW.title, columnOf('peak')),
      cells: [[{ formula: `="Lengths: "&${rule.unit}` }]],
      style: { italic: true, fontColour: PALETTE.quietText },
    },
    {
      area: area(ROW.title, columnOf('verdict')),
      cells: [[{ formula: `=${countsSaid(layout)}` }]],
      style: { bold: true },
      afterTable: true,
    },
    {
      area: area(ROW.title, columnOf('size')),
      cells: [[{ formula: `=${firstWarning(layout)}` }]],
      style: { bold: true, fontColour: PALETTE.danger },
      afterTable: true,
    },
  ];
});

/** How many rows have a level; one whose verdict is an error was not understood. */
function countOf(level: Level, levels: string): string {
  const count = `COUNTIF(${levels},${LEVELS.indexOf(level) + 1})`;
  return level === 'unclear' ? `${count}+SUMPRODUCT(--ISERROR(${levels}))` : count;
}

/** "26 runs: 2 danger, 5 check, 19 ok; 151.5 ft one way". */
function countsSaid(layout: Layout): string {
  const { oneWay, level: levels } = columnReferences(layout);
  const runs = `COUNT(${levels})+SUMPRODUCT(--ISERROR(${levels}))`;
  const parts = LEVELS.map((level) => {
    const count = `(${countOf(level, levels)})`;
    return `IF(${count}>0,", "&${count}&" ${level}","")`;
  });
  return `IF(${runs}=0,"",${runs}&IF(${runs}=1," run: "," runs: ")&MID(${parts.join('&')},3,100)&"; "&ROUND(SUM(${oneWay}),1)&" "&${layout.names.rule.unit}&" one way")`;
}

/** The gravest of what concerns the whole list; nothing where all is well. */
function firstWarning(layout: Layout): string {
  return [
    ...misplaced(layout),
    ...outOfRoom(layout),
    unanswered(layout),
    typedVerdicts(layout),
    ...unprinted(layout),
    homeless(layout),
    battery(layout),
  ].reduceRight((further, { test, said }) => `IF(${test},${said},${further})`, '""');
}

interface Warning {
  readonly test: string;
  readonly said: string;
}

/** A row put in or taken out among rows that other sheets hold the other half of: their places are errors then. */
function misplaced(layout: Layout): readonly Warning[] {
  if (layout.references === 'table') return [];
  return [
    {
      test: `SUMPRODUCT(--ISERROR(${columnReferences(layout).place}))>0`,
      said: text(
        'A row was put in or taken out among the runs: undo that, and write new runs below the last',
      ),
    },
  ];
}

/** Rows that are watched below the last with formulas, where these do not follow by themselves. */
const WATCHED_BELOW = 40;

/** Runs written below the last row that has formulas. */
function outOfRoom(layout: Layout): readonly Warning[] {
  if (layout.references === 'table') return [];
  const { rows } = layout;
  const below = (key: ColumnKey) =>
    `LEN(${areaAddress(area(ROW.first + rows, columnOf(key), WATCHED_BELOW, 1), 'both')})`;
  const last = cellAddress(ROW.first + rows - 1, columnOf('peak'), 'both');
  return [
    {
      test: `SUMPRODUCT(${below('peak')}+${below('length')})>0`,
      said: `"What stands below row "&ROW(${last})&" has no answer: there is room for ${rows} runs"`,
    },
  ];
}

/** Rows with a load or a length and no formulas: put in by hand where the spreadsheet does not fill them. */
function unanswered(layout: Layout): Warning {
  // From the headings on, so that a row put in above the first run is seen.
  const withHeading = (key: ColumnKey) =>
    areaAddress(area(ROW.header, columnOf(key), layout.rows + 1, 1), 'both');
  const { peak, length, level } =
    layout.references === 'table'
      ? columnReferences(layout)
      : {
          peak: withHeading('peak'),
          length: withHeading('length'),
          level: withHeading('level'),
        };
  const count = `SUMPRODUCT(--(LEN(${peak})+LEN(${length})>0),--(LEN(${level})=0))`;
  const remedy =
    layout.references === 'table'
      ? 'copy the row of another run over it, and write its entries again'
      : 'write it again in an empty row below the last run';
  return {
    test: `IFERROR(${count}>0,FALSE)`,
    said: `${count}&IF(${count}=1," row has"," rows have")&" no answer: ${remedy}"`,
  };
}

/** Verdicts that say something else than was found; one that is an error was not found yet. */
function typedVerdicts(layout: Layout): Warning {
  const { verdict, finding } = columnReferences(layout);
  const count = `(SUMPRODUCT(--ISERROR(1/(${verdict}=${finding})))-SUMPRODUCT(--ISERROR(${finding})))`;
  return {
    test: `IFERROR(${count}>0,FALSE)`,
    said: `${count}&IF(${count}=1," verdict was"," verdicts were")&" typed over: undo that, or copy the cell of another run over it"`,
  };
}

/** What is typed of a fuse in a row of Protection whose run has gone. */
function homeless({ names }: Layout): Warning {
  const row = `MAX(${names.protect.homeless})`;
  return {
    test: `IFERROR(${row}>0,FALSE)`,
    said: `"Protection row "&${row}&" has entries and no run: move them to the row of their run, or clear them"`,
  };
}

/** Why rows are left to confirm while nothing is known of the battery. */
function battery({ names }: Layout): Warning {
  const supply = ofSource(names.supply, '1');
  return {
    test: `${supply.stated}="no"`,
    said: `"Battery assumed (${ASSUMED.ampHours} Ah ${ASSUMED.chemistry})"&IFERROR(": a fuse right at it would have to break "&ROUND(${supply.breakAmps},0)&" A","")&". Describe yours on the Supply sheet."`,
  };
}

const isAmps = (kind: string | undefined) =>
  kind === undefined || kind === '' || kind === LOAD_KINDS[0];

/** The formula of a column in the first row, with its leading "=". */
type ColumnFormula = (key: FormulaKey) => string;

const hasFormula = (key: ColumnKey): key is FormulaKey => key in SCHEDULE_FORMULAS;

const FORMULA_KEYS = Object.keys(SCHEDULE_FORMULAS) as readonly FormulaKey[];

const usualFormula = perLayout((layout) => columnFormulas(rowReferences(layout, ROW.first)));

/** What a person typed into a cell of a run; a load in watts is written with its unit. */
function typedIn(run: ScheduleRun, key: ColumnKey): CellContent {
  const { kind } = run;
  if (key === 'kind') return null;
  if (key === 'peak' && run.peak !== undefined && run.peak !== '' && !isAmps(kind)) {
    return `${typeof run.peak === 'number' ? plainDigits(run.peak) : run.peak} ${kind}`;
  }
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
        ? SMALL_STYLE
        : {
            border: 'all' as const,
            atTop: true,
            ...(kind === 'computed' ? {} : { fill: PALETTE.input }),
          };
    return {
      area: columnArea(key, layout.rows),
      cells: Array.from({ length: layout.rows }, (_, index) => [typedIn(runs[index] ?? {}, key)]),
      ...(isTable || !hasFormula(key) ? {} : { fill: [formulaAt(key)] }),
      style: { ...style, ...look },
    };
  });
}

/** Where a run may be written on below the last, so that `5 A` stands there as it was typed. */
const quantitiesBelow = perLayout((layout): readonly Block[] =>
  layout.references === 'names'
    ? []
    : COLUMN_KEYS.filter((key) => SCHEDULE_COLUMNS[key].style?.numberFormat === TEXT).map(
        (key): Block => ({
          area: area(ROW.first + layout.rows, columnOf(key), WATCHED_BELOW, 1),
          style: { numberFormat: TEXT },
        }),
      ),
);

const tablePlan = perLayout((layout): TablePlan => {
  const formulaAt = usualFormula(layout);
  return {
    name: layout.names.table,
    area: area(ROW.header, 0, layout.rows + 1, COLUMN_KEYS.length),
    columns: COLUMN_KEYS.map((key) => {
      const { heading } = SCHEDULE_COLUMNS[key];
      return hasFormula(key) ? { heading, formula: formulaAt(key) } : { heading };
    }),
  };
});

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

const feedBlocks = perLayout((layout): readonly Block[] => {
  const calls = feedCalls(layout);
  const style = SMALL_STYLE;
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
});

/** Sizes offered for a run's own choice: those in stock, thinnest first. */
export const OFFERED_SIZES: readonly string[] = (['AWG', 'mm2'] satisfies Series[]).flatMap(
  (series) => SERIES_SIZES[series].map(formatSize),
);

const entries = perLayout((layout): readonly EntryPlan[] => {
  const typedKeys = COLUMN_KEYS.filter((key) =>
    ['typed', 'usual'].includes(SCHEDULE_COLUMNS[key].kind),
  );
  const typed = typedKeys.map((key): EntryPlan => {
    const { heading, note, parameter, choices, style } = SCHEDULE_COLUMNS[key];
    const of = columnArea(key, layout.rows);
    const texts = { title: heading, sentences: [note] };
    if (key === 'ownSize') {
      return { ...entry(of, texts, { choices: OFFERED_SIZES }), othersAllowed: true };
    }
    if (key === 'fedFrom') {
      return { ...entry(of, texts, {}), choicesFrom: feederChoicesArea(layout) };
    }
    // A quantity is text, which the sheet reads and refuses by itself.
    return entry(of, texts, style?.numberFormat === TEXT ? {} : { parameter, choices });
  });
  return [...typed, ...workedOut(layout)];
});

/** The cells of every stretch of columns that are worked out, in which a figure of one's own would be taken for theirs. */
function workedOut({ rows }: Layout): EntryPlan[] {
  const stretches: { first: number; last: number }[] = [];
  for (const [column, key] of COLUMN_KEYS.entries()) {
    if (SCHEDULE_COLUMNS[key].kind !== 'computed') continue;
    const stretch = stretches.at(-1);
    if (stretch?.last === column - 1) stretch.last = column;
    else stretches.push({ first: column, last: column });
  }
  return stretches.map(({ first, last }) => ({
    area: area(ROW.first, first, rows, last - first + 1),
    workedOut: true,
    promptTitle: 'Worked out',
    prompt: `This cell is worked out from the entries of its row. A wire of your own goes under "${SCHEDULE_COLUMNS.ownSize.heading}".`,
  }));
}

/** The sheet row that a print ends before, where it leaves rows out. */
export function printedTo({ rows, printedRows = rows }: Layout): number | undefined {
  return printedRows < rows ? ROW.first + printedRows : undefined;
}

/** What "Fed from" offers, a name a row: the runs down to the last that has one, then the sources. */
const feederChoices = perLayout((layout): readonly Block[] => {
  const choices = feederChoicesArea(layout);
  const runs = columnReferences(layout).run;
  const header = cellAddress(ROW.header, choices.column, 'both');
  const named = cellAddress(ROW.title, choices.column, 'both');
  const place = `(ROW()-ROW(${header}))`;
  const source = `INDEX(${layout.names.supply.name},1,${place}-${named})`;
  const orBattery = `IF(LEN(${source})=0,IF(${place}=${named}+1,"battery",""),${source}&"")`;
  return [
    {
      area: area(ROW.title, choices.column),
      cells: [[{ formula: `=SUMPRODUCT(MAX((LEN(${runs})>0)*(ROW(${runs})-ROW(${header}))))` }]],
      style: SMALL_STYLE,
      afterTable: true,
    },
    {
      area: area(ROW.header, choices.column),
      cells: [[FEEDER_CHOICES_HEADING]],
      style: SMALL_STYLE,
    },
    {
      area: choices,
      fill: [
        `=IF(${place}<=${named},INDEX(${runs},${place})&"",IF(${place}<=${named}+${SOURCE_COLUMNS},${orBattery},""))`,
      ],
      style: SMALL_STYLE,
      afterTable: true,
    },
  ];
});

/** Runs below what is printed, so that nobody hands out half a list. */
function unprinted(layout: Layout): Warning[] {
  const end = printedTo(layout);
  if (end === undefined) return [];
  const below = areaAddress(
    area(end, columnOf('verdict'), ROW.first + layout.rows - end, 1),
    'both',
  );
  const count = `SUMPRODUCT(--(LEN(${below})>0))`;
  return [
    {
      test: `${count}>0`,
      said: `"Widen the print area: "&${count}&" runs stand below it, from row ${end + 1} on"`,
    },
  ];
}

/** What a workbook without the add-in brings. */
export interface NativeSchedule {
  readonly formulaAt: ColumnFormula;
}

/** Formulas as references point at things, but for columns of a form of their own. */
export function columnFormulas(
  references: RowReferences,
  own: Readonly<Partial<Record<FormulaKey, string>>> = {},
): ColumnFormula {
  const formulas = new Map(
    FORMULA_KEYS.map((key) => [key, `=${own[key] ?? SCHEDULE_FORMULAS[key](references)}`]),
  );
  return (key) => formulas.get(key)!;
}

/** Workings, and entries that no run has. */
function hiddenColumns({ runs }: ScheduleContent, layout: Layout): readonly number[] {
  const unused = RARE_KEYS.filter((key) => runs.every((run) => typedIn(run, key) === null));
  const { column } = feederChoicesArea(layout);
  return [...[...unused, ...WORKING_KEYS].map(columnOf), column].sort((a, b) => a - b);
}

/** Paper has what is typed and what is answered; the further figures stay on the screen. */
const PRINTED_COLUMNS = columnOf('notes') + 1;

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
      {
        area: area(ROW.title, 0),
        cells: [[content.title]],
        style: { bold: true, fontSizePt: 16, fontColour: PALETTE.title },
      },
      ...headBlocks(layout),
      {
        area: area(ROW.header, 0, 1, COLUMN_KEYS.length),
        cells: [HEADINGS],
        style: HEADING_STYLE,
      },
      ...quantitiesBelow(layout),
      ...runBlocks(layout, content, native === undefined ? usualFormula(layout) : native.formulaAt),
      ...(native === undefined ? feedBlocks(layout) : []),
      ...feederChoices(layout),
      {
        area: area(foot, 0, CAUTIONS.length, 1),
        cells: CAUTIONS.map((caution) => [caution]),
        style: { italic: true, fontColour: PALETTE.quietText },
      },
    ],
    // Without the add-in every row carries its formulas, which point at its own cells.
    ...(native === undefined ? { table: tablePlan(layout) } : {}),
    names: [
      { name: names.schedule.runs, area: columnArea('run', rows) },
      ...(native === undefined
        ? FEED_KEYS.map((key) => ({ name: names.feed[key], area: feedArea(key, layout) }))
        : []),
      ...(layout.references === 'names'
        ? COLUMN_KEYS.map((key) => ({ name: names.column[key], area: columnArea(key, rows) }))
        : []),
    ],
    entries: entries(layout),
    highlights: scheduleHighlights(rows),
    notes: COLUMN_KEYS.map((key, column) => ({
      area: area(ROW.header, column),
      text: SCHEDULE_COLUMNS[key].note,
    })),
    hiddenColumns: hiddenColumns(content, layout),
    frozenRows: ROW.first,
    frozenColumns: 1,
    rowHeightsPt: { [ROW.title]: 24, [ROW.header]: 46 },
    print: {
      landscape: true,
      area: area(0, 0, printedTo(layout) ?? foot + CAUTIONS.length, PRINTED_COLUMNS),
      repeatRows: { first: ROW.header, last: ROW.header },
      footer: PRINT_FOOTER,
    },
  };
}
