/** What the Protection sheet says beyond the words of the schedule's verdict. */

/** How far a row can be judged; empty where the schedule's row is. */
export const STATE = {
  judged: 'judged',
  panel: 'panel',
  /** A charger or alternator, at whose other end its battery stands. */
  charger: 'charger',
  /** A power supply without a battery: it gives no more than its most amps. */
  supply: 'supply',
  /** The schedule's row has to be fixed first. */
  row: 'row',
  /** Volts or ohms of the source, or a rule of this sheet, cannot be used. */
  source: 'source',
  /** More feeders lie above than the sheet follows. */
  deep: 'deep',
} as const;

export const PROTECTION_WORDS = {
  guarded: 'protected by the published limits',
  rowFirst: "fix the schedule's row first",
  noFuse: 'no fuse to judge',
  endFuse: 'judged with its fuse at the other end, amps: ',
  noTime: 'no published opening time',
  panel: 'a panel limits its own fault current',
  charger: 'a charger gives no more than its own current',
  supply: 'the supply gives no more than its most amps',
  supplyBears: 'the wire bears all that the supply gives',
  tooDeep: 'more than four feeders above it',
  sourceUnknown: 'volts, milliohms or rules missing',
  unfusedUnknown: 'length without a fuse not known',
  tempNotComputed: 'steady temperature not computed here',
} as const;

/** What stands where a figure does not. */
export const PROTECTION_FIGURES = {
  none: 'none',
  noLimit: 'no limit',
  needNotOpen: 'need not open',
  notPublished: 'not published',
  notComputed: 'not computed',
  own: 'own',
  upstream: 'upstream',
} as const;
