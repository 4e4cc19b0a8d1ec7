/** What a verdict of the sheet says beyond RUN_VERDICT's own words. */
export const SCHEDULE_WORDS = {
  peakMissing: 'peak load missing',
  lengthMissing: 'length missing',
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
  checkEntries: 'check the entries',
} as const;

/** What the last column says of a load that is short of volts. */
export const MEND_WORDS = {
  mends: 'thicker ',
  inSize: ': ',
  none: 'no single thicker run mends it',
} as const;

/** A drop over this share of its target is close to it. */
export const CLOSE_TO_TARGET = 0.9;

/** What may stand in "Fed from" besides a run's name: the solar panel, a source of its own. */
export const PANEL = 'panel';

export const FUSED_CHOICES = ['yes', 'no'] as const;
