/** Rows in which wire or fuse do not stand the load, worked out by hand from the tables named beside each. */
import type { StatedRow } from './stated-row';

export const HEAT: readonly StatedRow[] = [
  // 55 A x (2 ft x 0.6282 x 1.0393 + 3) mOhm = 0.237 V, of 0.36 V; 310.16 50 A; 55 x 1.25 = 68.75, fuse 70; by 310.17
  // 30 + 60 x (55/80)^2 = 58 degC
  {
    entries: { run: 'Load', peak: 55, length: 1, ownSize: '8 AWG' },
    verdict: ['heat', 'fuse'],
    size: '8 AWG',
    fuse: null,
  },
  // 22 A x (2 ft x 2.525 x 1.0393 + 3) mOhm = 0.181 V, of 0.36 V; 310.16 20 A; 22 x 1.25 = 27.5, fuse 30
  {
    entries: { run: 'Load', peak: 22, length: 1, ownSize: '14 AWG' },
    verdict: ['heat', 'fuse'],
    size: '14 AWG',
    fuse: null,
  },
  // 26 A x (2 ft x 1.588 x 1.0393 + 3) mOhm = 0.164 V, of 0.36 V; 310.16 25 A; 26 x 1.25 = 32.5, fuse 35; by 310.17 30
  // + 60 x (26/40)^2 = 55 degC
  {
    entries: { run: 'Load', peak: 26, length: 1, ownSize: '12 AWG' },
    verdict: ['heat', 'fuse'],
    size: '12 AWG',
    fuse: null,
  },
  // 38 A x (2 ft x 0.9989 x 1.0393 + 0.2) mOhm = 0.086 V, of 0.36 V; 310.16 35 A; 38 x 1.25 = 47.5, fuse 50; by 310.17
  // 30 + 60 x (38/55)^2 = 59 degC
  {
    entries: { run: 'Load', peak: 38, length: 1, ownSize: '10 AWG', joints: 0.2 },
    verdict: ['heat', 'fuse'],
    size: '10 AWG',
    fuse: null,
  },
  // 30 A x (2 ft x 0.9989 x 1.0393 + 3) mOhm = 0.152 V, of 0.36 V; 310.16 35 A x 0.8 = 28.0 A; 30 x 1.25 = 37.5, fuse
  // 40
  {
    entries: { run: 'Load', peak: 30, length: 1, ownSize: '10 AWG' },
    rules: { conductors: 4 },
    verdict: ['heat', 'fuse'],
    size: '10 AWG',
    fuse: null,
  },
  // 22 A x (2 ft x 1.588 x 1.0982 + 3) mOhm = 0.143 V, of 0.36 V; 310.16 25 A x sqrt(30/45) = 20.4 A; 22 x 1.25 =
  // 27.5, fuse 30
  {
    entries: { run: 'Load', peak: 22, length: 1, ownSize: '12 AWG' },
    rules: { ambientC: 45 },
    verdict: ['heat', 'fuse'],
    size: '12 AWG',
    fuse: null,
  },
  // 22 A x (8 ft x 2.525 x 1.0393 + 3) mOhm = 0.528 V, over 0.405 V; 310.16 20 A; 22 x 1.25 = 27.5, fuse 30
  {
    entries: { run: 'Load', peak: 22, length: 4, ownSize: '14 AWG', volts: 13.5 },
    verdict: ['heat', 'fuse', 'drop'],
    size: '14 AWG',
    fuse: null,
  },
  // 21 A x (2 ft x 1.588/0.61 x 1.0403 + 3) mOhm = 0.177 V, of 0.36 V; 310.16 aluminium 20 A; 21 x 1.25 = 26.25, fuse
  // 30
  {
    entries: { run: 'Load', peak: 21, length: 1, ownSize: '12 AWG' },
    rules: { material: 'aluminium' },
    verdict: ['heat', 'fuse'],
    size: '12 AWG',
    fuse: null,
  },
  // colder than 10 degC counts as 10 degC; 25 A x (2 ft x 2.525 x 0.7642 + 3) mOhm = 0.171 V, of 0.36 V; 310.16 20 A x
  // sqrt(65/45) = 24.0 A; 25 x 1.25 = 31.25, fuse 35; by 310.17 -40 + 60 x (25/35)^2 = -9 degC
  {
    entries: { run: 'Load', peak: 25, length: 1, ownSize: '14 AWG' },
    rules: { ambientC: -40 },
    verdict: ['heat', 'fuse'],
    size: '14 AWG',
    fuse: null,
  },
  // in craft the cold gives nothing; 21 A x (2 ft x 2.525 x 0.9214 + 3) mOhm = 0.161 V, of 0.36 V; table 5 20 A x
  // sqrt(75/45) = 20.0 A; 21 x 1.25 = 26.25, fuse 30
  {
    entries: { run: 'Load', peak: 21, length: 1, ownSize: '14 AWG' },
    rules: { ambientC: 0, installed: 'craft' },
    verdict: ['heat', 'fuse'],
    size: '14 AWG',
    fuse: null,
  },
  // nearly all that can be wrong at once; Trunk: 30 A x (0.4 ft x 0.04901 x 1.0393 + 3) mOhm = 0.091 V; 37.5, fuse 40;
  // 20 A x (80 ft x 6.385 x 1.0393) mOhm = 10.617 V, 10.708 V in all, over 0.36 V; 310.16 12 A (14 A at 90 degC x
  // 0.866); far 12.03 V / (12 + 614.2) mOhm = 19.2 A, under 1.35 x 40 = 54 A; near 12.65 V / 9.02 mOhm = 1402 A:
  // 0.00639 s, wire 0.00455 s; by 310.17 30 + 60 x (20/18)^2 = 104 degC; 12.026 V less 30 A x 6 mOhm less 10.708 V =
  // 1.14 V
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
    supply: { milliohms: 6 },
    verdict: ['heat', 'tooHot', 'needsFuse', 'fuseTooSlow', 'faultTooWeak', 'tooFewVolts', 'drop'],
    size: '18 AWG',
    fuse: 'none',
  },
];

export const TOO_HOT: readonly StatedRow[] = [
  // 25 A x (2 ft x 4.016 x 1.0393 + 3) mOhm = 0.284 V, of 0.36 V; table 5 25 A; 25, fuse 25; far 12.03 V / (100 +
  // 12.61) mOhm = 106.8 A: 0.276 s, wire 1.99 s; near 12.65 V / 50 mOhm = 253 A: 0.0372 s, wire 0.354 s; by 310.17 30
  // + 60 x (25/24)^2 = 95 degC
  {
    entries: { run: 'Load', peak: 25, length: 1, ownSize: '16 AWG' },
    rules: { installed: 'craft', insulationC: 90, duty: 'bursts' },
    verdict: ['tooHot'],
    size: '16 AWG',
    fuse: 25,
  },
  // 25 A x (1 ft x 4.016 x 1.0393 + 1) mOhm = 0.129 V, of 0.6 V; table 5 25 A; 25, fuse 25; far 12.03 V / (100 +
  // 5.805) mOhm = 113.7 A: 0.229 s, wire 1.75 s; near 12.65 V / 50 mOhm = 253 A: 0.0372 s, wire 0.354 s; by 310.17 30
  // + 60 x (25/24)^2 = 95 degC
  {
    entries: { run: 'Load', peak: 25, length: 0.5, ownSize: '16 AWG', joints: 1 },
    rules: { installed: 'craft', insulationC: 90, duty: 'bursts', target: 0.05 },
    verdict: ['tooHot'],
    size: '16 AWG',
    fuse: 25,
  },
  // 45 A x (2 ft x 2.525 x 1.0393 + 1) mOhm = 0.281 V, of 0.36 V; 310.16 20 A; 45 x 1.25 = 56.25, fuse 60; by 310.17
  // 30 + 60 x (45/35)^2 = 129 degC
  {
    entries: { run: 'Load', peak: 45, length: 1, ownSize: '14 AWG', joints: 1 },
    verdict: ['heat', 'tooHot', 'fuse'],
    size: '14 AWG',
    fuse: null,
  },
  // 45 A x (2 ft x 2.525 x 1.0393 + 3) mOhm = 0.371 V, over 0.36 V; 310.16 20 A; 45 x 1.25 = 56.25, fuse 60; by 310.17
  // 30 + 60 x (45/35)^2 = 129 degC
  {
    entries: { run: 'Load', peak: 45, length: 1, ownSize: '14 AWG' },
    verdict: ['heat', 'tooHot', 'fuse', 'drop'],
    size: '14 AWG',
    fuse: null,
  },
  // 60 A x (2 ft x 1.588 x 1.0393 + 3) mOhm = 0.378 V, over 0.36 V; 310.16 25 A; 60 x 1.25 = 75, fuse 80; by 310.17 30
  // + 60 x (60/40)^2 = 165 degC
  {
    entries: { run: 'Load', peak: 60, length: 1, ownSize: '12 AWG' },
    verdict: ['heat', 'tooHot', 'fuse', 'drop'],
    size: '12 AWG',
    fuse: null,
  },
  // 25 A x (2 ft x 6.385 x 1.0393 + 3) mOhm = 0.407 V, of 1.2 V; 310.16 12 A (14 A at 90 degC x 0.866); 25 x 1.25 =
  // 31.25, fuse 35; by 310.17 30 + 60 x (25/18)^2 = 146 degC
  {
    entries: { run: 'Load', peak: 25, length: 1, ownSize: '18 AWG' },
    rules: { target: 0.1 },
    verdict: ['heat', 'tooHot', 'fuse'],
    size: '18 AWG',
    fuse: null,
  },
  // 30 A x (2 ft x 4.016 x 1.0393 + 3) mOhm = 0.340 V, of 1.2 V; 310.16 15 A (18 A at 90 degC x 0.866); 30 x 1.25 =
  // 37.5, fuse 40; by 310.17 30 + 60 x (30/24)^2 = 124 degC
  {
    entries: { run: 'Load', peak: 30, length: 1, ownSize: '16 AWG' },
    rules: { target: 0.1 },
    verdict: ['heat', 'tooHot', 'fuse'],
    size: '16 AWG',
    fuse: null,
  },
];

export const FUSE: readonly StatedRow[] = [
  // 17 A x (6 ft x 2.525 x 1.0393 + 3) mOhm = 0.319 V, of 0.36 V; 310.16 20 A; 17 x 1.25 = 21.25, fuse 25
  {
    entries: { run: 'Load', peak: 17, length: 3, ownSize: '14 AWG' },
    verdict: ['fuse'],
    size: '14 AWG',
    fuse: null,
  },
  // 13 A x (4 ft x 4.016 x 1.0393 + 3) mOhm = 0.256 V, of 0.36 V; 310.16 15 A (18 A at 90 degC x 0.866); 13 x 1.25 =
  // 16.25, fuse 20
  {
    entries: { run: 'Load', peak: 13, length: 2, ownSize: '16 AWG' },
    verdict: ['fuse'],
    size: '16 AWG',
    fuse: null,
  },
  // 22 A x (4 ft x 1.588 x 1.0393 + 3) mOhm = 0.211 V, of 0.36 V; 310.16 25 A; 22 x 1.25 = 27.5, fuse 30
  {
    entries: { run: 'Load', peak: 22, length: 2, ownSize: '12 AWG' },
    verdict: ['fuse'],
    size: '12 AWG',
    fuse: null,
  },
  // 30 A x (4 ft x 0.9989 x 1.0393 + 3) mOhm = 0.215 V, of 0.36 V; 310.16 35 A; 30 x 1.25 = 37.5, fuse 40
  {
    entries: { run: 'Load', peak: 30, length: 2, ownSize: '10 AWG' },
    verdict: ['fuse'],
    size: '10 AWG',
    fuse: null,
  },
  // 10 A x (2 ft x 6.385 x 1.0393 + 3) mOhm = 0.163 V, of 0.36 V; 310.16 12 A (14 A at 90 degC x 0.866); 10 x 1.25 =
  // 12.5, fuse 15
  {
    entries: { run: 'Load', peak: 10, length: 1, ownSize: '18 AWG' },
    verdict: ['fuse'],
    size: '18 AWG',
    fuse: null,
  },
  // 42 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.236 V, of 0.36 V; 310.16 50 A; 42 x 1.25 = 52.5, fuse 60
  {
    entries: { run: 'Load', peak: 42, length: 2, ownSize: '8 AWG' },
    verdict: ['fuse'],
    size: '8 AWG',
    fuse: null,
  },
  // 13 A x (1.6 m x 7.98 x 1.0393 + 3) mOhm = 0.212 V, of 0.36 V; 310.16 20 A (counts as 14 AWG) x 0.7 = 14.0 A; 13 x
  // 1.25 = 16.25, fuse 20
  {
    entries: { run: 'Load', peak: 13, length: 0.8, ownSize: '2.5 mm2' },
    rules: { unit: 'm', conductors: 7 },
    verdict: ['fuse'],
    size: '2.5 mm2',
    fuse: null,
  },
  // 14 A x (4 ft x 2.525 x 1.0393 + 3) mOhm = 0.189 V, of 0.36 V; 310.16 20 A; 14 x 1.25 = 17.5, fuse 20, over the 15
  // A of 240.4(D)
  {
    entries: { run: 'Load', peak: 14, length: 2, ownSize: '14 AWG' },
    verdict: ['fuse'],
    size: '14 AWG',
    fuse: null,
  },
  // 6 A x (4 ft x 6.385 x 1.0393 + 3) mOhm = 0.177 V, of 0.36 V; 310.16 12 A (14 A at 90 degC x 0.866); 6 x 1.25 =
  // 7.5, fuse 7.5, over the 7 A of 240.4(D)
  {
    entries: { run: 'Load', peak: 6, length: 2, ownSize: '18 AWG' },
    verdict: ['fuse'],
    size: '18 AWG',
    fuse: null,
  },
  // 25 A x (2 ft x 0.9989/0.61 x 1.0403 + 3) mOhm = 0.160 V, of 0.6 V; 310.16 aluminium 30 A; 25 x 1.25 = 31.25, fuse
  // 35
  {
    entries: { run: 'Load', peak: 25, length: 1, ownSize: '10 AWG' },
    rules: { material: 'aluminium', ambientC: 30, target: 0.05 },
    verdict: ['fuse'],
    size: '10 AWG',
    fuse: null,
  },
  // 19 A x (4 ft x 2.525 x 1.0393 + 3) mOhm = 0.256 V, of 0.36 V; 310.17 30 A; 19 x 1.25 = 23.75, fuse 25, over the 15
  // A of 240.4(D)
  {
    entries: { run: 'Load', peak: 19, length: 2, ownSize: '14 AWG' },
    rules: { installed: 'air' },
    verdict: ['fuse'],
    size: '14 AWG',
    fuse: null,
  },
];

export const NEEDS_FUSE: readonly StatedRow[] = [
  // Trunk: 15 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.084 V; 18.75, fuse 20; 1 A x (4 ft x 6.385 x 1.0393) mOhm =
  // 0.027 V, 0.111 V in all, of 0.36 V; 310.16 12 A (14 A at 90 degC x 0.866); far 12.03 V / (100 + 36.57) mOhm =
  // 88.06 A: 0.252 s, wire 1.16 s; near 12.65 V / 55.61 mOhm = 227 A: 0.0298 s, wire 0.173 s
  {
    entries: {
      run: 'Branch',
      fedFrom: 'Trunk',
      fused: 'no',
      peak: 1,
      length: 2,
      ownSize: '18 AWG',
    },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 14 }],
    verdict: ['needsFuse'],
    size: '18 AWG',
    fuse: 'none',
  },
  // Trunk: 16 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.090 V; 20, fuse 20; 2 A x (6 ft x 4.016 x 1.0393) mOhm = 0.050
  // V, 0.140 V in all, of 0.36 V; 310.16 15 A (18 A at 90 degC x 0.866); far 12.03 V / (100 + 34.84) mOhm = 89.19 A:
  // 0.243 s, wire 2.85 s; near 12.65 V / 55.61 mOhm = 227 A: 0.0298 s, wire 0.438 s
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
  // Trunk: 18 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.101 V; 22.5, fuse 25; 3 A x (4 ft x 2.525 x 1.0393) mOhm =
  // 0.031 V, 0.132 V in all, of 0.36 V; 310.16 20 A; far 12.03 V / (100 + 18.09) mOhm = 101.8 A: 0.318 s, wire 5.52 s;
  // near 12.65 V / 55.61 mOhm = 227 A: 0.0455 s, wire 1.11 s
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
  // Trunk: 13 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.073 V; 16.25, fuse 20; 1 A x (4 ft x 6.385 x 1.0393) mOhm =
  // 0.027 V, 0.099 V in all, of 0.36 V; 310.16 12 A (14 A at 90 degC x 0.866); far 12.03 V / (100 + 36.57) mOhm =
  // 88.06 A: 0.252 s, wire 1.16 s; near 12.65 V / 55.61 mOhm = 227 A: 0.0298 s, wire 0.173 s
  {
    entries: { run: 'Branch', fedFrom: 'Trunk', fused: 'no', peak: 1, length: 2 },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 12 }],
    verdict: ['needsFuse'],
    size: '18 AWG',
    fuse: 'none',
  },
  // 18 AWG is too thin: fuse 7.5 over the 7 A of 240.4(D); 5 A x (6 ft x 4.016 x 1.0393) mOhm = 0.125 V, of 0.36 V;
  // 310.16 15 A (18 A at 90 degC x 0.866); nothing above it has a fuse
  {
    entries: { run: 'Load', peak: 5, length: 3, fused: 'no' },
    verdict: ['needsFuse'],
    size: '16 AWG',
    fuse: 'none',
  },
  // Trunk: 21 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.118 V; 26.25, fuse 30; 1 A x (4 ft x 0.9989 x 1.0393) mOhm =
  // 0.004 V, 0.122 V in all, of 0.36 V; 310.16 35 A x 0.8 = 28.0 A; far 12.03 V / (100 + 10.79) mOhm = 108.6 A: 0.453
  // s, wire 31.1 s; near 12.65 V / 55.61 mOhm = 227 A: 0.0646 s, wire 7.07 s
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
  // Trunk: 18 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.101 V; 22.5, fuse 25; 3 A x (4 ft x 1.588 x 1.0393) mOhm =
  // 0.020 V, 0.121 V in all, of 0.36 V; 310.16 25 A; 25 A is over the 20 A of 240.4(D); far 12.03 V / (100 + 13.61)
  // mOhm = 105.9 A: 0.283 s, wire 12.9 s; near 12.65 V / 55.61 mOhm = 227 A: 0.0455 s, wire 2.8 s
  {
    entries: {
      run: 'Branch',
      fedFrom: 'Trunk',
      fused: 'no',
      peak: 3,
      length: 2,
      ownSize: '12 AWG',
    },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 15 }],
    verdict: ['needsFuse'],
    size: '12 AWG',
    fuse: 'none',
  },
  // a fuse that is neither yes nor no protects nobody; Trunk: 3 A x (4 ft x 0.6282 x 1.0393) mOhm = 0.008 V; 3.75,
  // fuse 4; 3 A x (4 ft x 6.385 x 1.0393) mOhm = 0.080 V, 0.087 V in all, of 0.36 V; 310.16 12 A (14 A at 90 degC x
  // 0.866); nothing above it has a fuse
  {
    entries: { run: 'Branch', fedFrom: 'Trunk', fused: 'no', peak: 3, length: 2 },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', fused: 'maybe' }],
    verdict: ['needsFuse'],
    size: '18 AWG',
    fuse: 'none',
  },
  // Trunk: 21 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.118 V; 26.25, fuse 30; 1 A x (6 ft x 6.385 x 1.0393) mOhm =
  // 0.040 V, 0.158 V in all, of 0.36 V; 310.16 12 A (14 A at 90 degC x 0.866); far 12.03 V / (100 + 51.84) mOhm = 79.2
  // A: 1.6 s, wire 1.43 s; near 12.65 V / 55.61 mOhm = 227 A: 0.0646 s, wire 0.173 s
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
    verdict: ['needsFuse', 'fuseTooSlow'],
    size: '18 AWG',
    fuse: 'none',
  },
];

export const CRAFT_FUSE: readonly StatedRow[] = [
  // 33 CFR 183.455(c): up to 150 % of the ampacity; 13 A x (4 ft x 4.016 x 1.0393 + 3) mOhm = 0.256 V, of 0.36 V;
  // table 5 15 A; 13 x 1.25 = 16.25, fuse 20, within 1.5 x 15 A; far 12.03 V / (100 + 22.22) mOhm = 98.4 A: 0.181 s,
  // wire 2.34 s; near 12.65 V / 50 mOhm = 253 A: 0.0245 s, wire 0.354 s
  {
    entries: { run: 'Load', peak: 13, length: 2, ownSize: '16 AWG' },
    rules: { installed: 'craft' },
    verdict: ['craftFuse'],
    size: '16 AWG',
    fuse: 20,
  },
  // 51 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.286 V, of 0.36 V; table 5 65 A; 51 x 1.25 = 63.75, fuse 70, within
  // 1.5 x 65 A; far 12.03 V / (40 + 6.007) mOhm = 261.4 A: 5.54 s, wire 13.5 s; near 12.65 V / 20 mOhm = 632 A: 0.443
  // s, wire 2.31 s
  {
    entries: { run: 'Load', peak: 51, length: 2, ownSize: '8 AWG' },
    rules: { installed: 'craft' },
    supply: { milliohms: 20 },
    verdict: ['craftFuse'],
    size: '8 AWG',
    fuse: 70,
  },
  // 75 A x (4 ft x 0.3951 x 1.0393 + 3) mOhm = 0.348 V, of 0.6 V; table 5 95 A; 75 x 1.25 = 93.75, fuse 100, within
  // 1.5 x 95 A; far 12.03 V / (30 + 4.891) mOhm = 344.7 A: 7.42 s, wire 19.7 s; near 12.65 V / 15 mOhm = 843 A: 0.508
  // s, wire 3.29 s; by 310.17 30 + 60 x (75/105)^2 = 61 degC
  {
    entries: { run: 'Load', peak: 75, length: 2, ownSize: '6 AWG', target: 0.05 },
    rules: { installed: 'craft' },
    supply: { milliohms: 15 },
    verdict: ['craftFuse'],
    size: '6 AWG',
    fuse: 100,
  },
  // 38 A x (4 ft x 0.6282 x 1.1179 + 3) mOhm = 0.221 V, of 0.36 V; table 5 65 A x 0.75 = 48.8 A; 38 x 1.25 = 47.5,
  // fuse 50, within 1.5 x 48.8 A; far 12.03 V / (40 + 6.007) mOhm = 261.4 A: 1.64 s, wire 13.5 s; near 12.65 V / 20
  // mOhm = 632 A: 0.227 s, wire 2.31 s
  {
    entries: { run: 'Load', peak: 38, length: 2, ownSize: '8 AWG' },
    rules: { installed: 'engine space' },
    supply: { milliohms: 20 },
    verdict: ['craftFuse'],
    size: '8 AWG',
    fuse: 50,
  },
  // 14.5 A x (6 ft x 1.588 x 1.1179 + 3) mOhm = 0.198 V, of 0.36 V; table 5 25 A x 0.75 = 18.8 A; 14.5 x 1.25 = 18.12,
  // fuse 20, within 1.5 x 18.8 A; far 12.03 V / (100 + 14.4) mOhm = 105.1 A: 0.148 s, wire 13.1 s; near 12.65 V / 50
  // mOhm = 253 A: 0.0245 s, wire 2.26 s
  {
    entries: { run: 'Load', peak: 14.5, length: 3, ownSize: '12 AWG' },
    rules: { installed: 'engine space' },
    verdict: ['craftFuse'],
    size: '12 AWG',
    fuse: 20,
  },
];
