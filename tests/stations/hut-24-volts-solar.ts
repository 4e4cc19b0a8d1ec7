/** 24 V, metres and square millimetres, stated battery and panel, loads in watts. */
import type { Station } from './station';

export const hut24VoltsSolar: Station = {
  title: 'Hilltop relay hut on 24 V with a panel',
  rules: { unit: 'm', volts: 24, series: 'mm2' },
  supply: {
    chemistry: 'lead-acid',
    ampHours: 200,
    cells: 12,
    milliohms: 32,
    openCircuitVolts: 44,
    coldestC: -15,
    percentPerC: -0.29,
    shortCircuitAmps: 9.5,
    maximumPowerAmps: 8.9,
    panelVolts: 35,
    sunHours: 3,
  },
  later: { batteryShortCircuitAmps: 790 },
  runs: [
    {
      run: 'Panel, blade',
      fedFrom: 'panel',
      load: 'Panel to controller',
      peak: 11.9,
      length: 20,
      expected: 'danger',
      because:
        'Cold panel: 44 V x (1 + 0.0029 x 40) = 49.1 V over the 32 V of a blade (ISO 8820-3; NFPA 70 690.7).',
    },
    {
      run: 'Panel, string fuse',
      fedFrom: 'panel',
      load: 'Second panel to controller',
      peak: 11.9,
      length: 20,
      later: { fuseKind: 'high-breaking', fuseBreaksA: 30000, fuseVolts: 1000, fuseI2t: 500 },
      expected: 'ok',
      because:
        'Fuse of 1,000 V and 30,000 A. 1.25 x 9.5 = 11.9 A (690.8), x 1.25 = 14.9 A, so 15 A; drop 1.81 % of 35 V, target 2 %.',
    },
    {
      run: 'Panel, thin',
      fedFrom: 'panel',
      load: 'Third panel to controller',
      peak: 11.9,
      length: 20,
      ownSize: '6 mm2',
      later: { fuseKind: 'high-breaking', fuseBreaksA: 30000, fuseVolts: 1000, fuseI2t: 500 },
      expected: 'fails',
      because:
        '11.9 A over 20 m of 6 mm2: 40 m x 3.30 x 1.0393 + 3 = 140 mOhm, 1.67 V = 4.77 % of 35 V, over 2 %; fuse of 1,000 V.',
    },
    {
      run: 'Amplifier',
      load: 'Repeater amplifier',
      peak: 240,
      kind: 'W',
      length: 5,
      leastVolts: 22,
      later: { unfused: 0.15 },
      expected: 'ok',
      because:
        '240 W at its least 22 V: 10.9 A; 1.25 x 240 / 24 = 12.5 A, so 15 A; 22.68 V at low charge. Its 10.91 A: fuse 15 A, 4 mm2 carries 25 A (310.16), 20 A by 240.4(D); 2.47 % of 3 % lost from source to load; at its fuse at most 790 A of the 1,000 A it breaks (ISO 8820-3); far-end short 191 A, it must open from 20.25 A.',
    },
    {
      run: 'Inverter',
      load: 'Inverter of the field office',
      peak: 400,
      kind: 'W',
      length: 4,
      later: { atOnce: 0, unfused: 0.15 },
      expected: 'check',
      because:
        '400 W with neither least volts nor efficiency. Otherwise right. Its 18.14 A: fuse 25 A, 6 mm2 carries 35 A (310.16), 30 A by 240.4(D); 2.30 % of 3 % lost from source to load; at its fuse at most 790 A of the 1,000 A it breaks (ISO 8820-3); far-end short 244 A, it must open from 33.75 A.',
    },
    {
      run: 'Inverter, known',
      load: 'Inverter of the watch room',
      peak: 400,
      kind: 'W',
      length: 4,
      leastVolts: 21,
      later: { atOnce: 0, unfused: 0.15, efficiency: 0.88 },
      expected: 'ok',
      because:
        '400 / 0.88 / 21 V = 21.6 A; 1.25 x 455 / 24 = 23.7 A, so 25 A; 22.62 V at low charge. Its 21.65 A: fuse 25 A, 6 mm2 carries 35 A (310.16), 30 A by 240.4(D); 2.75 % of 3 % lost from source to load; at its fuse at most 790 A of the 1,000 A it breaks (ISO 8820-3); far-end short 244 A, it must open from 33.75 A.',
    },
    {
      run: 'Camera',
      load: 'River camera and modem',
      peak: 28,
      kind: 'W',
      length: 14,
      later: { unfused: 0.15 },
      expected: 'ok',
      because:
        '28 W, under 100 W. Its 1.27 A: fuse 2 A, 1.5 mm2 carries 15 A (310.16), 10 A by 240.4(D); 2.06 % of 3 % lost from source to load; at its fuse at most 790 A of the 1,000 A it breaks (ISO 8820-3); far-end short 46.9 A, it must open from 2.7 A.',
    },
    {
      run: 'Block',
      load: 'Distribution block',
      length: 3,
      joints: 1.5,
      later: { unfused: 0.15 },
      expected: 'ok',
      because:
        'Its 11.6 A: fuse 15 A, 35 mm2 carries 115 A (310.16); no load of its own, 0.24 % lost up to its end; at its fuse at most 790 A of the 1,000 A it breaks (ISO 8820-3); far-end short 346 A, it must open from 20.25 A.',
    },
    {
      run: 'Relay set',
      fedFrom: 'Block',
      load: 'Relay behind its converter',
      peak: 7,
      length: 2,
      joints: 1,
      expected: 'ok',
      because:
        'Its 7 A: fuse 10 A, 1.5 mm2 carries 15 A (310.16), 10 A by 240.4(D); 1.88 % of 3 % lost from source to load; at its fuse at most 687 A of the 1,000 A it breaks (ISO 8820-3); far-end short 179 A, it must open from 13.5 A.',
    },
    {
      run: 'Lights',
      fedFrom: 'Block',
      load: 'Six lamps',
      peak: 1.6,
      length: 14,
      expected: 'ok',
      because:
        'Its 1.6 A: fuse 2 A, 1.5 mm2 carries 15 A (310.16), 10 A by 240.4(D); 2.84 % of 3 % lost from source to load; at its fuse at most 687 A of the 1,000 A it breaks (ISO 8820-3); far-end short 46.4 A, it must open from 2.7 A.',
    },
    {
      run: 'Bank lamp',
      fedFrom: 'Block',
      load: 'Lamp at the river bank',
      peak: 3,
      length: 75,
      ownSize: '4 mm2',
      expected: 'fails',
      because:
        '3 A over 75 m of 4 mm2: 150 m x 4.95 x 1.0393 + 3 = 775 mOhm, 2.3 V; 9.92 % of 24 V, over 3 %; a 4 A fuse is right for 4 mm2.',
    },
    {
      run: 'Attic wire',
      fedFrom: 'Block',
      load: 'Attic lamp',
      peak: 0.4,
      length: 4,
      ownSize: '0.75 mm2',
      fused: 'no',
      expected: 'danger',
      because:
        'Leans on the 15 A fuse of the block; 0.75 mm2 has no row of 310.16 (under 18 AWG 0.823 mm2), and 18 AWG itself may be fused at 7 A (240.4(D)).',
    },
    {
      run: 'Sluice motor',
      load: 'Sluice motor',
      peak: 70,
      length: 130,
      later: { atOnce: 0, unfused: 0.15 },
      expected: 'danger',
      because:
        '70 A over 130 m: 3 % of 24 V is 0.72 V; 120 mm2 loses 260 m x 0.161 x 1.0393 + 3 = 46.5 mOhm x 70 A = 3.3 V. No size of the series serves.',
    },
    {
      run: 'Gauge lead',
      load: 'Water-level gauge',
      peak: 0.5,
      length: 6,
      later: { unfused: 1.2 },
      expected: 'danger',
      because:
        '60 cm of unfused wire is 24 in, and 1.2 m 47 in: over 40 in even in a sheath (33 CFR 183.455(b)).',
    },
  ],
};
