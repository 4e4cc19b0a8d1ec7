/** 12 V, feet, a stated bank of 400 Ah, whose short is some twenty times what a blade breaks. */
import type { Station } from './station';

export const hutBankOf400: Station = {
  title: 'Hilltop relay hut: 400 Ah bank with a block of blades beside it',
  supply: { chemistry: 'lead-acid', ampHours: 400 },
  runs: [
    {
      run: 'Block main',
      load: 'Block of blades',
      length: 2,
      joints: 0.5,
      ownSize: '2 AWG',
      later: {
        fuseKind: 'high-breaking',
        fuseBreaksA: 50000,
        fuseVolts: 80,
        fuseI2t: 12000,
        unfused: 0.5,
      },
      expected: 'ok',
      because:
        'Own fuse breaks 50,000 A; the bank gives at most 12.65 V / (500 / 400 / 2 = 0.625 mOhm) = 20,240 A. Its 50 A: fuse 70 A, 2 AWG carries 115 A (310.16); no load of its own, 0.48 % lost up to its end; far-end short 3,209 A.',
    },
    {
      run: 'Relay set',
      fedFrom: 'Block main',
      load: 'Relay transceiver, sending',
      peak: 14,
      length: 6,
      joints: 1,
      expected: 'danger',
      because:
        'Blade breaks 1,000 A (ISO 8820-3). At the block: 12.65 V / (0.625 bank, half the usual + 0.625 of 2 x 2 ft 2 AWG at 0.1563 ohm/kft + 0.5 joints = 1.75 mOhm) = 7,230 A, and with the usual 1.25 mOhm still 5,330 A; half of either is over 1,000 A too, so no fuse above helps (ABYC E-11).',
    },
    {
      run: 'Link radio',
      fedFrom: 'Block main',
      load: 'Link down to the valley',
      peak: 4,
      length: 8,
      joints: 1,
      expected: 'danger',
      because:
        'Blade breaks 1,000 A (ISO 8820-3). At the block: 12.65 V / (0.625 bank, half the usual + 0.625 of 2 x 2 ft 2 AWG at 0.1563 ohm/kft + 0.5 joints = 1.75 mOhm) = 7,230 A, and with the usual 1.25 mOhm still 5,330 A; half of either is over 1,000 A too, so no fuse above helps (ABYC E-11).',
    },
    {
      run: 'Siren',
      fedFrom: 'Block main',
      load: 'Siren amplifier',
      peak: 9,
      length: 9,
      joints: 1,
      expected: 'danger',
      because:
        'Blade breaks 1,000 A (ISO 8820-3). At the block: 12.65 V / (0.625 bank, half the usual + 0.625 of 2 x 2 ft 2 AWG at 0.1563 ohm/kft + 0.5 joints = 1.75 mOhm) = 7,230 A, and with the usual 1.25 mOhm still 5,330 A; half of either is over 1,000 A too, so no fuse above helps (ABYC E-11).',
    },
    {
      run: 'Hut lights',
      fedFrom: 'Block main',
      load: 'Three lamps',
      peak: 3,
      length: 22,
      expected: 'danger',
      because:
        'Blade breaks 1,000 A (ISO 8820-3). At the block: 12.65 V / (0.625 bank, half the usual + 0.625 of 2 x 2 ft 2 AWG at 0.1563 ohm/kft + 0.5 joints = 1.75 mOhm) = 7,230 A, and with the usual 1.25 mOhm still 5,330 A; half of either is over 1,000 A too, so no fuse above helps (ABYC E-11).',
    },
    {
      run: 'Amplifier',
      fedFrom: 'Block main',
      load: 'Repeater amplifier',
      peak: 20,
      length: 6,
      joints: 1,
      later: { fuseKind: 'high-breaking', fuseBreaksA: 20000, fuseVolts: 58, fuseI2t: 3000 },
      expected: 'ok',
      because:
        'Its own fuse breaks 20,000 A, at the block at most 7,230 A. Its 20 A: fuse 25 A, 10 AWG carries 35 A (310.16), 30 A by 240.4(D); 2.72 % of 3 % lost from source to load; far-end short 630 A.',
    },
    {
      run: 'Sense lead',
      load: 'Battery monitor',
      peak: 0.2,
      length: 3,
      later: { unfused: 0.5 },
      expected: 'danger',
      because:
        'A 1 A blade (1,000 A, ISO 8820-3) right at the bank: 12.65 V / 0.625 mOhm = 20,240 A, 10,120 A by the usual figure.',
    },
    {
      run: 'Shed line',
      load: 'Down to the boat shed',
      length: 120,
      ownSize: '6 AWG',
      later: {
        fuseKind: 'high-breaking',
        fuseBreaksA: 50000,
        fuseVolts: 80,
        fuseI2t: 2000,
        unfused: 0.5,
      },
      expected: 'ok',
      because:
        "Own fuse breaks 50,000 A at the bank's 20,240 A. Its 2.1 A: fuse 3 A, 6 AWG carries 65 A (310.16); no load of its own, 1.78 % lost up to its end; far-end short 101 A.",
    },
    {
      run: 'Shed lamp',
      fedFrom: 'Shed line',
      load: 'Lamp in the shed',
      peak: 0.5,
      length: 4,
      expected: 'ok',
      because:
        'The long line limits the fault: 12.65 V / (0.6 bank + 94.8 line, 240 ft at 0.3951 ohm/kft + 3 joints) = 128 A, far under 1,000 A. Its 0.5 A: fuse 1 A, 18 AWG carries 12 A (310.16), 7 A by 240.4(D); 2.01 % of 3 % lost from source to load; at its fuse at most 128 A of the 1,000 A it breaks (ISO 8820-3); far-end short 65.7 A, it must open from 1.35 A.',
    },
    {
      run: 'Shed siren relay',
      fedFrom: 'Shed line',
      load: 'Relay of the lower siren',
      peak: 0.4,
      length: 10,
      expected: 'ok',
      because:
        'As the shed lamp: fault 128 A at its blade. Its 0.4 A: fuse 1 A, 18 AWG carries 12 A (310.16), 7 A by 240.4(D); 2.23 % of 3 % lost from source to load; at its fuse at most 128 A of the 1,000 A it breaks (ISO 8820-3); far-end short 43.8 A, it must open from 1.35 A.',
    },
    {
      run: 'Shed heater',
      fedFrom: 'Shed line',
      load: 'Anti-frost heater of the gauge',
      peak: 1.2,
      length: 40,
      ownSize: '18 AWG',
      expected: 'fails',
      because:
        '1.2 A over 40 ft of 18 AWG: 80 ft x 6.385 x 1.0393 + 3 = 534 mOhm, 0.64 V, and 0.21 V in the line above: 7.12 % of 12 V, over 3 %.',
    },
  ],
};
