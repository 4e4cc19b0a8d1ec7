/** What a verdict of the sheet says beyond RUN_VERDICT's own words. */
export const SCHEDULE_WORDS = {
  peakMissing: 'peak load missing',
  lengthMissing: 'length missing',
  voltsMissing: 'source volts or drop target missing',
  nameMissing: 'give the run a name',
  nameTwice: 'name twice',
  feederNotListed: 'feeder not listed',
  inLoop: 'in a loop of feeders',
  tiedToAnother: 'tied to a run that must be mended',
  noSize: 'no size serves',
  noAmpacity: 'no published ampacity',
  cannotBeServed: 'cannot be served at low charge',
  voltsUnknown: 'volts not known until another row is mended',
  tooFewVolts: 'too few volts at low charge',
  needsFuse: 'branch needs its own fuse',
  fuseTooSlow: 'fuse too slow for this wire',
  faultTooWeak: 'fault too weak to open the fuse',
  mayNotBreak: 'fuse may not break this fault',
  tooHot: 'hotter than its insulation',
  notJudged: 'protection not judged',
  checkEntries: 'check the entries',
} as const;

/** What the last column says of a load that is short of volts, and of a run that its fuse does not guard. */
export const MEND_WORDS = {
  mends: 'thicker ',
  inSize: ': ',
  none: 'no single thicker run mends it',
  guarded: 'guarded from ',
  unguarded: 'no size is guarded by this fuse',
} as const;

/** A drop over this share of its target is close to it. */
export const CLOSE_TO_TARGET = 0.9;

/** What may stand in "Fed from" besides a run's name: the solar panel, a source of its own. */
export const PANEL = 'panel';

export const FUSED_CHOICES = ['yes', 'no'] as const;
