/** 48 V, metres, a stated bank of four 12 V batteries in series: a 32 V blade has no business there. */
import type { Station } from './station';

export const ridge48Volts: Station = {
  title: 'Ridge repeater on 48 V',
  rules: { unit: 'm', volts: 48 },
  supply: { chemistry: 'lead-acid', ampHours: 100, cells: 24, milliohms: 60 },
  later: { batteryShortCircuitAmps: 840 },
  runs: [
    {
      run: 'Repeater',
      load: 'Repeater, sending',
      peak: 6,
      length: 8,
      later: { unfused: 0.15 },
      expected: 'danger',
      because:
        'ISO 8820-3 blades count as 32 V; four batteries in series charge at 4 x 14.4 = 57.6 V.',
    },
    {
      run: 'Microwave link',
      load: 'Link to the dam',
      peak: 3,
      length: 20,
      ownSize: '12 AWG',
      later: { unfused: 0.15 },
      expected: 'danger',
      because:
        'ISO 8820-3 blades count as 32 V; four batteries in series charge at 4 x 14.4 = 57.6 V.',
    },
    {
      run: 'Mast heater',
      load: 'De-icing of the mast',
      peak: 4,
      length: 25,
      later: { unfused: 0.15, fuseKind: 'blade', fuseBreaksA: 1000, fuseVolts: 32 },
      expected: 'danger',
      because: 'The same with the volts typed: 32 V against 57.6 V on charge.',
    },
    {
      run: 'Amplifier',
      load: 'Repeater amplifier',
      peak: 12,
      length: 6,
      later: {
        fuseKind: 'high-breaking',
        fuseBreaksA: 20000,
        fuseVolts: 125,
        fuseI2t: 2000,
        unfused: 0.15,
      },
      expected: 'ok',
      because:
        'Fuse of 125 V and 20,000 A against 57.6 V and 50.6 V / 60 mOhm = 843 A. Its 12 A: fuse 15 A, 14 AWG carries 20 A (310.16), 15 A by 240.4(D); 2.66 % of 3 % lost from source to load; far-end short 199 A.',
    },
    {
      run: 'Camera rack',
      load: 'Four cameras',
      peak: 2.5,
      length: 18,
      later: {
        fuseKind: 'high-breaking',
        fuseBreaksA: 20000,
        fuseVolts: 125,
        fuseI2t: 500,
        unfused: 0.15,
      },
      expected: 'ok',
      because:
        'As the amplifier: 125 V, 20,000 A. Its 2.5 A: fuse 4 A, 16 AWG carries 15 A (310.16), 10 A by 240.4(D); 2.58 % of 3 % lost from source to load; far-end short 69.7 A.',
    },
    {
      run: 'Log server',
      load: 'Server, 270 W behind its converter',
      peak: 270,
      kind: 'W',
      length: 5,
      leastVolts: 42,
      later: {
        fuseKind: 'high-breaking',
        fuseBreaksA: 20000,
        fuseVolts: 125,
        fuseI2t: 1000,
        unfused: 0.15,
        efficiency: 0.9,
      },
      expected: 'ok',
      because:
        'Watts with least volts and efficiency: 270 W / 0.9 / 42 V = 7.14 A; 1.25 x 300 / 48 = 7.8 A, so a 10 A fuse. 125 V, 20,000 A. Its 7.14 A: fuse 10 A, 16 AWG carries 15 A (310.16), 10 A by 240.4(D); 2.08 % of 3 % lost from source to load; far-end short 171 A.',
    },
    {
      run: 'Old breaker branch',
      load: 'Workshop socket',
      peak: 8,
      length: 6,
      later: { fuseKind: 'own', fuseBreaksA: 500, fuseVolts: 125, unfused: 0.15 },
      expected: 'danger',
      because:
        'Its own device breaks 500 A; a short right behind it draws 50.6 V / 60 mOhm = 843 A, and nothing above it breaks that.',
    },
    {
      run: 'Far siren',
      load: 'Siren at the ford',
      peak: 5,
      length: 200,
      ownSize: '8 AWG',
      later: {
        fuseKind: 'high-breaking',
        fuseBreaksA: 20000,
        fuseVolts: 125,
        fuseI2t: 1000,
        unfused: 0.15,
      },
      expected: 'fails',
      because:
        '5 A over 200 m of 8 AWG: 400 m x 2.061 mOhm/m x 1.0393 + 3 = 860 mOhm, 4.30 V = 8.96 % of 48 V, over 3 %; the fuse is right: 125 V, 20,000 A.',
    },
  ],
};
