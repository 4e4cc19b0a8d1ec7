/** Rows whose loads lose too many volts, worked out by hand from the tables named beside each. */
import type { StatedRow } from './stated-row';

export const CANNOT_BE_SERVED: readonly StatedRow[] = [
  // 500 W / (12 V x 0.97) = 42.96 A; x 40 ft x 6.385 mOhm/ft = 10.97 V; 310.16: 12 A; 53.7, fuse 60; by 310.17 30 +
  // 60 x (42.96 / 18)^2 = 372 degC; 12.026 V less 2.15 V = 9.88 V: at most 9.88^2 / (4 x 0.2554 ohm) = 95.5 W
  {
    entries: { run: 'Load', peak: 500, kind: 'W', length: 20, ownSize: '18 AWG' },
    verdict: ['heat', 'tooHot', 'fuse', 'cannotBeServed', 'drop'],
    size: '18 AWG',
    fuse: null,
  },
  // 60 W / (12 V x 0.55) = 9.09 A x 180 ft x 2.525 mOhm/ft = 4.13 V of 5.4 V; 11.4, fuse 15 on 20 A; 12.026 V less
  // (60 + 9.09) A x 50 mOhm = 8.57 V: at most 8.57^2 / (4 x 0.4545 ohm) = 40.4 W; far fault 12.65 V / 504.5 mOhm =
  // 25.1 A, 1.67 times 15 A: 32 s, wire (115 x 2.0809 / 25.1)^2 = 91 s
  {
    entries: { run: 'Load', peak: 60, kind: 'W', length: 90, ownSize: '14 AWG' },
    others: [{ run: 'Winch', length: 1, peak: 60, ownSize: '1/0 AWG' }],
    rules: { target: 0.45 },
    verdict: ['cannotBeServed'],
    size: '14 AWG',
    fuse: 15,
  },
  // 100 W / 9 V = 11.11 A x 80 ft x 2.525 mOhm/ft = 2.244 V of 2.4 V; 13.9, fuse 15 on 20 A; 12.026 V less (100 +
  // 11.11) A x 50 mOhm = 6.47 V: at most 6.47^2 / (4 x 0.202 ohm) = 51.8 W
  {
    entries: { run: 'Load', peak: 100, kind: 'W', length: 40, ownSize: '14 AWG', leastVolts: 9 },
    others: [{ run: 'Winch', length: 1, peak: 100, ownSize: '1/0 AWG' }],
    rules: { target: 0.2 },
    verdict: ['cannotBeServed'],
    size: '14 AWG',
    fuse: 15,
  },
  // 200 W / (24 V x 0.6) = 13.89 A x 300 ft x 2.525 mOhm/ft = 10.52 V of 9.6 V; 17.4, fuse 20 on 20 A; at most 24^2
  // / (4 x 0.7575 ohm) = 190 W; far fault 24 V / 807.5 mOhm = 29.7 A, 1.49 times 20 A: 147 s, wire (115 x 2.0809 /
  // 29.7)^2 = 65 s
  {
    entries: {
      run: 'Load',
      peak: 200,
      kind: 'W',
      length: 150,
      volts: 24,
      target: 0.4,
      ownSize: '14 AWG',
    },
    verdict: ['fuseTooSlow', 'cannotBeServed', 'drop'],
    size: '14 AWG',
    fuse: 20,
  },
];

export const TOO_FEW_VOLTS: readonly StatedRow[] = [
  // lead-acid at 20 %: 11.89 + 0.8 x 0.17 = 12.026 V; less 14 A x 50 mOhm and 14 A x (10 ft x 1.588 mOhm/ft + 1
  // mOhm) = 0.236 V: 11.09 V; 14 AWG 14 x 26.25 mOhm = 0.3675 V, over 0.36 V; 17.5, fuse 20
  {
    entries: { run: 'Load', peak: 14, length: 5, joints: 1, leastVolts: 11.2 },
    verdict: ['tooFewVolts'],
    size: '12 AWG',
    fuse: 20,
  },
  // lead-acid at 20 %: 11.89 + 0.8 x 0.17 = 12.026 V; less 10 A x 50 mOhm and 10 A x 16 ft x 1.588 mOhm/ft = 0.254
  // V: 11.27 V; 14 AWG 0.404 V, over 0.36 V; 12.5, fuse 15
  {
    entries: { run: 'Load', peak: 10, length: 8, leastVolts: 11.4 },
    verdict: ['tooFewVolts'],
    size: '12 AWG',
    fuse: 15,
  },
  // LiFePO4 at 20 %: 4 x (3.1942 + 0.1115 / 0.2087 x 0.083) = 12.954 V; less 20 A x 50 mOhm and 20 A x 8 ft x 1.588
  // mOhm/ft = 0.254 V: 11.70 V; 14 AWG 0.404 V, over 0.36 V; 25, fuse 25 on 25 A
  {
    entries: { run: 'Load', peak: 20, length: 4, leastVolts: 11.9 },
    supply: { chemistry: 'LiFePO4' },
    verdict: ['tooFewVolts'],
    size: '12 AWG',
    fuse: 25,
  },
  // another source does not sag here: 24 V less 5 A x 80 ft x 2.525 mOhm/ft = 1.01 V: 22.99 V; 6.25, fuse 7.5; 24 V
  // / 50 mOhm = 480 A: 0.1 s, wire (115 x 2.0809 / 480)^2 = 0.249 s
  {
    entries: {
      run: 'Load',
      peak: 5,
      length: 40,
      volts: 24,
      target: 0.2,
      ownSize: '14 AWG',
      leastVolts: 23.2,
    },
    verdict: ['tooFewVolts'],
    size: '14 AWG',
    fuse: 7.5,
  },
  // lead-acid at 20 %: 11.89 + 0.8 x 0.17 = 12.026 V; less 20 A x (50 mOhm + 4 ft x 0.6282 mOhm/ft) = 1.050 V and 5
  // A x 12 ft x 2.525 mOhm/ft = 0.152 V: 10.82 V; 6.25, fuse 7.5
  {
    entries: {
      run: 'Branch',
      fedFrom: 'Trunk',
      peak: 5,
      length: 6,
      ownSize: '14 AWG',
      leastVolts: 11,
    },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 15 }],
    verdict: ['tooFewVolts'],
    size: '14 AWG',
    fuse: 7.5,
  },
  // 60 W / 11.7 V = 5.128 A: 16 AWG x 20 ft x 4.016 mOhm/ft = 0.412 V, 14 AWG 0.259 V of 0.36 V; 6.41, fuse 7.5;
  // lead-acid at 20 %: 11.89 + 0.8 x 0.17 = 12.026 V less 5.128 A x 50 mOhm = 11.770 V; 5.215 A through 50.5 mOhm:
  // 11.506 V x 5.215 A = 60 W
  {
    entries: { run: 'Load', peak: 60, kind: 'W', length: 10, leastVolts: 11.7 },
    verdict: ['tooFewVolts'],
    size: '14 AWG',
    fuse: 7.5,
  },
];

export const DROP: readonly StatedRow[] = [
  // 5 A x 2 x 30 ft x 4.016 mOhm/ft = 1.205 V, 10.04 % of 12 V; 310.16 prints 18 A for 16 AWG at 90 degC alone; x
  // sqrt(45/60) = 15.59, 15 A; 5 x 1.25 = 6.25, next fuse 7.5; short 253 A: opens in 0.1 s, wire bears (115 x 1.3087
  // / 253)^2 = 0.354 s
  {
    entries: { run: 'Load', peak: 5, length: 30, ownSize: '16 AWG' },
    verdict: ['drop'],
    size: '16 AWG',
    fuse: 7.5,
  },
  // 10 A x 2 x 12 ft x 1.588 mOhm/ft = 0.381 V, 3.18 % of 12 V; 310.16 75 degC column, 12 AWG: 25 A; 10 x 1.25 =
  // 12.5, next fuse 15; short 253 A: opens in 0.1 s, wire bears (115 x 3.3088 / 253)^2 = 2.26 s
  {
    entries: { run: 'Load', peak: 10, length: 12, ownSize: '12 AWG' },
    verdict: ['drop'],
    size: '12 AWG',
    fuse: 15,
  },
  // 22 A x 2 x 13 ft x 0.9989 mOhm/ft = 0.571 V, 4.76 % of 12 V; 310.16 75 degC column, 10 AWG: 35 A; 22 x 1.25 =
  // 27.5, next fuse 30; short 253 A: opens in 0.1 s, wire bears (115 x 5.2612 / 253)^2 = 5.72 s
  {
    entries: { run: 'Load', peak: 22, length: 13, ownSize: '10 AWG' },
    verdict: ['drop'],
    size: '10 AWG',
    fuse: 30,
  },
  // 22 A x (2 x 13 ft x 0.6282 mOhm/ft + 0.5 mOhm) = 0.370 V, 3.09 % of 12 V; 310.16 75 degC column, 8 AWG: 50 A; 22
  // x 1.25 = 27.5, next fuse 30; short 253 A: opens in 0.1 s, wire bears (115 x 8.3656 / 253)^2 = 14.5 s
  {
    entries: { run: 'Load', peak: 22, length: 13, joints: 0.5, ownSize: '8 AWG' },
    verdict: ['drop'],
    size: '8 AWG',
    fuse: 30,
  },
  // 6 A x 2 x 5 m x 13.3 mOhm/m = 0.798 V, 6.65 % of 12 V; 310.16 prints 18 A for 16 AWG at 90 degC alone; x
  // sqrt(45/60) = 15.59, 15 A; 6 x 1.25 = 7.5, next fuse 7.5; short 253 A: opens in 0.1 s, wire bears (115 x 1.5 /
  // 253)^2 = 0.465 s
  {
    entries: { run: 'Load', peak: 6, length: 5, ownSize: '1.5 mm2' },
    rules: { unit: 'm', series: 'mm2', volts: 12 },
    verdict: ['drop'],
    size: '1.5 mm2',
    fuse: 7.5,
  },
  // 1.5 A x 2 x 22 ft x 6.385 mOhm/ft = 0.421 V, 3.51 % of 12 V; 310.16 prints 14 A for 18 AWG at 90 degC alone; x
  // sqrt(45/60) = 12.12, 12 A; 1.5 x 1.25 = 1.875, next fuse 2; short 253 A: opens in 0.1 s, wire bears (115 x 0.823
  // / 253)^2 = 0.14 s
  {
    entries: { run: 'Load', peak: 1.5, length: 22, ownSize: '18 AWG', target: 0.02 },
    verdict: ['drop'],
    size: '18 AWG',
    fuse: 2,
  },
  // 8 A x 2 x 132 in x 2.525 mOhm/ft = 0.444 V, 3.17 % of 14 V; 310.16 75 degC column, 14 AWG: 20 A; 8 x 1.25 = 10,
  // next fuse 10; short 280 A: opens in 0.1 s, wire bears (115 x 2.0809 / 280)^2 = 0.73 s
  {
    entries: { run: 'Load', peak: 8, length: 132, ownSize: '14 AWG', volts: 14 },
    rules: { unit: 'in' },
    verdict: ['drop'],
    size: '14 AWG',
    fuse: 10,
  },
];
