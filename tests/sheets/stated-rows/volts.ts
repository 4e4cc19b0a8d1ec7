/** Rows whose loads lose too many volts, or whose watts cannot be told, worked out by hand from the tables named beside each. */
import type { StatedRow } from './stated-row';

export const CANNOT_BE_SERVED: readonly StatedRow[] = [
  // low charge, less the target: 12.026 V less 56.6 A x 50 mOhm less 0.36 V = 8.84 V: 500 W / 8.84 V = 56.58 A; 56.58
  // A x (40 ft x 6.385 x 1.0393 + 3) mOhm = 15.188 V, over 0.36 V; 310.16 12 A (14 A at 90 degC x 0.866); 56.58, fuse
  // 60; by 310.17 30 + 60 x (56.58/18)^2 = 623 degC; 12.026 V less 56.58 A x 50 mOhm = 9.20 V: at most 9.20^2 / (4 x
  // 0.2684 ohm) = 78.8 W
  {
    entries: { run: 'Load', kind: 'W', peak: 500, length: 20, ownSize: '18 AWG' },
    verdict: ['heat', 'tooHot', 'fuse', 'cannotBeServed', 'drop', 'wattsUnknown'],
    size: '18 AWG',
    fuse: null,
  },
  // 60 W / 7 V = 8.57 A; 8.571 A x (180 ft x 2.525 x 1.0393 + 3) mOhm = 4.075 V, of 5.4 V; 310.16 20 A; 8.571, fuse
  // 10; far 12.03 V / (100 + 546.8) mOhm = 18.59 A: 10.6 s, wire 166 s; near 12.65 V / 50 mOhm = 253 A: 0.00762 s,
  // wire 0.895 s; 12.026 V less 68.57 A x 50 mOhm = 8.60 V: at most 8.60^2 / (4 x 0.4754 ohm) = 38.9 W
  {
    entries: { run: 'Load', kind: 'W', peak: 60, length: 90, ownSize: '14 AWG', leastVolts: 7 },
    others: [{ run: 'Winch', length: 1, peak: 60, ownSize: '1/0 AWG' }],
    rules: { target: 0.45 },
    verdict: ['cannotBeServed'],
    size: '14 AWG',
    fuse: 10,
  },
  // 100 W / 9 V = 11.11 A; 11.11 A x (80 ft x 2.525 x 1.0393 + 3) mOhm = 2.366 V, of 2.4 V; 310.16 20 A; 11.11, fuse
  // 15; far 12.03 V / (100 + 244.7) mOhm = 34.89 A: 2.69 s, wire 47 s; near 12.65 V / 50 mOhm = 253 A: 0.0147 s, wire
  // 0.895 s; 12.026 V less 111.1 A x 50 mOhm = 6.47 V: at most 6.47^2 / (4 x 0.2129 ohm) = 49.2 W
  {
    entries: { run: 'Load', kind: 'W', peak: 100, length: 40, ownSize: '14 AWG', leastVolts: 9 },
    others: [{ run: 'Winch', length: 1, peak: 100, ownSize: '1/0 AWG' }],
    rules: { target: 0.2 },
    verdict: ['cannotBeServed'],
    size: '14 AWG',
    fuse: 15,
  },
  // 200 W / (24 V x 0.6) = 13.89 A; 13.89 A x (300 ft x 2.525 x 1.0393 + 3) mOhm = 10.976 V, over 9.6 V; 310.16 20 A;
  // 13.89, fuse 15; far 24.00 V / (100 + 909.3) mOhm = 23.78 A: 57.3 s, wire 101 s; near 24.00 V / 50 mOhm = 480 A:
  // 0.00552 s, wire 0.249 s; 24 V = 24.00 V: at most 24.00^2 / (4 x 0.7903 ohm) = 182.2 W
  {
    entries: {
      run: 'Load',
      kind: 'W',
      peak: 200,
      length: 150,
      volts: 24,
      target: 0.4,
      ownSize: '14 AWG',
    },
    verdict: ['cannotBeServed', 'drop', 'wattsUnknown'],
    size: '14 AWG',
    fuse: 15,
  },
];

export const TOO_FEW_VOLTS: readonly StatedRow[] = [
  // 14 AWG is too thin: 14 A x (10 ft x 2.525 x 1.0393 + 1) mOhm = 0.381 V of 0.360 V; 14 A x (10 ft x 1.588 x 1.0393
  // + 1) mOhm = 0.245 V, of 0.36 V; 310.16 25 A; 14 x 1.25 = 17.5, fuse 20; far 12.03 V / (100 + 20) mOhm = 100.2 A:
  // 0.171 s, wire 14.4 s; near 12.65 V / 50 mOhm = 253 A: 0.0245 s, wire 2.26 s; 12.026 V less 14 A x 50 mOhm less
  // 0.245 V = 11.08 V
  {
    entries: { run: 'Load', peak: 14, length: 5, joints: 1, leastVolts: 11.2 },
    verdict: ['tooFewVolts'],
    size: '12 AWG',
    fuse: 20,
  },
  // 14 AWG is too thin: 10 A x (16 ft x 2.525 x 1.0393 + 3) mOhm = 0.450 V of 0.360 V; 10 A x (16 ft x 1.588 x 1.0393
  // + 3) mOhm = 0.294 V, of 0.36 V; 310.16 25 A; 10 x 1.25 = 12.5, fuse 15; far 12.03 V / (100 + 33.4) mOhm = 90.15 A:
  // 0.1 s, wire 17.8 s; near 12.65 V / 50 mOhm = 253 A: 0.0147 s, wire 2.26 s; 12.026 V less 10 A x 50 mOhm less 0.294
  // V = 11.23 V
  {
    entries: { run: 'Load', peak: 10, length: 8, leastVolts: 11.4 },
    verdict: ['tooFewVolts'],
    size: '12 AWG',
    fuse: 15,
  },
  // 12 AWG is too thin: fuse 25 over the 20 A of 240.4(D); 20 A x (8 ft x 0.9989 x 1.0393 + 3) mOhm = 0.226 V, of 0.36
  // V; 310.16 35 A; 20 x 1.25 = 25, fuse 25; far 12.95 V / (100 + 12.56) mOhm = 115.1 A: 0.221 s, wire 27.6 s; near
  // 13.40 V / 50 mOhm = 268 A: 0.0333 s, wire 5.09 s; 12.954 V less 20 A x 50 mOhm less 0.226 V = 11.73 V
  {
    entries: { run: 'Load', peak: 20, length: 4, leastVolts: 11.9 },
    supply: { chemistry: 'LiFePO4' },
    verdict: ['tooFewVolts'],
    size: '10 AWG',
    fuse: 25,
  },
  // 5 A x (80 ft x 2.525 x 1.0393 + 3) mOhm = 1.065 V, of 4.8 V; 310.16 20 A; 5 x 1.25 = 6.25, fuse 7.5; far 24.00 V /
  // (100 + 244.7) mOhm = 69.63 A: 0.0438 s, wire 11.8 s; near 24.00 V / 50 mOhm = 480 A: 0.00288 s, wire 0.249 s; 24 V
  // less 1.065 V = 22.94 V
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
  // Trunk: 20 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.112 V; 25, fuse 25; 5 A x (12 ft x 2.525 x 1.0393 + 3) mOhm =
  // 0.172 V, 0.285 V in all, of 0.36 V; 310.16 20 A; 5 x 1.25 = 6.25, fuse 7.5; far 12.03 V / (100 + 45.26) mOhm =
  // 82.79 A: 0.0315 s, wire 8.36 s; near 12.65 V / 55.61 mOhm = 227 A: 0.00591 s, wire 1.11 s; 12.026 V less 20 A x 50
  // mOhm less 0.285 V = 10.74 V
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
  // 60 W / 11.7 V = 5.13 A; 16 AWG is too thin: 5.128 A x (20 ft x 4.016 x 1.0393 + 3) mOhm = 0.443 V of 0.360 V;
  // 5.128 A x (20 ft x 2.525 x 1.0393 + 3) mOhm = 0.285 V, of 0.36 V; 310.16 20 A; 6.25, fuse 7.5; far 12.03 V / (100
  // + 63.42) mOhm = 73.59 A: 0.0394 s, wire 10.6 s; near 12.65 V / 50 mOhm = 253 A: 0.00516 s, wire 0.895 s; 12.026 V
  // less 5.128 A x 50 mOhm; 5.23 A through 55.48 mOhm leaves 11.48 V
  {
    entries: { run: 'Load', kind: 'W', peak: 60, length: 10, leastVolts: 11.7 },
    verdict: ['tooFewVolts'],
    size: '14 AWG',
    fuse: 7.5,
  },
];

export const FEWER_VOLTS: readonly StatedRow[] = [
  // low charge, less the target: 12.026 V less 5.26 A x 50 mOhm less 0.36 V = 11.40 V: 60 W / 11.40 V = 5.26 A; 5.262
  // A x (30 ft x 4.016 x 1.0393 + 3) mOhm = 0.675 V, over 0.36 V; 310.16 15 A (18 A at 90 degC x 0.866); 6.25, fuse
  // 7.5; far 12.03 V / (100 + 147.2) mOhm = 48.66 A: 0.0875 s, wire 9.57 s; near 12.65 V / 50 mOhm = 253 A: 0.00516 s,
  // wire 0.354 s; 12.026 V less 5.262 A x 50 mOhm; 5.42 A through 128.2 mOhm leaves 11.07 V
  {
    entries: { run: 'Load', kind: 'W', peak: 60, length: 15, ownSize: '16 AWG' },
    verdict: ['fewerVolts', 'drop'],
    size: '16 AWG',
    fuse: 7.5,
  },
  // low charge, less the target: 12.026 V less 4.14 A x 20 mOhm less 0.36 V = 11.58 V: 48 W / 11.58 V = 4.14 A; 4.144
  // A x (60 ft x 2.525 x 1.0393 + 3) mOhm = 0.665 V, over 0.36 V; 310.16 20 A; 5, fuse 5; far 12.03 V / (40 + 184.3)
  // mOhm = 53.62 A: 0.0333 s, wire 19.9 s; near 12.65 V / 20 mOhm = 632 A: 0.00222 s, wire 0.143 s; 12.026 V less
  // 4.144 A x 20 mOhm; 4.26 A through 160.5 mOhm leaves 11.26 V
  {
    entries: { run: 'Load', kind: 'W', peak: 48, length: 30, ownSize: '14 AWG' },
    supply: { milliohms: 20 },
    verdict: ['fewerVolts', 'drop'],
    size: '14 AWG',
    fuse: 5,
  },
  // 96 W / (24 V x 0.97) = 4.12 A; 4.124 A x (100 ft x 2.525 x 1.0393 + 3) mOhm = 1.095 V, over 0.72 V; 310.16 20 A;
  // 5, fuse 5; far 24.00 V / (100 + 305.1) mOhm = 59.24 A: 0.0276 s, wire 16.3 s; near 24.00 V / 50 mOhm = 480 A:
  // 0.00239 s, wire 0.249 s; 24 V; 4.19 A through 265.4 mOhm leaves 22.89 V
  {
    entries: { run: 'Load', kind: 'W', peak: 96, length: 50, volts: 24, ownSize: '14 AWG' },
    verdict: ['fewerVolts', 'drop'],
    size: '14 AWG',
    fuse: 5,
  },
  // where each run may lose its 3 % by itself, both are taken for lost; low charge, less two targets: 12.026 V less 10.0 A x
  // 50 mOhm less 0.72 V, and a hundredth less = 10.70 V: 60 W / 10.70 V = 5.61 A; Trunk: 10.61 A x (14 ft x 1.588 x
  // 1.0393 + 3) mOhm = 0.277 V; 12.5, fuse 15; 5.61 A x (50 ft x 2.525 x 1.0393 + 3) mOhm = 0.753 V, over 0.36 V; 310.16
  // 20 A; 6.25, fuse 7.5; far 12.03 V / (100 + 183.7) mOhm = 42.4 A: 0.117 s, wire 31.9 s; near 12.65 V / 76.11 mOhm =
  // 166 A: 0.00933 s, wire 2.07 s; 12.026 V less 10.61 A x 50 mOhm less 0.277 V; 5.74 A through 134.2 mOhm leaves 10.45 V
  {
    entries: {
      run: 'Branch',
      fedFrom: 'Trunk',
      kind: 'W',
      peak: 60,
      length: 25,
      ownSize: '14 AWG',
    },
    others: [{ run: 'Trunk', length: 7, ownSize: '12 AWG', peak: 5 }],
    rules: { counts: 'in each run' },
    verdict: ['fewerVolts', 'drop'],
    size: '14 AWG',
    fuse: 7.5,
  },
];

export const DROP: readonly StatedRow[] = [
  // 5 A x (60 ft x 4.016 x 1.0393 + 3) mOhm = 1.267 V, over 0.36 V; 310.16 15 A (18 A at 90 degC x 0.866); 5 x 1.25 =
  // 6.25, fuse 7.5; far 12.03 V / (100 + 291.3) mOhm = 30.73 A: 0.312 s, wire 24 s; near 12.65 V / 50 mOhm = 253 A:
  // 0.00516 s, wire 0.354 s
  {
    entries: { run: 'Load', peak: 5, length: 30, ownSize: '16 AWG' },
    verdict: ['drop'],
    size: '16 AWG',
    fuse: 7.5,
  },
  // 10 A x (24 ft x 1.588 x 1.0393 + 3) mOhm = 0.426 V, over 0.36 V; 310.16 25 A; 10 x 1.25 = 12.5, fuse 15; far 12.03
  // V / (100 + 48.6) mOhm = 80.93 A: 0.137 s, wire 22.1 s; near 12.65 V / 50 mOhm = 253 A: 0.0147 s, wire 2.26 s
  {
    entries: { run: 'Load', peak: 10, length: 12, ownSize: '12 AWG' },
    verdict: ['drop'],
    size: '12 AWG',
    fuse: 15,
  },
  // 22 A x (26 ft x 0.9989 x 1.0393 + 3) mOhm = 0.660 V, over 0.36 V; 310.16 35 A; 22 x 1.25 = 27.5, fuse 30; far
  // 12.03 V / (100 + 34.07) mOhm = 89.7 A: 0.956 s, wire 45.5 s; near 12.65 V / 50 mOhm = 253 A: 0.0526 s, wire 5.72 s
  {
    entries: { run: 'Load', peak: 22, length: 13, ownSize: '10 AWG' },
    verdict: ['drop'],
    size: '10 AWG',
    fuse: 30,
  },
  // 22 A x (26 ft x 0.6282 x 1.0393 + 0.5) mOhm = 0.384 V, over 0.36 V; 310.16 50 A; 22 x 1.25 = 27.5, fuse 30; far
  // 12.03 V / (100 + 20.04) mOhm = 100.2 A: 0.607 s, wire 92.2 s; near 12.65 V / 50 mOhm = 253 A: 0.0526 s, wire 14.5
  // s
  {
    entries: { run: 'Load', peak: 22, length: 13, joints: 0.5, ownSize: '8 AWG' },
    verdict: ['drop'],
    size: '8 AWG',
    fuse: 30,
  },
  // 2.99 % of wire alone: its joints make it more; 22 A x (26 ft x 0.6282 x 1.0000 + 3) mOhm = 0.425 V, over 0.36 V;
  // 310.16 50 A x sqrt(55/45) = 55.3 A; 22 x 1.25 = 27.5, fuse 30; far 12.03 V / (100 + 22.54) mOhm = 98.14 A: 0.66 s,
  // wire 96.1 s; near 12.65 V / 50 mOhm = 253 A: 0.0526 s, wire 14.5 s
  {
    entries: { run: 'Load', peak: 22, length: 13, ownSize: '8 AWG' },
    rules: { ambientC: 20 },
    verdict: ['drop'],
    size: '8 AWG',
    fuse: 30,
  },
  // 6 A x (10 m x 13.3 x 1.0393 + 3) mOhm = 0.847 V, over 0.36 V; 310.16 15 A (18 A at 90 degC x 0.866); 6 x 1.25 =
  // 7.5, fuse 7.5; far 12.03 V / (100 + 162.1) mOhm = 45.88 A: 0.0982 s, wire 14.1 s; near 12.65 V / 50 mOhm = 253 A:
  // 0.00516 s, wire 0.465 s
  {
    entries: { run: 'Load', peak: 6, length: 5, ownSize: '1.5 mm2' },
    rules: { unit: 'm', series: 'mm2', volts: 12 },
    verdict: ['drop'],
    size: '1.5 mm2',
    fuse: 7.5,
  },
  // 1.5 A x (44 ft x 6.385 x 1.0393 + 3) mOhm = 0.442 V, over 0.24 V; 310.16 12 A (14 A at 90 degC x 0.866); 1.5 x
  // 1.25 = 1.875, fuse 2; far 12.03 V / (100 + 339.1) mOhm = 27.39 A: 0.0212 s, wire 11.9 s; near 12.65 V / 50 mOhm =
  // 253 A: 0.00222 s, wire 0.14 s
  {
    entries: { run: 'Load', peak: 1.5, length: 22, ownSize: '18 AWG', target: 0.02 },
    verdict: ['drop'],
    size: '18 AWG',
    fuse: 2,
  },
  // 8 A x (264 in x 2.525 / 12 x 1.0393 + 3) mOhm = 0.486 V, over 0.42 V; 310.16 20 A; 8 x 1.25 = 10, fuse 10; far
  // 14.00 V / (100 + 69.47) mOhm = 82.61 A: 0.0547 s, wire 8.39 s; near 14.00 V / 50 mOhm = 280 A: 0.00659 s, wire
  // 0.73 s
  {
    entries: { run: 'Load', peak: 8, length: 132, ownSize: '14 AWG', volts: 14 },
    rules: { unit: 'in' },
    verdict: ['drop'],
    size: '14 AWG',
    fuse: 10,
  },
  // each run for itself is within 3 %; A: 20 A x (40 ft x 0.2485 x 1.0393 + 3) mOhm = 0.267 V; 25, fuse 25; B: 20 A x
  // (40 ft x 0.2485 x 1.0393 + 3) mOhm = 0.267 V; 25, fuse 25; 20 A x (40 ft x 0.2485 x 1.0393 + 3) mOhm = 0.267 V,
  // 0.800 V in all, over 0.36 V; 310.16 85 A; 20 x 1.25 = 25, fuse 25; far 12.03 V / (100 + 44.68) mOhm = 83.12 A:
  // 0.618 s, wire 856 s; near 12.65 V / 76.66 mOhm = 165 A: 0.0846 s, wire 217 s
  {
    entries: { run: 'Load', fedFrom: 'B', peak: 20, length: 20, ownSize: '4 AWG' },
    others: [
      { run: 'A', length: 20, ownSize: '4 AWG' },
      { run: 'B', fedFrom: 'A', length: 20, ownSize: '4 AWG' },
    ],
    verdict: ['drop'],
    size: '4 AWG',
    fuse: 25,
  },
  // 10 A x (18 ft x 1.588 x 1.0393 + 3) mOhm = 0.327 V, over 0.3 V; 310.16 25 A; 10 x 1.25 = 12.5, fuse 15; far 12.03
  // V / (100 + 37.2) mOhm = 87.65 A: 0.108 s, wire 18.8 s; near 12.65 V / 50 mOhm = 253 A: 0.0147 s, wire 2.26 s
  {
    entries: { run: 'Load', peak: 10, length: 9, ownSize: '12 AWG', target: 0.025 },
    rules: { counts: 'in each run' },
    verdict: ['drop'],
    size: '12 AWG',
    fuse: 15,
  },
];

export const WATTS_UNKNOWN: readonly StatedRow[] = [
  // low charge, less the target: 12.026 V less 10.8 A x 50 mOhm less 0.36 V = 11.13 V: 120 W / 11.13 V = 10.78 A; 16
  // AWG is too thin: 10.78 A x (8 ft x 4.016 x 1.0393 + 3) mOhm = 0.392 V of 0.360 V; 10.78 A x (8 ft x 2.525 x 1.0393
  // + 3) mOhm = 0.259 V, of 0.36 V; 310.16 20 A; 12.5, fuse 15; far 12.03 V / (100 + 27.17) mOhm = 94.57 A: 0.0926 s,
  // wire 6.4 s; near 12.65 V / 50 mOhm = 253 A: 0.0147 s, wire 0.895 s; 12.026 V less 10.78 A x 50 mOhm; 10.69 A
  // through 23.99 mOhm leaves 11.23 V
  {
    entries: { run: 'Load', kind: 'W', peak: 120, length: 4 },
    verdict: ['wattsUnknown'],
    size: '14 AWG',
    fuse: 15,
  },
  // low charge, less the target: 12.026 V less 17.4 A x 10 mOhm less 0.36 V = 11.49 V: 200 W / 11.49 V = 17.40 A; 12
  // AWG is too thin: fuse 25 over the 20 A of 240.4(D); 17.4 A x (10 ft x 0.9989 x 1.0393 + 3) mOhm = 0.233 V, of 0.36
  // V; 310.16 35 A; 20.83, fuse 25; near 12.65 V / 10 mOhm = 1265 A, over 1000 A; far 12.03 V / (20 + 14.95) mOhm =
  // 344.1 A: 0.021 s, wire 3.09 s; 12.026 V less 17.4 A x 10 mOhm; 17.21 A through 13.38 mOhm leaves 11.62 V
  {
    entries: { run: 'Load', kind: 'W', peak: 200, length: 5 },
    supply: { milliohms: 10 },
    verdict: ['mayNotBreak', 'wattsUnknown'],
    size: '10 AWG',
    fuse: 25,
  },
  // 150 W / (24 V x 0.97) = 6.44 A; 18 AWG is too thin: fuse 10 over the 7 A of 240.4(D); 6.443 A x (12 ft x 4.016 x
  // 1.0393 + 3) mOhm = 0.342 V, of 0.72 V; 310.16 15 A (18 A at 90 degC x 0.866); 7.812, fuse 10; far 24.00 V / (100 +
  // 60.66) mOhm = 149.4 A: 0.0181 s, wire 1.02 s; near 24.00 V / 50 mOhm = 480 A: 0.00356 s, wire 0.0983 s; 24 V; 6.34
  // A through 53.09 mOhm leaves 23.66 V
  {
    entries: { run: 'Load', kind: 'W', peak: 150, length: 6, volts: 24 },
    verdict: ['wattsUnknown'],
    size: '16 AWG',
    fuse: 10,
  },
  // low charge, less the target: 12.026 V less 20.9 A x 10 mOhm less 0.36 V = 11.46 V: 240 W / 11.46 V = 20.95 A;
  // 20.95 A x (6 ft x 0.3951 x 1.0393 + 3) mOhm = 0.114 V, of 0.36 V; 310.16 65 A; 25, fuse 25; near 12.65 V / 10 mOhm
  // = 1265 A, over 1000 A; far 12.03 V / (20 + 5.836) mOhm = 465.5 A: 0.0124 s, wire 10.8 s; 12.026 V less 20.95 A x
  // 10 mOhm; 20.50 A through 5.464 mOhm leaves 11.70 V
  {
    entries: { run: 'Load', kind: 'W', peak: 240, length: 3, ownSize: '6 AWG' },
    supply: { milliohms: 10 },
    verdict: ['mayNotBreak', 'wattsUnknown'],
    size: '6 AWG',
    fuse: 25,
  },
];
