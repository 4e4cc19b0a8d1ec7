/** The columns of the Protection sheet, each described once; the formulas stand in `protection-formulas`. */
import { FUSE_FORMAT } from '../plan/palette';
import type { Parameter } from '../../functions/parameter';
import * as parameter from '../../functions/parameters/run';
import * as protection from '../../functions/parameters/protection';
import type { CellStyle } from '../plan/plan';
import { FOR_RUN } from '../station/for-run';
import { fuseKind } from '../station/fuse-kind';
import { i2t } from '../station/parameters';
import type { ProtectionKey } from '../station/protection-keys';

export interface ProtectionColumn {
  readonly heading: string;
  readonly note: string;
  readonly widthChars: number;
  readonly style?: CellStyle;
  /** A cell that a person may fill in, or type over. */
  readonly parameter?: Parameter;
  /** A cell for a text of any kind. */
  readonly entry?: true;
}

const AMPS: CellStyle = { numberFormat: '#,##0 "A"', align: 'right' };
const SECONDS: CellStyle = {
  numberFormat: '[<1]0.000 "s";[<100]0.0 "s";#,##0 "s"',
  align: 'right',
};
const DEGREES: CellStyle = { numberFormat: '0 "°C"', align: 'right' };

const working = (heading: string, note: string): ProtectionColumn => ({
  heading,
  note: `${note} A working of the columns to the left.`,
  widthChars: 9,
});

export const PROTECTION_COLUMNS: Readonly<Record<ProtectionKey, ProtectionColumn>> = {
  run: {
    heading: 'Run',
    note: 'Row by row the runs of the schedule; nothing to fill in.',
    widthChars: 14,
  },
  size: {
    heading: 'Wire',
    note: 'The wire of the run, from the schedule.',
    widthChars: 9,
    style: { align: 'centre' },
  },
  fuse: {
    heading: 'Fuse',
    note: 'The fuse that protects the run: its own, or the nearest upstream.',
    widthChars: 7,
    style: { numberFormat: FUSE_FORMAT, align: 'right' },
  },
  fuseFrom: {
    heading: 'Whose',
    note: '"own": at the source end of the run; "upstream": the fuse of a feeder.',
    widthChars: 9,
    style: { align: 'centre' },
  },
  forRun: {
    ...FOR_RUN,
    note: 'The name of the run that the green cells of this row are filled in for. They stay in their row when a spreadsheet sorts the runs: where another run stands here then, none of the two is judged.',
    entry: true,
  },
  kind: {
    heading: 'Kind',
    note: 'What the fuse of this run is made to break; blank for the kind above.',
    widthChars: 9,
    parameter: fuseKind,
  },
  breaks: {
    heading: 'Breaks',
    note: 'Amps that it breaks, by its kind, until you type over it from the sheet of its maker.',
    widthChars: 9,
    style: AMPS,
    parameter: protection.shortAmps,
  },
  ratedVolts: {
    heading: 'Rated volts',
    note: 'Volts that it is rated for, by its kind, until you type over it.',
    widthChars: 7,
    style: { numberFormat: '0 "V"', align: 'right' },
    parameter: parameter.volts,
  },
  i2t: {
    heading: 'Its I²t, A²s',
    note: "Melting I²t from its maker's sheet, where it is known: it counts beyond the last published point.",
    widthChars: 8,
    style: { numberFormat: '#,##0' },
    parameter: i2t,
  },
  fuseType: {
    heading: 'Times of',
    note: 'Whose times to open are taken for a blade of that rating, see the table above.',
    widthChars: 13,
    style: { align: 'centre' },
  },
  farFault: {
    heading: 'Fault at far end',
    note: 'Current of a dead short at the load at its weakest: battery low and tired, wire warm.',
    widthChars: 13,
    style: AMPS,
  },
  farOpens: {
    heading: 'Fuse opens within, far end',
    note: 'Longest time to open at that fault: published, or beyond the last published point an estimate (constant I²t and 2 ms).',
    widthChars: 14,
    style: SECONDS,
  },
  farBears: {
    heading: 'Wire bears it, far end',
    note: 'How long the conductor bears that current before its insulation is hurt; adiabatic, cautious beyond 5 s.',
    widthChars: 11,
    style: SECONDS,
  },
  nearFault: {
    heading: 'Fault at source end',
    note: 'Current of a dead short where the run begins, just behind the fuse, at its strongest.',
    widthChars: 10,
    style: AMPS,
  },
  nearOpens: {
    heading: 'Fuse opens within, source end',
    note: 'The same for the source end. Protected at both ends is protected everywhere between.',
    widthChars: 14,
    style: SECONDS,
  },
  nearBears: {
    heading: 'Wire bears it, source end',
    note: 'The same for the source end.',
    widthChars: 11,
    style: SECONDS,
  },
  steady: {
    heading: 'Steady heat',
    note: 'Temperature of one conductor alone in still air at the peak current, all day; a pair side by side runs hotter.',
    widthChars: 12,
    style: DEGREES,
  },
  insulation: {
    heading: 'Insulation rating',
    note: 'From the house rules.',
    widthChars: 10,
    style: DEGREES,
  },
  guarded: {
    heading: 'Protected from',
    note: 'Where the fuse does not protect this wire: the thinnest of the series that it would, carrying the fuse too.',
    widthChars: 10,
    style: { align: 'centre' },
  },
  words: {
    heading: 'In words',
    note: 'By the published limits, for the type assumed. Advice, not approval.',
    widthChars: 40,
    style: { wrap: true },
  },
  place: working('Place', 'Place among the runs of the schedule.'),
  entered: working('Entered', '1 where something is typed of the fuse.'),
  astray: working(
    'Astray',
    '1 where that is not said to be for this run, 2 where what is for this run stands in another row.',
  ),
  homeless: working('Homeless', 'The row, where something is typed and no run stands.'),
  state: working('State', 'How far the row can be judged.'),
  root: working('Root', 'Place of the run nearest the source on its path.'),
  sourceVolts: working('Source', 'Resting volts of the battery, full, or volts of its own source.'),
  weakVolts: working(
    'Source, weak',
    'Resting volts of the battery when low, or volts of its own source.',
  ),
  mostVolts: working('Most volts', 'That the circuit can reach.'),
  strongMilliohms: working('mΩ, strong', 'Of the source at its strongest.'),
  warmOhms: working('Warm ohms', 'Of the run and its joints, wire warm.'),
  nearOhms: working('Ohms before', 'Of all the runs above it.'),
  farOhms: working('Ohms in all', 'Of the whole path, wire warm.'),
  fuseAt: working('Fuse at', 'Place of the run whose fuse protects this one.'),
  fuseKind: working('Its kind', 'What is said of that fuse.'),
  fuseI2t: working('Fuse I²t', 'What is said of that fuse.'),
  type: working('Type', 'Row of the fuse type above.'),
  weak: working('Weak', '1 where the far-end fault need not open the fuse.'),
  slow: working('Slow', '1 where the fuse may take longer than the wire bears.'),
  unbroken: working('Unbroken', '1 where the source-end fault is more than the type breaks.'),
  covered: working('Covered', '1 where a fuse above breaks that fault and this one half of it.'),
  lowRated: working(
    'Low rated',
    '1 where the circuit reaches more volts than the fuse is rated for.',
  ),
  tooLong: working('Too long', '1 where too much wire lies before the fuse.'),
  hot: working('Hot', '1 where the steady temperature is above the insulation rating.'),
  bearsI2t: working(
    'Bears, A²s',
    'What the wire bears, as the square of the amps times the seconds.',
  ),
  surgeAmps: working('Surge', 'The most in the run while one load starts.'),
  mayStart: working('May open', '1 where its fuse may open on that.'),
  endFuse: working(
    'End: fuse',
    'At the other end, where that is a battery; "none" where there is none.',
  ),
  endType: working('End: type', 'Row of its type above.'),
  endNear: working('End: fault', 'Of that battery at its strongest, right at it.'),
  endFar: working('End: weak', 'Of that battery at its weakest, through the whole run.'),
  endNearOpens: working('End: opens', 'The fuse there, at the one.'),
  endFarOpens: working('End: opens, weak', 'The fuse there, at the other.'),
  endBears: working('End: bears, weak', 'How long the wire bears the other.'),
  endUnbroken: working('End: unbroken', '1 where that fuse is not made to break the one.'),
  endCovered: working(
    'End: covered',
    "1 where that battery's main fuse breaks it, and this one half of it.",
  ),
  endSlow: working('End: slow', '1 where that fuse may take longer than the wire bears.'),
  endWeak: working('End: weak fault', '1 where the other need not open that fuse.'),
  otherOhms: working(
    'Other ohms',
    'Of the weak source and the path, without the wire of this run.',
  ),
  wireM: working('Wire m', 'Metres of conductor, both ways and as if warm.'),
  endOhms: working(
    'End: other ohms',
    'Of the weak battery at its other end, and of joints and chassis.',
  ),
  guardPlace: working('Guarded at', 'Place of the thinnest guarded size in the series.'),
  endGuard: working('End: guarded at', 'The same for the fuse at its other end.'),
  wrong: working('Wrong', 'Everything that is wrong.'),
  verdict: working('Verdict', 'What the schedule is told; "none" where nothing is wrong.'),
  confirm: working('Confirm', 'What is left to confirm.'),
  buy: working('Buy', 'The fuse that would do.'),
  note: working('Note', 'What else is to be said.'),
  guardedFrom: working('Fix', 'What would make the fuse protect the run.'),
};
