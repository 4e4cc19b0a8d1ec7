/** The columns of the As built sheet. */
import type { Parameter } from '../../functions/parameter';
import { measuredAmps, voltsIn, voltsOut } from '../../functions/parameters/building';
import type { CellStyle } from '../plan/plan';
import { FOR_RUN } from '../station/for-run';
import type { BuiltKey } from './layout';

export interface BuiltColumn {
  readonly heading: string;
  readonly note: string;
  readonly widthChars: number;
  readonly style?: CellStyle;
  readonly parameter?: Parameter;
}

const VOLTS: CellStyle = { numberFormat: '0.00# "V"' };
const MILLIOHMS: CellStyle = { numberFormat: '0.0 "mΩ"' };
const TEXT: CellStyle = { numberFormat: '@', align: 'centre' };

const working = (heading: string, note: string): BuiltColumn => ({ heading, note, widthChars: 8 });

export const BUILT_COLUMNS: Readonly<Record<BuiltKey, BuiltColumn>> = {
  run: {
    heading: 'Finished run',
    note: 'As the schedule has it, row by row.',
    widthChars: 23,
    style: { bold: true },
  },
  wire: {
    heading: 'Wire as listed',
    note: 'Size and one-way length of the schedule.',
    widthChars: 18,
  },
  forRun: {
    ...FOR_RUN,
    note: 'The name of the run that the readings of this row were taken on. They stay in their row when a spreadsheet sorts the runs: where another run stands here then, it is not judged by them.',
  },
  voltsIn: {
    heading: 'Read at source',
    note: 'Volts between both conductors where the run starts, before its fuse, while its load draws the amps.',
    widthChars: 9,
    style: VOLTS,
    parameter: voltsIn,
  },
  voltsOut: {
    heading: 'Read at load',
    note: 'Volts between both conductors at the far end, at the same moment.',
    widthChars: 9,
    style: VOLTS,
    parameter: voltsOut,
  },
  amps: {
    heading: 'Amps read',
    note: 'Amps that flow meanwhile; the more, the surer the verdict.',
    widthChars: 8,
    style: { numberFormat: '0.0# "A"' },
    parameter: measuredAmps,
  },
  date: {
    heading: 'On',
    note: 'The day of the reading, as you write it.',
    widthChars: 11,
    style: TEXT,
  },
  by: { heading: 'Read by', note: 'Who measured.', widthChars: 12, style: TEXT },
  drop: {
    heading: 'Lost',
    note: 'Volts at the source less volts at the load.',
    widthChars: 8,
    style: VOLTS,
  },
  expected: {
    heading: 'By the schedule',
    note: 'What wire and planned joints would lose at these amps.',
    widthChars: 9,
    style: VOLTS,
  },
  beyond: {
    heading: 'Beyond the wire',
    note: "Resistance measured beyond the wire's own: fuse, contacts and crimps, and the chassis where one brings the current back. Ohm's law.",
    widthChars: 9,
    style: { ...MILLIOHMS, bold: true },
  },
  planned: {
    heading: 'Planned for joints',
    note: 'Joints of the schedule, and the chassis where one brings the current back.',
    widthChars: 9,
    style: MILLIOHMS,
  },
  least: {
    heading: 'At least',
    note: 'Beyond the wire, with readings and wire off to one side as far as the head says.',
    widthChars: 9,
    style: MILLIOHMS,
  },
  most: {
    heading: 'At most',
    note: 'The same to the other side.',
    widthChars: 9,
    style: MILLIOHMS,
  },
  heat: {
    heading: 'Heat at peak',
    note: "Watts in the joints while the run carries the schedule's amps. A few watts in one crimp make it hot.",
    widthChars: 8,
    style: { numberFormat: '0.0 "W"' },
  },
  verdict: {
    heading: 'What it tells',
    note: 'Sure as far as the head says: it holds wherever within their doubt the true values are.',
    widthChars: 58,
    style: { wrap: true },
  },
  there: working('There', '1 where a run stands.'),
  name: working('Name', 'Of the run, as the schedule has it.'),
  astray: working('Astray', '1 where readings are not said to be for the run in their row.'),
  wireMilliohms: working('Wire mΩ', 'All its conductors, at the temperature of the reading.'),
  limit: working('Limit', 'Planned, and what may come on top.'),
  wrong: working('Not usable', 'Why its readings cannot be used.'),
  finding: working('Finding', 'What is sure.'),
};
