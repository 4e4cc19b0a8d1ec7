/** Rows without a size that serves, or without a published ampacity, worked out by hand from the tables named beside each. */
import type { StatedRow } from './stated-row';

export const NO_SIZE: readonly StatedRow[] = [
  // even 4/0 AWG: 70 A x (840 ft x 0.04901 x 1.0393 + 3) mOhm = 3.205 V of 0.720 V; 310.16 230 A; fuse 100
  {
    entries: { run: 'Load', peak: 70, length: 420, volts: 24 },
    verdict: ['noSize'],
    size: null,
    fuse: null,
  },
  // even 4/0 AWG: 30 A x (300 ft x 0.04901 x 1.0393 + 3) mOhm = 0.548 V of 0.360 V; 310.16 230 A; fuse 40
  { entries: { run: 'Load', peak: 30, length: 150 }, verdict: ['noSize'], size: null, fuse: null },
  // even 4/0 AWG: 250 A x (4 ft x 0.04901 x 1.0393 + 3) mOhm = 0.801 V of 0.360 V; 310.16 230 A; fuse 350
  { entries: { run: 'Load', peak: 250, length: 2 }, verdict: ['noSize'], size: null, fuse: null },
  // even 4/0 AWG: 10 A x (20 ft x 0.04901 x 1.0393 + 40) mOhm = 0.410 V of 0.360 V; 310.16 230 A; fuse 15
  {
    entries: { run: 'Load', peak: 10, length: 10, joints: 40 },
    verdict: ['noSize'],
    size: null,
    fuse: null,
  },
  // even 120 mm2: 20 A x (200 m x 0.161 x 1.0393 + 3) mOhm = 0.729 V of 0.360 V; 310.16 230 A (counts as 4/0 AWG);
  // fuse 25
  {
    entries: { run: 'Load', peak: 20, length: 100 },
    rules: { unit: 'm', series: 'mm2' },
    verdict: ['noSize'],
    size: null,
    fuse: null,
  },
  // even 4/0 AWG: 100 A x (2 ft x 0.04901 x 1.1965 + 3) mOhm = 0.312 V of 0.360 V; 310.16 230 A x sqrt(5/45) = 76.7 A;
  // fuse 125
  {
    entries: { run: 'Load', peak: 100, length: 1 },
    rules: { ambientC: 70 },
    verdict: ['noSize'],
    size: null,
    fuse: null,
  },
];

export const NO_ROOM: readonly StatedRow[] = [
  // Trunk: 11 A x (40 ft x 2.525 x 1.0393 + 3) mOhm = 1.188 V; 13.75, fuse 15; of 0.36 V nothing is left: -0.828 V
  {
    entries: { run: 'Branch', fedFrom: 'Trunk', peak: 1, length: 5 },
    others: [{ run: 'Trunk', length: 20, ownSize: '14 AWG', peak: 10 }],
    verdict: ['noRoom'],
    size: null,
    fuse: null,
  },
  // Trunk: 12 A x (2 ft x 0.6282 x 1.0393 + 40) mOhm = 0.496 V; 15, fuse 15; of 0.36 V nothing is left: -0.136 V
  {
    entries: { run: 'Branch', fedFrom: 'Trunk', peak: 2, length: 3 },
    others: [{ run: 'Trunk', length: 1, ownSize: '8 AWG', peak: 10, joints: 40 }],
    verdict: ['noRoom'],
    size: null,
    fuse: null,
  },
  // Trunk: 10 A x (20 ft x 0.9989 x 1.0393 + 3) mOhm = 0.238 V; 12.5, fuse 15; of 0.12 V nothing is left: -0.118 V
  {
    entries: { run: 'Branch', fedFrom: 'Trunk', peak: 1, length: 5, target: 0.01 },
    others: [{ run: 'Trunk', length: 10, ownSize: '10 AWG', peak: 9 }],
    verdict: ['noRoom'],
    size: null,
    fuse: null,
  },
  // A: 11 A x (20 ft x 1.588 x 1.0393 + 3) mOhm = 0.396 V; 13.75, fuse 15; B: 5 A x (20 ft x 2.525 x 1.0393 + 3) mOhm
  // = 0.277 V; 6.25, fuse 7.5; of 0.36 V nothing is left: -0.314 V
  {
    entries: { run: 'Load', fedFrom: 'B', peak: 2, length: 3 },
    others: [
      { run: 'A', length: 10, ownSize: '12 AWG', peak: 6 },
      { run: 'B', fedFrom: 'A', length: 10, ownSize: '14 AWG', peak: 3 },
    ],
    verdict: ['noRoom'],
    size: null,
    fuse: null,
  },
];

export const NO_AMPACITY: readonly StatedRow[] = [
  // 1 A x (2 ft x 10.15 x 1.0393 + 3) mOhm = 0.024 V, of 0.36 V; 310.16 has no row for 20 AWG; 1 x 1.25 = 1.25, fuse 2
  {
    entries: { run: 'Load', peak: 1, length: 1, ownSize: '20 AWG' },
    verdict: ['fuse', 'noAmpacity'],
    size: '20 AWG',
    fuse: null,
  },
  // 0.3 A x (2 m x 26 x 1.0393 + 3) mOhm = 0.017 V, of 0.36 V; 310.16 has no row for 0.75 mm2; 0.3 x 1.25 = 0.375,
  // fuse 1
  {
    entries: { run: 'Load', peak: 0.3, length: 1, ownSize: '0.75 mm2' },
    rules: { unit: 'm', volts: 12 },
    verdict: ['fuse', 'noAmpacity'],
    size: '0.75 mm2',
    fuse: null,
  },
  // 2 A x (4 ft x 2.525/0.61 x 1.0403 + 3) mOhm = 0.040 V, of 0.36 V; 310.16 aluminium has no row for 14 AWG; 2 x 1.25
  // = 2.5, fuse 3
  {
    entries: { run: 'Load', peak: 2, length: 2, ownSize: '14 AWG' },
    rules: { material: 'aluminium' },
    verdict: ['fuse', 'noAmpacity'],
    size: '14 AWG',
    fuse: null,
  },
  // 2 A x (4 ft x 0.9989/0.61 x 1.0403 + 3) mOhm = 0.020 V, of 0.36 V; table 5 names no aluminium; 2 x 1.25 = 2.5,
  // fuse 3
  {
    entries: { run: 'Load', peak: 2, length: 2, ownSize: '10 AWG' },
    rules: { material: 'aluminium', installed: 'craft' },
    verdict: ['fuse', 'noAmpacity'],
    size: '10 AWG',
    fuse: null,
  },
  // 1 A x (2 ft x 0.3133 x 1.0393 + 3) mOhm = 0.004 V, of 0.36 V; 310.16 has no row for 5 AWG; 1 x 1.25 = 1.25, fuse 2
  {
    entries: { run: 'Load', peak: 1, length: 1, ownSize: '5 AWG' },
    verdict: ['fuse', 'noAmpacity'],
    size: '5 AWG',
    fuse: null,
  },
  // 33 CFR 183.425: a single conductor of at least 16 AWG; 2 A x (4 ft x 6.385 x 1.0393 + 3) mOhm = 0.059 V, of 0.36
  // V; table 5 has no row for 18 AWG; 2 x 1.25 = 2.5, fuse 3
  {
    entries: { run: 'Load', peak: 2, length: 2, ownSize: '18 AWG' },
    rules: { installed: 'craft' },
    verdict: ['fuse', 'noAmpacity'],
    size: '18 AWG',
    fuse: null,
  },
];
