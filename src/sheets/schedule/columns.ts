/**
 * The columns of the run schedule, each described once: heading, what it holds, how it looks. Excel, the workbench, the
 * written workbook, the reader and the tests all take them from here; the formulas stand in `schedule-formulas`.
 */
import type { Parameter } from '../../functions/parameter';
import * as parameter from '../../functions/parameters/run';
import { FUSE_FORMAT } from '../plan/palette';
import type { CellStyle } from '../plan/plan';
import {
  COLUMN_KEYS,
  DEPTHS,
  WORKING_KEYS,
  type ColumnKey,
  type Depth,
} from '../station/schedule-keys';
import * as typed from '../station/parameters';
import { FUSED_CHOICES } from '../station/verdicts';

export interface ScheduleColumn {
  readonly heading: string;
  /** For a typed column what to type, for a computed one what it says. */
  readonly note: string;
  readonly widthChars: number;
  readonly style?: CellStyle;
  /** "typed" by a person, "usual" a formula that a person may type over, "computed", or a "working" beside the print. */
  readonly kind: 'typed' | 'usual' | 'computed' | 'working';
  /** The functions' parameter for a typed cell, which bounds what may be typed. */
  readonly parameter?: Parameter;
  /** Choices of a typed cell that has no parameter. */
  readonly choices?: readonly string[];
}

/** Text cells, so that 1/0 stays 1/0 and is not taken for a date. */
const TEXT: CellStyle = { numberFormat: '@' };
/** So that 5 A stays 5 A and is not taken for five in the morning. */
const QUANTITY: CellStyle = { ...TEXT, align: 'right' };
const CENTRED: CellStyle = { align: 'centre' };
const AMPS: CellStyle = { numberFormat: '0.0# "A"' };
const VOLTS: CellStyle = { numberFormat: '0.00 "V"' };

const BY_DEPTH = Object.fromEntries(
  DEPTHS.flatMap((depth): [string, readonly [string, string]][] => {
    const at = depth === 0 ? 'that start at a source' : `with ${depth} above them`;
    return [
      [
        `room${depth}`,
        [`Room ${depth}`, `Of runs ${at}: share of the source volts they may lose.`],
      ],
      [`size${depth}`, [`Thinnest ${depth}`, `Of runs ${at}: the thinnest wire for it.`]],
      [
        `wire${depth}`,
        [`Wire ohms ${depth}`, `Of runs ${at}: both conductors of the wire in use.`],
      ],
    ];
  }),
) as Record<`${'room' | 'size' | 'wire'}${Depth}`, readonly [string, string]>;

/** Headings and meanings of the workings, for whoever follows a figure to its roots. */
const WORKINGS: Readonly<Record<(typeof WORKING_KEYS)[number], readonly [string, string]>> = {
  ...BY_DEPTH,
  peakSaid: ['Peak as read', 'The peak load without blanks; nothing where it is a number.'],
  peakUnit: ['Unit of peak', 'Its unit.'],
  peakDigits: ['Digits of peak', 'What stands before the unit.'],
  draw: ['Load taken', 'Its amps or watts; text where it is none.'],
  kind: ['A or W', 'Whether those are amps or watts.'],
  lengthSaid: ['Length as read', 'The length without blanks; nothing where it is a number.'],
  feetSaid: ['Feet as read', 'What stands before a mark for feet.'],
  restSaid: ['Beyond feet', 'What stands behind it, or all.'],
  restUnit: ['Unit beyond feet', 'Its unit.'],
  houseM: ['House unit', 'Its metres.'],
  restDigits: ['Digits beyond', 'What stands before that unit.'],
  isRest: ['Is length', 'Whether those are a number with its unit.'],
  restTimes: ['Unit times', 'Its unit in house units.'],
  oneWay: ['Length taken', 'The length in the house unit; text where it is none.'],
  feeder: ['Feeder', 'The feeding run; blank for a source.'],
  place: ['Place', 'Place of the run in the list.'],
  place1: ['Up 1', 'Place of the feeder in the list: 0 for a source, -1 where it is not listed.'],
  place2: ['Up 2', "Place of the feeder's feeder; 0 where there is none."],
  place3: ['Up 3', 'And so on.'],
  place5: ['Place 5', 'Place of a run that lies too far above to be followed.'],
  place4: ['Up 4', 'And so on.'],
  depth: ['Depth', 'Runs above it; -1 where it has no place that can be followed.'],
  root: ['Root', 'Place of the run nearest the source on its path.'],
  ownSource: [
    'Own source',
    'Place of the source that the run starts at; 0 for a run that another feeds.',
  ],
  source: [
    'Source no',
    'Place of the source that its path is judged by; the first where there is none.',
  ],
  sourceKind: ['Source kind', 'Its kind; blank where the path starts at none of the Supply sheet.'],
  battery: ['On battery', 'Place of the battery that its path starts at; 0 for any other source.'],
  ownLoad: ['Own load', 'What the load takes in, 0 for a run that only feeds others.'],
  onceLoad: ['Load at once', 'What of the own load counts when volts are judged.'],
  houseAmps: ['Amps, usual', 'Current of the own load at the source volts.'],
  assumedVolts: ['Volts assumed', 'The fewest volts that a load in watts is sized for.'],
  ownAmps: ['Own amps', 'Most current of the own load; for watts at the volts assumed.'],
  houseOnce: ['Usual at once', 'What of that current counts when volts are judged.'],
  onceOwn: ['Own at once', 'What the own load adds to its feeders when volts are judged.'],
  once: ['Run at once', 'Current in the run when volts are judged, its own load at its share.'],
  alone: ['Rest of it', 'What the own load draws beyond that share.'],
  endSource: [
    'Ends at no',
    'Place of the source that the run ends at; 0 for none, -1 where it is not listed.',
  ],
  endBattery: ['Ends on', 'The same where it is a battery; else 0.'],
  back: ['Chassis mΩ', 'Of the chassis that brings the current back; blank for a second wire.'],
  fuseAmps: ['Fuse for', 'Least rating of its fuse, amps.'],
  jointOhms: ['Joint ohms', 'Of the joints, and of the chassis where one brings the current back.'],
  weight: ['Weight', 'Length times the root of the amps: its claim on the drop of its path.'],
  pathWeight: ['Path weight', 'Sum of the weights from the source to here.'],
  reach: ['Reach', 'Volts that the wires on the path of this load may lose.'],
  room: ['Room', 'Share of the source volts that the run may lose.'],
  fullSource: ['Source, full', 'Volts where the run starts if it hangs on a source, battery full.'],
  lowSource: ['Source, low', 'The same with the battery low.'],
  batteryAmps: [
    'From source',
    'Current that the battery or the power supply gives to this run at once.',
  ],
  ohms: ['Ohms', 'Both conductors and the joints.'],
  pathOhms: ['Path ohms', 'Of all runs from the source to here.'],
  pathVolts: ['Path drop', 'Volts lost from the source to here.'],
  feederFuse: ['Fuse upstream', 'Nearest fuse upstream of a run that has none.'],
  treeWord: ['Tree', 'What is wrong with its place among the runs.'],
  fitting: ['Fitting fuse', 'The smallest standard fuse that fits the run, fused or not.'],
  judged: ['By itself', 'Judgement of the run by itself.'],
  shortFull: ['Short, full', '1 where the load has too few volts, battery full.'],
  shortLow: ['Short, low', 'The same with the battery low.'],
  fewer: ['Fewer', '1 where a load in watts gets fewer volts than assumed.'],
  lowDrop: ['Drop, low', 'Volts lost in the run with the battery low.'],
  surgeAdds: ['Start adds', 'Amps that the start of its load adds to what counts at once.'],
  surgeBelow: ['Start below', 'The most that the start of one load below it adds.'],
  surgeSag: ['Start takes', 'Volts that the worst start of one load takes from this one.'],
  surgeVolts: ['Volts, start', 'Volts at the load then, battery low; blank where nothing starts.'],
  startsBy: ['Start of', 'Place of the load whose start leaves this one too few volts; else 0.'],
  heldTo: ['Held to', 'What the target counts for: the path from the source, or each run.'],
  overDrop: ['Over by', 'Volts by which the drop misses its target; 0 where it holds.'],
  lost0: ['Lost', 'Volts that the run loses of those that its load misses.'],
  lost1: ['Lost 1', 'The same of its feeder.'],
  lost2: ['Lost 2', "The same of that one's feeder."],
  lost3: ['Lost 3', 'The same two further up.'],
  lost4: ['Lost 4', 'The same three further up.'],
  mendPlace: ['Fix at', 'Place of the run on the path that loses most.'],
  instead: ['Instead', 'What is said instead of a thicker run.'],
  noThicker: ['Not thicker', 'What is said where no thicker run fixes it.'],
  unserved: ['Unserved', 'What is said where the load gets no current for its watts.'],
  exactly: ['Exactly', 'The fix, as far as a size, a run, a fuse or a cell can be named.'],
  mendNeeds: ['Fix to', 'Share of its source volts that this run may lose then.'],
  mendShare: ['Fix by', 'Share of its drop that this run has to lose less.'],
  protection: ['Protection', 'What the Protection sheet finds wrong.'],
  confirm: ['Confirm', 'What the Protection sheet leaves to confirm.'],
  guardedFrom: ['Guarded', 'What would make its fuse protect it, from the Protection sheet.'],
  entries: ['Entries', 'Headings of the cells that cannot be used.'],
  typedOver: ['Typed over', 'Headings of figures that are typed where they are worked out.'],
  words: ['Words', 'Everything that is to be said.'],
  finding: ['Finding', 'The verdict, wherever its own cell was typed over.'],
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
    note: 'The run or the source that feeds this one, by its name; blank for the first source of the Supply sheet.',
    widthChars: 14,
    style: TEXT,
    kind: 'typed',
  },
  load: {
    heading: 'Load',
    note: 'What hangs at the far end.',
    widthChars: 20,
    style: TEXT,
    kind: 'typed',
  },
  peak: {
    heading: 'Peak load',
    note: 'The most the load draws: 22, 22 A, 800 mA, 60 W. A bare number is amps; watts draw more as the volts sink. For a radio, while transmitting. Blank for a run that only feeds others.',
    widthChars: 7,
    style: QUANTITY,
    kind: 'typed',
    parameter: parameter.amps,
  },
  length: {
    heading: 'One-way length',
    note: 'Source to load along the route: 10, 10 ft, 2.5 m, 8\' 6". A bare number is in the length unit of the house rules. Both conductors are counted for you.',
    widthChars: 8,
    style: QUANTITY,
    kind: 'typed',
    parameter: parameter.length,
  },
  volts: {
    heading: 'Source volts',
    note: 'Follows the source on the Supply sheet until you type over it for a run on a source that is not there.',
    widthChars: 8,
    style: { numberFormat: '0.0# "V"' },
    kind: 'usual',
    parameter: parameter.volts,
  },
  target: {
    heading: 'Drop target',
    note: 'Follows the house rule, or the panel, until you type over it. Write 3%, not 3.',
    widthChars: 7,
    style: { numberFormat: '0.0 %' },
    kind: 'usual',
    parameter: parameter.maxDrop,
  },
  joints: {
    heading: 'Joints mΩ',
    note: 'Fuse holder, contacts and crimps of the whole run together, milliohms. Follows the house rule until you type over it.',
    widthChars: 7,
    style: { numberFormat: '0.0#' },
    kind: 'usual',
    parameter: parameter.jointMilliohms,
  },
  ownSize: {
    heading: 'My wire',
    note: 'Leave blank to take the suggestion, or choose: 10 AWG, 1/0 AWG, 6 mm2.',
    widthChars: 9,
    style: { ...TEXT, ...CENTRED },
    kind: 'typed',
    parameter: parameter.size,
  },
  fused: {
    heading: 'Own fuse',
    note: 'yes (also blank): a fuse at its source end. no: the run relies on the fuse of its feeder.',
    widthChars: 6,
    style: CENTRED,
    kind: 'typed',
    choices: FUSED_CHOICES,
  },
  leastVolts: {
    heading: 'Minimum volts',
    note: 'The least volts the load works with, from its manual; blank where it does not matter.',
    widthChars: 9,
    style: { numberFormat: '0.0# "V"' },
    kind: 'typed',
    parameter: parameter.volts,
  },
  mostVolts: {
    heading: 'Most volts',
    note: 'The most volts the load bears, from its manual, to hold against what its source reaches while charging; blank where it does not matter.',
    widthChars: 7,
    style: { numberFormat: '0.0# "V"' },
    kind: 'typed',
    parameter: parameter.volts,
  },
  atOnce: {
    heading: 'At once',
    note: 'Share of its peak that the load adds to its feeders and to the battery when volts are judged; blank for all of it. 0% for one that is never on with the others. Wires and fuses carry it all.',
    widthChars: 6,
    style: { numberFormat: '0 %' },
    kind: 'typed',
    parameter: typed.atOnce,
  },
  efficiency: {
    heading: 'Efficiency',
    note: 'Of an inverter or the like whose watts are its output: output over input. Blank where the watts are what it takes in.',
    widthChars: 10,
    style: { numberFormat: '0 %' },
    kind: 'typed',
    parameter: typed.efficiency,
  },
  unfused: {
    heading: 'Unfused length',
    note: 'Between the battery and the fuse of a run that starts at it, in the length unit above. Blank: not known.',
    widthChars: 8,
    style: { numberFormat: '0.0#' },
    kind: 'typed',
    parameter: parameter.length,
  },
  returns: {
    heading: 'Return',
    note: 'wire: by a second conductor. chassis: through the body of a vehicle, with the milliohms above, or write its own. Blank: as above.',
    widthChars: 8,
    style: CENTRED,
    kind: 'typed',
    parameter: typed.runReturns,
  },
  surge: {
    heading: 'Surge',
    note: 'Amps that the load draws for a moment as it starts (pump, compressor, inverter); blank where it does not matter. Volts are judged at it; it sizes neither wire nor fuse.',
    widthChars: 7,
    style: AMPS,
    kind: 'typed',
    parameter: parameter.amps,
  },
  endsAt: {
    heading: 'Ends at',
    note: 'The source of the Supply sheet that the run ends at, where it ends at one: a panel, charger or battery joined to a battery.',
    widthChars: 11,
    style: TEXT,
    kind: 'typed',
  },
  endFused: {
    heading: 'Fuse at end',
    note: 'yes: a fuse of the same rating at that end too. A battery there wants one.',
    widthChars: 6,
    style: CENTRED,
    kind: 'typed',
    choices: FUSED_CHOICES,
  },
  notes: {
    heading: 'Notes',
    note: 'Whatever else belongs to the run.',
    widthChars: 20,
    style: TEXT,
    kind: 'typed',
  },
  runAmps: {
    heading: 'Run amps',
    note: 'What the run carries: its own load and all that it feeds.',
    widthChars: 8,
    style: AMPS,
    kind: 'computed',
  },
  suggested: {
    heading: 'Thinnest wire',
    note: 'The thinnest wire that keeps the target, carries the current and takes a standard fuse.',
    widthChars: 9,
    style: CENTRED,
    kind: 'computed',
  },
  setBy: {
    heading: 'Limited by',
    note: 'What asked for that wire: drop, heat or fuse.',
    widthChars: 8,
    style: CENTRED,
    kind: 'computed',
  },
  size: {
    heading: 'Wire',
    note: 'My wire, or else the thinnest; everything to the right is for it.',
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
    heading: 'Drop %',
    note: 'The drop of this run as a share of the source volts.',
    widthChars: 8,
    style: { numberFormat: '0.00 %' },
    kind: 'computed',
  },
  pathDrop: {
    heading: 'Drop to load',
    note: 'What is lost from the source to the far end of this run, as a share of the source volts, to hold against the target.',
    widthChars: 8,
    style: { numberFormat: '0.00 %' },
    kind: 'computed',
  },
  loadVolts: {
    heading: 'Volts at load',
    note: 'What arrives through the whole path with the battery full and every load drawing what counts at once.',
    widthChars: 8,
    style: VOLTS,
    kind: 'computed',
  },
  lowVolts: {
    heading: 'Volts, battery low',
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
    heading: 'Fix',
    note: 'The run on its path to make thicker, and how thick; the wire that its fuse protects; or what to buy or fill in.',
    widthChars: 24,
    style: { wrap: true },
    kind: 'computed',
  },
};

export const HEADINGS: readonly string[] = COLUMN_KEYS.map((key) => SCHEDULE_COLUMNS[key].heading);
