/** Rows in which a short circuit is not cleared as it should be, worked out by hand from the tables named beside each. */
import type { StatedRow } from './stated-row';

export const FUSE_TOO_SLOW: readonly StatedRow[] = [
  // 10 AWG is too thin: 310.16 35 A; 40 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.224 V, of 0.36 V; 310.16 50 A; 40 x
  // 1.25 = 50, fuse 50; far 12.03 V / (134 + 6.007) mOhm = 85.9 A: 224 s, wire 125 s; near 12.65 V / 67 mOhm = 189 A:
  // 5.32 s, wire 26 s
  {
    entries: { run: 'Load', peak: 40, length: 2 },
    supply: { milliohms: 67 },
    verdict: ['fuseTooSlow'],
    size: '8 AWG',
    fuse: 50,
  },
  // 12 AWG is too thin: 310.16 25 A, fuse 30; 24 A x (6 ft x 0.9989 x 1.0393 + 3) mOhm = 0.221 V, of 0.36 V; 310.16 35
  // A; 24 x 1.25 = 30, fuse 30; far 12.03 V / (276 + 10.17) mOhm = 42.02 A: 350 s, wire 207 s; near 12.65 V / 138 mOhm
  // = 92 A: 0.874 s, wire 43.6 s
  {
    entries: { run: 'Load', peak: 24, length: 3 },
    supply: { milliohms: 138 },
    verdict: ['fuseTooSlow'],
    size: '10 AWG',
    fuse: 30,
  },
  // 16 AWG is too thin: 12 A x (8 ft x 4.016 x 1.0393 + 3) mOhm = 0.437 V of 0.360 V; 12 A x (8 ft x 2.525 x 1.0393 +
  // 3) mOhm = 0.288 V, of 0.36 V; 310.16 20 A; 12 x 1.25 = 15, fuse 15; far 12.03 V / (540 + 27.17) mOhm = 21.2 A: 306
  // s, wire 127 s; near 12.65 V / 270 mOhm = 47 A: 0.799 s, wire 26.1 s
  {
    entries: { run: 'Load', peak: 12, length: 4 },
    supply: { milliohms: 270 },
    verdict: ['fuseTooSlow'],
    size: '14 AWG',
    fuse: 15,
  },
  // 4 A x (10 ft x 6.385 x 1.0393 + 3) mOhm = 0.277 V, of 0.36 V; 310.16 12 A (14 A at 90 degC x 0.866); 4 x 1.25 = 5,
  // fuse 5; far 12.03 V / (1620 + 79.4) mOhm = 7.077 A: 301 s, wire 179 s; near 12.65 V / 810 mOhm = 16 A: 0.799 s,
  // wire 36.7 s
  {
    entries: { run: 'Load', peak: 4, length: 5 },
    supply: { milliohms: 810 },
    verdict: ['fuseTooSlow'],
    size: '18 AWG',
    fuse: 5,
  },
  // 14 AWG is too thin: fuse 20 over the 15 A of 240.4(D); 16 A x (6 ft x 1.588 x 1.0393 + 3) mOhm = 0.206 V, of 0.36
  // V; 310.16 25 A; 16 x 1.25 = 20, fuse 20; far 12.03 V / (414 + 14.4) mOhm = 28.07 A: 340 s, wire 184 s; near 12.65
  // V / 207 mOhm = 61 A: 0.874 s, wire 38.8 s
  {
    entries: { run: 'Load', peak: 16, length: 3 },
    supply: { milliohms: 207 },
    verdict: ['fuseTooSlow'],
    size: '12 AWG',
    fuse: 20,
  },
  // a fuse of whose kind no times are published; its maker's I2t counts where it opens within 0.1 s: 60,000 A2s / 904^2 +
  // 2 ms; 12 A x (8 ft x 2.525 x 1.0393 + 3) mOhm = 0.288 V, of 0.36 V; 310.16 20 A; 12 x 1.25 = 15, fuse 15; near
  // 12.65 V / 14 mOhm = 904 A: 0.0755 s, wire 0.0701 s
  {
    entries: { run: 'Load', peak: 12, length: 4, ownSize: '14 AWG' },
    supply: { milliohms: 14 },
    protection: { fuses: [{ kind: 'high-breaking', i2t: 60000 }] },
    verdict: ['fuseTooSlow'],
    size: '14 AWG',
    fuse: 15,
  },
  // Trunk: 20.5 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.115 V; 25.62, fuse 30; 0.5 A x (18 ft x 6.385 x 1.0393) mOhm
  // = 0.060 V, 0.175 V in all, of 0.36 V; 310.16 12 A (14 A at 90 degC x 0.866); far 12.03 V / (100 + 143.5) mOhm =
  // 49.38 A: 37.3 s, wire 3.67 s; near 12.65 V / 55.61 mOhm = 227 A: 0.0646 s, wire 0.173 s
  {
    entries: {
      run: 'Branch',
      fedFrom: 'Trunk',
      fused: 'no',
      peak: 0.5,
      length: 9,
      ownSize: '18 AWG',
    },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 20 }],
    verdict: ['needsFuse', 'fuseTooSlow'],
    size: '18 AWG',
    fuse: 'none',
  },
  // Trunk: 36.5 A x (4 ft x 0.3951 x 1.0393 + 3) mOhm = 0.169 V; 45.62, fuse 50; 0.5 A x (20 ft x 1.588 x 1.0393) mOhm
  // = 0.017 V, 0.186 V in all, of 0.36 V; 310.16 25 A; far 12.03 V / (100 + 42.89) mOhm = 84.16 A: 267 s, wire 20.4 s;
  // near 12.65 V / 54.64 mOhm = 232 A: 2.55 s, wire 2.7 s
  {
    entries: {
      run: 'Branch',
      fedFrom: 'Trunk',
      fused: 'no',
      peak: 0.5,
      length: 10,
      ownSize: '12 AWG',
    },
    others: [{ run: 'Trunk', length: 2, ownSize: '6 AWG', peak: 36 }],
    verdict: ['needsFuse', 'fuseTooSlow'],
    size: '12 AWG',
    fuse: 'none',
  },
];

export const FAULT_TOO_WEAK: readonly StatedRow[] = [
  // Trunk: 20.5 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.115 V; 25.62, fuse 30; 0.5 A x (500 ft x 0.9989 x 1.0393)
  // mOhm = 0.260 V, 0.375 V in all, of 0.6 V; 310.16 35 A; far 12.03 V / (100 + 603.6) mOhm = 17.09 A, under 1.35 x 30
  // = 40.5 A; near 12.65 V / 55.61 mOhm = 227 A: 0.0646 s, wire 7.07 s
  {
    entries: {
      run: 'Branch',
      fedFrom: 'Trunk',
      fused: 'no',
      peak: 0.5,
      length: 250,
      ownSize: '10 AWG',
    },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 20 }],
    rules: { target: 0.05 },
    verdict: ['faultTooWeak'],
    size: '10 AWG',
    fuse: 'none',
  },
  // Trunk: 37.5 A x (4 ft x 0.3951 x 1.0393 + 3) mOhm = 0.174 V; 46.88, fuse 50; 1.5 A x (300 ft x 0.6282 x 1.0393)
  // mOhm = 0.294 V, 0.468 V in all, of 0.6 V; 310.16 50 A; far 12.03 V / (100 + 230.4) mOhm = 36.4 A, under 1.35 x 50
  // = 67.5 A; near 12.65 V / 54.64 mOhm = 232 A: 2.55 s, wire 17.3 s
  {
    entries: {
      run: 'Branch',
      fedFrom: 'Trunk',
      fused: 'no',
      peak: 1.5,
      length: 150,
      ownSize: '8 AWG',
    },
    others: [{ run: 'Trunk', length: 2, ownSize: '6 AWG', peak: 36 }],
    rules: { target: 0.05 },
    verdict: ['faultTooWeak'],
    size: '8 AWG',
    fuse: 'none',
  },
  // Trunk: 15.2 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.085 V; 19, fuse 20; 0.2 A x (160 ft x 4.016 x 1.0393) mOhm =
  // 0.134 V, 0.219 V in all, of 0.36 V; 310.16 15 A (18 A at 90 degC x 0.866); far 12.03 V / (100 + 774.8) mOhm =
  // 13.75 A, under 1.35 x 20 = 27 A; near 12.65 V / 55.61 mOhm = 227 A: 0.0298 s, wire 0.438 s
  {
    entries: {
      run: 'Branch',
      fedFrom: 'Trunk',
      fused: 'no',
      peak: 0.2,
      length: 80,
      ownSize: '16 AWG',
    },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 15 }],
    verdict: ['needsFuse', 'faultTooWeak'],
    size: '16 AWG',
    fuse: 'none',
  },
  // Trunk: 20.5 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.115 V; 25.62, fuse 30; 0.5 A x (36 ft x 6.385 x 1.0393) mOhm
  // = 0.119 V, 0.234 V in all, of 0.36 V; 310.16 12 A (14 A at 90 degC x 0.866); far 12.03 V / (100 + 281) mOhm =
  // 31.56 A, under 1.35 x 30 = 40.5 A; near 12.65 V / 55.61 mOhm = 227 A: 0.0646 s, wire 0.173 s
  {
    entries: {
      run: 'Branch',
      fedFrom: 'Trunk',
      fused: 'no',
      peak: 0.5,
      length: 18,
      ownSize: '18 AWG',
    },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 20 }],
    verdict: ['needsFuse', 'faultTooWeak'],
    size: '18 AWG',
    fuse: 'none',
  },
  // a small, worn battery; 12 AWG is too thin: fuse 25 over the 20 A of 240.4(D); 20 A x (4 ft x 0.9989 x 1.0393 + 3)
  // mOhm = 0.143 V, of 0.36 V; 310.16 35 A; 20 x 1.25 = 25, fuse 25; far 12.03 V / (760 + 7.781) mOhm = 15.66 A, under
  // 1.35 x 25 = 33.75 A
  {
    entries: { run: 'Load', peak: 20, length: 2 },
    supply: { milliohms: 380 },
    verdict: ['faultTooWeak'],
    size: '10 AWG',
    fuse: 25,
  },
  // 16 AWG is too thin: fuse 15 over the 10 A of 240.4(D); 9 A x (8 ft x 2.525 x 1.0393 + 3) mOhm = 0.216 V, of 0.36
  // V; 310.16 20 A; 9 x 1.25 = 11.25, fuse 15; far 12.03 V / (1400 + 27.17) mOhm = 8.426 A, under 1.35 x 15 = 20.25 A
  {
    entries: { run: 'Load', peak: 9, length: 4 },
    supply: { milliohms: 700 },
    verdict: ['faultTooWeak'],
    size: '14 AWG',
    fuse: 15,
  },
  // with the milliohms as stated 12.65 V / 188 mOhm would be 67 A and open it; 12 AWG is too thin: fuse 25 over the 20
  // A of 240.4(D); 20 A x (4 ft x 0.9989 x 1.0393 + 3) mOhm = 0.143 V, of 0.36 V; 310.16 35 A; 20 x 1.25 = 25, fuse
  // 25; far 12.03 V / (360 + 7.781) mOhm = 32.7 A, under 1.35 x 25 = 33.75 A; near 12.65 V / 180 mOhm = 70 A: 1.23 s,
  // wire 74.1 s
  {
    entries: { run: 'Load', peak: 20, length: 2 },
    supply: { milliohms: 180 },
    verdict: ['faultTooWeak'],
    size: '10 AWG',
    fuse: 25,
  },
];

export const MAY_NOT_BREAK: readonly StatedRow[] = [
  // 5.2 milliohms, typed: near the usual 5 of 100 Ah, but measured; 22 A x (26 ft x 0.3951 x 1.0393 + 3) mOhm = 0.301
  // V, of 0.36 V; 310.16 65 A; 22 x 1.25 = 27.5, fuse 30; near 12.65 V / 5.2 mOhm = 2433 A, over 1000 A; far 12.03 V /
  // (10.4 + 15.29) mOhm = 468.1 A: 0.0168 s, wire 10.7 s
  {
    entries: { run: 'Load', peak: 22, length: 13, ownSize: '6 AWG' },
    supply: { milliohms: 5.2 },
    verdict: ['mayNotBreak'],
    size: '6 AWG',
    fuse: 30,
  },
  // 22 A x (26 ft x 0.3951 x 1.0393 + 3) mOhm = 0.301 V, of 0.36 V; 310.16 65 A; 22 x 1.25 = 27.5, fuse 30; near 12.65
  // V / 4 mOhm = 3162 A, over 1000 A; far 12.03 V / (8 + 15.29) mOhm = 516.3 A: 0.0142 s, wire 8.78 s
  {
    entries: { run: 'Load', peak: 22, length: 13, ownSize: '6 AWG' },
    supply: { milliohms: 4 },
    verdict: ['mayNotBreak'],
    size: '6 AWG',
    fuse: 30,
  },
  // 12 AWG is too thin: 20 A x (12 ft x 1.588 x 1.0393 + 3) mOhm = 0.456 V of 0.360 V; 20 A x (12 ft x 0.9989 x 1.0393
  // + 3) mOhm = 0.309 V, of 0.36 V; 310.16 35 A; 20 x 1.25 = 25, fuse 25; near 12.65 V / 8 mOhm = 1581 A, over 1000 A;
  // far 12.03 V / (16 + 17.34) mOhm = 360.7 A: 0.0193 s, wire 2.81 s
  {
    entries: { run: 'Load', peak: 20, length: 6 },
    supply: { milliohms: 8 },
    verdict: ['mayNotBreak'],
    size: '10 AWG',
    fuse: 25,
  },
  // 12 AWG is too thin: 1.5 A x (360 ft x 1.588 x 1.0393 + 3) mOhm = 0.896 V of 0.720 V; 1.5 A x (360 ft x 0.9989 x
  // 1.0393 + 3) mOhm = 0.565 V, of 0.72 V; 310.16 35 A; 1.5 x 1.25 = 1.875, fuse 2; near 24.00 V / 14 mOhm = 1714 A,
  // over 1000 A; far 24.00 V / (28 + 433.3) mOhm = 52.03 A: 0.00732 s, wire 135 s
  {
    entries: { run: 'Load', peak: 1.5, length: 180, volts: 24 },
    supply: { milliohms: 14 },
    verdict: ['mayNotBreak'],
    size: '10 AWG',
    fuse: 2,
  },
  // 2/0 AWG is too thin: 100 A x (8 ft x 0.07793 x 1.0393 + 3) mOhm = 0.365 V of 0.360 V; 100 A x (8 ft x 0.0618 x
  // 1.0393 + 3) mOhm = 0.351 V, of 0.36 V; 310.16 200 A; 100 x 1.25 = 125, fuse 125; near 12.65 V / 4.5 mOhm = 2811 A,
  // over 2000 A
  {
    entries: { run: 'Load', peak: 100, length: 4 },
    supply: { milliohms: 4.5 },
    verdict: ['mayNotBreak'],
    size: '3/0 AWG',
    fuse: 125,
  },
  // 48 A x (6 ft x 0.2485 x 1.0393 + 3) mOhm = 0.218 V, of 0.36 V; 310.16 85 A; 48 x 1.25 = 60, fuse 60; near 12.65 V
  // / 8 mOhm = 1581 A, over 1000 A; far 12.03 V / (16 + 4.784) mOhm = 578.6 A: 0.389 s, wire 17.7 s
  {
    entries: { run: 'Load', peak: 48, length: 3, ownSize: '4 AWG' },
    supply: { milliohms: 8 },
    verdict: ['mayNotBreak'],
    size: '4 AWG',
    fuse: 60,
  },
  // 6 A x (14 ft x 4.016 x 1.0393 + 3) mOhm = 0.369 V, of 0.6 V; 310.16 15 A (18 A at 90 degC x 0.866); 6 x 1.25 =
  // 7.5, fuse 7.5; near 12.65 V / 10 mOhm = 1265 A, over 1000 A; far 12.03 V / (20 + 70.27) mOhm = 133.2 A: 0.0134 s,
  // wire 1.28 s
  {
    entries: { run: 'Load', peak: 6, length: 7, ownSize: '16 AWG' },
    rules: { target: 0.05 },
    supply: { milliohms: 10 },
    verdict: ['mayNotBreak'],
    size: '16 AWG',
    fuse: 7.5,
  },
  // usual milliohms 500 / 200 Ah = 2.5, a strong battery half of them; 16 AWG is too thin: 10 A x (8 ft x 4.016 x
  // 1.0393 + 3) mOhm = 0.364 V of 0.360 V; 10 A x (8 ft x 2.525 x 1.0393 + 3) mOhm = 0.240 V, of 0.36 V; 310.16 20 A;
  // 10 x 1.25 = 12.5, fuse 15; near 12.65 V / 1.25 mOhm = 10120 A, over 1000 A; far 12.03 V / (5 + 27.17) mOhm = 373.8
  // A: 0.0078 s, wire 0.41 s
  {
    entries: { run: 'Load', peak: 10, length: 4 },
    supply: { ampHours: 200 },
    usualMilliohms: true,
    verdict: ['mayNotBreak'],
    size: '14 AWG',
    fuse: 15,
  },
  // 16 AWG is too thin: 10 A x (8 ft x 4.016 x 1.0393 + 3) mOhm = 0.364 V of 0.360 V; 10 A x (8 ft x 2.525 x 1.0393 +
  // 3) mOhm = 0.240 V, of 0.36 V; 310.16 20 A; 10 x 1.25 = 12.5, fuse 15; near 12.65 V / 9.036 mOhm = 1400 A, over
  // 1000 A; far 12.03 V / (10 + 27.17) mOhm = 323.5 A: 0.00974 s, wire 0.547 s
  {
    entries: { run: 'Load', peak: 10, length: 4 },
    supply: { batteryShortAmps: 1400 },
    usualMilliohms: true,
    verdict: ['mayNotBreak'],
    size: '14 AWG',
    fuse: 15,
  },
  // a main fuse breaks it, but a blade not half of it; 16 AWG is too thin: 10 A x (8 ft x 4.016 x 1.0393 + 3) mOhm =
  // 0.364 V of 0.360 V; 10 A x (8 ft x 2.525 x 1.0393 + 3) mOhm = 0.240 V, of 0.36 V; 310.16 20 A; 10 x 1.25 = 12.5,
  // fuse 15; near 12.65 V / 5.06 mOhm = 2500 A, over 1000 A; far 12.03 V / (10 + 27.17) mOhm = 323.5 A: 0.00974 s,
  // wire 0.547 s; main 200 A, 4/0 AWG 310.16 230 A, high-breaking breaks 20000 A of 2500 A, 125 V of 14.4 V, loads 10
  // A
  {
    entries: { run: 'Load', peak: 10, length: 4 },
    supply: {
      batteryShortAmps: 2500,
      mainFuse: 200,
      mainCable: '4/0 AWG',
      mainFuseKind: 'high-breaking',
    },
    usualMilliohms: true,
    verdict: ['mayNotBreak'],
    size: '14 AWG',
    fuse: 15,
  },
];

export const FUSE_VOLTS: readonly StatedRow[] = [
  // charging 24 x 2.4 V; 18 AWG is too thin: fuse 7.5 over the 7 A of 240.4(D); 5 A x (40 ft x 4.016 x 1.0393 + 3)
  // mOhm = 0.850 V, of 1.44 V; 310.16 15 A (18 A at 90 degC x 0.866); 5 x 1.25 = 6.25, fuse 7.5; 57.6 V, a blade of 32
  // V; far 48.10 V / (120 + 195.2) mOhm = 152.6 A: 0.0107 s, wire 0.973 s; near 50.60 V / 60 mOhm = 843 A: 0.00228 s,
  // wire 0.0318 s
  {
    entries: { run: 'Load', peak: 5, length: 20 },
    rules: { volts: 48 },
    supply: { milliohms: 60 },
    verdict: ['fuseVolts'],
    size: '16 AWG',
    fuse: 7.5,
  },
  // 18 AWG is too thin: 5 A x (40 ft x 6.385 x 1.0393 + 3) mOhm = 1.342 V of 1.080 V; 5 A x (40 ft x 4.016 x 1.0393 +
  // 3) mOhm = 0.850 V, of 1.08 V; 310.16 15 A (18 A at 90 degC x 0.866); 5 x 1.25 = 6.25, fuse 7.5; 36 V, a blade of
  // 32 V; far 36.00 V / (100 + 195.2) mOhm = 121.9 A: 0.0156 s, wire 1.52 s; near 36.00 V / 50 mOhm = 720 A: 0.00239
  // s, wire 0.0437 s
  {
    entries: { run: 'Load', peak: 5, length: 20, volts: 36 },
    verdict: ['fuseVolts'],
    size: '16 AWG',
    fuse: 7.5,
  },
  // 12 AWG is too thin: 9 A x (60 ft x 1.588 x 1.0393 + 3) mOhm = 0.918 V of 0.680 V; 9 A x (60 ft x 0.9989 x 1.0393 +
  // 3) mOhm = 0.588 V, of 0.68 V; 310.16 35 A; 9 x 1.25 = 11.25, fuse 15; a panel limits its own fault; 41 V, a blade
  // of 32 V
  {
    entries: { run: 'Load', peak: 9, length: 30, fedFrom: 'panel' },
    supply: { panelVolts: 34, openCircuitVolts: 41, shortCircuitAmps: 9.6 },
    verdict: ['fuseVolts'],
    size: '10 AWG',
    fuse: 15,
  },
  // a fuse of its own kind with no volts typed; 18 AWG is too thin: 5 A x (12 ft x 6.385 x 1.0393 + 3) mOhm = 0.413 V
  // of 0.360 V; 5 A x (12 ft x 4.016 x 1.0393 + 3) mOhm = 0.265 V, of 0.36 V; 310.16 15 A (18 A at 90 degC x 0.866); 5
  // x 1.25 = 6.25, fuse 7.5; 14.4 V, a own of None V
  {
    entries: { run: 'Load', peak: 5, length: 6 },
    protection: { fuses: [{ kind: 'own', breaks: 5000 }] },
    verdict: ['fuseVolts'],
    size: '16 AWG',
    fuse: 7.5,
  },
  // open-circuit volts not given, but the 33 V at maximum power alone are over the 32 V of a blade; 12 AWG is too thin: 9
  // A x (60 ft x 1.588 x 1.0393 + 3) mOhm = 0.918 V of 0.660 V; 9 A x (60 ft x 0.9989 x 1.0393 + 3) mOhm = 0.588 V, of
  // 0.66 V; 310.16 35 A; 9 x 1.25 = 11.25, fuse 15; a panel limits its own fault
  {
    entries: { run: 'Load', peak: 9, length: 30, fedFrom: 'panel' },
    supply: { panelVolts: 33, shortCircuitAmps: 9.6 },
    verdict: ['fuseVolts'],
    size: '10 AWG',
    fuse: 15,
  },
];

export const UNFUSED_TOO_LONG: readonly StatedRow[] = [
  // 16 AWG is too thin: 10 A x (8 ft x 4.016 x 1.0393 + 3) mOhm = 0.364 V of 0.360 V; 10 A x (8 ft x 2.525 x 1.0393 +
  // 3) mOhm = 0.240 V, of 0.36 V; 310.16 20 A; 10 x 1.25 = 12.5, fuse 15; far 12.03 V / (100 + 27.17) mOhm = 94.57 A:
  // 0.0926 s, wire 6.4 s; near 12.65 V / 50 mOhm = 253 A: 0.0147 s, wire 0.895 s; 48 in without a fuse, over 40 in
  {
    entries: { run: 'Load', peak: 10, length: 4, unfused: 4 },
    verdict: ['unfusedTooLong'],
    size: '14 AWG',
    fuse: 15,
  },
  // 16 AWG is too thin: 10 A x (8 ft x 4.016 x 1.0393 + 3) mOhm = 0.364 V of 0.360 V; 10 A x (8 ft x 2.525 x 1.0393 +
  // 3) mOhm = 0.240 V, of 0.36 V; 310.17 30 A; 10 x 1.25 = 12.5, fuse 15; far 12.03 V / (100 + 27.17) mOhm = 94.57 A:
  // 0.0926 s, wire 6.4 s; near 12.65 V / 50 mOhm = 253 A: 0.0147 s, wire 0.895 s; 12 in without a fuse, over 7 in
  {
    entries: { run: 'Load', peak: 10, length: 4, unfused: 1 },
    rules: { installed: 'air' },
    verdict: ['unfusedTooLong'],
    size: '14 AWG',
    fuse: 15,
  },
  // 16 AWG is too thin: 10 A x (8 ft x 4.016 x 1.0393 + 3) mOhm = 0.364 V of 0.360 V; 10 A x (8 ft x 2.525 x 1.0393 +
  // 3) mOhm = 0.240 V, of 0.36 V; table 5 20 A; 10 x 1.25 = 12.5, fuse 15; far 12.03 V / (100 + 27.17) mOhm = 94.57 A:
  // 0.0926 s, wire 6.4 s; near 12.65 V / 50 mOhm = 253 A: 0.0147 s, wire 0.895 s; 7.2 in without a fuse, over 7 in
  {
    entries: { run: 'Load', peak: 10, length: 4, unfused: 0.6 },
    rules: { installed: 'craft' },
    verdict: ['unfusedTooLong'],
    size: '14 AWG',
    fuse: 15,
  },
  // 16 AWG is too thin: fuse 15 over the 10 A of 240.4(D); 10 A x (2.4 m x 2.525 / 0.3048 x 1.0393 + 3) mOhm = 0.237
  // V, of 0.36 V; 310.16 20 A; 10 x 1.25 = 12.5, fuse 15; far 12.03 V / (100 + 26.79) mOhm = 94.85 A: 0.092 s, wire
  // 6.37 s; near 12.65 V / 50 mOhm = 253 A: 0.0147 s, wire 0.895 s; 43.3 in without a fuse, over 40 in
  {
    entries: { run: 'Load', peak: 10, length: 1.2, unfused: 1.1 },
    rules: { unit: 'm' },
    verdict: ['unfusedTooLong'],
    size: '14 AWG',
    fuse: 15,
  },
];
