/** Keys of the Protection sheet: its named cells, and its columns in the order they stand. */

/** Named cells of the head; the last four are columns that the schedule reads. */
export const PROTECTION_CELL_KEYS = [
  'batteryFault',
  'startC',
  'limitC',
  'k',
  'airC',
  'ratingC',
  'fuseKind',
  'weakTimes',
  'warm',
  'surgeS',
] as const;
export type ProtectionCellKey = (typeof PROTECTION_CELL_KEYS)[number];

export const PROTECTION_NAME_KEYS = [
  ...PROTECTION_CELL_KEYS,
  'verdict',
  'confirm',
  'guardedFrom',
  'homeless',
] as const;
export type ProtectionNameKey = (typeof PROTECTION_NAME_KEYS)[number];

/** Columns that formulas of other sheets look at, row by row. */
export const PROTECTION_COLUMN_NAME_KEYS = ['kind'] as const;
export type ProtectionColumnNameKey = (typeof PROTECTION_COLUMN_NAME_KEYS)[number];

export const PROTECTION_SHOWN_KEYS = [
  'run',
  'size',
  'fuse',
  'fuseFrom',
  'forRun',
  'kind',
  'breaks',
  'ratedVolts',
  'i2t',
  'fuseType',
  'farFault',
  'farOpens',
  'farBears',
  'nearFault',
  'nearOpens',
  'nearBears',
  'steady',
  'insulation',
  'guarded',
  'words',
] as const;

/** Workings: right of what is printed. */
export const PROTECTION_WORKING_KEYS = [
  'place',
  'entered',
  'astray',
  'homeless',
  'state',
  'root',
  'sourceVolts',
  'weakVolts',
  'mostVolts',
  'strongMilliohms',
  'nearOhms',
  'warmOhms',
  'farOhms',
  'fuseAt',
  'fuseKind',
  'fuseI2t',
  'type',
  'weak',
  'slow',
  'unbroken',
  'covered',
  'lowRated',
  'tooLong',
  'hot',
  'bearsI2t',
  'surgeAmps',
  'mayStart',
  'endFuse',
  'endType',
  'endNear',
  'endFar',
  'endNearOpens',
  'endFarOpens',
  'endBears',
  'endUnbroken',
  'endCovered',
  'endSlow',
  'endWeak',
  'otherOhms',
  'wireM',
  'guardPlace',
  'endOhms',
  'endGuard',
  'wrong',
  'verdict',
  'confirm',
  'buy',
  'note',
  'guardedFrom',
] as const;

export const PROTECTION_KEYS = [...PROTECTION_SHOWN_KEYS, ...PROTECTION_WORKING_KEYS] as const;
export type ProtectionKey = (typeof PROTECTION_KEYS)[number];

/** What a person may say of each run's fuse, and may leave to the kind of fuse. */
export const FUSE_ENTRY_KEYS = ['kind', 'breaks', 'ratedVolts', 'i2t'] as const;
export type FuseEntryKey = (typeof FUSE_ENTRY_KEYS)[number];
