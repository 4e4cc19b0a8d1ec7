/** 12 V, feet, a stated lead-acid battery with measured milliohms and the short-circuit amps of its maker. */
import type { Station } from './station';

export const vanInverter: Station = {
  title: 'Response van: inverters beside the radios',
  supply: { chemistry: 'lead-acid', ampHours: 120, milliohms: 14, lowCharge: 0.5 },
  later: { batteryShortCircuitAmps: 800 },
  runs: [
    {
      run: 'Kitchen inverter',
      load: 'Inverter, 1,000 W',
      peak: 1000,
      kind: 'W',
      length: 4,
      joints: 1,
      ownSize: '1/0 AWG',
      later: { atOnce: 0, unfused: 0.5 },
      expected: 'check',
      because:
        "1,000 W with neither least volts nor efficiency, over 100 W. 125 A fuse: 1.25 x 1000 / 12 = 104 A, but at 85 % from 10.5 V the inverter takes 112 A and the rule for hours asks 1.25 x 98 = 122.5 A: right only if those figures are. 1/0 carries 150 A (310.16); bolt-in breaks 2,000 A against 800 A; its opening times are the maker's.",
    },
    {
      run: 'Field inverter',
      load: 'Inverter, 600 W',
      peak: 600,
      kind: 'W',
      length: 4,
      ownSize: '2 AWG',
      leastVolts: 10,
      later: { atOnce: 0, efficiency: 0.85, unfused: 0.5 },
      expected: 'ok',
      because:
        '600 / 0.85 / 10 V = 70.6 A at least volts, 1.25 x 706 / 12 = 73.5 A, so 80 A, within 115 A of 2 AWG (310.16). Its 70.59 A: fuse 80 A, 2 AWG carries 115 A (310.16); 2.53 % of 3 % lost from source to load; at its fuse at most 800 A of the 1,000 A it breaks (ISO 8820-3); far-end short 377 A, it must open from 108 A.',
    },
    {
      run: 'Charger inverter',
      load: 'Inverter, 300 W',
      peak: 300,
      kind: 'W',
      length: 5,
      later: { atOnce: 0, unfused: 0.5 },
      expected: 'check',
      because:
        '300 W with neither least volts nor efficiency: what it draws at low charge is not known. Otherwise right. Its 26.5 A: fuse 35 A, 8 AWG carries 50 A (310.16); 2.10 % of 3 % lost from source to load; at its fuse at most 800 A of the 1,000 A it breaks (ISO 8820-3); far-end short 318 A, it must open from 47.25 A.',
    },
    {
      run: 'Radio A',
      load: 'Radio, full power',
      peak: 22,
      length: 6,
      joints: 1,
      leastVolts: 10.9,
      later: { unfused: 0.5 },
      expected: 'ok',
      because:
        'The inverters are off while it sends (At once 0): sag 14 mOhm x 52.1 A, left at low charge 11.21 V of the 10.9 V it needs. With all inverters on it would be under 9.5 V. Its 22 A: fuse 30 A, 10 AWG carries 35 A (310.16), 30 A by 240.4(D); 2.47 % of 3 % lost from source to load; at its fuse at most 800 A of the 1,000 A it breaks (ISO 8820-3); far-end short 282 A, it must open from 40.5 A.',
    },
    {
      run: 'Radio B',
      load: 'Second channel',
      peak: 10,
      length: 6,
      joints: 1,
      leastVolts: 10.9,
      later: { unfused: 0.5 },
      expected: 'ok',
      because:
        'As radio A: 11.19 V at low charge, 10.9 V needed. Its 10 A: fuse 15 A, 14 AWG carries 20 A (310.16), 15 A by 240.4(D); 2.71 % of 3 % lost from source to load; at its fuse at most 800 A of the 1,000 A it breaks (ISO 8820-3); far-end short 188 A, it must open from 20.25 A.',
    },
    {
      run: 'Radio C',
      load: 'Old cable of the spare set',
      peak: 22,
      length: 4,
      ownSize: '14 AWG',
      later: { unfused: 0.5, atOnce: 0 },
      expected: 'danger',
      because:
        '22 A take a 30 A fuse (1.25 x 22 = 27.5 A); 14 AWG may carry 20 A (310.16) and be fused at 15 A (240.4(D)).',
    },
    {
      run: 'Receiver',
      load: 'Measuring receiver',
      peak: 0.5,
      length: 4,
      leastVolts: 12.4,
      later: { unfused: 0.5 },
      expected: 'fails',
      because: 'Needs 12.4 V; at half charge the battery itself rests at 12.24 V.',
    },
    {
      run: 'Winch lead',
      load: 'Winch relay',
      peak: 3,
      length: 8,
      later: { unfused: 5 },
      expected: 'danger',
      because:
        '5 ft (60 in) of unfused wire from the battery: at most 7 in, or 40 in in a sheath (33 CFR 183.455(b)).',
    },
    {
      run: 'Cab lamp',
      load: 'Map lamp',
      peak: 0.6,
      length: 10,
      later: { unfused: 0.5 },
      expected: 'ok',
      because:
        'Its 0.6 A: fuse 1 A, 18 AWG carries 12 A (310.16), 7 A by 240.4(D); 0.68 % of 3 % lost from source to load; at its fuse at most 800 A of the 1,000 A it breaks (ISO 8820-3); far-end short 66.6 A, it must open from 1.35 A.',
    },
    {
      run: 'Dash sockets',
      load: 'Two charging sockets',
      peak: 8,
      length: 7,
      later: { unfused: 0.5 },
      expected: 'ok',
      because:
        'Its 8 A: fuse 10 A, 14 AWG carries 20 A (310.16), 15 A by 240.4(D); 2.65 % of 3 % lost from source to load; at its fuse at most 800 A of the 1,000 A it breaks (ISO 8820-3); far-end short 167 A, it must open from 13.5 A.',
    },
    {
      run: 'Window set',
      load: 'Set at the window',
      peak: 22,
      length: 13,
      ownSize: '8 AWG',
      later: { atOnce: 0, unfused: 0.5 },
      expected: 'fails',
      because:
        '22 A over 13 ft of 8 AWG: 26 ft x 0.6282 = 16.33 mOhm at 20 degC, 2.99 % of 12 V without its joints; at 30 degC and with the 3 mOhm of fuse, holder and crimps 19.97 mOhm, 0.44 V = 3.66 %, over 3 %.',
    },
    {
      run: 'Rear sockets',
      load: 'Two sockets at the rear',
      peak: 8,
      length: 18,
      ownSize: '12 AWG',
      later: { unfused: 0.5 },
      expected: 'fails',
      because:
        '8 A over 18 ft of 12 AWG: 36 ft x 1.588 x 1.0393 + 3 = 62.4 mOhm, 0.50 V = 4.16 % of 12 V, over 3 %; 12 AWG carries its 10 A fuse.',
    },
  ],
};
