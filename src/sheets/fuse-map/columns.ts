/** The columns of the Fuse map. */
import { FUSE_FORMAT } from '../plan/palette';
import type { CellStyle } from '../plan/plan';
import type { MapKey, PlaceKey } from './layout';

export interface MapColumn {
  readonly heading: string;
  readonly note: string;
  readonly widthChars: number;
  readonly style?: CellStyle;
}

export const MAP_COLUMNS: Readonly<Record<MapKey | PlaceKey, MapColumn>> = {
  block: {
    heading: 'Block at',
    note: 'Where the fuse sits: what its run is fed from, or what it ends at.',
    widthChars: 18,
    style: { bold: true },
  },
  position: {
    heading: 'Position',
    note: 'As typed at the right, or else the order of the schedule.',
    widthChars: 9,
    style: { align: 'centre', bold: true },
  },
  rating: {
    heading: 'Rated',
    note: 'The fuse of the schedule: at the source end of its run, and at its far end where the schedule says so.',
    widthChars: 9,
    style: { numberFormat: FUSE_FORMAT, align: 'centre', bold: true },
  },
  kind: {
    heading: 'Kind of fuse',
    note: 'As on the Protection sheet: the kind of the run, of the house, or by its rating.',
    widthChars: 12,
    style: { align: 'centre' },
  },
  run: {
    heading: 'For run',
    note: 'The run that the fuse protects.',
    widthChars: 20,
    style: { bold: true },
  },
  load: {
    heading: 'Leads to',
    note: 'What is at the other end of the run.',
    widthChars: 28,
  },
  says: {
    heading: 'To know of it',
    note: 'Where its run is not ok, or its position is not clear.',
    widthChars: 38,
  },
  ofRun: {
    heading: 'Positions of runs',
    note: 'As the schedule has them, row by row; blank for one without a fuse of its own.',
    widthChars: 20,
  },
  ownFar: {
    heading: 'Position, far end',
    note: 'The same of the fuse at the far end of the run, where it has one.',
    widthChars: 12,
    style: { numberFormat: '@', align: 'centre' },
  },
  own: {
    heading: 'Your position',
    note: 'What stands on the block beside the fuse: a number or a word. Blank in all of a block: they are numbered in the order of the schedule.',
    widthChars: 12,
    style: { numberFormat: '@', align: 'centre' },
  },
};
