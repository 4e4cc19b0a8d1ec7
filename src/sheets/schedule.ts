/** The run schedule: a sheet of house rules and one row a run, as a plan that any host can draw. */
import { SERIES_SIZES, formatSize, type Series } from '../core/size';
import type { Word } from '../functions/word';
import { area, areaAddress, cellAddress, type Area } from './area';
import { CAUTIONS, PRINT_FOOTER } from './cautions';
import { HOUSE_RULES, RULE_KEYS, type RuleKey } from './house-rules';
import type { ScheduleNames } from './naming';
import { PALETTE } from './palette';
import type {
  Block,
  CellContent,
  EntryPlan,
  HighlightPlan,
  ReferenceStyle,
  SheetPlan,
  TablePlan,
} from './plan';
import {
  COLUMN_KEYS,
  HEADINGS,
  SCHEDULE_COLUMNS,
  type ColumnKey,
  type RowReferences,
} from './schedule-columns';
import type { ScheduleRun } from './schedule-run';
import { CLOSE_TO_TARGET } from './schedule-words';

/** Zero-based rows of the sheet's parts. */
const ROW = { title: 0, summary: 1, rules: 2, legend: 6, header: 7, first: 8 } as const;
/** Rules stand in groups side by side: rows down, then the next group. */
const RULE_GROUPS: readonly {
  readonly label: number;
  readonly value: number;
  readonly keys: readonly RuleKey[];
}[] = [
  { label: 0, value: 2, keys: ['unit', 'volts', 'target', 'series'] },
  { label: 3, value: 6, keys: ['material', 'tempC', 'insulationC', 'duty'] },
  { label: 9, value: 12, keys: ['installed', 'ambientC', 'conductors'] },
];
const LEAST_ROWS = 25;
const SPARE_ROWS = 8;
const PROMPT_TITLE_MOST = 32;
const PROMPT_MOST = 255;

export interface ScheduleOptions {
  readonly names: ScheduleNames;
  readonly references: ReferenceStyle;
  readonly runs: readonly ScheduleRun[];
  /** House rules that differ from the usual. */
  readonly rules?: Readonly<Partial<Record<RuleKey, string | number>>>;
  readonly title?: string;
  /** Rows to make room for; enough for the runs and some to spare unless given. */
  readonly rows?: number;
}

const columnOf = (key: ColumnKey): number => COLUMN_KEYS.indexOf(key);

/** Where the runs stand on the sheet. */
export function scheduleArea(rows: number): Area {
  return area(ROW.first, 0, rows, COLUMN_KEYS.length);
}

function columnArea(key: ColumnKey, rows: number): Area {
  return area(ROW.first, columnOf(key), rows, 1);
}

/** References of one row: structured ones, or the addresses of its cells. */
function rowReferences(options: ScheduleOptions, row: number): RowReferences {
  const cell = Object.fromEntries(
    COLUMN_KEYS.map((key, column) => [
      key,
      options.references === 'table'
        ? `[@[${SCHEDULE_COLUMNS[key].heading}]]`
        : cellAddress(row, column, 'column'),
    ]),
  );
  return { cell: cell as Record<ColumnKey, string>, rule: options.names.rule };
}

/** The whole of one column, for the summary. */
function wholeColumn(options: ScheduleOptions, key: ColumnKey, rows: number): string {
  return options.references === 'table'
    ? `${options.names.table}[${SCHEDULE_COLUMNS[key].heading}]`
    : areaAddress(columnArea(key, rows), 'both');
}

function headBlocks(options: ScheduleOptions): Block[] {
  return [
    {
      area: area(ROW.title, 0),
      cells: [[options.title ?? options.names.sheet]],
      style: { bold: true, fontSizePt: 16, fontColour: PALETTE.title },
    },
    {
      area: area(ROW.title, 3),
      cells: [['Fill in the green cells; the rest computes. Advice, not approval: see the foot.']],
      style: { italic: true, fontColour: PALETTE.quietText },
    },
  ];
}

function summaryBlocks(options: ScheduleOptions, rows: number): Block[] {
  const amps = wholeColumn(options, 'amps', rows);
  const length = wholeColumn(options, 'length', rows);
  const verdict = wholeColumn(options, 'verdict', rows);
  const pairs: readonly {
    label: number;
    text: string;
    value: number;
    cells: CellContent[];
    numberFormat: string;
  }[] = [
    {
      label: 0,
      text: 'Runs',
      value: 1,
      cells: [{ formula: `=COUNT(${amps})` }],
      numberFormat: '0',
    },
    {
      label: 2,
      text: 'Total one-way length',
      value: 3,
      cells: [{ formula: `=SUM(${length})` }, { formula: `=${options.names.rule.unit}` }],
      numberFormat: '0.#',
    },
    {
      label: 6,
      text: 'Not ok',
      value: 7,
      cells: [{ formula: `=SUMPRODUCT(--(LEN(${verdict})>0))-COUNTIF(${verdict},"ok")` }],
      numberFormat: '0',
    },
  ];
  return pairs.flatMap(({ label, text, value, cells, numberFormat }): Block[] => [
    {
      area: area(ROW.summary, label),
      cells: [[text]],
      style: { bold: true, align: label === 0 ? 'left' : 'right' },
    },
    {
      area: area(ROW.summary, value, 1, cells.length),
      cells: [cells],
      style: { bold: true, align: 'left', numberFormat },
      afterTable: true,
    },
  ]);
}

function ruleBlocks(options: ScheduleOptions): Block[] {
  return RULE_GROUPS.flatMap(({ label, value, keys }) =>
    keys.flatMap((key, index): Block[] => {
      const rule = HOUSE_RULES[key];
      return [
        { area: area(ROW.rules + index, label), cells: [[rule.label]] },
        {
          area: area(ROW.rules + index, value),
          cells: [[options.rules?.[key] ?? rule.initial(options.names.rule)]],
          style: { fill: PALETTE.input, border: 'all', ...rule.style, align: 'left' },
        },
      ];
    }),
  );
}

function ruleAreas(): readonly (readonly [RuleKey, Area])[] {
  return RULE_GROUPS.flatMap(({ value, keys }) =>
    keys.map((key, index) => [key, area(ROW.rules + index, value)] as const),
  );
}

function legendBlocks(): Block[] {
  const samples = [
    { column: 0, text: 'Over ampacity, or no fuse', style: HIGHLIGHT_STYLES.danger },
    { column: 2, text: 'Drop over target', style: HIGHLIGHT_STYLES.over },
    { column: 3, text: 'Close', style: HIGHLIGHT_STYLES.close },
  ];
  return samples.map(({ column, text, style }) => ({
    area: area(ROW.legend, column, 1, column === 0 ? 2 : 1),
    cells: [column === 0 ? [text, null] : [text]],
    style,
  }));
}

const HIGHLIGHT_STYLES = {
  danger: { fill: PALETTE.danger, fontColour: PALETTE.dangerText, bold: true },
  over: { fill: PALETTE.over, fontColour: PALETTE.darkText, bold: true },
  close: { fill: PALETTE.close, fontColour: PALETTE.darkText },
} as const;

/** What a row holds for a key: what was typed, the usual formula, or the computed one. */
function rowCells(options: ScheduleOptions, run: ScheduleRun, row: number): CellContent[] {
  const references = rowReferences(options, row);
  return COLUMN_KEYS.map((key): CellContent => {
    const column = SCHEDULE_COLUMNS[key];
    const typed = key in run ? run[key as keyof ScheduleRun] : undefined;
    if (typed !== undefined && typed !== '') return typed;
    return column.formula === undefined ? null : { formula: `=${column.formula(references)}` };
  });
}

/**
 * With real tables a computed column's formulas are the table's own; only typed values are then written as cells.
 */
function runBlocks(options: ScheduleOptions, rows: number): Block[] {
  const contents = Array.from({ length: rows }, (_, index) =>
    rowCells(options, options.runs[index] ?? {}, ROW.first + index),
  );
  return COLUMN_KEYS.map((key, column): Block => {
    const { kind, style } = SCHEDULE_COLUMNS[key];
    const typedOnly = options.references === 'table' && kind === 'computed';
    return {
      area: columnArea(key, rows),
      cells: contents.map((cells) => {
        const content = cells[column] ?? null;
        const isFormula = typeof content === 'object' && content !== null;
        return [typedOnly || (options.references === 'table' && isFormula) ? null : content];
      }),
      style: {
        ...style,
        border: 'all',
        ...(kind === 'computed' ? {} : { fill: PALETTE.input }),
      },
    };
  });
}

function tablePlan(options: ScheduleOptions, rows: number): TablePlan {
  const references = rowReferences(options, ROW.first);
  return {
    name: options.names.table,
    area: area(ROW.header, 0, rows + 1, COLUMN_KEYS.length),
    columns: COLUMN_KEYS.map((key) => {
      const { heading, formula } = SCHEDULE_COLUMNS[key];
      return formula === undefined ? { heading } : { heading, formula: `=${formula(references)}` };
    }),
  };
}

/** How a word's own limits become what a cell accepts. */
function entryLimits(word: Word): Pick<EntryPlan, 'choices' | 'number'> {
  if (word.choices !== undefined) return { choices: word.choices };
  const least = word.bounds?.least ?? word.bounds?.above;
  const most = word.bounds?.most ?? word.bounds?.below;
  if (word.bounds === undefined) return {};
  return {
    number: {
      ...(least === undefined ? {} : { least }),
      ...(most === undefined ? {} : { most }),
    },
  };
}

function prompt(
  title: string,
  ...sentences: readonly string[]
): Pick<EntryPlan, 'promptTitle' | 'prompt'> {
  return {
    promptTitle: title.slice(0, PROMPT_TITLE_MOST),
    prompt: sentences.join(' ').slice(0, PROMPT_MOST),
  };
}

/** Sizes offered for a run's own choice: those in stock, thinnest first. */
export const OFFERED_SIZES: readonly string[] = (['AWG', 'mm2'] satisfies Series[]).flatMap(
  (series) => SERIES_SIZES[series].map(formatSize),
);

function entries(rows: number): EntryPlan[] {
  const forRules = ruleAreas().map(([key, of]): EntryPlan => {
    const { label, word, hint } = HOUSE_RULES[key];
    return { area: of, ...entryLimits(word), ...prompt(label, word.meaning, hint ?? '') };
  });
  const forColumns = COLUMN_KEYS.filter((key) => SCHEDULE_COLUMNS[key].kind !== 'computed').map(
    (key): EntryPlan => {
      const { heading, note, word } = SCHEDULE_COLUMNS[key];
      const limits =
        key === 'ownSize'
          ? { choices: OFFERED_SIZES, othersAllowed: true }
          : word === undefined
            ? {}
            : entryLimits(word);
      return { area: columnArea(key, rows), ...limits, ...prompt(heading, note) };
    },
  );
  return [...forRules, ...forColumns];
}

function highlights(rows: number): HighlightPlan[] {
  const at = (key: ColumnKey) => cellAddress(ROW.first, columnOf(key), 'column');
  const ratio = `IF(ISNUMBER(${at('dropShare')}),${at('dropShare')}/${at('target')},0)`;
  const overAmpacity = `IF(ISNUMBER(${at('ampacity')}),${at('amps')}>${at('ampacity')},FALSE)`;
  const overTarget = `${ratio}>1.000000001`;
  const closeToTarget = `AND(${ratio}>${CLOSE_TO_TARGET},${ratio}<=1.000000001)`;
  const noFuse = `ISERROR(${at('fuse')})`;
  const notOk = `AND(LEN(${at('verdict')})>0,${at('verdict')}<>"ok")`;
  const rules: readonly {
    keys: readonly ColumnKey[];
    formula: string;
    style: keyof typeof HIGHLIGHT_STYLES;
    meaning: string;
  }[] = [
    {
      keys: ['amps', 'ampacity'],
      formula: overAmpacity,
      style: 'danger',
      meaning: 'over ampacity',
    },
    { keys: ['fuse'], formula: noFuse, style: 'danger', meaning: 'no fuse fits' },
    {
      keys: ['dropVolts', 'dropShare'],
      formula: overTarget,
      style: 'over',
      meaning: 'drop over target',
    },
    {
      keys: ['dropVolts', 'dropShare'],
      formula: closeToTarget,
      style: 'close',
      meaning: 'close to the target',
    },
    {
      keys: ['verdict'],
      formula: `AND(${notOk},OR(${overAmpacity},${noFuse}))`,
      style: 'danger',
      meaning: 'over ampacity or no fuse',
    },
    { keys: ['verdict'], formula: notOk, style: 'over', meaning: 'not ok' },
  ];
  return rules.flatMap(({ keys, formula, style, meaning }) =>
    keys.map((key) => ({
      area: columnArea(key, rows),
      formula,
      style: HIGHLIGHT_STYLES[style],
      meaning,
    })),
  );
}

/** The plan of a run schedule. */
export function scheduleSheet(options: ScheduleOptions): SheetPlan {
  const rows = options.rows ?? Math.max(LEAST_ROWS, options.runs.length + SPARE_ROWS);
  const foot = ROW.first + rows + 1;
  return {
    name: options.names.sheet,
    columnWidths: COLUMN_KEYS.map((key) => SCHEDULE_COLUMNS[key].widthChars),
    blocks: [
      ...headBlocks(options),
      ...summaryBlocks(options, rows),
      ...ruleBlocks(options),
      ...legendBlocks(),
      {
        area: area(ROW.header, 0, 1, COLUMN_KEYS.length),
        cells: [HEADINGS],
        style: {
          bold: true,
          wrap: true,
          align: 'centre',
          fill: PALETTE.heading,
          fontColour: PALETTE.headingText,
          border: 'all',
        },
      },
      ...runBlocks(options, rows),
      {
        area: area(foot, 0, CAUTIONS.length, 1),
        cells: CAUTIONS.map((caution) => [caution]),
        style: { italic: true, fontColour: PALETTE.quietText },
      },
    ],
    table: tablePlan(options, rows),
    names: ruleAreas().map(([key, of]) => ({ name: options.names.rule[key], area: of })),
    entries: entries(rows),
    highlights: highlights(rows),
    notes: COLUMN_KEYS.map((key, column) => ({
      area: area(ROW.header, column),
      text: SCHEDULE_COLUMNS[key].note,
    })),
    frozenRows: ROW.first,
    frozenColumns: 1,
    rowHeightsPt: { [ROW.title]: 24, [ROW.header]: 32 },
    print: {
      landscape: true,
      area: area(0, 0, foot + CAUTIONS.length, COLUMN_KEYS.length),
      repeatRows: { first: ROW.header, last: ROW.header },
      footer: PRINT_FOOTER,
    },
  };
}

/** Every rule has its place; the compiler cannot see that, so tests ask. */
export function placedRules(): readonly RuleKey[] {
  return RULE_GROUPS.flatMap(({ keys }) => keys).filter((key) => RULE_KEYS.includes(key));
}
