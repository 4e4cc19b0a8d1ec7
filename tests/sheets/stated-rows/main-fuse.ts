/** Rows that hang on the main fuse at the battery, or on what is not told of the battery, worked out by hand from the tables named beside each. */
import type { StatedRow } from './stated-row';

export const MAIN_FUSE: readonly StatedRow[] = [
  // 12 AWG is too thin: fuse 25 over the 20 A of 240.4(D); 20 A x (8 ft x 0.9989 x 1.0393 + 3) mOhm = 0.226 V, of 0.36
  // V; 310.16 35 A; 20 x 1.25 = 25, fuse 25; far 12.03 V / (100 + 12.56) mOhm = 106.8 A: 0.275 s, wire 32.1 s; near
  // 12.65 V / 50 mOhm = 253 A: 0.0372 s, wire 5.72 s; main 150 A, 2 AWG 310.16 115 A, bolt-in breaks 2000 A of 253 A,
  // 32 V of 14.4 V, loads 20 A
  {
    entries: { run: 'Load', peak: 20, length: 4 },
    supply: { mainFuse: 150, mainCable: '2 AWG' },
    verdict: ['mainFuse'],
    size: '10 AWG',
    fuse: 25,
  },
  // 16 AWG is too thin: 10 A x (8 ft x 4.016 x 1.0393 + 3) mOhm = 0.364 V of 0.360 V; 10 A x (8 ft x 2.525 x 1.0393 +
  // 3) mOhm = 0.240 V, of 0.36 V; 310.16 20 A; 10 x 1.25 = 12.5, fuse 15; far 12.03 V / (100 + 27.17) mOhm = 94.57 A:
  // 0.0926 s, wire 6.4 s; near 12.65 V / 50 mOhm = 253 A: 0.0147 s, wire 0.895 s; main 60 A, 8 AWG 310.16 50 A, blade
  // breaks 1000 A of 253 A, 32 V of 14.4 V, loads 10 A
  {
    entries: { run: 'Load', peak: 10, length: 4 },
    supply: { mainFuse: 60, mainCable: '8 AWG' },
    verdict: ['mainFuse'],
    size: '14 AWG',
    fuse: 15,
  },
  // 16 AWG is too thin: 10 A x (8 ft x 4.016 x 1.0393 + 3) mOhm = 0.364 V of 0.360 V; 10 A x (8 ft x 2.525 x 1.0393 +
  // 3) mOhm = 0.240 V, of 0.36 V; 310.16 20 A; 10 x 1.25 = 12.5, fuse 15; far 12.03 V / (40 + 27.17) mOhm = 179 A:
  // 0.0273 s, wire 1.79 s; near 12.65 V / 20 mOhm = 632 A: 0.00402 s, wire 0.143 s; main 100 A, 25 mm2 310.16 85 A
  // (counts as 4 AWG), blade breaks 1000 A of 632 A, 32 V of 14.4 V, loads 10 A
  {
    entries: { run: 'Load', peak: 10, length: 4 },
    supply: { mainFuse: 100, mainCable: '25 mm2', milliohms: 20 },
    verdict: ['mainFuse'],
    size: '14 AWG',
    fuse: 15,
  },
  // 16 AWG is too thin: 10 A x (8 ft x 4.016 x 1.0393 + 3) mOhm = 0.364 V of 0.360 V; 10 A x (8 ft x 2.525 x 1.0393 +
  // 3) mOhm = 0.240 V, of 0.36 V; 310.16 20 A; 10 x 1.25 = 12.5, fuse 15; far 12.03 V / (100 + 27.17) mOhm = 94.57 A:
  // 0.0926 s, wire 6.4 s; near 12.65 V / 50 mOhm = 253 A: 0.0147 s, wire 0.895 s; main 30 A, 20 AWG 310.16 has no row
  // for 20 AWG, blade breaks 1000 A of 253 A, 32 V of 14.4 V, loads 10 A
  {
    entries: { run: 'Load', peak: 10, length: 4 },
    supply: { mainFuse: 30, mainCable: '20 AWG' },
    verdict: ['mainFuse'],
    size: '14 AWG',
    fuse: 15,
  },
];

export const MAIN_BREAKS: readonly StatedRow[] = [
  // 16 AWG is too thin: 10 A x (8 ft x 4.016 x 1.0393 + 3) mOhm = 0.364 V of 0.360 V; 10 A x (8 ft x 2.525 x 1.0393 +
  // 3) mOhm = 0.240 V, of 0.36 V; 310.16 20 A; 10 x 1.25 = 12.5, fuse 15; main 100 A, 2 AWG 310.16 115 A, blade breaks
  // 1000 A of 3000 A, 32 V of 14.4 V, loads 10 A
  {
    entries: { run: 'Load', peak: 10, length: 4 },
    supply: { batteryShortAmps: 3000, mainFuse: 100, mainCable: '2 AWG' },
    protection: { fuses: [{ kind: 'high-breaking' }] },
    usualMilliohms: true,
    verdict: ['mainBreaks'],
    size: '14 AWG',
    fuse: 15,
  },
  // 16 AWG is too thin: 10 A x (8 ft x 4.016 x 1.0393 + 3) mOhm = 0.364 V of 0.360 V; 10 A x (8 ft x 2.525 x 1.0393 +
  // 3) mOhm = 0.240 V, of 0.36 V; 310.16 20 A; 10 x 1.25 = 12.5, fuse 15; main 150 A, 1/0 AWG 310.16 150 A, bolt-in
  // breaks 2000 A of 3000 A, 32 V of 14.4 V, loads 10 A
  {
    entries: { run: 'Load', peak: 10, length: 4 },
    supply: { batteryShortAmps: 3000, mainFuse: 150, mainCable: '1/0 AWG' },
    protection: { fuses: [{ kind: 'high-breaking' }] },
    usualMilliohms: true,
    verdict: ['mainBreaks'],
    size: '14 AWG',
    fuse: 15,
  },
  // 16 AWG is too thin: 10 A x (8 ft x 4.016 x 1.0393 + 3) mOhm = 0.364 V of 0.360 V; 10 A x (8 ft x 2.525 x 1.0393 +
  // 3) mOhm = 0.240 V, of 0.36 V; 310.16 20 A; 10 x 1.25 = 12.5, fuse 15; main 200 A, 4/0 AWG 310.16 230 A, blade
  // breaks 1000 A of 1200 A, 32 V of 14.4 V, loads 10 A
  {
    entries: { run: 'Load', peak: 10, length: 4 },
    supply: { batteryShortAmps: 1200, mainFuse: 200, mainFuseKind: 'blade', mainCable: '4/0 AWG' },
    protection: { fuses: [{ kind: 'bolt-in' }] },
    usualMilliohms: true,
    verdict: ['mainBreaks'],
    size: '14 AWG',
    fuse: 15,
  },
  // LiFePO4 of 100 Ah: 8 mOhm, a good one 4; 16 AWG is too thin: 10 A x (8 ft x 4.016 x 1.0393 + 3) mOhm = 0.364 V of
  // 0.360 V; 10 A x (8 ft x 2.525 x 1.0393 + 3) mOhm = 0.240 V, of 0.36 V; 310.16 20 A; 10 x 1.25 = 12.5, fuse 15;
  // main 150 A, 1/0 AWG 310.16 150 A, bolt-in breaks 2000 A of 3351 A, 32 V of 14.6 V, loads 10 A
  {
    entries: { run: 'Load', peak: 10, length: 4 },
    supply: { chemistry: 'LiFePO4', ampHours: 100, mainFuse: 150, mainCable: '1/0 AWG' },
    protection: { fuses: [{ kind: 'high-breaking' }] },
    usualMilliohms: true,
    verdict: ['mainBreaks'],
    size: '14 AWG',
    fuse: 15,
  },
];

export const MAIN_VOLTS: readonly StatedRow[] = [
  // 16 AWG is too thin: 10 A x (40 ft x 4.016 x 1.0393 + 3) mOhm = 1.700 V of 1.440 V; 10 A x (40 ft x 2.525 x 1.0393
  // + 3) mOhm = 1.080 V, of 1.44 V; 310.16 20 A; 10 x 1.25 = 12.5, fuse 15; main 100 A, 2 AWG 310.16 115 A, blade
  // breaks 1000 A of 843 A, 32 V of 57.6 V, loads 10 A
  {
    entries: { run: 'Load', peak: 10, length: 20 },
    rules: { volts: 48 },
    supply: { milliohms: 60, mainFuse: 100, mainCable: '2 AWG' },
    protection: { fuses: [{ kind: 'high-breaking' }] },
    verdict: ['mainVolts'],
    size: '14 AWG',
    fuse: 15,
  },
  // 48 V are not the 57.6 V of charging; 16 AWG is too thin: 10 A x (40 ft x 4.016 x 1.0393 + 3) mOhm = 1.700 V of
  // 1.440 V; 10 A x (40 ft x 2.525 x 1.0393 + 3) mOhm = 1.080 V, of 1.44 V; 310.16 20 A; 10 x 1.25 = 12.5, fuse 15;
  // main 150 A, 1/0 AWG 310.16 150 A, bolt-in breaks 2000 A of 843 A, 48 V of 57.6 V, loads 10 A
  {
    entries: { run: 'Load', peak: 10, length: 20 },
    rules: { volts: 48 },
    supply: { milliohms: 60, mainFuse: 150, mainCable: '1/0 AWG', mainFuseVolts: 48 },
    protection: { fuses: [{ kind: 'high-breaking' }] },
    verdict: ['mainVolts'],
    size: '14 AWG',
    fuse: 15,
  },
  // a main fuse of its own kind with no volts typed; 16 AWG is too thin: fuse 15 over the 10 A of 240.4(D); 10 A x (16
  // ft x 2.525 x 1.0393 + 3) mOhm = 0.450 V, of 0.72 V; 310.16 20 A; 10 x 1.25 = 12.5, fuse 15; far 24.05 V / (100 +
  // 51.34) mOhm = 158.9 A: 0.0341 s, wire 2.27 s; near 25.30 V / 50 mOhm = 506 A: 0.00516 s, wire 0.224 s; main 150 A,
  // 1/0 AWG 310.16 150 A, own breaks 5000 A of 506 A, None V of 28.8 V, loads 10 A
  {
    entries: { run: 'Load', peak: 10, length: 8 },
    rules: { volts: 24 },
    supply: { mainFuse: 150, mainFuseKind: 'own', mainFuseBreaks: 5000, mainCable: '1/0 AWG' },
    verdict: ['mainVolts'],
    size: '14 AWG',
    fuse: 15,
  },
];

export const MAIN_SMALL: readonly StatedRow[] = [
  // 12 AWG is too thin: fuse 25 over the 20 A of 240.4(D); 20 A x (8 ft x 0.9989 x 1.0393 + 3) mOhm = 0.226 V, of 0.36
  // V; 310.16 35 A; 20 x 1.25 = 25, fuse 25; far 12.03 V / (100 + 12.56) mOhm = 106.8 A: 0.275 s, wire 32.1 s; near
  // 12.65 V / 50 mOhm = 253 A: 0.0372 s, wire 5.72 s; main 30 A, 8 AWG 310.16 50 A, blade breaks 1000 A of 253 A, 32 V
  // of 14.4 V, loads 35 A
  {
    entries: { run: 'Load', peak: 20, length: 4 },
    others: [{ run: 'Winch', length: 3, peak: 15, ownSize: '8 AWG' }],
    supply: { mainFuse: 30, mainCable: '8 AWG' },
    verdict: ['mainSmall'],
    size: '10 AWG',
    fuse: 25,
  },
  // 8 AWG is too thin: 310.16 50 A, fuse 60; 42 A x (4 ft x 0.3951 x 1.0393 + 3) mOhm = 0.195 V, of 0.36 V; 310.16 65
  // A; 42 x 1.25 = 52.5, fuse 60; far 12.03 V / (100 + 4.891) mOhm = 114.7 A: 89 s, wire 178 s; near 12.65 V / 50 mOhm
  // = 253 A: 3.57 s, wire 36.6 s; main 40 A, 8 AWG 310.16 50 A, blade breaks 1000 A of 253 A, 32 V of 14.4 V, loads 42
  // A
  {
    entries: { run: 'Load', peak: 42, length: 2 },
    supply: { mainFuse: 40, mainCable: '8 AWG' },
    verdict: ['mainSmall'],
    size: '6 AWG',
    fuse: 60,
  },
  // 16 AWG is too thin: 10 A x (8 ft x 4.016 x 1.0393 + 3) mOhm = 0.364 V of 0.360 V; 10 A x (8 ft x 2.525 x 1.0393 +
  // 3) mOhm = 0.240 V, of 0.36 V; 310.16 20 A; 10 x 1.25 = 12.5, fuse 15; far 12.03 V / (100 + 27.17) mOhm = 94.57 A:
  // 0.0926 s, wire 6.4 s; near 12.65 V / 50 mOhm = 253 A: 0.0147 s, wire 0.895 s; main 100 A, 1/0 AWG 310.16 150 A,
  // blade breaks 1000 A of 253 A, 32 V of 14.4 V, loads 110 A
  {
    entries: { run: 'Load', peak: 10, length: 4 },
    others: [{ run: 'Winch', length: 1, peak: 100, ownSize: '1/0 AWG' }],
    supply: { mainFuse: 100, mainCable: '1/0 AWG' },
    verdict: ['mainSmall'],
    size: '14 AWG',
    fuse: 15,
  },
];

export const COVERED_BY_MAIN: readonly StatedRow[] = [
  // 16 AWG is too thin: 10 A x (8 ft x 4.016 x 1.0393 + 3) mOhm = 0.364 V of 0.360 V; 10 A x (8 ft x 2.525 x 1.0393 +
  // 3) mOhm = 0.240 V, of 0.36 V; 310.16 20 A; 10 x 1.25 = 12.5, fuse 15; near 12.65 V / 7.028 mOhm = 1800 A, over
  // 1000 A, under 2 x 1000, and 2000 A above it; far 12.03 V / (10 + 27.17) mOhm = 323.5 A: 0.00974 s, wire 0.547 s;
  // main 150 A, 1/0 AWG 310.16 150 A, bolt-in breaks 2000 A of 1800 A, 32 V of 14.4 V, loads 10 A
  {
    entries: { run: 'Load', peak: 10, length: 4 },
    supply: { batteryShortAmps: 1800, mainFuse: 150, mainCable: '1/0 AWG' },
    usualMilliohms: true,
    verdict: ['coveredByMain'],
    size: '14 AWG',
    fuse: 15,
  },
  // 12 AWG is too thin: 20 A x (12 ft x 1.588 x 1.0393 + 3) mOhm = 0.456 V of 0.360 V; 20 A x (12 ft x 0.9989 x 1.0393
  // + 3) mOhm = 0.309 V, of 0.36 V; 310.16 35 A; 20 x 1.25 = 25, fuse 25; near 12.65 V / 8 mOhm = 1581 A, over 1000 A,
  // under 2 x 1000, and 2000 A above it; far 12.03 V / (16 + 17.34) mOhm = 360.7 A: 0.0193 s, wire 2.81 s; main 150 A,
  // 1/0 AWG 310.16 150 A, bolt-in breaks 2000 A of 1581 A, 32 V of 14.4 V, loads 20 A
  {
    entries: { run: 'Load', peak: 20, length: 6 },
    supply: { milliohms: 8, mainFuse: 150, mainCable: '1/0 AWG' },
    verdict: ['coveredByMain'],
    size: '10 AWG',
    fuse: 25,
  },
  // 2/0 AWG is too thin: 100 A x (8 ft x 0.07793 x 1.0393 + 3) mOhm = 0.365 V of 0.360 V; 100 A x (8 ft x 0.0618 x
  // 1.0393 + 3) mOhm = 0.351 V, of 0.36 V; 310.16 200 A; 100 x 1.25 = 125, fuse 125; near 12.65 V / 3.5 mOhm = 3614 A,
  // over 2000 A, under 2 x 2000, and 20000 A above it; main 200 A, 4/0 AWG 310.16 230 A, high-breaking breaks 20000 A
  // of 3614 A, 125 V of 14.4 V, loads 100 A
  {
    entries: { run: 'Load', peak: 100, length: 4 },
    supply: { milliohms: 3.5, mainFuse: 200, mainFuseKind: 'high-breaking', mainCable: '4/0 AWG' },
    verdict: ['coveredByMain'],
    size: '3/0 AWG',
    fuse: 125,
  },
  // the fuse of the trunk breaks 5000 A; Trunk: 15 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.084 V; 18.75, fuse 20; 5
  // A x (4 ft x 2.525 x 1.0393 + 3) mOhm = 0.067 V, 0.152 V in all, of 0.36 V; 310.16 20 A; 5 x 1.25 = 6.25, fuse 7.5;
  // near 12.65 V / 9.612 mOhm = 1316 A, over 1000 A, under 2 x 1000, and 5000 A above it; far 12.03 V / (8 + 21.09)
  // mOhm = 413.4 A: 0.00318 s, wire 0.335 s
  {
    entries: { run: 'Branch', fedFrom: 'Trunk', peak: 5, length: 2, ownSize: '14 AWG' },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 10 }],
    supply: { milliohms: 4 },
    protection: { fuses: [{ kind: 'bolt-in', breaks: 5000 }] },
    verdict: ['coveredByMain'],
    size: '14 AWG',
    fuse: 7.5,
  },
];

export const BATTERY_ASSUMED: readonly StatedRow[] = [
  // 16 AWG is too thin: 10 A x (8 ft x 4.016 x 1.0393 + 3) mOhm = 0.364 V of 0.360 V; 10 A x (8 ft x 2.525 x 1.0393 +
  // 3) mOhm = 0.240 V, of 0.36 V; 310.16 20 A; 10 x 1.25 = 12.5, fuse 15; far 12.03 V / (10 + 27.17) mOhm = 323.5 A:
  // 0.00974 s, wire 0.547 s
  {
    entries: { run: 'Load', peak: 10, length: 4 },
    usualMilliohms: true,
    verdict: ['batteryAssumed'],
    size: '14 AWG',
    fuse: 15,
  },
  // 0.5 A x (6 ft x 6.385 x 1.0393 + 3) mOhm = 0.021 V, of 0.36 V; 310.16 12 A (14 A at 90 degC x 0.866); 0.5 x 1.25 =
  // 0.625, fuse 1; far 12.03 V / (10 + 48.84) mOhm = 204.4 A: 0.00209 s, wire 0.214 s
  {
    entries: { run: 'Load', peak: 0.5, length: 3 },
    usualMilliohms: true,
    verdict: ['batteryAssumed'],
    size: '18 AWG',
    fuse: 1,
  },
  // 10 A x (60 ft x 1.588 x 1.0393 + 3) mOhm = 1.020 V, over 0.36 V; 310.16 25 A; 10 x 1.25 = 12.5, fuse 15; far 12.03
  // V / (10 + 117) mOhm = 94.69 A: 0.0923 s, wire 16.1 s
  {
    entries: { run: 'Load', peak: 10, length: 30, ownSize: '12 AWG' },
    usualMilliohms: true,
    verdict: ['drop', 'batteryAssumed'],
    size: '12 AWG',
    fuse: 15,
  },
  // Trunk: 13 A x (4 ft x 0.6282 x 1.0393 + 3) mOhm = 0.073 V; 16.25, fuse 20; 3 A x (4 ft x 2.525 x 1.0393 + 3) mOhm
  // = 0.040 V, 0.113 V in all, of 0.36 V; 310.16 20 A; 3 x 1.25 = 3.75, fuse 4; far 12.03 V / (10 + 21.09) mOhm =
  // 386.8 A: 0.00238 s, wire 0.383 s
  {
    entries: { run: 'Branch', fedFrom: 'Trunk', peak: 3, length: 2, ownSize: '14 AWG' },
    others: [{ run: 'Trunk', length: 2, ownSize: '8 AWG', peak: 10 }],
    usualMilliohms: true,
    verdict: ['batteryAssumed'],
    size: '14 AWG',
    fuse: 4,
  },
];
