/** Rows in which wire or fuse do not stand the load, worked out by hand from the tables named beside each. */
import type { StatedRow } from './stated-row';

export const HEAT: readonly StatedRow[] = [
  // 55 A x 2 x 1 ft x 0.6282 mOhm/ft = 0.069 V, 0.58 % of 12 V; 310.16 75 degC column, 8 AWG: 50 A; 55 x 1.25 =
  // 68.75, next fuse 70
  {
    entries: { run: 'Load', peak: 55, length: 1, ownSize: '8 AWG' },
    verdict: ['heat', 'fuse'],
    size: '8 AWG',
    fuse: null,
  },
  // 22 A x 2 x 1 ft x 2.525 mOhm/ft = 0.111 V, 0.93 % of 12 V; 310.16 75 degC column, 14 AWG: 20 A; 22 x 1.25 =
  // 27.5, next fuse 30
  {
    entries: { run: 'Load', peak: 22, length: 1, ownSize: '14 AWG' },
    verdict: ['heat', 'fuse'],
    size: '14 AWG',
    fuse: null,
  },
  // 26 A x 2 x 1 ft x 1.588 mOhm/ft = 0.083 V, 0.69 % of 12 V; 310.16 75 degC column, 12 AWG: 25 A; 26 x 1.25 =
  // 32.5, next fuse 35
  {
    entries: { run: 'Load', peak: 26, length: 1, ownSize: '12 AWG' },
    verdict: ['heat', 'fuse'],
    size: '12 AWG',
    fuse: null,
  },
  // 38 A x (2 x 1 ft x 0.9989 mOhm/ft + 0.2 mOhm) = 0.084 V, 0.70 % of 12 V; 310.16 75 degC column, 10 AWG: 35 A; 38
  // x 1.25 = 47.5, next fuse 50
  {
    entries: { run: 'Load', peak: 38, length: 1, ownSize: '10 AWG', joints: 0.2 },
    verdict: ['heat', 'fuse'],
    size: '10 AWG',
    fuse: null,
  },
  // 30 A x 2 x 1 ft x 0.9989 mOhm/ft = 0.060 V, 0.50 % of 12 V; 310.16 75 degC column, 10 AWG: 35 A x 0.8 (4
  // conductors) = 28.00 A; 30 x 1.25 = 37.5, next fuse 40
  {
    entries: { run: 'Load', peak: 30, length: 1, ownSize: '10 AWG' },
    rules: { conductors: 4 },
    verdict: ['heat', 'fuse'],
    size: '10 AWG',
    fuse: null,
  },
  // 22 A x 2 x 1 ft x 1.588 mOhm/ft = 0.070 V, 0.58 % of 12 V; 310.16 75 degC column, 12 AWG: 25 A x sqrt(30/45) =
  // 0.816 = 20.41 A; 22 x 1.25 = 27.5, next fuse 30
  {
    entries: { run: 'Load', peak: 22, length: 1, ownSize: '12 AWG' },
    rules: { ambientC: 45 },
    verdict: ['heat', 'fuse'],
    size: '12 AWG',
    fuse: null,
  },
  // 22 A x 2 x 4 ft x 2.525 mOhm/ft = 0.444 V, 3.29 % of 13.5 V; 310.16 75 degC column, 14 AWG: 20 A; 22 x 1.25 =
  // 27.5, next fuse 30
  {
    entries: { run: 'Load', peak: 22, length: 4, ownSize: '14 AWG', volts: 13.5 },
    verdict: ['heat', 'fuse', 'drop'],
    size: '14 AWG',
    fuse: null,
  },
  // 21 A x 2 x 1 ft x 1.588/0.61 mOhm/ft = 0.109 V, 0.91 % of 12 V; 310.16 aluminium 75 degC column, 12 AWG: 20 A;
  // 21 x 1.25 = 26.25, next fuse 30
  {
    entries: { run: 'Load', peak: 21, length: 1, ownSize: '12 AWG' },
    rules: { material: 'aluminium' },
    verdict: ['heat', 'fuse'],
    size: '12 AWG',
    fuse: null,
  },
  // all that can be wrong at once; 20 A x 80 ft x 6.385 mOhm/ft = 10.2 V; 310.16: 12 A; 25, fuse 25; by 310.17 30 +
  // 60 x (20 / 18)^2 = 104 degC; Trunk carries 30 A: 37.5, fuse 40; 12.65 V / 5.02 mOhm = 2520 A: 0.15 s, wire (115
  // x 0.823 / 2520)^2 = 0.0014 s; far end 12.65 V / 516 mOhm = 24.5 A, under 1.35 x 40 = 54 A; volts under 12.026 -
  // 10.2
  {
    entries: {
      run: 'Branch',
      fedFrom: 'Trunk',
      peak: 20,
      length: 40,
      ownSize: '18 AWG',
      fused: 'no',
      leastVolts: 11,
    },
    others: [{ run: 'Trunk', length: 0.2, ownSize: '4/0 AWG', peak: 10 }],
    supply: { milliohms: 5 },
    verdict: [
      'heat',
      'tooHot',
      'fuse',
      'needsFuse',
      'fuseTooSlow',
      'faultTooWeak',
      'mayNotBreak',
      'tooFewVolts',
      'drop',
    ],
    size: '18 AWG',
    fuse: 'none',
  },
];

export const TOO_HOT: readonly StatedRow[] = [
  // 20 A x 2 x 1 ft x 6.385 mOhm/ft = 0.255 V, 2.13 % of 12 V; 33 CFR table 5 90 degC column, 18 AWG: 20 A; bursts:
  // 20, next fuse 20; short 253 A: opens in 0.1 s, wire bears (115 x 0.823 / 253)^2 = 0.14 s; by 310.17 about 104
  // degC, rise as the square of the amps
  {
    entries: { run: 'Load', peak: 20, length: 1, ownSize: '18 AWG' },
    rules: { installed: 'craft', insulationC: 90, duty: 'bursts' },
    verdict: ['tooHot'],
    size: '18 AWG',
    fuse: 20,
  },
  // 45 A x 2 x 1 ft x 2.525 mOhm/ft = 0.227 V, 1.89 % of 12 V; 310.16 75 degC column, 14 AWG: 20 A; 45 x 1.25 =
  // 56.25, next fuse 60; by 310.17 about 131 degC, rise as the square of the amps
  {
    entries: { run: 'Load', peak: 45, length: 1, ownSize: '14 AWG' },
    verdict: ['heat', 'tooHot', 'fuse'],
    size: '14 AWG',
    fuse: null,
  },
  // 60 A x 2 x 1 ft x 1.588 mOhm/ft = 0.191 V, 1.59 % of 12 V; 310.16 75 degC column, 12 AWG: 25 A; 60 x 1.25 = 75,
  // next fuse 80; by 310.17 about 162 degC, rise as the square of the amps
  {
    entries: { run: 'Load', peak: 60, length: 1, ownSize: '12 AWG' },
    verdict: ['heat', 'tooHot', 'fuse'],
    size: '12 AWG',
    fuse: null,
  },
  // 25 A x 2 x 1 ft x 6.385 mOhm/ft = 0.319 V, 2.66 % of 12 V; 310.16 prints 14 A for 18 AWG at 90 degC alone; x
  // sqrt(45/60) = 12.12, 12 A; 25 x 1.25 = 31.25, next fuse 35; by 310.17 about 146 degC, rise as the square of the
  // amps
  {
    entries: { run: 'Load', peak: 25, length: 1, ownSize: '18 AWG' },
    rules: { target: 0.1 },
    verdict: ['heat', 'tooHot', 'fuse'],
    size: '18 AWG',
    fuse: null,
  },
  // 30 A x 2 x 1 ft x 4.016 mOhm/ft = 0.241 V, 2.01 % of 12 V; 310.16 prints 18 A for 16 AWG at 90 degC alone; x
  // sqrt(45/60) = 15.59, 15 A; 30 x 1.25 = 37.5, next fuse 40; by 310.17 about 124 degC, rise as the square of the
  // amps
  {
    entries: { run: 'Load', peak: 30, length: 1, ownSize: '16 AWG' },
    rules: { target: 0.1 },
    verdict: ['heat', 'tooHot', 'fuse'],
    size: '16 AWG',
    fuse: null,
  },
];

export const FUSE: readonly StatedRow[] = [
  // 17 A x 2 x 3 ft x 2.525 mOhm/ft = 0.258 V, 2.15 % of 12 V; 310.16 75 degC column, 14 AWG: 20 A; 17 x 1.25 =
  // 21.25, next fuse 25
  {
    entries: { run: 'Load', peak: 17, length: 3, ownSize: '14 AWG' },
    verdict: ['fuse'],
    size: '14 AWG',
    fuse: null,
  },
  // 13 A x 2 x 2 ft x 4.016 mOhm/ft = 0.209 V, 1.74 % of 12 V; 310.16 prints 18 A for 16 AWG at 90 degC alone; x
  // sqrt(45/60) = 15.59, 15 A; 13 x 1.25 = 16.25, next fuse 20
  {
    entries: { run: 'Load', peak: 13, length: 2, ownSize: '16 AWG' },
    verdict: ['fuse'],
    size: '16 AWG',
    fuse: null,
  },
  // 22 A x 2 x 2 ft x 1.588 mOhm/ft = 0.140 V, 1.16 % of 12 V; 310.16 75 degC column, 12 AWG: 25 A; 22 x 1.25 =
  // 27.5, next fuse 30
  {
    entries: { run: 'Load', peak: 22, length: 2, ownSize: '12 AWG' },
    verdict: ['fuse'],
    size: '12 AWG',
    fuse: null,
  },
  // 30 A x 2 x 2 ft x 0.9989 mOhm/ft = 0.120 V, 1.00 % of 12 V; 310.16 75 degC column, 10 AWG: 35 A; 30 x 1.25 =
  // 37.5, next fuse 40
  {
    entries: { run: 'Load', peak: 30, length: 2, ownSize: '10 AWG' },
    verdict: ['fuse'],
    size: '10 AWG',
    fuse: null,
  },
  // 10 A x 2 x 1 ft x 6.385 mOhm/ft = 0.128 V, 1.06 % of 12 V; 310.16 prints 14 A for 18 AWG at 90 degC alone; x
  // sqrt(45/60) = 12.12, 12 A; 10 x 1.25 = 12.5, next fuse 15
  {
    entries: { run: 'Load', peak: 10, length: 1, ownSize: '18 AWG' },
    verdict: ['fuse'],
    size: '18 AWG',
    fuse: null,
  },
  // 42 A x 2 x 2 ft x 0.6282 mOhm/ft = 0.106 V, 0.88 % of 12 V; 310.16 75 degC column, 8 AWG: 50 A; 42 x 1.25 =
  // 52.5, next fuse 60
  {
    entries: { run: 'Load', peak: 42, length: 2, ownSize: '8 AWG' },
    verdict: ['fuse'],
    size: '8 AWG',
    fuse: null,
  },
  // 13 A x 2 x 0.8 m x 7.98 mOhm/m = 0.166 V, 1.38 % of 12 V; 310.16 75 degC column, 2.5 mm2 counts as 14 AWG
  // (2.0809 mm2): 20 A x 0.7 (7 conductors) = 14.00 A; 13 x 1.25 = 16.25, next fuse 20
  {
    entries: { run: 'Load', peak: 13, length: 0.8, ownSize: '2.5 mm2' },
    rules: { unit: 'm', conductors: 7 },
    verdict: ['fuse'],
    size: '2.5 mm2',
    fuse: null,
  },
];

export const NEEDS_FUSE: readonly StatedRow[] = [
  // Trunk carries 20 + 1 A: 21 x 1.25 = 26.25, fuse 30; 1 A x 2 x 3 ft x 6.385 mOhm/ft = 0.038 V, 0.32 % of 12 V;
  // 310.16 prints 14 A for 18 AWG at 90 degC alone; x sqrt(45/60) = 12.12, 12 A; 1 x 1.25 = 1.25, next fuse 2; short
  // 241 A: opens in 0.1 s, wire bears (115 x 0.823 / 241)^2 = 0.154 s
  {
    entries: {
      run: 'Branch',
      fedFrom: 'Trunk',
      fused: 'no',
      peak: 1,
      length: 3,
      ownSize: '18 AWG',
    },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 20 }],
    verdict: ['needsFuse'],
    size: '18 AWG',
    fuse: 'none',
  },
  // Trunk carries 14 + 2 A: 16 x 1.25 = 20, fuse 20; 2 A x 2 x 3 ft x 4.016 mOhm/ft = 0.048 V, 0.40 % of 12 V;
  // 310.16 prints 18 A for 16 AWG at 90 degC alone; x sqrt(45/60) = 15.59, 15 A; 2 x 1.25 = 2.5, next fuse 3; short
  // 241 A: opens in 0.1 s, wire bears (115 x 1.3087 / 241)^2 = 0.39 s
  {
    entries: {
      run: 'Branch',
      fedFrom: 'Trunk',
      fused: 'no',
      peak: 2,
      length: 3,
      ownSize: '16 AWG',
    },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 14 }],
    verdict: ['needsFuse'],
    size: '16 AWG',
    fuse: 'none',
  },
  // Trunk carries 15 + 3 A: 18 x 1.25 = 22.5, fuse 25; 3 A x 2 x 2 ft x 2.525 mOhm/ft = 0.030 V, 0.25 % of 12 V;
  // 310.16 75 degC column, 14 AWG: 20 A; 3 x 1.25 = 3.75, next fuse 4; short 241 A: opens in 0.1 s, wire bears (115
  // x 2.0809 / 241)^2 = 0.987 s
  {
    entries: {
      run: 'Branch',
      fedFrom: 'Trunk',
      fused: 'no',
      peak: 3,
      length: 2,
      ownSize: '14 AWG',
    },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 15 }],
    verdict: ['needsFuse'],
    size: '14 AWG',
    fuse: 'none',
  },
  // Trunk carries 12 + 1 A: 13 x 1.25 = 16.25, fuse 20; 1 A x 2 x 2 ft x 6.385 mOhm/ft = 0.026 V, 0.21 % of 12 V;
  // 310.16 prints 14 A for 18 AWG at 90 degC alone; x sqrt(45/60) = 12.12, 12 A; 1 x 1.25 = 1.25, next fuse 2; short
  // 241 A: opens in 0.1 s, wire bears (115 x 0.823 / 241)^2 = 0.154 s
  {
    entries: { run: 'Branch', fedFrom: 'Trunk', fused: 'no', peak: 1, length: 2 },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 12 }],
    verdict: ['needsFuse'],
    size: '18 AWG',
    fuse: 'none',
  },
  // nothing above it has a fuse; 5 A x 2 x 3 ft x 6.385 mOhm/ft = 0.192 V, 1.60 % of 12 V; 310.16 prints 14 A for 18
  // AWG at 90 degC alone; x sqrt(45/60) = 12.12, 12 A; 5 x 1.25 = 6.25, next fuse 7.5
  {
    entries: { run: 'Load', peak: 5, length: 3, fused: 'no' },
    verdict: ['needsFuse'],
    size: '18 AWG',
    fuse: 'none',
  },
  // Trunk carries 20 + 1 A: 21 x 1.25 = 26.25, fuse 30; 1 A x 2 x 2 ft x 0.9989 mOhm/ft = 0.004 V, 0.03 % of 12 V;
  // 310.16 75 degC column, 10 AWG: 35 A x 0.8 (4 conductors) = 28.00 A; 1 x 1.25 = 1.25, next fuse 2; short 241 A:
  // opens in 0.1 s, wire bears (115 x 5.2612 / 241)^2 = 6.31 s
  {
    entries: {
      run: 'Branch',
      fedFrom: 'Trunk',
      fused: 'no',
      peak: 1,
      length: 2,
      ownSize: '10 AWG',
    },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 20 }],
    rules: { conductors: 4 },
    verdict: ['needsFuse'],
    size: '10 AWG',
    fuse: 'none',
  },
];
