/** Rows with an entry that is missing or not understood, worked out by hand from the tables named beside each. */
import type { StatedRow } from './stated-row';

export const NAME_TWICE: readonly StatedRow[] = [
  // which of the two feeds or is fed cannot be told
  {
    entries: { run: 'Lamp', peak: 2, length: 5 },
    others: [{ run: 'Lamp', peak: 1, length: 3 }],
    verdict: ['nameTwice'],
    size: null,
    fuse: null,
  },
  // upper and lower case are one name
  {
    entries: { run: 'LAMP', peak: 2, length: 5 },
    others: [{ run: 'Lamp', peak: 1, length: 3 }],
    verdict: ['nameTwice'],
    size: null,
    fuse: null,
  },
  // its size is its own, its amps are not known
  {
    entries: { run: 'Lamp', peak: 2, length: 5, ownSize: '10 AWG' },
    others: [{ run: 'Lamp', peak: 1, length: 3 }],
    verdict: ['nameTwice'],
    size: '10 AWG',
    fuse: null,
  },
];

export const FEEDER_NOT_LISTED: readonly StatedRow[] = [
  // no run is called Mast
  {
    entries: { run: 'Load', fedFrom: 'Mast', peak: 2, length: 5 },
    verdict: ['feederNotListed'],
    size: null,
    fuse: null,
  },
  // Trunk is misspelt
  {
    entries: { run: 'Load', fedFrom: 'Trnk', peak: 2, length: 5 },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 3 }],
    verdict: ['feederNotListed'],
    size: null,
    fuse: null,
  },
  // its size is its own, its place is not known
  {
    entries: { run: 'Load', fedFrom: 'Mast', peak: 2, length: 5, ownSize: '10 AWG' },
    verdict: ['feederNotListed'],
    size: '10 AWG',
    fuse: null,
  },
];

export const IN_LOOP: readonly StatedRow[] = [
  // A from B, B from A
  {
    entries: { run: 'A', fedFrom: 'B', peak: 2, length: 5 },
    others: [{ run: 'B', fedFrom: 'A', peak: 1, length: 3 }],
    verdict: ['inLoop'],
    size: null,
    fuse: null,
  },
  // A from C, C from B, B from A
  {
    entries: { run: 'A', fedFrom: 'C', peak: 2, length: 5 },
    others: [
      { run: 'B', fedFrom: 'A', peak: 1, length: 3 },
      { run: 'C', fedFrom: 'B', peak: 1, length: 3 },
    ],
    verdict: ['inLoop'],
    size: null,
    fuse: null,
  },
  // C from B, B from A, A from C; its size is its own
  {
    entries: { run: 'C', fedFrom: 'B', peak: 2, length: 5, ownSize: '8 AWG' },
    others: [
      { run: 'A', fedFrom: 'C', peak: 1, length: 3 },
      { run: 'B', fedFrom: 'A', peak: 1, length: 3 },
    ],
    verdict: ['inLoop'],
    size: '8 AWG',
    fuse: null,
  },
  // A from A: listed, and fed from itself
  {
    entries: { run: 'A', fedFrom: 'A', peak: 2, length: 5 },
    verdict: ['inLoop'],
    size: null,
    fuse: null,
  },
];

/** So many runs one behind the other, each feeding the next. */
const chain = (runs: number) =>
  Array.from({ length: runs }, (_, index) => ({
    run: `R${index + 1}`,
    ...(index > 0 && { fedFrom: `R${index}` }),
    length: 2,
    ownSize: '10 AWG',
  }));

export const TOO_DEEP: readonly StatedRow[] = [
  // five runs above it, four are followed
  {
    entries: { run: 'R6', fedFrom: 'R5', peak: 1, length: 2 },
    others: chain(5),
    verdict: ['tooDeep'],
    size: null,
    fuse: null,
  },
  // six; its size is its own, but nothing of so deep a tree is computed, its fuse neither
  {
    entries: { run: 'R7', fedFrom: 'R6', peak: 1, length: 2, ownSize: '14 AWG' },
    others: chain(6),
    verdict: ['tooDeep'],
    size: '14 AWG',
    fuse: null,
  },
  // five, and a load in watts
  {
    entries: { run: 'Load', fedFrom: 'R5', peak: 20, kind: 'W', length: 2 },
    others: chain(5),
    verdict: ['tooDeep'],
    size: null,
    fuse: null,
  },
];

export const NAME_MISSING: readonly StatedRow[] = [
  // nothing to call it by; what it carries is known; Trunk: 5 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.028 V; 6.25,
  // fuse 7.5; 2 A x (10 ft x 6.385 x 1.0393 + 3) mOhm = 0.139 V, 0.167 V in all, of 0.36 V; 310.16 12 A (14 A at 90
  // degC x 0.866); 2 x 1.25 = 2.5, fuse 3
  {
    entries: { fedFrom: 'Trunk', peak: 2, length: 5 },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 3 }],
    verdict: ['nameMissing'],
    size: '18 AWG',
    fuse: 3,
  },
  // Trunk: 5 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.028 V; 6.25, fuse 7.5; 2 A x (10 ft x 0.9989 x 1.0393 + 3) mOhm
  // = 0.027 V, 0.055 V in all, of 0.36 V; 310.16 35 A; 2 x 1.25 = 2.5, fuse 3
  {
    entries: { fedFrom: 'Trunk', peak: 2, length: 5, ownSize: '10 AWG' },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 3 }],
    verdict: ['nameMissing'],
    size: '10 AWG',
    fuse: 3,
  },
  // low charge, less the target: 12.026 V less 6.53 A x 50 mOhm less 0.36 V = 11.34 V: 40 W / 11.34 V = 3.53 A; Trunk: 6.527 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.037 V; 7.917, fuse 10; 3.527 A x (10 ft x 6.385 x 1.0393) mOhm =
  // 0.234 V, 0.271 V in all, of 0.36 V; 310.16 12 A (14 A at 90 degC x 0.866); a name comes first
  {
    entries: { fedFrom: 'Trunk', peak: 40, kind: 'W', length: 5, fused: 'no' },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 3 }],
    verdict: ['nameMissing'],
    size: '18 AWG',
    fuse: 'none',
  },
];

export const PEAK_MISSING: readonly StatedRow[] = [
  // no load, and it feeds nothing
  { entries: { run: 'Load', length: 5 }, verdict: ['peakMissing'], size: null, fuse: null },
  // no load, and it feeds nothing
  {
    entries: { run: 'Load', fedFrom: 'Trunk', length: 5 },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 3 }],
    verdict: ['peakMissing'],
    size: null,
    fuse: null,
  },
  // no load, and it feeds nothing
  {
    entries: { run: 'Load', length: 5, volts: 24, target: 0.05 },
    verdict: ['peakMissing'],
    size: null,
    fuse: null,
  },
];

export const LENGTH_MISSING: readonly StatedRow[] = [
  // no length, no drop
  { entries: { run: 'Load', peak: 2 }, verdict: ['lengthMissing'], size: null, fuse: null },
  // the same in watts
  {
    entries: { run: 'Load', peak: 30, kind: 'W', leastVolts: 10 },
    verdict: ['lengthMissing'],
    size: null,
    fuse: null,
  },
  // no length, no drop
  {
    entries: { run: 'Load', fedFrom: 'Trunk', peak: 2 },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 3 }],
    verdict: ['lengthMissing'],
    size: null,
    fuse: null,
  },
  // it feeds the lamp, so it carries 2 A over a length that nobody has written
  {
    entries: { run: 'Trunk' },
    others: [{ run: 'Lamp', fedFrom: 'Trunk', peak: 2, length: 5 }],
    verdict: ['lengthMissing'],
    size: null,
    fuse: null,
  },
];

export const VOLTS_MISSING: readonly StatedRow[] = [
  // no volts in the row, none in the rules
  {
    entries: { run: 'Load', peak: 2, length: 5 },
    rules: { volts: '' },
    verdict: ['voltsMissing'],
    size: null,
    fuse: null,
  },
  // no target in the row, none in the rules
  {
    entries: { run: 'Load', peak: 2, length: 5 },
    rules: { target: '' },
    verdict: ['voltsMissing'],
    size: null,
    fuse: null,
  },
  // neither, and a size of its own
  {
    entries: { run: 'Load', peak: 2, length: 5, ownSize: '10 AWG' },
    rules: { volts: '', target: '' },
    verdict: ['voltsMissing'],
    size: null,
    fuse: null,
  },
];

export const PANEL_MISSING: readonly StatedRow[] = [
  // the Supply sheet has no panel
  {
    entries: { run: 'Load', fedFrom: 'panel', peak: 2, length: 5 },
    verdict: ['panelMissing'],
    size: null,
    fuse: null,
  },
  // its short-circuit amps are no volts
  {
    entries: { run: 'Load', fedFrom: 'panel', peak: 9, length: 24, ownSize: '6 AWG' },
    supply: { shortCircuitAmps: 9.6 },
    verdict: ['panelMissing'],
    size: null,
    fuse: null,
  },
  // volts, and no target
  {
    entries: { run: 'Load', fedFrom: 'panel', peak: 9, length: 24 },
    supply: { panelVolts: 17, panelTarget: '' },
    verdict: ['panelMissing'],
    size: null,
    fuse: null,
  },
  // open-circuit volts are blank: the 31 V at maximum power are within the 32 V of a blade, those nobody knows; 12 AWG is
  // too thin: 9 A x (60 ft x 1.588 x 1.0393 + 3) mOhm = 0.918 V of 0.620 V; 9 A x (60 ft x 0.9989 x 1.0393 + 3) mOhm =
  // 0.588 V, of 0.62 V; 310.16 35 A; 9 x 1.25 = 11.25, fuse 15
  {
    entries: { run: 'Load', peak: 9, length: 30, fedFrom: 'panel' },
    supply: { panelVolts: 31, shortCircuitAmps: 9.6 },
    verdict: ['panelMissing'],
    size: '10 AWG',
    fuse: 15,
  },
];

export const CHECK_ENTRIES: readonly StatedRow[] = [
  // a load that is no number
  {
    entries: { run: 'Load', peak: 'abc', length: 5 },
    verdict: ['checkEntries'],
    size: null,
    fuse: null,
  },
  // a length that is no number
  {
    entries: { run: 'Load', peak: 2, length: 'far' },
    verdict: ['checkEntries'],
    size: null,
    fuse: null,
  },
  // no length is less than nothing
  {
    entries: { run: 'Load', peak: 2, length: -1 },
    verdict: ['checkEntries'],
    size: null,
    fuse: null,
  },
  // a source has volts
  {
    entries: { run: 'Load', peak: 2, length: 5, volts: 0 },
    verdict: ['checkEntries'],
    size: null,
    fuse: null,
  },
  // 3 means 300 %
  {
    entries: { run: 'Load', peak: 2, length: 5, target: 3 },
    verdict: ['checkEntries'],
    size: null,
    fuse: null,
  },
  // no joint resists less than nothing
  {
    entries: { run: 'Load', peak: 2, length: 5, joints: -1 },
    verdict: ['checkEntries'],
    size: null,
    fuse: null,
  },
  // "maybe" is neither yes nor no; 2 x 1.25 = 2.5, fuse 3 if it has one
  {
    entries: { run: 'Load', peak: 2, length: 5, fused: 'maybe' },
    verdict: ['checkEntries'],
    size: '18 AWG',
    fuse: 3,
  },
  // no efficiency, so the watts that it takes in are not known
  {
    entries: { run: 'Load', peak: 20, kind: 'W', length: 5, efficiency: 'good' },
    verdict: ['checkEntries'],
    size: null,
    fuse: null,
  },
  // no size
  {
    entries: { run: 'Load', peak: 2, length: 5, ownSize: 'thick' },
    verdict: ['checkEntries'],
    size: null,
    fuse: null,
  },
];
