/** Rows without a size that serves, or without a published ampacity, worked out by hand from the tables named beside each. */
import type { StatedRow } from './stated-row';

export const NO_SIZE: readonly StatedRow[] = [
  // even 4/0 AWG: 70 A x 2 x 420 ft x 0.04901 mOhm/ft = 2.882 V, 12.01 % of 24 V; 310.16 75 degC column, 4/0 AWG:
  // 230 A; 70 x 1.25 = 87.5, next fuse 100
  {
    entries: { run: 'Load', peak: 70, length: 420, volts: 24 },
    verdict: ['noSize'],
    size: null,
    fuse: null,
  },
  // even 4/0 AWG: 30 A x 2 x 150 ft x 0.04901 mOhm/ft = 0.441 V, 3.68 % of 12 V; 310.16 75 degC column, 4/0 AWG: 230
  // A; 30 x 1.25 = 37.5, next fuse 40
  { entries: { run: 'Load', peak: 30, length: 150 }, verdict: ['noSize'], size: null, fuse: null },
  // even 4/0 AWG: 250 A x 2 x 2 ft x 0.04901 mOhm/ft = 0.049 V, 0.41 % of 12 V; 310.16 75 degC column, 4/0 AWG: 230
  // A; 250 x 1.25 = 312.5, next fuse 350
  { entries: { run: 'Load', peak: 250, length: 2 }, verdict: ['noSize'], size: null, fuse: null },
  // even 4/0 AWG: 10 A x (2 x 10 ft x 0.04901 mOhm/ft + 40 mOhm) = 0.410 V, 3.42 % of 12 V; 310.16 75 degC column,
  // 4/0 AWG: 230 A; 10 x 1.25 = 12.5, next fuse 15; the joints alone: 10 A x 40 mOhm = 0.4 V, more than the 0.36 V
  // allowed
  {
    entries: { run: 'Load', peak: 10, length: 10, joints: 40 },
    verdict: ['noSize'],
    size: null,
    fuse: null,
  },
  // even 120 mm2: 20 A x 2 x 100 m x 0.161 mOhm/m = 0.644 V, 5.37 % of 12 V; 310.16 75 degC column, 120 mm2 counts
  // as 4/0 AWG (107.219 mm2): 230 A; 20 x 1.25 = 25, next fuse 25
  {
    entries: { run: 'Load', peak: 20, length: 100 },
    rules: { unit: 'm', series: 'mm2' },
    verdict: ['noSize'],
    size: null,
    fuse: null,
  },
  // even 4/0 AWG: 100 A x 2 x 1 ft x 0.04901 mOhm/ft = 0.010 V, 0.08 % of 12 V; 310.16 75 degC column, 4/0 AWG: 230
  // A x sqrt(5/45) = 0.333 = 76.67 A; 100 x 1.25 = 125, next fuse 125
  {
    entries: { run: 'Load', peak: 100, length: 1 },
    rules: { ambientC: 70 },
    verdict: ['noSize'],
    size: null,
    fuse: null,
  },
];

export const NO_AMPACITY: readonly StatedRow[] = [
  // 1 A x 2 x 1 ft x 10.15 mOhm/ft = 0.020 V, 0.17 % of 12 V; 310.16 has no row for 20 AWG; 1 x 1.25 = 1.25, next
  // fuse 2
  {
    entries: { run: 'Load', peak: 1, length: 1, ownSize: '20 AWG' },
    verdict: ['noAmpacity'],
    size: '20 AWG',
    fuse: null,
  },
  // 0.3 A x 2 x 1 m x 26 mOhm/m = 0.016 V, 0.13 % of 12 V; 310.16 has no row for 0.75 mm2 (18 AWG has 0.823 mm2);
  // 0.3 x 1.25 = 0.375, next fuse 1
  {
    entries: { run: 'Load', peak: 0.3, length: 1, ownSize: '0.75 mm2' },
    rules: { unit: 'm', volts: 12 },
    verdict: ['noAmpacity'],
    size: '0.75 mm2',
    fuse: null,
  },
  // 2 A x 2 x 2 ft x 2.525/0.61 mOhm/ft = 0.033 V, 0.28 % of 12 V; 310.16 aluminium has no row for 14 AWG; 2 x 1.25
  // = 2.5, next fuse 3
  {
    entries: { run: 'Load', peak: 2, length: 2, ownSize: '14 AWG' },
    rules: { material: 'aluminium' },
    verdict: ['noAmpacity'],
    size: '14 AWG',
    fuse: null,
  },
  // 2 A x 2 x 2 ft x 0.9989/0.61 mOhm/ft = 0.013 V, 0.11 % of 12 V; 33 CFR table 5 aluminium has no row for 10 AWG;
  // 2 x 1.25 = 2.5, next fuse 3
  {
    entries: { run: 'Load', peak: 2, length: 2, ownSize: '10 AWG' },
    rules: { material: 'aluminium', installed: 'craft' },
    verdict: ['noAmpacity'],
    size: '10 AWG',
    fuse: null,
  },
  // 1 A x 2 x 1 ft x 0.3133 mOhm/ft = 0.001 V, 0.01 % of 12 V; 310.16 has no row for 5 AWG; 1 x 1.25 = 1.25, next
  // fuse 2
  {
    entries: { run: 'Load', peak: 1, length: 1, ownSize: '5 AWG' },
    verdict: ['noAmpacity'],
    size: '5 AWG',
    fuse: null,
  },
];
