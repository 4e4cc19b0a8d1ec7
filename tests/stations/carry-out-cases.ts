/** 12 V, metres, short leads inside and out of the cases, the battery not told. */
import type { Station } from './station';

export const carryOutCases: Station = {
  title: 'Carry-out radio cases',
  rules: { unit: 'm', series: 'mm2' },
  runs: [
    {
      run: 'Case 1 set',
      load: 'Carry-out radio',
      peak: 10,
      length: 1.2,
      joints: 3,
      expected: 'check',
      because:
        'Its 10.6 A: fuse 15 A, 2.5 mm2 carries 20 A (310.16), 15 A by 240.4(D); 2.02 % of 3 % lost from source to load; far-end short 335 A, it must open from 20.25 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'Case 1 lamp',
      fedFrom: 'Case 1 set',
      load: 'Work lamp on a stand',
      peak: 0.6,
      length: 2,
      ownSize: '2.5 mm2',
      expected: 'check',
      because:
        'Its 0.6 A: fuse 1 A, 2.5 mm2 carries 20 A (310.16), 15 A by 240.4(D); 2.20 % of 3 % lost from source to load; far-end short 156 A, it must open from 1.35 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'Case 2 set',
      load: 'Carry-out radio, low power',
      peak: 5,
      length: 2,
      expected: 'check',
      because:
        'Its 5 A: fuse 7.5 A, 1.5 mm2 carries 15 A (310.16), 10 A by 240.4(D); 2.43 % of 3 % lost from source to load; far-end short 157 A, it must open from 10.12 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'Case 2 charger',
      load: 'Battery charger',
      peak: 11,
      length: 0.5,
      ownSize: '1 mm2',
      expected: 'danger',
      because:
        '11 A take a 15 A fuse (13.75 A); 1 mm2 is over 18 AWG and under 16 AWG: 12 A (310.16, from its 90 degC column), less than the fuse and 7 A by 240.4(D).',
    },
    {
      run: 'Case 3 set',
      load: 'Radio on the long lead',
      peak: 12,
      length: 6,
      ownSize: '6 mm2',
      expected: 'fails',
      because:
        '12 A over 6 m of 6 mm2: 12 m x 3.30 x 1.0393 + 3 = 44.2 mOhm, 0.53 V = 4.42 % of 12 V, over 3 %; 15 A fuse, over 10 AWG: 30 A.',
    },
    {
      run: 'Case 3 camera',
      load: 'Camera on a tripod',
      peak: 12,
      kind: 'W',
      length: 5,
      leastVolts: 9,
      expected: 'check',
      because:
        'Its 1.33 A: fuse 2 A, 1 mm2 carries 12 A (310.16), 7 A by 240.4(D); 2.29 % of 3 % lost from source to load; far-end short 48.8 A, it must open from 2.7 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'Case 4 router',
      load: 'Router of the field office',
      peak: 18,
      kind: 'W',
      length: 3,
      expected: 'check',
      because:
        'Its 1.57 A: fuse 2 A, 1 mm2 carries 12 A (310.16), 7 A by 240.4(D); 1.63 % of 3 % lost from source to load; far-end short 78.6 A, it must open from 2.7 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'Case 4 bare lead',
      load: 'Lead with clips',
      peak: 1,
      length: 1,
      ownSize: '1.5 mm2',
      fused: 'no',
      expected: 'danger',
      because:
        'No fuse at all between battery and wire: nothing clears a short (33 CFR 183.455(a); NFPA 70 240.21).',
    },
    {
      run: 'Case 5 hair wire',
      load: 'Meter lead',
      peak: 0.3,
      length: 1,
      ownSize: '0.2 mm2',
      expected: 'danger',
      because:
        'No published ampacity below 18 AWG (310.16); 0.2 mm2 with a 1 A fuse cannot be judged as a power lead.',
    },
    {
      run: 'Case 5 receiver',
      load: 'Measuring receiver',
      peak: 0.4,
      length: 1,
      leastVolts: 13.2,
      expected: 'fails',
      because:
        'At 20 % charge lead-acid rests at 12.03 V and even LiFePO4 at 4 x 3.24 = 12.95 V: never the 13.2 V that it asks for.',
    },
  ],
};
