/**
 * The columns of the run schedule, each described once: heading, what it holds, how it looks, and for computed ones
 * the formula. Excel, the workbench, the written workbook, the reader and the tests all take them from here.
 */
import { NAMESPACE } from '../functions/catalogue';
import type { Word } from '../functions/word';
import * as word from '../functions/words';
import type { RuleReferences } from './house-rules';
import type { CellStyle } from './plan';
import { SCHEDULE_WORDS } from './schedule-words';

export const COLUMN_KEYS = [
  'run',
  'fedFrom',
  'load',
  'amps',
  'length',
  'volts',
  'target',
  'joints',
  'ownSize',
  'suggested',
  'setBy',
  'size',
  'dropVolts',
  'dropShare',
  'loadVolts',
  'ampacity',
  'fuse',
  'heat',
  'verdict',
] as const;
export type ColumnKey = (typeof COLUMN_KEYS)[number];

/** How a row's formula points at its own cells and at the house rules. */
export interface RowReferences {
  readonly cell: Readonly<Record<ColumnKey, string>>;
  readonly rule: RuleReferences;
}

export interface ScheduleColumn {
  readonly heading: string;
  /** What stands in it: for a typed column what to type, for a computed one what it says. */
  readonly note: string;
  readonly widthChars: number;
  readonly style?: CellStyle;
  /** "typed" by a person, "usual" a formula that a person may overtype, or "computed". */
  readonly kind: 'typed' | 'usual' | 'computed';
  /** The functions' word for a typed cell, which bounds what may be typed. */
  readonly word?: Word;
  /** For usual and computed columns, without the leading "=". */
  formula?(row: RowReferences): string;
}

const TEXT: CellStyle = { numberFormat: '@' };
/** Text cells, so that 1/0 stays 1/0 and is not taken for a date. */
const SIZE: CellStyle = { numberFormat: '@', align: 'centre' };

/** Shows nothing until the row has amps and length, whatever a spreadsheet makes of blanks. */
function whenReady({ cell }: RowReferences, expression: string): string {
  return `IF(OR(${cell.amps}="",${cell.length}=""),"",${expression})`;
}

function call(id: string, ...args: readonly string[]): string {
  return `${NAMESPACE}.${id}(${args.join(',')})`;
}

const isContinuous = ({ rule }: RowReferences) => `${rule.duty}<>"bursts"`;

/** The arguments that MINGAUGE and GAUGE_LIMIT share. */
function gaugeArguments(row: RowReferences): readonly string[] {
  const { cell, rule } = row;
  return [
    cell.amps,
    cell.length,
    rule.unit,
    cell.volts,
    cell.target,
    rule.material,
    rule.tempC,
    cell.joints,
    rule.insulationC,
    rule.ambientC,
    rule.conductors,
    rule.installed,
    isContinuous(row),
    rule.series,
  ];
}

export const SCHEDULE_COLUMNS: Readonly<Record<ColumnKey, ScheduleColumn>> = {
  run: {
    heading: 'Run',
    note: 'A short name for the run, as on its label. Each name once.',
    widthChars: 16,
    style: TEXT,
    kind: 'typed',
  },
  fedFrom: {
    heading: 'Fed from',
    note: 'The run that feeds this one, by its name; blank for the battery itself.',
    widthChars: 12,
    style: TEXT,
    kind: 'typed',
  },
  load: {
    heading: 'Load',
    note: 'What hangs at the far end.',
    widthChars: 22,
    style: TEXT,
    kind: 'typed',
  },
  amps: {
    heading: 'Peak amps',
    note: 'The most the load draws, amps: for a radio, while transmitting.',
    widthChars: 8,
    style: { numberFormat: '0.0# "A"' },
    kind: 'typed',
    word: word.amps,
  },
  length: {
    heading: 'One-way length',
    note: 'Source to load along the route, in the length unit above. Both conductors are counted for you.',
    widthChars: 9,
    style: { numberFormat: '0.0#' },
    kind: 'typed',
    word: word.length,
  },
  volts: {
    heading: 'Source volts',
    note: 'Follows the house rule until overtyped, for a run on another supply.',
    widthChars: 8,
    style: { numberFormat: '0.0# "V"' },
    kind: 'usual',
    word: word.volts,
    formula: ({ cell, rule }) => `IF(${cell.amps}="","",${rule.volts})`,
  },
  target: {
    heading: 'Drop target',
    note: 'Follows the house rule until overtyped. Write 3%, not 3.',
    widthChars: 8,
    style: { numberFormat: '0.0 %' },
    kind: 'usual',
    word: word.maxDrop,
    formula: ({ cell, rule }) => `IF(${cell.amps}="","",${rule.target})`,
  },
  joints: {
    heading: 'Joints mΩ',
    note: 'Fuse holder, contacts and crimps of the whole run together, milliohms; blank for none.',
    widthChars: 8,
    style: { numberFormat: '0.0# "mΩ"' },
    kind: 'typed',
    word: word.jointMilliohms,
  },
  ownSize: {
    heading: 'Own size',
    note: 'Leave blank to take the suggestion, or choose: 10 AWG, 1/0 AWG, 6 mm2.',
    widthChars: 9,
    style: SIZE,
    kind: 'typed',
    word: word.size,
  },
  suggested: {
    heading: 'Suggested size',
    note: 'The thinnest size that keeps the target, carries the current and takes a standard fuse.',
    widthChars: 10,
    style: SIZE,
    kind: 'computed',
    formula: (row) => whenReady(row, call('MINGAUGE', ...gaugeArguments(row))),
  },
  setBy: {
    heading: 'Set by',
    note: 'What asked for the suggested size: drop, heat or fuse.',
    widthChars: 7,
    style: { align: 'centre' },
    kind: 'computed',
    formula: (row) => whenReady(row, call('GAUGE_LIMIT', ...gaugeArguments(row))),
  },
  size: {
    heading: 'Size used',
    note: 'Your own size, or else the suggestion; everything to the right is for it.',
    widthChars: 9,
    style: { ...SIZE, bold: true },
    kind: 'computed',
    formula: (row) =>
      whenReady(row, `IF(${row.cell.ownSize}="",${row.cell.suggested},${row.cell.ownSize})`),
  },
  dropVolts: {
    heading: 'Drop',
    note: 'Volts lost in both conductors and the joints.',
    widthChars: 8,
    style: { numberFormat: '0.00 "V"' },
    kind: 'computed',
    formula: (row) =>
      whenReady(
        row,
        call(
          'DCDROP',
          row.cell.amps,
          row.cell.length,
          row.rule.unit,
          row.cell.size,
          row.rule.material,
          row.rule.tempC,
          row.cell.joints,
        ),
      ),
  },
  dropShare: {
    heading: 'Drop share',
    note: 'The drop as a share of the source volts, to hold against the target.',
    widthChars: 8,
    style: { numberFormat: '0.00 %' },
    kind: 'computed',
    formula: (row) => whenReady(row, `${row.cell.dropVolts}/${row.cell.volts}`),
  },
  loadVolts: {
    heading: 'Volts at load',
    note: 'What is left at the far end at peak current.',
    widthChars: 8,
    style: { numberFormat: '0.00 "V"' },
    kind: 'computed',
    formula: (row) => whenReady(row, `${row.cell.volts}-${row.cell.dropVolts}`),
  },
  ampacity: {
    heading: 'Ampacity',
    note: 'What the conductor may carry for heat, as installed.',
    widthChars: 9,
    style: { numberFormat: '0.0 "A"' },
    kind: 'computed',
    formula: (row) =>
      whenReady(
        row,
        call(
          'AMPACITY',
          row.cell.size,
          row.rule.insulationC,
          row.rule.ambientC,
          row.rule.conductors,
          row.rule.installed,
          row.rule.material,
        ),
      ),
  },
  fuse: {
    heading: 'Fuse',
    note: 'The smallest standard fuse that carries the load and protects the conductor; at the source end.',
    widthChars: 8,
    style: { numberFormat: '0.# "A"' },
    kind: 'computed',
    formula: (row) =>
      whenReady(
        row,
        call(
          'FUSE_FOR',
          row.cell.amps,
          row.cell.size,
          row.rule.insulationC,
          row.rule.ambientC,
          row.rule.conductors,
          row.rule.installed,
          row.rule.material,
          isContinuous(row),
        ),
      ),
  },
  heat: {
    heading: 'Heat in run',
    note: 'Watts that warm the run at peak current.',
    widthChars: 8,
    style: { numberFormat: '0.0 "W"' },
    kind: 'computed',
    formula: (row) => whenReady(row, `${row.cell.amps}*${row.cell.dropVolts}`),
  },
  verdict: {
    heading: 'Verdict',
    note: '"ok" by the published figures, or what is wrong, in words. Advice, not approval.',
    widthChars: 34,
    style: { wrap: true },
    kind: 'computed',
    formula(row) {
      const { cell, rule } = row;
      const judged = call(
        'RUN_VERDICT',
        cell.amps,
        cell.length,
        rule.unit,
        cell.volts,
        cell.target,
        cell.size,
        rule.material,
        rule.tempC,
        cell.joints,
        rule.insulationC,
        rule.ambientC,
        rule.conductors,
        rule.installed,
        isContinuous(row),
      );
      const { lengthMissing, ampsMissing, noSize, noAmpacity, checkEntries } = SCHEDULE_WORDS;
      return (
        `IF(${cell.amps}="",IF(${cell.length}="","","${ampsMissing}"),` +
        `IF(${cell.length}="","${lengthMissing}",` +
        `IF(ISNA(${cell.size}),"${noSize}",IF(ISNA(${cell.ampacity}),"${noAmpacity}",` +
        `IFERROR(${judged},"${checkEntries}")))))`
      );
    },
  },
};

export const HEADINGS: readonly string[] = COLUMN_KEYS.map((key) => SCHEDULE_COLUMNS[key].heading);
