/** Rows in which a short circuit is not cleared as it should be, worked out by hand from the tables named beside each. */
import type { StatedRow } from './stated-row';

export const FUSE_TOO_SLOW: readonly StatedRow[] = [
  // 6 A x 2 x 7 ft x 4.016 mOhm/ft = 0.337 V, 2.64 % of 12.8 V; 310.16 prints 18 A for 16 AWG at 90 degC alone; x
  // sqrt(45/60) = 15.59, 15 A; 6 x 1.25 = 7.5, next fuse 7.5; near end 914 A: 122 times 7.5 A, 0.1 s; wire (115 x
  // 1.3087 / 914)^2 = 0.0271 s
  {
    entries: { run: 'Load', peak: 6, length: 7, ownSize: '16 AWG', volts: 12.8 },
    supply: { milliohms: 14 },
    verdict: ['fuseTooSlow'],
    size: '16 AWG',
    fuse: 7.5,
  },
  // 0.5 A x 2 x 3 ft x 6.385 mOhm/ft = 0.019 V, 0.16 % of 12 V; 310.16 prints 14 A for 18 AWG at 90 degC alone; x
  // sqrt(45/60) = 12.12, 12 A; 0.5 x 1.25 = 0.625, next fuse 1; near end 632 A: 632 times 1 A, 0.1 s; wire (115 x
  // 0.823 / 632)^2 = 0.0224 s
  {
    entries: { run: 'Load', peak: 0.5, length: 3 },
    supply: { milliohms: 20 },
    verdict: ['fuseTooSlow'],
    size: '18 AWG',
    fuse: 1,
  },
  // 4 A x 2 x 5 ft x 6.385 mOhm/ft = 0.255 V, 2.13 % of 12 V; 310.16 prints 14 A for 18 AWG at 90 degC alone; x
  // sqrt(45/60) = 12.12, 12 A; 4 x 1.25 = 5, next fuse 5; near end 632 A: 126 times 5 A, 0.1 s; wire (115 x 0.823 /
  // 632)^2 = 0.0224 s
  {
    entries: { run: 'Load', peak: 4, length: 5 },
    supply: { milliohms: 20 },
    verdict: ['fuseTooSlow'],
    size: '18 AWG',
    fuse: 5,
  },
  // 16 AWG is too thin: 14 A x 2 x 4 ft x 4.016 mOhm/ft = 0.450 V, 3.75 % of 12 V; 14 A x 2 x 4 ft x 2.525 mOhm/ft =
  // 0.283 V, 2.36 % of 12 V; 310.16 75 degC column, 14 AWG: 20 A; 14 x 1.25 = 17.5, next fuse 20; near end 904 A:
  // 45.2 times 20 A, 0.1 s; wire (115 x 2.0809 / 904)^2 = 0.0701 s
  {
    entries: { run: 'Load', peak: 14, length: 4 },
    supply: { milliohms: 14 },
    verdict: ['fuseTooSlow'],
    size: '14 AWG',
    fuse: 20,
  },
  // 10 AWG is too thin: 310.16 75 degC column, 10 AWG: 35 A; 40 A x 2 x 2 ft x 0.6282 mOhm/ft = 0.101 V, 0.84 % of
  // 12 V; 310.16 75 degC column, 8 AWG: 50 A; 40 x 1.25 = 50, next fuse 50; near end 988 A: 19.8 times 50 A, 1 s;
  // wire (115 x 8.3656 / 988)^2 = 0.948 s
  {
    entries: { run: 'Load', peak: 40, length: 2 },
    supply: { milliohms: 12.8 },
    verdict: ['fuseTooSlow'],
    size: '8 AWG',
    fuse: 50,
  },
  // Trunk carries 20.5 A: x 1.25 = 25.625, fuse 30; 0.5 A x 2 x 18 ft x 6.385 mOhm/ft = 0.115 V, 0.96 % of 12 V;
  // 310.16 prints 14 A for 18 AWG at 90 degC alone; x sqrt(45/60) = 12.12, 12 A; 0.5 x 1.25 = 0.625, next fuse 1;
  // far end 45 A: 1.49 times 30 A, 137 s; wire (115 x 0.823 / 45)^2 = 4.46 s
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
    verdict: ['needsFuse', 'fuseTooSlow'],
    size: '18 AWG',
    fuse: 'none',
  },
  // Trunk carries 36.5 A: x 1.25 = 45.6, fuse 50; 0.5 A x 2 x 30 ft x 1.588 mOhm/ft = 0.048 V, 0.40 % of 12 V;
  // 310.16 75 degC column, 12 AWG: 25 A; 0.5 x 1.25 = 0.625, next fuse 1; far end 86 A: 1.72 times 50 A, 218 s; wire
  // (115 x 3.3088 / 86)^2 = 19.5 s
  {
    entries: {
      run: 'Branch',
      fedFrom: 'Trunk',
      fused: 'no',
      peak: 0.5,
      length: 30,
      ownSize: '12 AWG',
    },
    others: [{ run: 'Trunk', length: 2, ownSize: '6 AWG', peak: 36 }],
    verdict: ['needsFuse', 'fuseTooSlow'],
    size: '12 AWG',
    fuse: 'none',
  },
  // 16 AWG is too thin: 12 A x 2 x 4 ft x 4.016 mOhm/ft = 0.386 V, 3.21 % of 12 V; 12 A x 2 x 4 ft x 2.525 mOhm/ft =
  // 0.242 V, 2.02 % of 12 V; 310.16 75 degC column, 14 AWG: 20 A; 12 x 1.25 = 15, next fuse 15; near end 843 A: 56.2
  // times 15 A, 0.1 s; wire (115 x 2.0809 / 843)^2 = 0.0805 s
  {
    entries: { run: 'Load', peak: 12, length: 4 },
    supply: { milliohms: 15 },
    verdict: ['fuseTooSlow'],
    size: '14 AWG',
    fuse: 15,
  },
];

export const FAULT_TOO_WEAK: readonly StatedRow[] = [
  // Trunk carries 20.5 A: x 1.25 = 25.625, fuse 30; 0.5 A x 2 x 250 ft x 0.9989 mOhm/ft = 0.250 V, 2.08 % of 12 V;
  // 310.16 75 degC column, 10 AWG: 35 A; 0.5 x 1.25 = 0.625, next fuse 1; far end 12.65 V / (50 + 2.513 + 499.5
  // mOhm) = 22.9 A, under 1.35 x 30 = 40.5 A
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
    verdict: ['faultTooWeak'],
    size: '10 AWG',
    fuse: 'none',
  },
  // Trunk carries 37.5 A: x 1.25 = 46.875, fuse 50; 1.5 A x 2 x 150 ft x 0.6282 mOhm/ft = 0.283 V, 2.36 % of 12 V;
  // 310.16 75 degC column, 8 AWG: 50 A; 1.5 x 1.25 = 1.875, next fuse 2; far end 12.65 V / (50 + 1.58 + 188.5 mOhm)
  // = 52.7 A, under 1.35 x 50 = 67.5 A
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
  // Trunk carries 15.2 A: x 1.25 = 19, fuse 20; 0.2 A x 2 x 80 ft x 4.016 mOhm/ft = 0.129 V, 1.07 % of 12 V; 310.16
  // prints 18 A for 16 AWG at 90 degC alone; x sqrt(45/60) = 15.59, 15 A; 0.2 x 1.25 = 0.25, next fuse 1; far end
  // 12.65 V / (50 + 2.513 + 642.6 mOhm) = 18.2 A, under 1.35 x 20 = 27 A
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
  // a small, worn battery; 14 AWG is too thin: 310.16 75 degC column, 14 AWG: 20 A, fuse 25; 20 A x 2 x 2 ft x 1.588
  // mOhm/ft = 0.127 V, 1.06 % of 12 V; 310.16 75 degC column, 12 AWG: 25 A; 20 x 1.25 = 25, next fuse 25; far end
  // 12.65 V / (380 + 6.352 mOhm) = 32.7 A, under 1.35 x 25 = 33.75 A
  {
    entries: { run: 'Load', peak: 20, length: 2 },
    supply: { milliohms: 380 },
    verdict: ['faultTooWeak'],
    size: '12 AWG',
    fuse: 25,
  },
  // 18 AWG is too thin: 9 A x 2 x 4 ft x 6.385 mOhm/ft = 0.460 V, 3.83 % of 12 V; 9 A x 2 x 4 ft x 4.016 mOhm/ft =
  // 0.289 V, 2.41 % of 12 V; 310.16 prints 18 A for 16 AWG at 90 degC alone; x sqrt(45/60) = 15.59, 15 A; 9 x 1.25 =
  // 11.25, next fuse 15; far end 12.65 V / (700 + 32.13 mOhm) = 17.3 A, under 1.35 x 15 = 20.25 A
  {
    entries: { run: 'Load', peak: 9, length: 4 },
    supply: { milliohms: 700 },
    verdict: ['faultTooWeak'],
    size: '16 AWG',
    fuse: 15,
  },
];

export const MAY_NOT_BREAK: readonly StatedRow[] = [
  // 22 A x 2 x 13 ft x 0.3951 mOhm/ft = 0.226 V, 1.88 % of 12 V; 310.16 75 degC column, 6 AWG: 65 A; 22 x 1.25 =
  // 27.5, next fuse 30; 12.65 V / (5 mOhm) = 2530 A, over 1000 A
  {
    entries: { run: 'Load', peak: 22, length: 13, ownSize: '6 AWG' },
    supply: { milliohms: 5 },
    verdict: ['mayNotBreak'],
    size: '6 AWG',
    fuse: 30,
  },
  // 12 AWG is too thin: 20 A x 2 x 6 ft x 1.588 mOhm/ft = 0.381 V, 3.18 % of 12 V; 20 A x 2 x 6 ft x 0.9989 mOhm/ft
  // = 0.240 V, 2.00 % of 12 V; 310.16 75 degC column, 10 AWG: 35 A; 20 x 1.25 = 25, next fuse 25; 12.65 V / (8 mOhm)
  // = 1581 A, over 1000 A
  {
    entries: { run: 'Load', peak: 20, length: 6 },
    supply: { milliohms: 8 },
    verdict: ['mayNotBreak'],
    size: '10 AWG',
    fuse: 25,
  },
  // 12 AWG is too thin: 1.5 A x 2 x 180 ft x 1.588 mOhm/ft = 0.858 V, 3.57 % of 24 V; 1.5 A x 2 x 180 ft x 0.9989
  // mOhm/ft = 0.539 V, 2.25 % of 24 V; 310.16 75 degC column, 10 AWG: 35 A; 1.5 x 1.25 = 1.875, next fuse 2; 24 V /
  // (14 mOhm) = 1714 A, over 1000 A
  {
    entries: { run: 'Load', peak: 1.5, length: 180, volts: 24 },
    supply: { milliohms: 14 },
    verdict: ['mayNotBreak'],
    size: '10 AWG',
    fuse: 2,
  },
  // 2 AWG is too thin: 310.16 75 degC column, 2 AWG: 115 A, fuse 125; 100 A x 2 x 4 ft x 0.09827 mOhm/ft = 0.079 V,
  // 0.66 % of 12 V; 310.16 75 degC column, 1/0 AWG: 150 A; 100 x 1.25 = 125, next fuse 125; 12.65 V / (5 mOhm) =
  // 2530 A, over 2000 A
  {
    entries: { run: 'Load', peak: 100, length: 4 },
    supply: { milliohms: 5 },
    verdict: ['mayNotBreak'],
    size: '1/0 AWG',
    fuse: 125,
  },
  // 48 A x 2 x 3 ft x 0.2485 mOhm/ft = 0.072 V, 0.60 % of 12 V; 310.16 75 degC column, 4 AWG: 85 A; 48 x 1.25 = 60,
  // next fuse 60; 12.65 V / (8 mOhm) = 1581 A, over 1000 A
  {
    entries: { run: 'Load', peak: 48, length: 3, ownSize: '4 AWG' },
    supply: { milliohms: 8 },
    verdict: ['mayNotBreak'],
    size: '4 AWG',
    fuse: 60,
  },
  // 6 A x 2 x 7 ft x 4.016 mOhm/ft = 0.337 V, 2.81 % of 12 V; 310.16 prints 18 A for 16 AWG at 90 degC alone; x
  // sqrt(45/60) = 15.59, 15 A; 6 x 1.25 = 7.5, next fuse 7.5; 12.65 V / (10 mOhm) = 1265 A, over 1000 A; near end
  // 1265 A: 169 times 7.5 A, 0.1 s; wire (115 x 1.3087 / 1265)^2 = 0.0142 s
  {
    entries: { run: 'Load', peak: 6, length: 7, ownSize: '16 AWG' },
    rules: { target: 0.05 },
    supply: { milliohms: 10 },
    verdict: ['fuseTooSlow', 'mayNotBreak'],
    size: '16 AWG',
    fuse: 7.5,
  },
];
