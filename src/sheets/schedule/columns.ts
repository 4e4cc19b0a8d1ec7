/**
 * The columns of the run schedule, each described once: heading, what it holds, how it looks. Excel, the workbench, the
 * written workbook, the reader and the tests all take them from here; the formulas stand in `schedule-formulas`.
 */
import { LOAD_KINDS } from '../../core/feeders';
import type { Parameter } from '../../functions/parameter';
import * as parameter from '../../functions/parameters/run';
import { FUSE_FORMAT } from '../plan/palette';
import type { CellStyle } from '../plan/plan';
import { COLUMN_KEYS, WORKING_KEYS, type ColumnKey } from '../station/schedule-keys';
import { FUSED_CHOICES, PANEL } from '../station/verdicts';

export interface ScheduleColumn {
  readonly heading: string;
  /** For a typed column what to type, for a computed one what it says. */
  readonly note: string;
  readonly widthChars: number;
  readonly style?: CellStyle;
  /** "typed" by a person, "usual" a formula that a person may overtype, "computed", or a "working" beside the print. */
  readonly kind: 'typed' | 'usual' | 'computed' | 'working';
  /** The functions' parameter for a typed cell, which bounds what may be typed. */
  readonly parameter?: Parameter;
  /** Choices of a typed cell that has no parameter. */
  readonly choices?: readonly string[];
}

/** Text cells, so that 1/0 stays 1/0 and is not taken for a date. */
const TEXT: CellStyle = { numberFormat: '@' };
const CENTRED: CellStyle = { align: 'centre' };
const AMPS: CellStyle = { numberFormat: '0.0# "A"' };
const VOLTS: CellStyle = { numberFormat: '0.00 "V"' };

/** Headings and meanings of the workings, for whoever follows a figure to its roots. */
const WORKINGS: Readonly<Record<(typeof WORKING_KEYS)[number], readonly [string, string]>> = {
  feeder: ['Feeder', 'The feeding run; blank for a source.'],
  ownLoad: ['Own load', 'The peak load, 0 for a run that only feeds others.'],
  ownAmps: [
    'Own amps',
    'Current of the own load; for watts at its least volts, or else at the drop target.',
  ],
  fullSource: ['Source, full', 'Volts where the run starts if it hangs on a source, battery full.'],
  lowSource: ['Source, low', 'The same at low charge.'],
  batteryAmps: ['From battery', 'Current that the battery gives to this run.'],
  ohms: ['Ohms', 'Both conductors and the joints.'],
  place1: ['Up 1', 'Place of the feeder in the list: 0 for a source, -1 where it is not listed.'],
  place2: ['Up 2', "Place of the feeder's feeder; 0 where there is none."],
  place3: ['Up 3', 'And so on.'],
  place4: ['Up 4', 'And so on.'],
  feederFuse: ['Fuse upstream', 'Nearest fuse upstream of a run that has none.'],
  treeWord: ['Tree', 'What is wrong with its place among the runs.'],
  fitting: ['Fitting fuse', 'The smallest standard fuse that fits the run, fused or not.'],
  judged: ['By itself', 'Judgement of the run by itself.'],
  shortFull: ['Short, full', '1 where the load has too few volts, battery full.'],
  shortLow: ['Short, low', 'The same at low charge.'],
  lowDrop: ['Drop, low', 'Volts lost in the run at low charge.'],
  protection: ['Protection', 'What the Protection sheet finds wrong.'],
  guardedFrom: ['Guarded', 'The size that its fuse would guard, from the Protection sheet.'],
  mendPlace: ['Mend at', 'Place of the run on the path that loses most.'],
  words: ['Words', 'Everything that is wrong.'],
  level: ['Level', '1 danger, 2 fails, 3 unclear, 4 check, 5 ok.'],
};

const workings = Object.fromEntries(
  WORKING_KEYS.map((key): [string, ScheduleColumn] => [
    key,
    {
      heading: WORKINGS[key][0],
      note: `${WORKINGS[key][1]} A working of the columns to the left.`,
      widthChars: 9,
      kind: 'working',
    },
  ]),
) as Record<(typeof WORKING_KEYS)[number], ScheduleColumn>;

export const SCHEDULE_COLUMNS: Readonly<Record<ColumnKey, ScheduleColumn>> = {
  ...workings,
  run: {
    heading: 'Run',
    note: 'A short name for the run, as on its label. Each name once.',
    widthChars: 14,
    style: TEXT,
    kind: 'typed',
  },
  fedFrom: {
    heading: 'Fed from',
    note: `The run that feeds this one, by its name; blank for the battery; "${PANEL}" for the solar panel.`,
    widthChars: 11,
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
  peak: {
    heading: 'Peak load',
    note: 'The most the load draws, amps or watts: for a radio, while transmitting. Blank for a run that only feeds others.',
    widthChars: 7,
    style: { numberFormat: '0.0#' },
    kind: 'typed',
    parameter: parameter.amps,
  },
  kind: {
    heading: 'A or W',
    note: 'A (also blank): steady amps. W: steady watts, which draw more amps as the volts sink.',
    widthChars: 5,
    style: CENTRED,
    kind: 'typed',
    choices: LOAD_KINDS,
  },
  length: {
    heading: 'One-way length',
    note: 'Source to load along the route, in the length unit above. Both conductors are counted for you.',
    widthChars: 8,
    style: { numberFormat: '0.0#' },
    kind: 'typed',
    parameter: parameter.length,
  },
  volts: {
    heading: 'Source volts',
    note: 'Follows the house rule, or the panel, until overtyped for a run on another supply.',
    widthChars: 8,
    style: { numberFormat: '0.0# "V"' },
    kind: 'usual',
    parameter: parameter.volts,
  },
  target: {
    heading: 'Drop target',
    note: 'Follows the house rule, or the panel, until overtyped. Write 3%, not 3.',
    widthChars: 7,
    style: { numberFormat: '0.0 %' },
    kind: 'usual',
    parameter: parameter.maxDrop,
  },
  joints: {
    heading: 'Joints mΩ',
    note: 'Fuse holder, contacts and crimps of the whole run together, milliohms; blank for none.',
    widthChars: 7,
    style: { numberFormat: '0.0#' },
    kind: 'typed',
    parameter: parameter.jointMilliohms,
  },
  ownSize: {
    heading: 'Own size',
    note: 'Leave blank to take the suggestion, or choose: 10 AWG, 1/0 AWG, 6 mm2.',
    widthChars: 9,
    style: { ...TEXT, ...CENTRED },
    kind: 'typed',
    parameter: parameter.size,
  },
  fused: {
    heading: 'Own fuse',
    note: 'yes (also blank): a fuse at its source end. no: the run leans on the fuse of its feeder.',
    widthChars: 6,
    style: CENTRED,
    kind: 'typed',
    choices: FUSED_CHOICES,
  },
  leastVolts: {
    heading: 'Least volts',
    note: 'The least volts the load works with, from its manual; blank where it does not matter.',
    widthChars: 7,
    style: { numberFormat: '0.0# "V"' },
    kind: 'typed',
    parameter: parameter.volts,
  },
  runAmps: {
    heading: 'Run amps',
    note: 'What the run carries: its own load and all that it feeds.',
    widthChars: 8,
    style: AMPS,
    kind: 'computed',
  },
  suggested: {
    heading: 'Suggested size',
    note: 'The thinnest size that keeps the target, carries the current and takes a standard fuse.',
    widthChars: 10,
    style: CENTRED,
    kind: 'computed',
  },
  setBy: {
    heading: 'Set by',
    note: 'What asked for the suggested size: drop, heat or fuse.',
    widthChars: 6,
    style: CENTRED,
    kind: 'computed',
  },
  size: {
    heading: 'Size used',
    note: 'Your own size, or else the suggestion; everything to the right is for it.',
    widthChars: 9,
    style: { ...CENTRED, bold: true },
    kind: 'computed',
  },
  dropVolts: {
    heading: 'Drop',
    note: 'Volts lost in both conductors and the joints of this run.',
    widthChars: 7,
    style: VOLTS,
    kind: 'computed',
  },
  dropShare: {
    heading: 'Drop share',
    note: 'The drop as a share of the source volts, to hold against the target.',
    widthChars: 8,
    style: { numberFormat: '0.00 %' },
    kind: 'computed',
  },
  loadVolts: {
    heading: 'Volts at load',
    note: 'What arrives through the whole path with all loads at their peak, battery full.',
    widthChars: 8,
    style: VOLTS,
    kind: 'computed',
  },
  lowVolts: {
    heading: 'At low charge',
    note: 'The same with the battery at the low charge of the Supply sheet.',
    widthChars: 8,
    style: VOLTS,
    kind: 'computed',
  },
  ampacity: {
    heading: 'Ampacity',
    note: 'What the conductor may carry for heat, as installed.',
    widthChars: 9,
    style: { numberFormat: '0.0 "A"' },
    kind: 'computed',
  },
  fuse: {
    heading: 'Fuse',
    note: 'The smallest standard fuse that carries the current and protects the conductor; at the source end.',
    widthChars: 7,
    style: { numberFormat: FUSE_FORMAT, align: 'right' },
    kind: 'computed',
  },
  heat: {
    heading: 'Heat in run',
    note: 'Watts that warm the run at peak current.',
    widthChars: 7,
    style: { numberFormat: '0.0 "W"' },
    kind: 'computed',
  },
  verdict: {
    heading: 'Verdict',
    note: '"ok" by the published figures, or what is wrong, in words. Advice, not approval.',
    widthChars: 32,
    style: { wrap: true },
    kind: 'computed',
  },
  mend: {
    heading: 'What would mend it',
    note: 'For a load with too few volts: the run on its path that loses most, in a size that would do; for a run that its fuse does not guard: the thinnest size that it would.',
    widthChars: 24,
    style: { wrap: true },
    kind: 'computed',
  },
};

export const HEADINGS: readonly string[] = COLUMN_KEYS.map((key) => SCHEDULE_COLUMNS[key].heading);
