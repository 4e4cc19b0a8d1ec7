/** The columns of the Parts sheet: fuses to buy, contacts and lugs, and the runs that take them. */
import { numberParameter, type Parameter } from '../../functions/parameter';
import { jointMilliohms, size } from '../../functions/parameters/run';
import { FUSE_FORMAT } from '../plan/palette';
import type { CellStyle } from '../plan/plan';
import type { ContactColumnKey, FuseKey, PartRunKey } from './layout';

export interface PartsColumn {
  readonly heading: string;
  readonly note: string;
  readonly style?: CellStyle;
  readonly parameter?: Parameter;
}

const CENTRED: CellStyle = { align: 'centre' };
const COUNT: CellStyle = { numberFormat: '0', align: 'centre' };
const TEXT: CellStyle = { numberFormat: '@', align: 'centre' };
const MILLIOHMS: CellStyle = { numberFormat: '0.0# "mΩ"' };
const AMPS: CellStyle = { numberFormat: '0.0# "A"' };

/** All tables stand in the same columns. */
export const COLUMN_WIDTHS = [19, 11, 10, 10, 13, 10, 16, 16, 16, 16, 11, 11, 10, 70] as const;

const contactAmps = numberParameter('contact_amps', 'Amps that a contact may carry.', { above: 0 });

export const FUSE_COLUMNS: Readonly<Record<FuseKey, PartsColumn>> = {
  kind: {
    heading: 'Fuses to buy',
    note: 'A line for each kind and rating: those of runs, at both ends where a run says so, and main fuses at batteries.',
    style: { bold: true },
  },
  rating: {
    heading: 'Rated',
    note: 'Amps of the fuse.',
    style: { numberFormat: FUSE_FORMAT, align: 'right' },
  },
  fitted: { heading: 'Fitted', note: 'Fuses that the schedule has of it.', style: COUNT },
  spare: { heading: 'Spare', note: 'As the head says.', style: COUNT },
  toBuy: {
    heading: 'Fuses in all',
    note: 'Fitted and spare.',
    style: { ...COUNT, bold: true },
  },
  holders: { heading: 'Holders', note: 'One for each fuse that is fitted.', style: COUNT },
};

export const CONTACT_COLUMNS: Readonly<Record<ContactColumnKey, PartsColumn>> = {
  name: {
    heading: 'Contact or lug',
    note: 'Your own word for it, as on its bag. The first that fits is taken, so list the one that you like best first.',
    style: { ...TEXT, align: 'left' },
  },
  thinnest: {
    heading: 'Thinnest wire',
    note: 'The thinnest size that it takes, from its maker: 16 AWG, 1.5 mm2.',
    style: TEXT,
    parameter: size,
  },
  thickest: {
    heading: 'Thickest wire',
    note: 'The thickest size that it takes, from its maker.',
    style: TEXT,
    parameter: size,
  },
  amps: {
    heading: 'Bears',
    note: 'Amps that it may carry, from its maker, for the thinnest of its sizes if the sheet has several figures.',
    style: AMPS,
    parameter: contactAmps,
  },
  milliohms: {
    heading: 'mΩ of one',
    note: 'Milliohms of one, crimp included. Common practice, from memory: a sound crimp or contact of a power lead has well under 1.',
    style: MILLIOHMS,
    parameter: jointMilliohms,
  },
  used: { heading: 'Used', note: 'How many the runs below take of it.', style: COUNT },
  says: { heading: 'To know of it', note: 'Why it is not taken.' },
};

export const PART_RUN_COLUMNS: Readonly<Record<PartRunKey, PartsColumn>> = {
  run: {
    heading: 'Run to fit',
    note: 'As the schedule has it, row by row.',
    style: { bold: true },
  },
  wire: { heading: 'Wire of it', note: 'The size of the schedule.', style: CENTRED },
  amps: { heading: 'It carries', note: 'Most amps of the run.', style: AMPS },
  fuse: {
    heading: 'Fuse of it',
    note: 'Its own; none where it leans on a fuse upstream.',
    style: { numberFormat: FUSE_FORMAT, align: 'right' },
  },
  kind: { heading: 'Its kind', note: 'As Protection has it.', style: CENTRED },
  pieces: {
    heading: 'Contacts of it',
    note: 'At both ends together, of both conductors, or of one with a chassis return.',
    style: COUNT,
  },
  mine: {
    heading: 'My contact, source end',
    note: 'Where the run begins, at its fuse or feeder: a name of the table above; blank: the first that fits.',
    style: { ...TEXT, align: 'left' },
  },
  taken: {
    heading: 'Taken, source end',
    note: 'Yours, or the first of the table that fits.',
  },
  farMine: {
    heading: 'My contact, far end',
    note: 'Where the run ends, at its load or the next block: a name of the table above; blank: the first that fits.',
    style: { ...TEXT, align: 'left' },
  },
  farTaken: {
    heading: 'Taken, far end',
    note: 'Yours, or the first of the table that fits.',
  },
  sum: {
    heading: 'Sum for Joints',
    note: 'Contacts of both ends, and the fuse with its holder. Type it under "Joints mΩ" of the schedule: it is not carried over by itself, since the wire hangs on the joints and the contact on the wire.',
    style: { ...MILLIOHMS, bold: true },
  },
  planned: { heading: 'In the schedule', note: 'Joints that it counts now.', style: MILLIOHMS },
  heat: {
    heading: 'Heat in them',
    note: 'Watts in these joints together while the run carries its amps.',
    style: { numberFormat: '0.0 "W"' },
  },
  says: {
    heading: 'To know of its parts',
    note: 'What is wrong with its contact, and whether the schedule counts other joints.',
  },
};
