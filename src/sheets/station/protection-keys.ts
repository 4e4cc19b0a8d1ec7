/** Keys of the Protection sheet: its named cells, and its columns in the order they stand. */

/** Named cells of the head; the last two are columns that the schedule reads. */
export const PROTECTION_CELL_KEYS = [
  'batteryFault',
  'startC',
  'limitC',
  'k',
  'airC',
  'ratingC',
] as const;
export type ProtectionCellKey = (typeof PROTECTION_CELL_KEYS)[number];

export const PROTECTION_NAME_KEYS = [...PROTECTION_CELL_KEYS, 'verdict', 'guardedFrom'] as const;
export type ProtectionNameKey = (typeof PROTECTION_NAME_KEYS)[number];

export const PROTECTION_SHOWN_KEYS = [
  'run',
  'size',
  'fuse',
  'fuseFrom',
  'fuseType',
  'farFault',
  'farOpens',
  'farBears',
  'nearFault',
  'nearOpens',
  'nearBears',
  'steady',
  'insulation',
  'guardedFrom',
  'words',
] as const;

/** Workings: right of what is printed. */
export const PROTECTION_WORKING_KEYS = [
  'place',
  'state',
  'root',
  'sourceVolts',
  'nearOhms',
  'farOhms',
  'type',
  'weak',
  'slow',
  'unbroken',
  'hot',
  'guardPlace',
  'wrong',
  'verdict',
  'note',
] as const;

export const PROTECTION_KEYS = [...PROTECTION_SHOWN_KEYS, ...PROTECTION_WORKING_KEYS] as const;
export type ProtectionKey = (typeof PROTECTION_KEYS)[number];
