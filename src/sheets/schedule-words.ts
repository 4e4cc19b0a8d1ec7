/** What a verdict of the sheet says beyond RUN_VERDICT's own words. */
export const SCHEDULE_WORDS = {
  ampsMissing: 'peak amps missing',
  lengthMissing: 'length missing',
  noSize: 'no size serves',
  noAmpacity: 'no published ampacity',
  checkEntries: 'check the entries',
} as const;

/** A drop over this share of its target is close to it. */
export const CLOSE_TO_TARGET = 0.9;
