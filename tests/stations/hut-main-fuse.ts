/** 12 V, feet, copper at 20 degC; a stated battery of 1,600 A behind a main fuse of 20,000 A; runs near the limits. */
import type { Station } from './station';

export const hutMainFuse: Station = {
  title: 'Hilltop relay hut behind a main fuse',
  rules: { tempC: 20 },
  supply: { chemistry: 'lead-acid', ampHours: 150, milliohms: 8 },
  later: {
    batteryShortCircuitAmps: 1600,
    mainFuseA: 150,
    mainFuseKind: 'high-breaking',
    mainFuseBreaksA: 20000,
    mainFuseVolts: 58,
  },
  runs: [
    {
      run: 'Long lead',
      load: 'Transceiver at the window',
      peak: 22,
      length: 13,
      ownSize: '8 AWG',
      later: { unfused: 0.5 },
      expected: 'fails',
      because:
        '22 A over 13 ft of 8 AWG: 26 ft x 0.6282 = 16.33 mOhm, 0.359 V = 2.99 % of 12 V without its joints; fuse, holder and crimps add 3 mOhm: 3.54 %, over 3 %.',
    },
    {
      run: 'Long lead, thicker',
      load: 'The same on 6 AWG',
      peak: 22,
      length: 13,
      ownSize: '6 AWG',
      later: { unfused: 0.5 },
      expected: 'check',
      because:
        'Otherwise right; but a short right behind the blade draws 1,600 A, over its 1,000 A (ISO 8820-3). The main fuse above breaks it (20,000 A) and 1,000 A is over half of 1,600 A: the reading of ABYC E-11, to be confirmed with the maker. Its 22 A: fuse 30 A, 6 AWG carries 65 A (310.16); 2.43 % of 3 % lost from source to load; far-end short 384 A, it must open from 40.5 A.',
    },
    {
      run: 'Lamp',
      load: 'Lamp',
      peak: 1,
      length: 9,
      later: { unfused: 0.5 },
      expected: 'check',
      because:
        'Otherwise right; but a short right behind the blade draws 1,600 A, over its 1,000 A (ISO 8820-3). The main fuse above breaks it (20,000 A) and 1,000 A is over half of 1,600 A: the reading of ABYC E-11, to be confirmed with the maker. Its 1 A: fuse 2 A, 18 AWG carries 12 A (310.16), 7 A by 240.4(D); 0.98 % of 3 % lost from source to load; far-end short 76.8 A, it must open from 2.7 A.',
    },
    {
      run: 'Radio',
      load: 'Link radio',
      peak: 8,
      length: 6,
      later: { unfused: 0.5 },
      expected: 'check',
      because:
        'Otherwise right; but a short right behind the blade draws 1,600 A, over its 1,000 A (ISO 8820-3). The main fuse above breaks it (20,000 A) and 1,000 A is over half of 1,600 A: the reading of ABYC E-11, to be confirmed with the maker. Its 8 A: fuse 10 A, 14 AWG carries 20 A (310.16), 15 A by 240.4(D); 2.22 % of 3 % lost from source to load; far-end short 218 A, it must open from 13.5 A.',
    },
    {
      run: 'Annexe',
      load: 'Block in the annexe',
      length: 30,
      later: { unfused: 0.5 },
      expected: 'check',
      because:
        'Otherwise right; but a short right behind the blade draws 1,600 A, over its 1,000 A (ISO 8820-3). The main fuse above breaks it (20,000 A) and 1,000 A is over half of 1,600 A: the reading of ABYC E-11, to be confirmed with the maker. Its 14.5 A: fuse 20 A, 4 AWG carries 85 A (310.16); no load of its own, 2.16 % lost up to its end; far-end short 326 A, it must open from 27 A.',
    },
    {
      run: 'Annexe radio',
      fedFrom: 'Annexe',
      load: 'Radio',
      peak: 8,
      length: 4,
      expected: 'ok',
      because:
        'Its 8 A: fuse 10 A, 10 AWG carries 35 A (310.16), 30 A by 240.4(D); 2.90 % of 3 % lost from source to load; at its fuse at most 490 A of the 1,000 A it breaks (ISO 8820-3); far-end short 243 A, it must open from 13.5 A.',
    },
    {
      run: 'Annexe lamp',
      fedFrom: 'Annexe',
      load: 'Lamp',
      peak: 1,
      length: 9,
      expected: 'ok',
      because:
        'Its 1 A: fuse 2 A, 16 AWG carries 15 A (310.16), 10 A by 240.4(D); 2.79 % of 3 % lost from source to load; at its fuse at most 490 A of the 1,000 A it breaks (ISO 8820-3); far-end short 95.2 A, it must open from 2.7 A.',
    },
    {
      run: 'Annexe charger',
      fedFrom: 'Annexe',
      load: 'Charger',
      peak: 5,
      length: 5,
      expected: 'ok',
      because:
        'Its 5 A: fuse 7.5 A, 12 AWG carries 25 A (310.16), 20 A by 240.4(D); 2.95 % of 3 % lost from source to load; at its fuse at most 490 A of the 1,000 A it breaks (ISO 8820-3); far-end short 204 A, it must open from 10.12 A.',
    },
    {
      run: 'Small breaker',
      load: 'Socket',
      peak: 6,
      length: 6,
      later: { fuseKind: 'own', fuseBreaksA: 400, fuseVolts: 32, unfused: 0.5 },
      expected: 'danger',
      because:
        'Its own device breaks 400 A, less than half of the 1,600 A right behind it: the main fuse above does not make up for it.',
    },
    {
      run: 'Annexe fan',
      fedFrom: 'Annexe',
      load: 'Fan',
      peak: 0.5,
      length: 6,
      ownSize: '16 AWG',
      fused: 'no',
      expected: 'danger',
      because:
        '16 AWG leans on the 20 A fuse of the annexe; 15 A by 310.16 and 10 A by 240.4(D): the wire burns before the fuse opens.',
    },
  ],
};
