/** Rows that cannot be judged, mostly for what another row says, worked out by hand from the tables named beside each. */
import type { StatedRow } from './stated-row';

export const BATTERY_VOLTS: readonly StatedRow[] = [
  // 6 cells of lead-acid are a battery of 12 V; 18 AWG is too thin: fuse 7.5 over the 7 A of 240.4(D); 5 A x (16 ft x
  // 4.016 x 1.0393 + 3) mOhm = 0.349 V, of 0.72 V; 310.16 15 A (18 A at 90 degC x 0.866); 5 x 1.25 = 6.25, fuse 7.5;
  // far 12.03 V / (100 + 79.88) mOhm = 66.85 A: 0.0473 s, wire 5.07 s; near 12.65 V / 50 mOhm = 253 A: 0.00516 s, wire
  // 0.354 s; 24 V is not between 0.85 x 12.03 and 1.1 x 14.4 V
  {
    entries: { run: 'Load', peak: 5, length: 8 },
    rules: { volts: 24 },
    supply: { cells: 6 },
    verdict: ['batteryVolts'],
    size: '16 AWG',
    fuse: 7.5,
  },
  // 12 cells of lead-acid are a battery of 24 V; 18 AWG is too thin: 5 A x (16 ft x 6.385 x 1.0393 + 3) mOhm = 0.546 V
  // of 0.360 V; 5 A x (16 ft x 4.016 x 1.0393 + 3) mOhm = 0.349 V, of 0.36 V; 310.16 15 A (18 A at 90 degC x 0.866); 5
  // x 1.25 = 6.25, fuse 7.5; far 24.05 V / (100 + 79.88) mOhm = 133.7 A: 0.0133 s, wire 1.27 s; near 25.30 V / 50 mOhm
  // = 506 A: 0.00279 s, wire 0.0885 s; 12 V is not between 0.85 x 24.05 and 1.1 x 28.8 V
  {
    entries: { run: 'Load', peak: 5, length: 8 },
    supply: { cells: 12 },
    verdict: ['batteryVolts'],
    size: '16 AWG',
    fuse: 7.5,
  },
  // 8 cells of LiFePO4 are a battery of 24 V; 5 A x (16 ft x 2.525 x 1.0393 + 3) mOhm = 0.225 V, of 0.36 V; 310.16 20
  // A; 5 x 1.25 = 6.25, fuse 7.5; far 25.91 V / (100 + 51.34) mOhm = 171.2 A: 0.00891 s, wire 1.95 s; near 26.81 V /
  // 50 mOhm = 536 A: 0.0027 s, wire 0.199 s; 12 V is not between 0.85 x 25.91 and 1.1 x 29.2 V
  {
    entries: { run: 'Load', peak: 5, length: 8, ownSize: '14 AWG' },
    supply: { chemistry: 'LiFePO4', cells: 8 },
    verdict: ['batteryVolts'],
    size: '14 AWG',
    fuse: 7.5,
  },
  // What chemistry it has cannot be read, so that none of its volts are known; 5 A x 1.25 = 6.25, fuse 7.5
  {
    entries: { run: 'Load', peak: 5, length: 8, ownSize: '12 AWG' },
    supply: { chemistry: 'nickel' },
    verdict: ['batteryVolts', 'notJudged', 'voltsUnknown'],
    size: '12 AWG',
    fuse: 7.5,
  },
];

export const NOT_JUDGED: readonly StatedRow[] = [
  // 2 A x (10 ft x 6.385 x 1.0393 + 3) mOhm = 0.139 V, of 0.414 V; 310.16 12 A (14 A at 90 degC x 0.866); 2 x 1.25 =
  // 2.5, fuse 3; the source has no milliohms, so no fault is known
  {
    entries: { run: 'Load', peak: 2, length: 5, volts: 13.8 },
    supply: { milliohms: '?' },
    verdict: ['notJudged'],
    size: '18 AWG',
    fuse: 3,
  },
  // 2 A x (10 ft x 6.385 x 1.0393 + 3) mOhm = 0.139 V, of 0.36 V; 310.16 12 A (14 A at 90 degC x 0.866); 2 x 1.25 =
  // 2.5, fuse 3; no metal bears a limit below its start
  {
    entries: { run: 'Load', peak: 2, length: 5 },
    protection: { startC: 200 },
    verdict: ['notJudged'],
    size: '18 AWG',
    fuse: 3,
  },
  // 4 A x (10 ft x 6.385 x 1.0393 + 3) mOhm = 0.277 V, of 0.36 V; 310.16 12 A (14 A at 90 degC x 0.866); 4 x 1.25 = 5,
  // fuse 5; how tired a battery may be is not a number
  {
    entries: { run: 'Load', peak: 4, length: 5 },
    protection: { weakTimes: 'twice' },
    verdict: ['notJudged'],
    size: '18 AWG',
    fuse: 5,
  },
];

// 4 A x (10 ft x 6.385 x 1.0393 + 3) mOhm = 0.277 V, of 0.36 V; 310.16 12 A (14 A at 90 degC x 0.866); 4 x 1.25 = 5, fuse 5;
// far 12.026 V / (100 + 76.4) mOhm = 68.2 A, 13.6 x: opens; near 253 A: opens before the wire is hurt
const FUSED_AT_5 = { size: '18 AWG', fuse: 5 } as const;
export const ENTRIES_ASTRAY: readonly StatedRow[] = [
  // what stands in its row is for a run that is not in the list
  {
    entries: { run: 'Load', peak: 4, length: 5 },
    protection: { fuses: [{ kind: 'blade', forRun: 'Siren' }] },
    verdict: ['entriesAstray'],
    ...FUSED_AT_5,
  },
  // what stands in its row is for nobody
  {
    entries: { run: 'Load', peak: 4, length: 5 },
    protection: { fuses: [{ breaks: 1500, forRun: '' }] },
    verdict: ['entriesAstray'],
    ...FUSED_AT_5,
  },
  // what is for it stands in the row of another
  {
    entries: { run: 'Load', peak: 4, length: 5 },
    others: [{ run: 'Siren', peak: 4, length: 5 }],
    protection: { fuses: [{ breaks: 1500, forRun: 'load' }] },
    verdict: ['entriesAstray'],
    ...FUSED_AT_5,
  },
  // the fuse that it leans on is not described for its feeder
  {
    entries: { run: 'Load', fedFrom: 'Trunk', peak: 4, length: 5, fused: 'no' },
    others: [{ run: 'Trunk', length: 1 }],
    protection: { fuses: [{ kind: 'blade', forRun: 'Siren' }] },
    verdict: ['entriesAstray'],
    size: '18 AWG',
    fuse: 'none',
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
  // 85 is no efficiency, so what the branch draws is not known: 120 W / 85 would be 1.4 W
  {
    entries: { run: 'Trunk', length: 5, ownSize: '8 AWG' },
    others: [{ run: 'Branch', fedFrom: 'Trunk', peak: 120, kind: 'W', length: 5, efficiency: 85 }],
    verdict: ['tiedToAnother'],
    size: '8 AWG',
    fuse: null,
  },
  // the sixth run of its path lies too deep, and what the first carries is not known either
  {
    entries: { run: 'R1', peak: 1, length: 2, ownSize: '10 AWG' },
    others: ['R2', 'R3', 'R4', 'R5', 'R6'].map((run, index) => ({
      run,
      fedFrom: `R${index + 1}`,
      peak: 1,
      length: 2,
      ownSize: '10 AWG',
    })),
    verdict: ['tiedToAnother'],
    size: '10 AWG',
    fuse: null,
  },
  // a branch of the same tree, itself only one run below
  {
    entries: { run: 'Load', fedFrom: 'R1', peak: 1, length: 2 },
    others: ['R1', 'R2', 'R3', 'R4', 'R5', 'R6'].map((run, index) => ({
      run,
      ...(index > 0 && { fedFrom: `R${index}` }),
      peak: 1,
      length: 2,
      ownSize: '10 AWG',
    })),
    verdict: ['tiedToAnother'],
    size: null,
    fuse: null,
  },
  // no wire serves the trunk: 32 A x (300 ft x 0.04901 x 1.0393 + 3) mOhm = 0.585 V of 0.36 V; its own wire can be judged,
  // and bears it: 310.16 35 A; 2 x 1.25 = 2.5, fuse 3
  {
    entries: { run: 'Branch', fedFrom: 'Trunk', peak: 2, length: 5, ownSize: '10 AWG' },
    others: [{ run: 'Trunk', length: 150, peak: 30 }],
    verdict: ['tiedToAnother'],
    size: '10 AWG',
    fuse: 3,
  },
  // nor this trunk: 52 A x (300 ft x 0.04901 x 1.0393 + 3) mOhm = 0.951 V of 0.36 V; its own wire is too thin as well:
  // 310.16 20 A; 22 x 1.25 = 27.5, fuse 30
  {
    entries: { run: 'Branch', fedFrom: 'Trunk', peak: 22, length: 1, ownSize: '14 AWG' },
    others: [{ run: 'Trunk', length: 150, peak: 30 }],
    verdict: ['heat', 'fuse', 'tiedToAnother'],
    size: '14 AWG',
    fuse: null,
  },
  // nor B: 31 A x (300 ft x 0.04901 x 1.0393) mOhm = 0.474 V of 0.36 V; A: 31 x 1.25 = 38.75, fuse 40, over the 7 A that
  // 240.4(D) allows its own wire
  {
    entries: {
      run: 'Branch',
      fedFrom: 'B',
      fused: 'no',
      peak: 1,
      length: 2,
      ownSize: '18 AWG',
    },
    others: [
      { run: 'A', length: 2, ownSize: '8 AWG' },
      { run: 'B', fedFrom: 'A', fused: 'no', length: 150, peak: 30 },
    ],
    verdict: ['needsFuse', 'tiedToAnother'],
    size: '18 AWG',
    fuse: 'none',
  },
  // the wire above it is no size, so what is lost there is not known
  {
    entries: { run: 'Load', fedFrom: 'Trunk', peak: 2, length: 5 },
    others: [{ run: 'Trunk', length: 2, ownSize: 'thick' }],
    verdict: ['tiedToAnother'],
    size: null,
    fuse: null,
  },
];

export const VOLTS_UNKNOWN: readonly StatedRow[] = [
  // at least 2 A x (10 ft x 6.385 x 1.0393 + 3) mOhm = 0.139 V of 0.36 V; 2.5, fuse 3; the other branch draws nobody
  // knows what through the trunk
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
  // at least 4 A x (16 ft x 4.016 x 1.0393 + 3) mOhm = 0.279 V of 0.36 V; 5, fuse 5; the other branch as before
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
  // 2 A x (10 ft x 1.588 x 1.0393 + 3) mOhm = 0.039 V of 0.36 V; 2.5, fuse 3; the neighbour has no size that serves, so
  // its ohms are not known: 10 A x 40 mOhm of joints alone are 0.4 V
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

export const VOLTS_DIFFER: readonly StatedRow[] = [
  // 24 V off a trunk of 12 V; Trunk: 5 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.028 V; 6.25, fuse 7.5; 2 A x (10 ft x
  // 6.385 x 1.0393 + 3) mOhm = 0.139 V, 0.167 V in all, of 0.72 V; 310.16 12 A (14 A at 90 degC x 0.866); 2 x 1.25 =
  // 2.5, fuse 3; far 12.03 V / (100 + 85.4) mOhm = 64.86 A: 0.0097 s, wire 2.13 s; near 12.65 V / 55.61 mOhm = 227 A:
  // 0.00263 s, wire 0.173 s
  {
    entries: { run: 'Branch', fedFrom: 'Trunk', peak: 2, length: 5, volts: 24 },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 3 }],
    verdict: ['voltsDiffer'],
    size: '18 AWG',
    fuse: 3,
  },
  // 12 V, as the house rules have it, off a trunk of 24 V; Trunk: 7 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.039 V;
  // 8.75, fuse 10; 4 A x (10 ft x 2.525 x 1.0393 + 3) mOhm = 0.117 V, 0.156 V in all, of 0.36 V; 310.16 20 A; 4 x 1.25 =
  // 5, fuse 5; far 24.00 V / (100 + 39.22) mOhm = 172.4 A: 0.00503 s, wire 1.93 s; near 24.00 V / 55.61 mOhm = 432 A:
  // 0.00248 s, wire 0.308 s
  {
    entries: { run: 'Branch', fedFrom: 'Trunk', peak: 4, length: 5, ownSize: '14 AWG' },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 3, volts: 24 }],
    verdict: ['voltsDiffer'],
    size: '14 AWG',
    fuse: 5,
  },
  // 13.8 V off a trunk of 12 V, and over its target; Trunk: 8 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.045 V; 10, fuse
  // 10; 5 A x (60 ft x 4.016 x 1.0393 + 3) mOhm = 1.267 V, 1.312 V in all, over 0.414 V; 310.16 15 A (18 A at 90 degC x
  // 0.866); 5 x 1.25 = 6.25, fuse 7.5; far 12.03 V / (100 + 297.3) mOhm = 30.27 A: 0.327 s, wire 24.7 s; near 12.65 V /
  // 55.61 mOhm = 227 A: 0.00591 s, wire 0.438 s
  {
    entries: {
      run: 'Branch',
      fedFrom: 'Trunk',
      peak: 5,
      length: 30,
      ownSize: '16 AWG',
      volts: 13.8,
    },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 3 }],
    verdict: ['drop', 'voltsDiffer'],
    size: '16 AWG',
    fuse: 7.5,
  },
  // 12 V off a cable of the panel, whose volts are 17; Cable: 5 A x (4 ft x 0.9989 x 1.0393 + 3) mOhm = 0.036 V; 2 A x (10
  // ft x 6.385 x 1.0393 + 3) mOhm = 0.139 V, 0.174 V in all, of 0.24 V, the panel's 2 %; 310.16 12 A (14 A at 90 degC x
  // 0.866); 2 x 1.25 = 2.5, fuse 3; a panel limits its own fault; 21 V of a blade of 32 V
  {
    entries: { run: 'Branch', fedFrom: 'Cable', peak: 2, length: 5, volts: 12 },
    others: [{ run: 'Cable', fedFrom: 'panel', length: 2, ownSize: '10 AWG', peak: 3 }],
    supply: { panelVolts: 17, openCircuitVolts: 21, shortCircuitAmps: 9.6 },
    verdict: ['voltsDiffer'],
    size: '18 AWG',
    fuse: 3,
  },
];
