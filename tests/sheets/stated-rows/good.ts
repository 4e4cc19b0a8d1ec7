/** Rows with which nothing is wrong, worked out by hand from the tables named beside each. */
import type { StatedRow } from './stated-row';

export const OK: readonly StatedRow[] = [
  // 8 AWG is too thin: 22 A x (26 ft x 0.6282 x 1.0393 + 3) mOhm = 0.439 V of 0.360 V; 22 A x (26 ft x 0.3951 x 1.0393
  // + 3) mOhm = 0.301 V, of 0.36 V; 310.16 65 A; 22 x 1.25 = 27.5, fuse 30; far 12.03 V / (100 + 15.29) mOhm = 104.3
  // A: 0.514 s, wire 215 s; near 12.65 V / 50 mOhm = 253 A: 0.0526 s, wire 36.6 s
  { entries: { run: 'Load', peak: 22, length: 13 }, verdict: ['ok'], size: '6 AWG', fuse: 30 },
  // 18 AWG is too thin: 4 A x (16 ft x 6.385 x 1.0393 + 1) mOhm = 0.429 V of 0.360 V; 4 A x (16 ft x 4.016 x 1.0393 +
  // 1) mOhm = 0.271 V, of 0.36 V; 310.16 15 A (18 A at 90 degC x 0.866); 4 x 1.25 = 5, fuse 5; far 12.03 V / (100 +
  // 77.88) mOhm = 67.61 A: 0.0217 s, wire 4.96 s; near 12.65 V / 50 mOhm = 253 A: 0.00341 s, wire 0.354 s
  {
    entries: { run: 'Load', peak: 4, length: 8, joints: 1 },
    verdict: ['ok'],
    size: '16 AWG',
    fuse: 5,
  },
  // 0.5 A x (6 ft x 6.385 x 1.0393 + 3) mOhm = 0.021 V, of 0.36 V; 310.16 12 A (14 A at 90 degC x 0.866); 0.5 x 1.25 =
  // 0.625, fuse 1; far 12.03 V / (100 + 48.84) mOhm = 80.8 A: 0.00255 s, wire 1.37 s; near 12.65 V / 50 mOhm = 253 A:
  // 0.00206 s, wire 0.14 s
  { entries: { run: 'Load', peak: 0.5, length: 3 }, verdict: ['ok'], size: '18 AWG', fuse: 1 },
  // 12 AWG is too thin: 10 A x (24 ft x 1.588 x 1.0393 + 3) mOhm = 0.426 V of 0.414 V; 10 A x (24 ft x 0.9989 x 1.0393
  // + 3) mOhm = 0.279 V, of 0.414 V; 310.16 35 A; 10 x 1.25 = 12.5, fuse 15; far 13.80 V / (100 + 31.68) mOhm = 104.8
  // A: 0.0758 s, wire 33.3 s; near 13.80 V / 50 mOhm = 276 A: 0.0126 s, wire 4.81 s
  {
    entries: { run: 'Load', peak: 10, length: 12, volts: 13.8 },
    verdict: ['ok'],
    size: '10 AWG',
    fuse: 15,
  },
  // 14 AWG is too thin: fuse 20 over the 15 A of 240.4(D); 14 A x (8 ft x 1.588 x 1.0393 + 3) mOhm = 0.227 V, of 0.36
  // V; 310.16 25 A; 14 x 1.25 = 17.5, fuse 20; far 12.03 V / (100 + 18.2) mOhm = 101.7 A: 0.164 s, wire 14 s; near
  // 12.65 V / 50 mOhm = 253 A: 0.0245 s, wire 2.26 s
  { entries: { run: 'Load', peak: 14, length: 4 }, verdict: ['ok'], size: '12 AWG', fuse: 20 },
  // 14 AWG is too thin: fuse 20 over the 15 A of 240.4(D); 16 A x (6 ft x 1.588 x 1.0393 + 3) mOhm = 0.206 V, of 0.36
  // V; 310.16 25 A; 16 x 1.25 = 20, fuse 20; far 12.03 V / (100 + 14.4) mOhm = 105.1 A: 0.148 s, wire 13.1 s; near
  // 12.65 V / 50 mOhm = 253 A: 0.0245 s, wire 2.26 s
  { entries: { run: 'Load', peak: 16, length: 3 }, verdict: ['ok'], size: '12 AWG', fuse: 20 },
  // 12 AWG is too thin: fuse 25 over the 20 A of 240.4(D); 20 A x (4 ft x 0.9989 x 1.0393 + 3) mOhm = 0.143 V, of 0.36
  // V; 310.16 35 A; 20 x 1.25 = 25, fuse 25; far 12.03 V / (100 + 7.781) mOhm = 111.6 A: 0.242 s, wire 29.4 s; near
  // 12.65 V / 50 mOhm = 253 A: 0.0372 s, wire 5.72 s
  { entries: { run: 'Load', peak: 20, length: 2 }, verdict: ['ok'], size: '10 AWG', fuse: 25 },
  // 14 AWG is too thin: fuse 20 over the 15 A of 240.4(D); 20 A x (4 ft x 1.588 x 1.0393 + 3) mOhm = 0.192 V, of 0.36
  // V; 310.16 25 A; 20, fuse 20; far 12.03 V / (100 + 10.6) mOhm = 108.7 A: 0.134 s, wire 12.2 s; near 12.65 V / 50
  // mOhm = 253 A: 0.0245 s, wire 2.26 s
  {
    entries: { run: 'Load', peak: 20, length: 2 },
    rules: { duty: 'bursts' },
    verdict: ['ok'],
    size: '12 AWG',
    fuse: 20,
  },
  // 6 A x (14 ft x 4.016 x 1.0393 + 3) mOhm = 0.369 V, of 0.384 V; 310.16 15 A (18 A at 90 degC x 0.866); 6 x 1.25 =
  // 7.5, fuse 7.5; far 12.80 V / (28 + 70.27) mOhm = 130.3 A: 0.0139 s, wire 1.34 s; near 12.80 V / 14 mOhm = 914 A:
  // 0.00224 s, wire 0.0271 s
  {
    entries: { run: 'Load', peak: 6, length: 7, ownSize: '16 AWG', volts: 12.8 },
    supply: { milliohms: 14 },
    verdict: ['ok'],
    size: '16 AWG',
    fuse: 7.5,
  },
  // 4 A x (10 ft x 6.385 x 1.0393 + 3) mOhm = 0.277 V, of 0.36 V; 310.16 12 A (14 A at 90 degC x 0.866); 4 x 1.25 = 5,
  // fuse 5; far 12.03 V / (40 + 79.4) mOhm = 100.7 A: 0.0109 s, wire 0.883 s; near 12.65 V / 20 mOhm = 632 A: 0.00222
  // s, wire 0.0224 s
  {
    entries: { run: 'Load', peak: 4, length: 5 },
    supply: { milliohms: 20 },
    verdict: ['ok'],
    size: '18 AWG',
    fuse: 5,
  },
  // 10 AWG is too thin: 310.16 35 A; 40 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.224 V, of 0.36 V; 310.16 50 A; 40 x
  // 1.25 = 50, fuse 50; far 12.03 V / (25.6 + 6.007) mOhm = 380.5 A: 0.624 s, wire 6.39 s; near 12.65 V / 12.8 mOhm =
  // 988 A: 0.0941 s, wire 0.948 s
  {
    entries: { run: 'Load', peak: 40, length: 2 },
    supply: { milliohms: 12.8 },
    verdict: ['ok'],
    size: '8 AWG',
    fuse: 50,
  },
  // 1.5 mm2 is too thin: 6 A x (10 m x 13.3 x 1.0393 + 3) mOhm = 0.847 V of 0.600 V; 6 A x (10 m x 7.98 x 1.0393 + 3)
  // mOhm = 0.516 V, of 0.6 V; 310.16 20 A (counts as 14 AWG); 6 x 1.25 = 7.5, fuse 7.5; far 12.03 V / (100 + 98.48)
  // mOhm = 60.59 A: 0.0572 s, wire 22.5 s; near 12.65 V / 50 mOhm = 253 A: 0.00516 s, wire 1.29 s
  {
    entries: { run: 'Load', peak: 6, length: 5 },
    rules: { unit: 'm', series: 'mm2', target: 0.05, volts: 12 },
    verdict: ['ok'],
    size: '2.5 mm2',
    fuse: 7.5,
  },
  // 1.5 mm2 is too thin: 3 A x (20 m x 13.3 x 1.0393 + 3) mOhm = 0.838 V of 0.720 V; 3 A x (20 m x 7.98 x 1.0393 + 3)
  // mOhm = 0.507 V, of 0.72 V; 310.16 20 A (counts as 14 AWG); 3 x 1.25 = 3.75, fuse 4; far 24.00 V / (100 + 194) mOhm
  // = 81.64 A: 0.0106 s, wire 12.4 s; near 24.00 V / 50 mOhm = 480 A: 0.00225 s, wire 0.359 s
  {
    entries: { run: 'Load', peak: 3, length: 10, volts: 24 },
    rules: { unit: 'm', series: 'mm2' },
    verdict: ['ok'],
    size: '2.5 mm2',
    fuse: 4,
  },
  // 14 AWG is too thin: 8 A x (20 ft x 2.525 x 1.0393 + 3) mOhm = 0.444 V of 0.360 V; 8 A x (20 ft x 1.588 x 1.0393 +
  // 3) mOhm = 0.288 V, of 0.36 V; 310.16 25 A; 8 x 1.25 = 10, fuse 10; far 12.03 V / (100 + 41) mOhm = 85.29 A: 0.0515
  // s, wire 19.9 s; near 12.65 V / 50 mOhm = 253 A: 0.00762 s, wire 2.26 s
  {
    entries: { run: 'Load', peak: 8, length: 10 },
    rules: { series: 'AWG all' },
    verdict: ['ok'],
    size: '12 AWG',
    fuse: 10,
  },
  // 12 AWG is too thin: 15 A x (12 ft x 1.588 x 1.1179 + 3) mOhm = 0.365 V of 0.360 V; 15 A x (12 ft x 0.9989 x 1.1179
  // + 3) mOhm = 0.246 V, of 0.36 V; 310.16 35 A; 15 x 1.25 = 18.75, fuse 20; far 12.03 V / (100 + 17.34) mOhm = 102.5
  // A: 0.16 s, wire 34.9 s; near 12.65 V / 50 mOhm = 253 A: 0.0245 s, wire 5.72 s
  {
    entries: { run: 'Load', peak: 15, length: 6 },
    rules: { tempC: 50 },
    verdict: ['ok'],
    size: '10 AWG',
    fuse: 20,
  },
  // 10 AWG is too thin: 310.16 35 A x sqrt(30/45) = 28.6 A; 30 A x (8 ft x 0.6282 x 1.0982 + 3) mOhm = 0.256 V, of
  // 0.36 V; 310.16 50 A x sqrt(30/45) = 40.8 A; 30 x 1.25 = 37.5, fuse 40; far 12.03 V / (100 + 9.013) mOhm = 110.3 A:
  // 1.33 s, wire 76.1 s; near 12.65 V / 50 mOhm = 253 A: 0.137 s, wire 14.5 s
  {
    entries: { run: 'Load', peak: 30, length: 4 },
    rules: { ambientC: 45 },
    verdict: ['ok'],
    size: '8 AWG',
    fuse: 40,
  },
  // 14 AWG is too thin: 310.16 20 A x 0.7 = 14.0 A, fuse 15; 12 A x (10 ft x 1.588 x 1.0393 + 3) mOhm = 0.234 V, of
  // 0.36 V; 310.16 25 A x 0.7 = 17.5 A; 12 x 1.25 = 15, fuse 15; far 12.03 V / (100 + 22) mOhm = 98.57 A: 0.0854 s,
  // wire 14.9 s; near 12.65 V / 50 mOhm = 253 A: 0.0147 s, wire 2.26 s
  {
    entries: { run: 'Load', peak: 12, length: 5 },
    rules: { conductors: 8 },
    verdict: ['ok'],
    size: '12 AWG',
    fuse: 15,
  },
  // 12 AWG is too thin: fuse 30 over the 20 A of 240.4(D); 24 A x (6 ft x 0.9989 x 1.0393 + 3) mOhm = 0.221 V, of 0.36
  // V; 310.17 50 A; 24 x 1.25 = 30, fuse 30; far 12.03 V / (100 + 10.17) mOhm = 109.2 A: 0.445 s, wire 30.7 s; near
  // 12.65 V / 50 mOhm = 253 A: 0.0526 s, wire 5.72 s
  {
    entries: { run: 'Load', peak: 24, length: 3 },
    rules: { installed: 'air' },
    verdict: ['ok'],
    size: '10 AWG',
    fuse: 30,
  },
  // without the limit of 240.4(D); 16 AWG is too thin: 16 A x (6 ft x 4.016 x 1.0393 + 3) mOhm = 0.449 V of 0.360 V;
  // 16 A x (6 ft x 2.525 x 1.0393 + 3) mOhm = 0.300 V, of 0.36 V; 310.16 20 A; 16 x 1.25 = 20, fuse 20; far 12.03 V /
  // (100 + 21.13) mOhm = 99.28 A: 0.176 s, wire 5.81 s; near 12.65 V / 50 mOhm = 253 A: 0.0245 s, wire 0.895 s
  {
    entries: { run: 'Load', peak: 16, length: 3 },
    rules: { fuseLimit: 'none' },
    verdict: ['ok'],
    size: '14 AWG',
    fuse: 20,
  },
  // 18 A x (8 ft x 1.588 x 1.0393 + 3) mOhm = 0.292 V, of 0.36 V; table 5 45 A; 18 x 1.25 = 22.5, fuse 25; far 12.03 V
  // / (100 + 18.2) mOhm = 101.7 A: 0.319 s, wire 14 s; near 12.65 V / 50 mOhm = 253 A: 0.0372 s, wire 2.26 s
  {
    entries: { run: 'Load', peak: 18, length: 4, ownSize: '12 AWG' },
    rules: { installed: 'craft', insulationC: 105 },
    verdict: ['ok'],
    size: '12 AWG',
    fuse: 25,
  },
  // 14 AWG is too thin: 15 A x (8 ft x 2.525 x 1.1179 + 3) mOhm = 0.384 V of 0.360 V; 15 A x (8 ft x 1.588 x 1.1179 +
  // 3) mOhm = 0.258 V, of 0.36 V; table 5 45 A x 0.85 = 38.2 A; 15 x 1.25 = 18.75, fuse 20; far 12.03 V / (100 + 18.2)
  // mOhm = 101.7 A: 0.164 s, wire 14 s; near 12.65 V / 50 mOhm = 253 A: 0.0245 s, wire 2.26 s
  {
    entries: { run: 'Load', peak: 15, length: 4 },
    rules: { installed: 'engine space', insulationC: 105 },
    verdict: ['ok'],
    size: '12 AWG',
    fuse: 20,
  },
  // 8 AWG is too thin: 20 A x (16 ft x 0.6282/0.61 x 1.0403 + 3) mOhm = 0.403 V of 0.360 V; 20 A x (16 ft x
  // 0.3951/0.61 x 1.0403 + 3) mOhm = 0.276 V, of 0.36 V; 310.16 aluminium 50 A; 20 x 1.25 = 25, fuse 25; far 12.03 V /
  // (100 + 15.45) mOhm = 104.2 A: 0.297 s, wire 94.2 s; near 12.65 V / 50 mOhm = 253 A: 0.0372 s, wire 16 s
  {
    entries: { run: 'Load', peak: 20, length: 8 },
    rules: { material: 'aluminium' },
    verdict: ['ok'],
    size: '6 AWG',
    fuse: 25,
  },
  // 16 AWG is too thin: 8 A x (12 ft x 4.016/0.9616 x 1.0393 + 3) mOhm = 0.441 V of 0.360 V; 8 A x (12 ft x
  // 2.525/0.9616 x 1.0393 + 3) mOhm = 0.286 V, of 0.36 V; 310.16 20 A; 8 x 1.25 = 10, fuse 10; far 12.03 V / (100 +
  // 40.7) mOhm = 85.47 A: 0.0513 s, wire 7.84 s; near 12.65 V / 50 mOhm = 253 A: 0.00762 s, wire 0.895 s
  {
    entries: { run: 'Load', peak: 8, length: 6 },
    rules: { material: 'tinned copper' },
    verdict: ['ok'],
    size: '14 AWG',
    fuse: 10,
  },
  // 2/0 AWG is too thin: 100 A x (8 ft x 0.07793 x 1.0393 + 3) mOhm = 0.365 V of 0.360 V; 100 A x (8 ft x 0.0618 x
  // 1.0393 + 3) mOhm = 0.351 V, of 0.36 V; 310.16 200 A; 100 x 1.25 = 125, fuse 125
  {
    entries: { run: 'Load', peak: 100, length: 4 },
    supply: { milliohms: 7 },
    verdict: ['ok'],
    size: '3/0 AWG',
    fuse: 125,
  },
  // 20 A x (12 ft x 3.3 x 0.3048 x 1.0393 + 3) mOhm = 0.311 V, of 0.6 V; 310.16 35 A (counts as 10 AWG); 20 x 1.25 =
  // 25, fuse 25; far 12.03 V / (100 + 17.44) mOhm = 102.4 A: 0.313 s, wire 45.4 s; near 12.65 V / 50 mOhm = 253 A:
  // 0.0372 s, wire 7.44 s
  {
    entries: { run: 'Load', peak: 20, length: 6, ownSize: '6 mm2' },
    rules: { target: 0.05 },
    verdict: ['ok'],
    size: '6 mm2',
    fuse: 25,
  },
  // 6 AWG is too thin: 15 A x (48 ft x 0.3951 x 1.0393 + 3) mOhm = 0.341 V of 0.340 V; 15 A x (48 ft x 0.2485 x 1.0393
  // + 3) mOhm = 0.231 V, of 0.34 V; 310.16 85 A; 15 x 1.25 = 18.75, fuse 20; a panel limits its own fault; 21 V of a
  // blade of 32 V
  {
    entries: { run: 'Load', peak: 15, length: 24, fedFrom: 'panel' },
    supply: { panelVolts: 17, openCircuitVolts: 21, shortCircuitAmps: 9.6 },
    verdict: ['ok'],
    size: '4 AWG',
    fuse: 20,
  },
  // Trunk: 15 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.084 V; 18.75, fuse 20; 3 A x (4 ft x 1.588 x 1.0393) mOhm =
  // 0.020 V, 0.104 V in all, of 0.36 V; 310.16 25 A; far 12.03 V / (100 + 13.61) mOhm = 105.9 A: 0.145 s, wire 12.9 s;
  // near 12.65 V / 55.61 mOhm = 227 A: 0.0298 s, wire 2.8 s
  {
    entries: {
      run: 'Branch',
      fedFrom: 'Trunk',
      fused: 'no',
      peak: 3,
      length: 2,
      ownSize: '12 AWG',
    },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 12 }],
    verdict: ['ok'],
    size: '12 AWG',
    fuse: 'none',
  },
  // Trunk: 21 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.118 V; 26.25, fuse 30; 1 A x (6 ft x 0.9989 x 1.0393) mOhm =
  // 0.006 V, 0.124 V in all, of 0.36 V; 310.16 35 A; far 12.03 V / (100 + 13.18) mOhm = 106.3 A: 0.483 s, wire 32.4 s;
  // near 12.65 V / 55.61 mOhm = 227 A: 0.0646 s, wire 7.07 s
  {
    entries: {
      run: 'Branch',
      fedFrom: 'Trunk',
      fused: 'no',
      peak: 1,
      length: 3,
      ownSize: '10 AWG',
    },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 20 }],
    verdict: ['ok'],
    size: '10 AWG',
    fuse: 'none',
  },
  // 14 AWG is too thin: 14 A x (10 ft x 2.525 x 1.0393 + 1) mOhm = 0.381 V of 0.360 V; 14 A x (10 ft x 1.588 x 1.0393
  // + 1) mOhm = 0.245 V, of 0.36 V; 310.16 25 A; 14 x 1.25 = 17.5, fuse 20; far 12.03 V / (100 + 20) mOhm = 100.2 A:
  // 0.171 s, wire 14.4 s; near 12.65 V / 50 mOhm = 253 A: 0.0245 s, wire 2.26 s; 12.026 V less 14 A x 50 mOhm less
  // 0.245 V = 11.08 V
  {
    entries: { run: 'Load', peak: 14, length: 5, joints: 1, leastVolts: 11 },
    verdict: ['ok'],
    size: '12 AWG',
    fuse: 20,
  },
  // 60 W / 10 V = 6.00 A; 16 AWG is too thin: 6 A x (20 ft x 4.016 x 1.0393 + 3) mOhm = 0.519 V of 0.360 V; 6 A x (20
  // ft x 2.525 x 1.0393 + 3) mOhm = 0.333 V, of 0.36 V; 310.16 20 A; 6.25, fuse 7.5; far 12.03 V / (100 + 63.42) mOhm
  // = 73.59 A: 0.0394 s, wire 10.6 s; near 12.65 V / 50 mOhm = 253 A: 0.00516 s, wire 0.895 s; 12.026 V less 6 A x 50
  // mOhm; 5.25 A through 55.48 mOhm leaves 11.43 V
  {
    entries: { run: 'Load', kind: 'W', peak: 60, length: 10, leastVolts: 10 },
    verdict: ['ok'],
    size: '14 AWG',
    fuse: 7.5,
  },
  // four feeders above it are followed; R1: 1 A x (4 ft x 0.9989 x 1.0393 + 3) mOhm = 0.007 V; 1.25, fuse 2; R2: 1 A x
  // (4 ft x 0.9989 x 1.0393 + 3) mOhm = 0.007 V; 1.25, fuse 2; R3: 1 A x (4 ft x 0.9989 x 1.0393 + 3) mOhm = 0.007 V;
  // 1.25, fuse 2; R4: 1 A x (4 ft x 0.9989 x 1.0393 + 3) mOhm = 0.007 V; 1.25, fuse 2; 1 A x (4 ft x 6.385 x 1.0393 +
  // 3) mOhm = 0.030 V, 0.058 V in all, of 0.36 V; 310.16 12 A (14 A at 90 degC x 0.866); 1 x 1.25 = 1.25, fuse 2; far
  // 12.03 V / (100 + 64.68) mOhm = 73.03 A: 0.0047 s, wire 1.68 s; near 12.65 V / 78.61 mOhm = 161 A: 0.00256 s, wire
  // 0.346 s
  {
    entries: { run: 'R5', fedFrom: 'R4', peak: 1, length: 2 },
    others: [
      { run: 'R1', length: 2, ownSize: '10 AWG' },
      { run: 'R2', fedFrom: 'R1', length: 2, ownSize: '10 AWG' },
      { run: 'R3', fedFrom: 'R2', length: 2, ownSize: '10 AWG' },
      { run: 'R4', fedFrom: 'R3', length: 2, ownSize: '10 AWG' },
    ],
    verdict: ['ok'],
    size: '18 AWG',
    fuse: 2,
  },
  // a run off the battery that feeds nothing needs no name; 18 AWG is too thin: 4 A x (16 ft x 6.385 x 1.0393 + 1)
  // mOhm = 0.429 V of 0.360 V; 4 A x (16 ft x 4.016 x 1.0393 + 1) mOhm = 0.271 V, of 0.36 V; 310.16 15 A (18 A at 90
  // degC x 0.866); 4 x 1.25 = 5, fuse 5; far 12.03 V / (100 + 77.88) mOhm = 67.61 A: 0.0217 s, wire 4.96 s; near 12.65
  // V / 50 mOhm = 253 A: 0.00341 s, wire 0.354 s
  { entries: { peak: 4, length: 8, joints: 1 }, verdict: ['ok'], size: '16 AWG', fuse: 5 },
  // 90 W / 9.5 V = 9.47 A, the most that it may draw, and wire is chosen for a fuse of 125 % of that: 11.84, fuse 15, over
  // the 10 A that 240.4(D) allows 16 AWG; 9.474 A x (8 ft x 2.525 x 1.0393 + 3) mOhm = 0.227 V, of 0.36 V; 310.16 20 A;
  // its own fuse needs 125 % of 90 W / 12 V only, or 9.474 A: fuse 10; far 12.03 V / (100 + 27.17) mOhm = 94.57 A: 0.0423
  // s, wire 6.4 s; near 12.65 V / 50 mOhm = 253 A: 0.00762 s, wire 0.895 s; 12.026 V less 9.474 A x 50 mOhm; 7.92 A
  // through 23.99 mOhm leaves 11.36 V
  {
    entries: { run: 'Load', kind: 'W', peak: 90, length: 4, leastVolts: 9.5 },
    verdict: ['ok'],
    size: '14 AWG',
    fuse: 10,
  },
  // what it gives over what it takes in is known; low charge, less the target: 12.026 V less 20.7 A x 15 mOhm less
  // 0.36 V = 11.36 V: 200 W / 0.85 / 11.36 V = 20.72 A; 12 AWG is too thin: fuse 25 over the 20 A of 240.4(D); 20.72 A
  // x (8 ft x 0.9989 x 1.0393 + 3) mOhm = 0.234 V, of 0.36 V; 310.16 35 A; 24.51, fuse 25; far 12.03 V / (30 + 12.56)
  // mOhm = 282.6 A: 0.0302 s, wire 4.59 s; near 12.65 V / 15 mOhm = 843 A: 0.00516 s, wire 0.515 s; 12.026 V less
  // 20.72 A x 15 mOhm; 20.49 A through 11.31 mOhm leaves 11.48 V
  {
    entries: { run: 'Load', kind: 'W', peak: 200, length: 4, efficiency: 0.85 },
    supply: { milliohms: 15 },
    verdict: ['ok'],
    size: '10 AWG',
    fuse: 25,
  },
  // 16 AWG is too thin: 10 A x (8 ft x 4.016 x 1.0393 + 3) mOhm = 0.364 V of 0.360 V; 10 A x (8 ft x 2.525 x 1.0393 +
  // 3) mOhm = 0.240 V, of 0.36 V; 310.16 20 A; 10 x 1.25 = 12.5, fuse 15; far 12.03 V / (100 + 27.17) mOhm = 94.57 A:
  // 0.0926 s, wire 6.4 s; near 12.65 V / 50 mOhm = 253 A: 0.0147 s, wire 0.895 s; 39.6 in without a fuse, of 40 in
  {
    entries: { run: 'Load', peak: 10, length: 4, unfused: 3.3 },
    verdict: ['ok'],
    size: '14 AWG',
    fuse: 15,
  },
  // charging 24 x 2.4 = 57.6 V, a blade of 58 V; 18 AWG is too thin: fuse 7.5 over the 7 A of 240.4(D); 5 A x (40 ft x
  // 4.016 x 1.0393 + 3) mOhm = 0.850 V, of 1.44 V; 310.16 15 A (18 A at 90 degC x 0.866); 5 x 1.25 = 6.25, fuse 7.5;
  // far 48.10 V / (120 + 195.2) mOhm = 152.6 A: 0.0107 s, wire 0.973 s; near 50.60 V / 60 mOhm = 843 A: 0.00228 s,
  // wire 0.0318 s
  {
    entries: { run: 'Load', peak: 5, length: 20 },
    rules: { volts: 48 },
    supply: { milliohms: 60 },
    protection: { fuses: [{ ratedVolts: 58 }] },
    verdict: ['ok'],
    size: '16 AWG',
    fuse: 7.5,
  },
  // 16 AWG is too thin: 10 A x (8 ft x 4.016 x 1.0393 + 3) mOhm = 0.364 V of 0.360 V; 10 A x (8 ft x 2.525 x 1.0393 +
  // 3) mOhm = 0.240 V, of 0.36 V; 310.16 20 A; 10 x 1.25 = 12.5, fuse 15; far 12.03 V / (10 + 27.17) mOhm = 323.5 A:
  // 0.00974 s, wire 0.547 s; near 12.65 V / 14.06 mOhm = 900 A: 0.003 s, wire 0.0707 s; main 100 A, 2 AWG 310.16 115
  // A, blade breaks 1000 A of 900 A, 32 V of 14.4 V, loads 10 A
  {
    entries: { run: 'Load', peak: 10, length: 4 },
    supply: { batteryShortAmps: 900, mainFuse: 100, mainCable: '2 AWG' },
    usualMilliohms: true,
    verdict: ['ok'],
    size: '14 AWG',
    fuse: 15,
  },
  // 10 A x (18 ft x 1.588 x 1.0393 + 3) mOhm = 0.327 V, of 0.36 V; 310.16 25 A; 10 x 1.25 = 12.5, fuse 15; far 12.03 V
  // / (100 + 37.2) mOhm = 87.65 A: 0.108 s, wire 18.8 s; near 12.65 V / 50 mOhm = 253 A: 0.0147 s, wire 2.26 s
  {
    entries: { run: 'Load', peak: 10, length: 9, ownSize: '12 AWG' },
    rules: { counts: 'in each run' },
    verdict: ['ok'],
    size: '12 AWG',
    fuse: 15,
  },
  // each run keeps its 3 % by itself; Trunk: 14 A x (12 ft x 0.9989 x 1.0393 + 3) mOhm = 0.216 V; 17.5, fuse 20; 10 A
  // x (16 ft x 1.588 x 1.0393 + 3) mOhm = 0.294 V, of 0.36 V; 310.16 25 A; 10 x 1.25 = 12.5, fuse 15; far 12.03 V /
  // (100 + 50.74) mOhm = 79.78 A: 0.143 s, wire 22.7 s; near 12.65 V / 65.46 mOhm = 193 A: 0.0237 s, wire 3.88 s
  {
    entries: { run: 'Branch', fedFrom: 'Trunk', peak: 10, length: 8, ownSize: '12 AWG' },
    others: [{ run: 'Trunk', length: 6, ownSize: '10 AWG', peak: 4 }],
    rules: { counts: 'in each run' },
    verdict: ['ok'],
    size: '12 AWG',
    fuse: 15,
  },
  // each run keeps its 3 % by itself, and its volts are worked out as though both were lost; low charge, less two targets:
  // 12.026 V less 10.0 A x 50 mOhm less 0.72 V, and a hundredth less = 10.70 V: 60 W / 10.70 V = 5.61 A; Trunk: 10.61 A x
  // (14 ft x 1.588 x 1.0393 + 3) mOhm = 0.277 V; 12.5, fuse 15; 5.61 A x (20 ft x 2.525 x 1.0393 + 3) mOhm = 0.311 V, of
  // 0.36 V; 310.16 20 A; 6.25, fuse 7.5; far 12.03 V / (100 + 93.02) mOhm = 62.3 A: 0.0542 s, wire 14.8 s; near 12.65 V /
  // 76.11 mOhm = 166 A: 0.00933 s, wire 2.07 s; 12.026 V less 10.61 A x 50 mOhm less 0.277 V; 5.5 A through 55.48 mOhm
  // leaves 10.91 V
  {
    entries: {
      run: 'Branch',
      fedFrom: 'Trunk',
      kind: 'W',
      peak: 60,
      length: 10,
      ownSize: '14 AWG',
    },
    others: [{ run: 'Trunk', length: 7, ownSize: '12 AWG', peak: 5 }],
    rules: { counts: 'in each run' },
    verdict: ['ok'],
    size: '14 AWG',
    fuse: 7.5,
  },
  // the three share the target; A: 20 A x (10 ft x 0.2485 x 1.0393 + 3) mOhm = 0.112 V; 25, fuse 25; B: 20 A x (10 ft
  // x 0.2485 x 1.0393 + 3) mOhm = 0.112 V; 25, fuse 25; 6 AWG is too thin: 20 A x (10 ft x 0.3951 x 1.0393 + 3) mOhm =
  // 0.142 V of 0.137 V; 20 A x (10 ft x 0.2485 x 1.0393 + 3) mOhm = 0.112 V, 0.335 V in all, of 0.36 V; 310.16 85 A;
  // 20 x 1.25 = 25, fuse 25; far 12.03 V / (100 + 17.92) mOhm = 102 A: 0.316 s, wire 569 s; near 12.65 V / 61.17 mOhm
  // = 207 A: 0.0546 s, wire 138 s
  {
    entries: { run: 'Load', fedFrom: 'B', peak: 20, length: 5 },
    others: [
      { run: 'A', length: 5 },
      { run: 'B', fedFrom: 'A', length: 5 },
    ],
    verdict: ['ok'],
    size: '4 AWG',
    fuse: 25,
  },
];
