/** 12 V, feet, bursts; the target counts from the battery to the load. Stated battery. */
import type { Station } from './station';

export const hutThreeInARow: Station = {
  title: 'Hilltop relay hut: runs in a row',
  rules: { duty: 'bursts' },
  supply: { chemistry: 'lead-acid', ampHours: 120, milliohms: 14 },
  later: { batteryShortCircuitAmps: 800 },
  runs: [
    {
      run: 'Leg 1',
      load: 'First junction',
      length: 20,
      later: { unfused: 0.5 },
      expected: 'ok',
      because:
        'Suggested sizes share 3 % of 12 V = 0.36 V over three legs: joints 3 x 3 mOhm x 20 A = 0.18 V, wire 0.18 V over 120 ft, so at most 75 mOhm/kft: 3/0 (0.0618 x 1.0393 = 0.0642), for the last leg what is left. Its 20 A in bursts: fuse 20 A, 3/0 AWG carries 200 A (310.16); no load of its own, 0.93 % lost up to its end; at its fuse at most 800 A of the 1,000 A it breaks (ISO 8820-3); far-end short 354 A, it must open from 27 A.',
    },
    {
      run: 'Leg 2',
      fedFrom: 'Leg 1',
      load: 'Second junction',
      length: 20,
      expected: 'ok',
      because:
        'Suggested sizes share 3 % of 12 V = 0.36 V over three legs: joints 3 x 3 mOhm x 20 A = 0.18 V, wire 0.18 V over 120 ft, so at most 75 mOhm/kft: 3/0 (0.0618 x 1.0393 = 0.0642), for the last leg what is left. Its 20 A in bursts: fuse 20 A, 3/0 AWG carries 200 A (310.16); no load of its own, 1.86 % lost up to its end; at its fuse at most 594 A of the 1,000 A it breaks (ISO 8820-3); far-end short 301 A, it must open from 27 A.',
    },
    {
      run: 'Leg 3',
      fedFrom: 'Leg 2',
      load: 'Set at the gauge house',
      peak: 20,
      length: 20,
      expected: 'ok',
      because:
        'Suggested sizes share 3 % of 12 V = 0.36 V over three legs: joints 3 x 3 mOhm x 20 A = 0.18 V, wire 0.18 V over 120 ft, so at most 75 mOhm/kft: 3/0 (0.0618 x 1.0393 = 0.0642), for the last leg what is left. Its 20 A in bursts: fuse 20 A, 2/0 AWG carries 175 A (310.16); 2.90 % of 3 % lost from source to load; at its fuse at most 473 A of the 1,000 A it breaks (ISO 8820-3); far-end short 258 A, it must open from 27 A.',
    },
    {
      run: 'Thin leg 1',
      load: 'First junction',
      length: 20,
      ownSize: '12 AWG',
      later: { unfused: 0.5 },
      expected: 'ok',
      because:
        'No load of its own: drop over target is said of the run whose load misses it (Thin leg 3). 20 A in bursts on a 20 A fuse, 12 AWG 25 A (310.16), 20 A (240.4(D)).',
    },
    {
      run: 'Thin leg 2',
      fedFrom: 'Thin leg 1',
      load: 'Second junction',
      length: 20,
      ownSize: '12 AWG',
      expected: 'ok',
      because:
        'No load of its own: drop over target is said of the run whose load misses it (Thin leg 3). 20 A in bursts on a 20 A fuse, 12 AWG 25 A (310.16), 20 A (240.4(D)).',
    },
    {
      run: 'Thin leg 3',
      fedFrom: 'Thin leg 2',
      load: 'Set at the ford',
      peak: 20,
      length: 20,
      ownSize: '12 AWG',
      expected: 'fails',
      because:
        'Each leg 40 ft x 1.588 x 1.0393 + 3 = 69 mOhm, 1.38 V; three of them 4.14 V = 34.51 % of 12 V against 3 %.',
    },
    {
      run: 'Lamp leg 1',
      load: 'Lamp at the first post',
      peak: 0.5,
      length: 20,
      ownSize: '12 AWG',
      later: { unfused: 0.5 },
      expected: 'fails',
      because:
        '12 AWG, 40 ft x 1.588 x 1.0393 + 3 = 69 mOhm a leg; on the path to this load 1.31 V = 10.93 % of 12 V, over 3 %.',
    },
    {
      run: 'Lamp leg 2',
      fedFrom: 'Lamp leg 1',
      load: 'Lamp at the second post',
      peak: 0.5,
      length: 20,
      ownSize: '12 AWG',
      expected: 'fails',
      because:
        '12 AWG, 40 ft x 1.588 x 1.0393 + 3 = 69 mOhm a leg; on the path to this load 2.59 V = 21.57 % of 12 V, over 3 %.',
    },
    {
      run: 'Lamp leg 3',
      fedFrom: 'Lamp leg 2',
      load: 'Set at the third post',
      peak: 18,
      length: 20,
      ownSize: '12 AWG',
      expected: 'fails',
      because:
        '12 AWG, 40 ft x 1.588 x 1.0393 + 3 = 69 mOhm a leg; on the path to this load 3.83 V = 31.92 % of 12 V, over 3 %.',
    },
    {
      run: 'Split',
      load: 'Junction in the attic',
      length: 10,
      later: { unfused: 0.5 },
      expected: 'ok',
      because:
        'Its 8 A in bursts: fuse 10 A, 8 AWG carries 50 A (310.16); no load of its own, 1.07 % lost up to its end; at its fuse at most 800 A of the 1,000 A it breaks (ISO 8820-3); far-end short 261 A, it must open from 13.5 A.',
    },
    {
      run: 'Split radio',
      fedFrom: 'Split',
      load: 'Link radio',
      peak: 6,
      length: 12,
      expected: 'ok',
      because:
        'Its 6 A in bursts: fuse 7.5 A, 10 AWG carries 35 A (310.16), 30 A by 240.4(D); 2.47 % of 3 % lost from source to load; at its fuse at most 403 A of the 1,000 A it breaks (ISO 8820-3); far-end short 155 A, it must open from 10.12 A.',
    },
    {
      run: 'Split lamps',
      fedFrom: 'Split',
      load: 'Lamps',
      peak: 2,
      length: 25,
      expected: 'ok',
      because:
        'Its 2 A in bursts: fuse 2 A, 12 AWG carries 25 A (310.16), 20 A by 240.4(D); 2.50 % of 3 % lost from source to load; at its fuse at most 403 A of the 1,000 A it breaks (ISO 8820-3); far-end short 83.5 A, it must open from 2.7 A.',
    },
    {
      run: 'Thin trunk',
      load: 'Old cable to the annexe',
      length: 30,
      ownSize: '10 AWG',
      later: { unfused: 0.5 },
      expected: 'ok',
      because:
        'No load of its own. Its 14 A in bursts: fuse 15 A, 10 AWG carries 35 A (310.16), 30 A by 240.4(D); no load of its own, 7.62 % lost up to its end; at its fuse at most 800 A of the 1,000 A it breaks (ISO 8820-3); far-end short 117 A, it must open from 20.25 A.',
    },
    {
      run: 'Annexe radio',
      fedFrom: 'Thin trunk',
      load: 'Radio in the annexe',
      peak: 14,
      length: 3,
      ownSize: '8 AWG',
      expected: 'fails',
      because:
        'The trunk above loses 60 ft x 0.9989 x 1.0393 + 3 = 65.3 mOhm x 14 A = 0.91 V = 7.6 %, more than the whole 3 %, whatever wire is taken here: the trunk must be thicker.',
    },
  ],
};
