/** Keys of the schedule's columns, in the order they stand. */
export const SHOWN_KEYS = [
  'run',
  'fedFrom',
  'load',
  'peak',
  'kind',
  'length',
  'volts',
  'target',
  'joints',
  'ownSize',
  'fused',
  'leastVolts',
  'runAmps',
  'suggested',
  'setBy',
  'size',
  'dropVolts',
  'dropShare',
  'loadVolts',
  'lowVolts',
  'ampacity',
  'fuse',
  'heat',
  'verdict',
  'mend',
] as const;

export type ShownKey = (typeof SHOWN_KEYS)[number];

/** Workings: columns of the same table, right of what is printed. */
export const WORKING_KEYS = [
  'feeder',
  'ownAmps',
  'ownLoad',
  'fullSource',
  'lowSource',
  'batteryAmps',
  'ohms',
  'place1',
  'place2',
  'place3',
  'place4',
  'feederFuse',
  'treeWord',
  'fitting',
  'judged',
  'shortFull',
  'shortLow',
  'lowDrop',
  'mendPlace',
  'protection',
  'guardedFrom',
  'words',
  'level',
] as const;

export const COLUMN_KEYS = [...SHOWN_KEYS, ...WORKING_KEYS] as const;
export type ColumnKey = (typeof COLUMN_KEYS)[number];

/** Places of a run's feeders in the list, nearest first: as far up as the sheets follow. */
export const FEEDER_KEYS = [
  'place1',
  'place2',
  'place3',
  'place4',
] as const satisfies readonly ColumnKey[];
