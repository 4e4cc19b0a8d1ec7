/** Rows that cannot be judged, mostly for what another row says, worked out by hand from the tables named beside each. */
import type { StatedRow } from './stated-row';

export const NOT_JUDGED: readonly StatedRow[] = [
  // 2 A x 10 ft x 6.385 mOhm/ft = 0.128 V of 0.414 V; 310.16: 12 A; 2.5, fuse 3; the source has no milliohms, so no
  // fault is known
  {
    entries: { run: 'Load', peak: 2, length: 5, volts: 13.8 },
    supply: { milliohms: '?' },
    verdict: ['notJudged'],
    size: '18 AWG',
    fuse: 3,
  },
  // 2 A x 10 ft x 6.385 mOhm/ft = 0.128 V of 0.36 V; 2.5, fuse 3; no metal bears a limit below its start
  {
    entries: { run: 'Load', peak: 2, length: 5 },
    protection: { startC: 200 },
    verdict: ['notJudged'],
    size: '18 AWG',
    fuse: 3,
  },
  // 1 A x 4 ft x 6.385 mOhm/ft = 0.026 V of 0.36 V; 1.25, fuse 2; five feeders above it, the sheet follows four
  {
    entries: { run: 'R6', fedFrom: 'R5', peak: 1, length: 2 },
    others: [
      { run: 'R1', length: 2, ownSize: '10 AWG' },
      { run: 'R2', fedFrom: 'R1', length: 2, ownSize: '10 AWG' },
      { run: 'R3', fedFrom: 'R2', length: 2, ownSize: '10 AWG' },
      { run: 'R4', fedFrom: 'R3', length: 2, ownSize: '10 AWG' },
      { run: 'R5', fedFrom: 'R4', length: 2, ownSize: '10 AWG' },
    ],
    verdict: ['notJudged'],
    size: '18 AWG',
    fuse: 2,
  },
];

export const TIED_TO_ANOTHER: readonly StatedRow[] = [
  // what the branch draws is not known
  {
    entries: { run: 'Trunk', length: 2, ownSize: '8 AWG' },
    others: [{ run: 'Branch', fedFrom: 'Trunk', peak: 'abc', length: 5 }],
    verdict: ['tiedToAnother'],
    size: '8 AWG',
    fuse: null,
  },
  // A and B go round in circles above it
  {
    entries: { run: 'Load', fedFrom: 'B', peak: 2, length: 5 },
    others: [
      { run: 'A', fedFrom: 'B', peak: 1, length: 3 },
      { run: 'B', fedFrom: 'A', peak: 1, length: 3 },
    ],
    verdict: ['tiedToAnother'],
    size: null,
    fuse: null,
  },
  // the run above it hangs nowhere
  {
    entries: { run: 'Load', fedFrom: 'A', peak: 2, length: 5 },
    others: [{ run: 'A', fedFrom: 'Mast', peak: 1, length: 3 }],
    verdict: ['tiedToAnother'],
    size: null,
    fuse: null,
  },
];

export const VOLTS_UNKNOWN: readonly StatedRow[] = [
  // 2 A x 10 ft x 6.385 mOhm/ft = 0.128 V of 0.36 V; 2.5, fuse 3; the other branch draws nobody knows what through
  // the trunk
  {
    entries: { run: 'Load', fedFrom: 'Trunk', peak: 2, length: 5 },
    others: [
      { run: 'Trunk', length: 2, ownSize: '8 AWG' },
      { run: 'Branch', fedFrom: 'Trunk', peak: 'abc', length: 5, ownSize: '14 AWG' },
    ],
    verdict: ['voltsUnknown'],
    size: '18 AWG',
    fuse: 3,
  },
  // 4 A x 16 ft x 4.016 mOhm/ft = 0.257 V of 0.36 V, 18 AWG 0.409 V; 5, fuse 5; 12.65 V / 52.5 mOhm = 241 A: 0.1 s,
  // wire (115 x 1.3087 / 241)^2 = 0.39 s
  {
    entries: { run: 'Load', fedFrom: 'Trunk', peak: 4, length: 8, leastVolts: 11 },
    others: [
      { run: 'Trunk', length: 2, ownSize: '8 AWG' },
      { run: 'Branch', fedFrom: 'Trunk', peak: 'abc', length: 5, ownSize: '14 AWG' },
    ],
    verdict: ['voltsUnknown'],
    size: '16 AWG',
    fuse: 5,
  },
  // 2 A x 10 ft x 1.588 mOhm/ft = 0.032 V of 0.36 V; 2.5, fuse 3; the neighbour has no size that serves, so its ohms
  // are not known: 10 A x 40 mOhm of joints alone are 0.4 V
  {
    entries: { run: 'Load', fedFrom: 'Trunk', peak: 2, length: 5, ownSize: '12 AWG' },
    others: [
      { run: 'Trunk', length: 2, ownSize: '8 AWG' },
      { run: 'Branch', fedFrom: 'Trunk', peak: 10, length: 2, joints: 40 },
    ],
    verdict: ['voltsUnknown'],
    size: '12 AWG',
    fuse: 3,
  },
];
