/** Rows with which nothing is wrong, worked out by hand from the tables named beside each. */
import type { StatedRow } from './stated-row';

export const OK: readonly StatedRow[] = [
  // 10 AWG is too thin: 22 A x 2 x 13 ft x 0.9989 mOhm/ft = 0.571 V, 4.76 % of 12 V; 22 A x 2 x 13 ft x 0.6282
  // mOhm/ft = 0.359 V, 2.99 % of 12 V; 310.16 75 degC column, 8 AWG: 50 A; 22 x 1.25 = 27.5, next fuse 30; short 253
  // A: opens in 0.1 s, wire bears (115 x 8.3656 / 253)^2 = 14.5 s
  { entries: { run: 'Load', peak: 22, length: 13 }, verdict: ['ok'], size: '8 AWG', fuse: 30 },
  // 18 AWG is too thin: 4 A x (2 x 8 ft x 6.385 mOhm/ft + 1 mOhm) = 0.413 V, 3.44 % of 12 V; 4 A x (2 x 8 ft x 4.016
  // mOhm/ft + 1 mOhm) = 0.261 V, 2.18 % of 12 V; 310.16 prints 18 A for 16 AWG at 90 degC alone; x sqrt(45/60) =
  // 15.59, 15 A; 4 x 1.25 = 5, next fuse 5; short 253 A: opens in 0.1 s, wire bears (115 x 1.3087 / 253)^2 = 0.354 s
  {
    entries: { run: 'Load', peak: 4, length: 8, joints: 1 },
    verdict: ['ok'],
    size: '16 AWG',
    fuse: 5,
  },
  // 0.5 A x 2 x 3 ft x 6.385 mOhm/ft = 0.019 V, 0.16 % of 12 V; 310.16 prints 14 A for 18 AWG at 90 degC alone; x
  // sqrt(45/60) = 12.12, 12 A; 0.5 x 1.25 = 0.625, next fuse 1; short 253 A: opens in 0.1 s, wire bears (115 x 0.823
  // / 253)^2 = 0.14 s
  { entries: { run: 'Load', peak: 0.5, length: 3 }, verdict: ['ok'], size: '18 AWG', fuse: 1 },
  // 14 AWG is too thin: 10 A x 2 x 12 ft x 2.525 mOhm/ft = 0.606 V, 4.39 % of 13.8 V; 10 A x 2 x 12 ft x 1.588
  // mOhm/ft = 0.381 V, 2.76 % of 13.8 V; 310.16 75 degC column, 12 AWG: 25 A; 10 x 1.25 = 12.5, next fuse 15; short
  // 276 A: opens in 0.1 s, wire bears (115 x 3.3088 / 276)^2 = 1.9 s
  {
    entries: { run: 'Load', peak: 10, length: 12, volts: 13.8 },
    verdict: ['ok'],
    size: '12 AWG',
    fuse: 15,
  },
  // 16 AWG is too thin: 14 A x 2 x 4 ft x 4.016 mOhm/ft = 0.450 V, 3.75 % of 12 V; 14 A x 2 x 4 ft x 2.525 mOhm/ft =
  // 0.283 V, 2.36 % of 12 V; 310.16 75 degC column, 14 AWG: 20 A; 14 x 1.25 = 17.5, next fuse 20; short 253 A: opens
  // in 0.1 s, wire bears (115 x 2.0809 / 253)^2 = 0.895 s
  { entries: { run: 'Load', peak: 14, length: 4 }, verdict: ['ok'], size: '14 AWG', fuse: 20 },
  // 16 AWG is too thin: 16 A x 2 x 3 ft x 4.016 mOhm/ft = 0.386 V, 3.21 % of 12 V; 16 A x 2 x 3 ft x 2.525 mOhm/ft =
  // 0.242 V, 2.02 % of 12 V; 310.16 75 degC column, 14 AWG: 20 A; 16 x 1.25 = 20, next fuse 20; short 253 A: opens
  // in 0.1 s, wire bears (115 x 2.0809 / 253)^2 = 0.895 s
  { entries: { run: 'Load', peak: 16, length: 3 }, verdict: ['ok'], size: '14 AWG', fuse: 20 },
  // 14 AWG is too thin: 310.16 75 degC column, 14 AWG: 20 A, fuse 25; 20 A x 2 x 2 ft x 1.588 mOhm/ft = 0.127 V,
  // 1.06 % of 12 V; 310.16 75 degC column, 12 AWG: 25 A; 20 x 1.25 = 25, next fuse 25; short 253 A: opens in 0.1 s,
  // wire bears (115 x 3.3088 / 253)^2 = 2.26 s
  { entries: { run: 'Load', peak: 20, length: 2 }, verdict: ['ok'], size: '12 AWG', fuse: 25 },
  // 16 AWG is too thin: 310.16 prints 18 A for 16 AWG at 90 degC alone; x sqrt(45/60) = 15.59, 15 A; 20 A x 2 x 2 ft
  // x 2.525 mOhm/ft = 0.202 V, 1.68 % of 12 V; 310.16 75 degC column, 14 AWG: 20 A; bursts: 20, next fuse 20; short
  // 253 A: opens in 0.1 s, wire bears (115 x 2.0809 / 253)^2 = 0.895 s
  {
    entries: { run: 'Load', peak: 20, length: 2 },
    rules: { duty: 'bursts' },
    verdict: ['ok'],
    size: '14 AWG',
    fuse: 20,
  },
  // 1.5 mm2 is too thin: 6 A x 2 x 5 m x 13.3 mOhm/m = 0.798 V, 6.65 % of 12 V; 6 A x 2 x 5 m x 7.98 mOhm/m = 0.479
  // V, 3.99 % of 12 V; 310.16 75 degC column, 2.5 mm2 counts as 14 AWG (2.0809 mm2): 20 A; 6 x 1.25 = 7.5, next fuse
  // 7.5; short 253 A: opens in 0.1 s, wire bears (115 x 2.5 / 253)^2 = 1.29 s
  {
    entries: { run: 'Load', peak: 6, length: 5 },
    rules: { unit: 'm', series: 'mm2', target: 0.05, volts: 12 },
    verdict: ['ok'],
    size: '2.5 mm2',
    fuse: 7.5,
  },
  // 1.5 mm2 is too thin: 3 A x 2 x 10 m x 13.3 mOhm/m = 0.798 V, 3.33 % of 24 V; 3 A x 2 x 10 m x 7.98 mOhm/m =
  // 0.479 V, 2.00 % of 24 V; 310.16 75 degC column, 2.5 mm2 counts as 14 AWG (2.0809 mm2): 20 A; 3 x 1.25 = 3.75,
  // next fuse 4; short 480 A: opens in 0.1 s, wire bears (115 x 2.5 / 480)^2 = 0.359 s
  {
    entries: { run: 'Load', peak: 3, length: 10, volts: 24 },
    rules: { unit: 'm', series: 'mm2' },
    verdict: ['ok'],
    size: '2.5 mm2',
    fuse: 4,
  },
  // 14 AWG is too thin: 8 A x 2 x 10 ft x 2.525 mOhm/ft = 0.404 V, 3.37 % of 12 V; 8 A x 2 x 10 ft x 1.588 mOhm/ft =
  // 0.254 V, 2.12 % of 12 V; 310.16 75 degC column, 12 AWG: 25 A; 8 x 1.25 = 10, next fuse 10; short 253 A: opens in
  // 0.1 s, wire bears (115 x 3.3088 / 253)^2 = 2.26 s
  {
    entries: { run: 'Load', peak: 8, length: 10 },
    rules: { series: 'AWG all' },
    verdict: ['ok'],
    size: '12 AWG',
    fuse: 10,
  },
  // 14 AWG is too thin: 15 A x 2 x 6 ft x 2.525 mOhm/ft x 1.1179 (50 degC) = 0.508 V, 4.23 % of 12 V; 15 A x 2 x 6
  // ft x 1.588 mOhm/ft x 1.1179 (50 degC) = 0.320 V, 2.66 % of 12 V; 310.16 75 degC column, 12 AWG: 25 A; 15 x 1.25
  // = 18.75, next fuse 20; short 253 A: opens in 0.1 s, wire bears (115 x 3.3088 / 253)^2 = 2.26 s
  {
    entries: { run: 'Load', peak: 15, length: 6 },
    rules: { tempC: 50 },
    verdict: ['ok'],
    size: '12 AWG',
    fuse: 20,
  },
  // 10 AWG is too thin: 310.16 75 degC column, 10 AWG: 35 A x sqrt(30/45) = 0.816 = 28.58 A; 30 A x 2 x 4 ft x
  // 0.6282 mOhm/ft = 0.151 V, 1.26 % of 12 V; 310.16 75 degC column, 8 AWG: 50 A x sqrt(30/45) = 0.816 = 40.82 A; 30
  // x 1.25 = 37.5, next fuse 40; short 253 A: opens in 0.15 s, wire bears (115 x 8.3656 / 253)^2 = 14.5 s
  {
    entries: { run: 'Load', peak: 30, length: 4 },
    rules: { ambientC: 45 },
    verdict: ['ok'],
    size: '8 AWG',
    fuse: 40,
  },
  // 14 AWG is too thin: 310.16 75 degC column, 14 AWG: 20 A x 0.7 (8 conductors) = 14.00 A, fuse 15; 12 A x 2 x 5 ft
  // x 1.588 mOhm/ft = 0.191 V, 1.59 % of 12 V; 310.16 75 degC column, 12 AWG: 25 A x 0.7 (8 conductors) = 17.50 A;
  // 12 x 1.25 = 15, next fuse 15; short 253 A: opens in 0.1 s, wire bears (115 x 3.3088 / 253)^2 = 2.26 s
  {
    entries: { run: 'Load', peak: 12, length: 5 },
    rules: { conductors: 8 },
    verdict: ['ok'],
    size: '12 AWG',
    fuse: 15,
  },
  // 14 AWG is too thin: 24 A x 2 x 3 ft x 2.525 mOhm/ft = 0.364 V, 3.03 % of 12 V; 24 A x 2 x 3 ft x 1.588 mOhm/ft =
  // 0.229 V, 1.91 % of 12 V; 310.17 75 degC column, 12 AWG: 35 A; 24 x 1.25 = 30, next fuse 30; short 253 A: opens
  // in 0.1 s, wire bears (115 x 3.3088 / 253)^2 = 2.26 s
  {
    entries: { run: 'Load', peak: 24, length: 3 },
    rules: { installed: 'air' },
    verdict: ['ok'],
    size: '12 AWG',
    fuse: 30,
  },
  // 18 A x 2 x 4 ft x 1.588 mOhm/ft = 0.229 V, 1.91 % of 12 V; 33 CFR table 5 105 degC column, 12 AWG: 45 A; 18 x
  // 1.25 = 22.5, next fuse 25; short 253 A: opens in 0.1 s, wire bears (115 x 3.3088 / 253)^2 = 2.26 s
  {
    entries: { run: 'Load', peak: 18, length: 4, ownSize: '12 AWG' },
    rules: { installed: 'craft', insulationC: 105 },
    verdict: ['ok'],
    size: '12 AWG',
    fuse: 25,
  },
  // 16 AWG is too thin: 15 A x 2 x 4 ft x 4.016 mOhm/ft = 0.482 V, 4.02 % of 12 V; 15 A x 2 x 4 ft x 2.525 mOhm/ft =
  // 0.303 V, 2.52 % of 12 V; 33 CFR table 5 105 degC column, 14 AWG: 35 A x 0.85 (engine space) = 29.75 A; 15 x 1.25
  // = 18.75, next fuse 20; short 253 A: opens in 0.1 s, wire bears (115 x 2.0809 / 253)^2 = 0.895 s
  {
    entries: { run: 'Load', peak: 15, length: 4 },
    rules: { installed: 'engine space', insulationC: 105 },
    verdict: ['ok'],
    size: '14 AWG',
    fuse: 20,
  },
  // 10 AWG is too thin: 20 A x 2 x 8 ft x 0.9989/0.61 mOhm/ft = 0.524 V, 4.37 % of 12 V; 20 A x 2 x 8 ft x
  // 0.6282/0.61 mOhm/ft = 0.330 V, 2.75 % of 12 V; 310.16 aluminium 75 degC column, 8 AWG: 40 A; 20 x 1.25 = 25,
  // next fuse 25; short 253 A: opens in 0.1 s, wire bears (76 x 8.3656 / 253)^2 = 6.32 s
  {
    entries: { run: 'Load', peak: 20, length: 8 },
    rules: { material: 'aluminium' },
    verdict: ['ok'],
    size: '8 AWG',
    fuse: 25,
  },
  // 16 AWG is too thin: 8 A x 2 x 6 ft x 4.016/0.9616 mOhm/ft = 0.401 V, 3.34 % of 12 V; 8 A x 2 x 6 ft x
  // 2.525/0.9616 mOhm/ft = 0.252 V, 2.10 % of 12 V; 310.16 75 degC column, 14 AWG: 20 A; 8 x 1.25 = 10, next fuse
  // 10; short 253 A: opens in 0.1 s, wire bears (115 x 2.0809 / 253)^2 = 0.895 s
  {
    entries: { run: 'Load', peak: 8, length: 6 },
    rules: { material: 'tinned copper' },
    verdict: ['ok'],
    size: '14 AWG',
    fuse: 10,
  },
  // 2 AWG is too thin: 310.16 75 degC column, 2 AWG: 115 A, fuse 125; 100 A x 2 x 4 ft x 0.09827 mOhm/ft = 0.079 V,
  // 0.66 % of 12 V; 310.16 75 degC column, 1/0 AWG: 150 A; 100 x 1.25 = 125, next fuse 125
  {
    entries: { run: 'Load', peak: 100, length: 4 },
    supply: { milliohms: 7 },
    verdict: ['ok'],
    size: '1/0 AWG',
    fuse: 125,
  },
  // 20 A x 2 x 6 ft x 3.3 mOhm/m = 0.241 V, 2.01 % of 12 V; 310.16 75 degC column, 6 mm2 counts as 10 AWG (5.2612
  // mm2): 35 A; 20 x 1.25 = 25, next fuse 25; short 253 A: opens in 0.1 s, wire bears (115 x 6 / 253)^2 = 7.44 s
  {
    entries: { run: 'Load', peak: 20, length: 6, ownSize: '6 mm2' },
    rules: { target: 0.05 },
    verdict: ['ok'],
    size: '6 mm2',
    fuse: 25,
  },
  // 8 AWG is too thin: 15 A x 2 x 24 ft x 0.6282 mOhm/ft = 0.452 V, 2.66 % of 17 V; 15 A x 2 x 24 ft x 0.3951
  // mOhm/ft = 0.284 V, 1.67 % of 17 V; 310.16 75 degC column, 6 AWG: 65 A; 15 x 1.25 = 18.75, next fuse 20; a panel
  // limits its own fault: 9.6 A, nothing to break
  {
    entries: { run: 'Load', peak: 15, length: 24, fedFrom: 'panel' },
    supply: { panelVolts: 17, shortCircuitAmps: 9.6 },
    verdict: ['ok'],
    size: '6 AWG',
    fuse: 20,
  },
  // Trunk carries 15 + 3 A: 18 x 1.25 = 22.5, fuse 25; 3 A x 2 x 2 ft x 1.588 mOhm/ft = 0.019 V, 0.16 % of 12 V;
  // 310.16 75 degC column, 12 AWG: 25 A; 3 x 1.25 = 3.75, next fuse 4; short 241 A: opens in 0.1 s, wire bears (115
  // x 3.3088 / 241)^2 = 2.5 s
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
    verdict: ['ok'],
    size: '12 AWG',
    fuse: 'none',
  },
  // Trunk carries 20 + 1 A: 21 x 1.25 = 26.25, fuse 30; 1 A x 2 x 3 ft x 0.9989 mOhm/ft = 0.006 V, 0.05 % of 12 V;
  // 310.16 75 degC column, 10 AWG: 35 A; 1 x 1.25 = 1.25, next fuse 2; short 241 A: opens in 0.1 s, wire bears (115
  // x 5.2612 / 241)^2 = 6.31 s
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
  // lead-acid at 20 %: 11.89 + 0.8 x 0.17 = 12.026 V; less 14 A x 50 mOhm and 14 A x 16.88 mOhm = 0.236 V: 11.09 V,
  // over 11 V; 17.5, fuse 20
  {
    entries: { run: 'Load', peak: 14, length: 5, joints: 1, leastVolts: 11 },
    verdict: ['ok'],
    size: '12 AWG',
    fuse: 20,
  },
  // 60 W / 10 V = 6 A: 16 AWG 0.482 V, 14 AWG x 20 ft x 2.525 mOhm/ft = 0.303 V of 0.36 V; 7.5, fuse 7.5; lead-acid
  // at 20 %: 11.89 + 0.8 x 0.17 = 12.026 V less 0.3 V; 11.46 V x 5.24 A = 60 W, over 10 V
  {
    entries: { run: 'Load', peak: 60, kind: 'W', length: 10, leastVolts: 10 },
    verdict: ['ok'],
    size: '14 AWG',
    fuse: 7.5,
  },
  // 1 A x 4 ft x 6.385 mOhm/ft = 0.026 V of 0.36 V; 1.25, fuse 2; four feeders above it are followed; 12.65 V / (50
  // + 4 x 4 ft x 0.9989) mOhm = 192 A: 0.1 s, wire (115 x 0.823 / 192)^2 = 0.243 s
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
  // a run off the battery that feeds nothing needs no name; 4 A x (16 ft x 4.016 mOhm/ft + 1 mOhm) = 0.261 V of 0.36
  // V, 18 AWG 0.413 V; 5, fuse 5
  { entries: { peak: 4, length: 8, joints: 1 }, verdict: ['ok'], size: '16 AWG', fuse: 5 },
  // 90 W / 9.5 V = 9.474 A: 18 AWG x 8 ft x 6.385 mOhm/ft = 0.484 V, 16 AWG x 4.016 0.304 V of 0.36 V; 11.84, fuse
  // 15 on 15 A; lead-acid at 20 %: 11.89 + 0.8 x 0.17 = 12.026 V less 9.474 A x 50 mOhm = 11.55 V; 8.0 A through
  // 32.1 mOhm leaves 11.3 V; 253 A: 0.1 s, wire (115 x 1.3087 / 253)^2 = 0.354 s
  {
    entries: { run: 'Load', peak: 90, kind: 'W', length: 4, leastVolts: 9.5 },
    verdict: ['ok'],
    size: '16 AWG',
    fuse: 15,
  },
];
