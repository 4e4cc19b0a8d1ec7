/** Twelve ordinary runs, nothing else typed: 12 V, feet, every size the suggested one, the battery not told. */
import type { Station } from './station';

export const hutUntouchedList: Station = {
  title: 'Hilltop relay hut: twelve runs typed into an untouched schedule',
  runs: [
    {
      run: 'Relay set',
      load: 'Relay transceiver, sending',
      peak: 14,
      length: 6,
      expected: 'check',
      because:
        'Its 14 A: fuse 20 A, 12 AWG carries 25 A (310.16), 20 A by 240.4(D); 2.66 % of 3 % lost from source to load; far-end short 336 A, it must open from 27 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'Link radio',
      load: 'Link down to the valley',
      peak: 4,
      length: 8,
      expected: 'check',
      because:
        'Its 4 A: fuse 5 A, 16 AWG carries 15 A (310.16), 10 A by 240.4(D); 2.33 % of 3 % lost from source to load; far-end short 134 A, it must open from 6.75 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'Packet modem',
      load: 'Modem of the gauge network',
      peak: 1.2,
      length: 10,
      expected: 'check',
      because:
        'Its 1.2 A: fuse 2 A, 18 AWG carries 12 A (310.16), 7 A by 240.4(D); 1.36 % of 3 % lost from source to load; far-end short 72.5 A, it must open from 2.7 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'River camera',
      load: 'Camera on the mast',
      peak: 2.3,
      length: 30,
      expected: 'check',
      because:
        'Its 2.3 A: fuse 3 A, 12 AWG carries 25 A (310.16), 20 A by 240.4(D); 1.96 % of 3 % lost from source to load; far-end short 94.7 A, it must open from 4.05 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'Hut lights',
      load: 'Three lamps',
      peak: 3,
      length: 22,
      expected: 'check',
      because:
        'Its 3 A: fuse 4 A, 14 AWG carries 20 A (310.16), 15 A by 240.4(D); 2.96 % of 3 % lost from source to load; far-end short 82.4 A, it must open from 5.4 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'Door lamp',
      load: 'Lamp over the door',
      peak: 0.5,
      length: 40,
      expected: 'check',
      because:
        'Its 0.5 A: fuse 1 A, 18 AWG carries 12 A (310.16), 7 A by 240.4(D); 2.22 % of 3 % lost from source to load; far-end short 19.3 A, it must open from 1.35 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'Laptop charger',
      load: 'Charger of the log computer',
      peak: 6,
      length: 7,
      expected: 'check',
      because:
        'Its 6 A: fuse 7.5 A, 14 AWG carries 20 A (310.16), 15 A by 240.4(D); 1.99 % of 3 % lost from source to load; far-end short 217 A, it must open from 10.12 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'Siren',
      load: 'Siren amplifier',
      peak: 11,
      length: 12,
      expected: 'check',
      because:
        'Its 11 A: fuse 15 A, 10 AWG carries 35 A (310.16), 30 A by 240.4(D); 2.56 % of 3 % lost from source to load; far-end short 289 A, it must open from 20.25 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'Block',
      load: 'Distribution block',
      length: 5,
      expected: 'check',
      because:
        'Its 6.1 A: fuse 10 A, 14 AWG carries 20 A (310.16), 15 A by 240.4(D); no load of its own, 1.49 % lost up to its end; far-end short 278 A, it must open from 13.5 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'Recorder',
      fedFrom: 'Block',
      load: 'Voice recorder',
      peak: 0.8,
      length: 6,
      expected: 'check',
      because:
        'Its 0.8 A: fuse 1 A, 18 AWG carries 12 A (310.16), 7 A by 240.4(D); 2.04 % of 3 % lost from source to load; far-end short 87.2 A, it must open from 1.35 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'Handheld chargers',
      fedFrom: 'Block',
      load: 'Six handhelds in their cradles',
      peak: 5,
      length: 4,
      expected: 'check',
      because:
        'Its 5 A: fuse 7.5 A, 14 AWG carries 20 A (310.16), 15 A by 240.4(D); 2.49 % of 3 % lost from source to load; far-end short 171 A, it must open from 10.12 A; the battery is not told, so the breaking limit is not judged.',
    },
    {
      run: 'Weather mast',
      fedFrom: 'Block',
      load: 'Wind and rain sensors',
      peak: 0.3,
      length: 25,
      expected: 'check',
      because:
        'Its 0.3 A: fuse 1 A, 18 AWG carries 12 A (310.16), 7 A by 240.4(D); 2.32 % of 3 % lost from source to load; far-end short 28.1 A, it must open from 1.35 A; the battery is not told, so the breaking limit is not judged.',
    },
  ],
};
