/** 24 V, feet, warm lockers (40 degC), six conductors together, the battery not told. */
import type { Station } from './station';

export const van24Volts: Station = {
  title: 'Response truck on 24 V',
  rules: { volts: 24, ambientC: 40, conductors: 6 },
  runs: [
    {
      run: 'Radio A',
      load: 'Radio behind its converter',
      peak: 12,
      length: 9,
      expected: 'check',
      because:
        'Its 12 A: fuse 15 A, 12 AWG carries 17.6 A (310.16, corrected); 1.69 % of 3 % lost from source to load; far-end short 420 A, it must open from 20.25 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'Radio B',
      load: 'Second channel',
      peak: 6,
      length: 9,
      expected: 'check',
      because:
        'Its 6 A: fuse 7.5 A, 16 AWG carries 10.6 A (310.16, corrected), 10 A by 240.4(D); 2.02 % of 3 % lost from source to load; far-end short 220 A, it must open from 10.12 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'Winch',
      load: 'Winch motor',
      peak: 60,
      length: 8,
      ownSize: '4 AWG',
      expected: 'danger',
      because:
        '60 A take an 80 A fuse (1.25 x 60 = 75 A); 4 AWG carries 85 x 0.88 (40 degC) x 0.80 (six conductors, 310.15(C)(1)) = 60.0 A.',
    },
    {
      run: 'Pump',
      load: 'Bilge pump of the trailer',
      peak: 22,
      length: 6,
      ownSize: '10 AWG',
      expected: 'danger',
      because: '22 A take a 30 A fuse (27.5 A); 10 AWG carries 35 x 0.88 x 0.80 = 24.7 A.',
    },
    {
      run: 'Pump, thick',
      load: 'The same pump on 8 AWG',
      peak: 22,
      length: 6,
      ownSize: '8 AWG',
      expected: 'check',
      because:
        '8 AWG carries 50 x 0.88 x 0.80 = 35.3 A, fuse 30 A. Its 22 A: fuse 30 A, 8 AWG carries 35.3 A (310.16, corrected); 1.02 % of 3 % lost from source to load; far-end short 751 A, it must open from 40.5 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'Heater',
      load: 'Cab heater',
      peak: 13,
      length: 5,
      ownSize: '14 AWG',
      expected: 'danger',
      because:
        '13 A take a 20 A fuse (16.25 A); 14 AWG: 20 x 0.88 x 0.80 = 14.1 A, 15 A by 240.4(D).',
    },
    {
      run: 'Mast light',
      load: 'Light on the mast',
      peak: 4,
      length: 30,
      expected: 'check',
      because:
        'Its 4 A: fuse 5 A, 14 AWG carries 14.1 A (310.16, corrected); 2.77 % of 3 % lost from source to load; far-end short 118 A, it must open from 6.75 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'Rear block',
      load: 'Block in the rear',
      length: 14,
      expected: 'check',
      because:
        'Its 8.83 A: fuse 15 A, 12 AWG carries 17.6 A (310.16, corrected); no load of its own, 1.88 % lost up to its end; far-end short 316 A, it must open from 20.25 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'Rear modem',
      fedFrom: 'Rear block',
      load: 'Modem',
      peak: 1.5,
      length: 6,
      expected: 'check',
      because:
        'Its 1.5 A: fuse 2 A, 18 AWG carries 8.5 A (310.16, corrected), 7 A by 240.4(D); 2.41 % of 3 % lost from source to load; far-end short 141 A, it must open from 2.7 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'Rear camera',
      fedFrom: 'Rear block',
      load: 'Camera',
      peak: 24,
      kind: 'W',
      length: 10,
      leastVolts: 18,
      expected: 'check',
      because:
        'Its 1.33 A: fuse 2 A, 18 AWG carries 8.5 A (310.16, corrected), 7 A by 240.4(D); 2.66 % of 3 % lost from source to load; far-end short 104 A, it must open from 2.7 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'Rear sockets',
      fedFrom: 'Rear block',
      load: 'Sockets',
      peak: 6,
      length: 4,
      expected: 'check',
      because:
        'Its 6 A: fuse 7.5 A, 16 AWG carries 10.6 A (310.16, corrected), 10 A by 240.4(D); 2.82 % of 3 % lost from source to load; far-end short 204 A, it must open from 10.12 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'Trailer',
      load: 'Lamps of the trailer',
      peak: 5,
      length: 60,
      ownSize: '14 AWG',
      expected: 'fails',
      because:
        '5 A over 60 ft of 14 AWG: 120 ft x 2.525 x 1.0786 (40 degC) + 3 = 330 mOhm, 1.65 V = 6.87 % of 24 V, over 3 %; 7.5 A fuse.',
    },
    {
      run: 'Siren',
      load: 'Siren amplifier',
      peak: 5,
      length: 8,
      leastVolts: 27,
      expected: 'fails',
      because:
        'At 20 % charge a lead-acid bank rests at 2 x 12.03 = 24.05 V and even LiFePO4 at 8 x 3.24 = 25.9 V: never the 27 V that it asks for.',
    },
  ],
};
