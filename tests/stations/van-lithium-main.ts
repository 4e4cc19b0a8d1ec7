/** 12.8 V, metres and square millimetres, a stated lithium pack that may give twice the usual short. */
import type { Station } from './station';

export const vanLithiumMain: Station = {
  title: 'Response van: 100 Ah LiFePO4 behind a bolt-in main',
  rules: { unit: 'm', volts: 12.8, series: 'mm2' },
  supply: { chemistry: 'LiFePO4', ampHours: 100 },
  runs: [
    {
      run: 'Main',
      load: 'Block behind the seats',
      length: 1,
      joints: 0.4,
      ownSize: '50 mm2',
      later: { unfused: 0.15 },
      expected: 'danger',
      because:
        'Loads of 83.5 A take a 125 A bolt-in, 2,000 A (ISO 8820-5). 100 Ah LiFePO4: usual 800 / 100 = 8 mOhm, 13.40 V / 8 = 1,676 A; at half the usual 3,351 A, over 2,000 A, and nothing above it.',
    },
    {
      run: 'Radio A',
      fedFrom: 'Main',
      load: 'Radio, full power',
      peak: 22,
      length: 1.5,
      joints: 1,
      expected: 'danger',
      because:
        'At the block 13.40 V / (4 pack, half the usual + 0.77 of 2 x 1 m 50 mm2 at 0.386 ohm/km + 0.4 joints) = 2,590 A: more than a blade breaks (1,000 A) and more than twice that; the bolt-in above breaks 2,000 A only.',
    },
    {
      run: 'Radio B',
      fedFrom: 'Main',
      load: 'Second channel',
      peak: 18,
      length: 1.5,
      joints: 1,
      expected: 'danger',
      because:
        'At the block 13.40 V / (4 pack, half the usual + 0.77 of 2 x 1 m 50 mm2 at 0.386 ohm/km + 0.4 joints) = 2,590 A: more than a blade breaks (1,000 A) and more than twice that; the bolt-in above breaks 2,000 A only.',
    },
    {
      run: 'Beacon',
      fedFrom: 'Main',
      load: 'Roof beacon',
      peak: 4,
      length: 4,
      expected: 'danger',
      because:
        'At the block 13.40 V / (4 pack, half the usual + 0.77 of 2 x 1 m 50 mm2 at 0.386 ohm/km + 0.4 joints) = 2,590 A: more than a blade breaks (1,000 A) and more than twice that; the bolt-in above breaks 2,000 A only.',
    },
    {
      run: 'Winch light',
      fedFrom: 'Main',
      load: 'Light at the winch',
      peak: 6,
      length: 5,
      later: { fuseKind: 'high-breaking', fuseBreaksA: 10000, fuseVolts: 58, fuseI2t: 600 },
      expected: 'ok',
      because:
        'Own fuse breaks 10,000 A against 2,590 A at the block. Its 6 A: fuse 7.5 A, 6 mm2 carries 35 A (310.16), 30 A by 240.4(D); 2.43 % of 3 % lost from source to load; far-end short 217 A.',
    },
    {
      run: 'Blower',
      fedFrom: 'Main',
      load: 'Blower of the heater',
      peak: 8,
      length: 3,
      later: { fuseKind: 'high-breaking', fuseBreaksA: 10000, fuseVolts: 58, fuseI2t: 600 },
      expected: 'ok',
      because:
        'Own fuse breaks 10,000 A against 2,590 A at the block. Its 8 A: fuse 10 A, 4 mm2 carries 25 A (310.16), 20 A by 240.4(D); 2.80 % of 3 % lost from source to load; far-end short 232 A.',
    },
    {
      run: 'Rear rack',
      fedFrom: 'Main',
      load: 'Block in the rear',
      length: 8,
      joints: 3,
      ownSize: '35 mm2',
      later: { fuseKind: 'high-breaking', fuseBreaksA: 10000, fuseVolts: 58, fuseI2t: 8000 },
      expected: 'ok',
      because:
        'Own fuse breaks 10,000 A against 2,590 A at the block. Its 25.5 A: fuse 35 A, 35 mm2 carries 115 A (310.16); no load of its own, 2.06 % lost up to its end; far-end short 419 A.',
    },
    {
      run: 'Rear radio',
      fedFrom: 'Rear rack',
      load: 'Radio in the rear',
      peak: 6,
      length: 1.5,
      joints: 1,
      expected: 'ok',
      because:
        'Its 6 A: fuse 7.5 A, 4 mm2 carries 25 A (310.16), 20 A by 240.4(D); 2.83 % of 3 % lost from source to load; at its fuse at most 787 A of the 1,000 A it breaks (ISO 8820-3); far-end short 261 A, it must open from 10.12 A.',
    },
    {
      run: 'Rear modem',
      fedFrom: 'Rear rack',
      load: 'Modem',
      peak: 2,
      length: 2,
      expected: 'ok',
      because:
        'Its 2 A: fuse 3 A, 1.5 mm2 carries 15 A (310.16), 10 A by 240.4(D); 2.98 % of 3 % lost from source to load; at its fuse at most 787 A of the 1,000 A it breaks (ISO 8820-3); far-end short 133 A, it must open from 4.05 A.',
    },
    {
      run: 'Rear lamp',
      fedFrom: 'Rear rack',
      load: 'Work lamp',
      peak: 1.5,
      length: 3,
      expected: 'ok',
      because:
        'Its 1.5 A: fuse 2 A, 2.5 mm2 carries 20 A (310.16), 15 A by 240.4(D); 2.68 % of 3 % lost from source to load; at its fuse at most 787 A of the 1,000 A it breaks (ISO 8820-3); far-end short 142 A, it must open from 2.7 A.',
    },
    {
      run: 'Cooler',
      fedFrom: 'Rear rack',
      load: 'Cooler for the samples',
      peak: 5,
      length: 5,
      ownSize: '2.5 mm2',
      expected: 'fails',
      because:
        '5 A through 2.5 mm2: the two feeders above lose 0.26 V, its own 2 x 5 m x 7.98 x 1.0393 + 3 = 85.9 mOhm another 0.43 V: 5.42 % of 12.8 V, over 3 %.',
    },
    {
      run: 'Roof mast',
      fedFrom: 'Rear rack',
      load: 'Mast winder',
      peak: 11,
      length: 2,
      ownSize: '1 mm2',
      later: { atOnce: 0 },
      expected: 'danger',
      because:
        '11 A take a 15 A fuse (1.25 x 11 = 13.75 A); 1 mm2 counts as 18 AWG, 12 A at 75 degC (310.16), 7 A by 240.4(D): no fuse fits.',
    },
  ],
};
