/** The columns of the Protection sheet, each described once; the formulas stand in `protection-formulas`. */
import { FUSE_FORMAT } from '../plan/palette';
import type { CellStyle } from '../plan/plan';
import type { ProtectionKey } from '../station/protection-keys';

export interface ProtectionColumn {
  readonly heading: string;
  readonly note: string;
  readonly widthChars: number;
  readonly style?: CellStyle;
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
    heading: 'Size used',
    note: "The schedule's size for the run.",
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
  fuseType: {
    heading: 'Type assumed',
    note: 'What a fuse of that rating is taken for, see the table above.',
    widthChars: 13,
    style: { align: 'centre' },
  },
  farFault: {
    heading: 'Fault at far end',
    note: 'Current of a dead short at the load: volts of the rested source over its milliohms and the whole path.',
    widthChars: 13,
    style: AMPS,
  },
  farOpens: {
    heading: 'Fuse opens within, far end',
    note: 'Longest time to open at the far-end fault by the published limits.',
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
    note: 'Current of a dead short where the run begins, just behind the fuse.',
    widthChars: 10,
    style: AMPS,
  },
  nearOpens: {
    heading: 'Fuse opens within, source end',
    note: 'The same for the source end. Guarded at both ends is guarded everywhere between.',
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
  guardedFrom: {
    heading: 'Guarded from',
    note: 'Where the fuse does not guard this size: the thinnest of the series that it would, carrying the fuse too.',
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
  state: working('State', 'How far the row can be judged.'),
  root: working('Root', 'Place of the run nearest the source on its path.'),
  sourceVolts: working('Source', 'Resting volts of the battery, full, or volts of its own source.'),
  nearOhms: working('Ohms before', 'Of all the runs above it.'),
  farOhms: working('Ohms in all', 'Those and its own.'),
  type: working('Type', 'Row of the fuse type above.'),
  weak: working('Weak', '1 where the far-end fault need not open the fuse.'),
  slow: working('Slow', '1 where the fuse may take longer than the wire bears.'),
  unbroken: working('Unbroken', '1 where the source-end fault is more than the type breaks.'),
  hot: working('Hot', '1 where the steady temperature is above the insulation rating.'),
  guardPlace: working('Guarded at', 'Place of the thinnest guarded size in the series.'),
  wrong: working('Wrong', 'Everything that is wrong.'),
  verdict: working('Verdict', 'What the schedule is told; "none" where nothing is wrong.'),
  note: working('Note', 'What else is to be said.'),
};
