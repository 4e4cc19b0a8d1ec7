/** Rows of stations with sources of several kinds, worked out by hand from the tables named in `stated-row`. */
import type { SupplyValues } from '../../../src/sheets/station/supply';
import type { ScheduleRun } from '../../../src/sheets/station/run';
import type { StatedRow } from './stated-row';

/** 12.65 V full; one of them 253 A in a dead short. */
const LEAD: SupplyValues = {
  name: 'battery',
  kind: 'battery',
  chemistry: 'lead-acid',
  milliohms: 50,
};
const BENCH: SupplyValues = { name: 'bench', kind: 'power supply', volts: 13.8 };

/**
 * 5 A x (10 ft x 1.588 x 1.0393 + 3) mOhm = 0.098 V, of 0.36 V; 310.16 25 A; 5 x 1.25 = 6.25, fuse 7.5. A short at the far
 * end of any of these batteries is above 98 A, at which it opens within 0.02 s, wire 15 s.
 */
const LAMP: ScheduleRun = { run: 'Lamp', peak: 5, length: 5, ownSize: '12 AWG' };
const lamp = (
  sources: readonly SupplyValues[],
  verdict: StatedRow['verdict'],
  entries: Partial<ScheduleRun> = {},
): StatedRow => ({ entries: { ...LAMP, ...entries }, sources, verdict, size: '12 AWG', fuse: 7.5 });

export const BANK_UNFUSED: readonly StatedRow[] = [
  // 3 x 200 Ah = 600 Ah, above 500; nothing is said of fuses.
  lamp([{ ...LEAD, ampHours: 200, parallel: 3 }], ['bankUnfused']),
  // The two others give 2 x 253 A = 506 A into a fault of one.
  lamp([{ ...LEAD, ampHours: 200, parallel: 3, eachBreaks: 500 }], ['bankUnfused']),
  // By the maker's 300 A of each: 600 A.
  lamp(
    [{ ...LEAD, ampHours: 200, parallel: 3, batteryShortAmps: 300, eachBreaks: 580 }],
    ['bankUnfused'],
  ),
];

export const BANK_FUSE: readonly StatedRow[] = [
  // 2 x 200 Ah = 400 Ah.
  lamp([{ ...LEAD, ampHours: 200, parallel: 2 }], ['bankFuse']),
  // The other one gives 253 A.
  lamp([{ ...LEAD, ampHours: 200, parallel: 2, eachBreaks: 250 }], ['bankFuse']),
  // 500 Ah are not above 500 Ah; blank amp-hours are taken for 100.
  lamp([{ ...LEAD, milliohms: 100, parallel: 5 }], ['bankFuse']),
];

export const SUPPLY_OVERLOADED: readonly StatedRow[] = [
  // 22 A of 20 A; 22 A x (10 ft x 0.6282 x 1.0393 + 3) mOhm = 0.210 V, of 0.414 V; 310.16 50 A, above all that it gives; 22 x
  // 1.25 = 27.5, fuse 30
  {
    entries: { run: 'Set', fedFrom: 'bench', peak: 22, length: 5, ownSize: '8 AWG' },
    sources: [LEAD, { ...BENCH, mostAmps: 20 }],
    verdict: ['supplyOverloaded'],
    size: '8 AWG',
    fuse: 30,
  },
  // 5 A and 16 A of 20 A, the supply in the first column
  lamp([{ ...BENCH, mostAmps: 4.9 }], ['supplyOverloaded']),
  {
    ...lamp([{ ...BENCH, mostAmps: 20 }], ['supplyOverloaded']),
    others: [{ run: 'Heater', peak: 16, length: 2, ownSize: '14 AWG' }],
  },
];

export const PACK_OVERLOADED: readonly StatedRow[] = [
  // 130 A of 100 A; 130 A x (4 ft x 0.09827 x 1.0393 + 1) mOhm = 0.183 V, of 0.36 V; 310.16 150 A; in bursts 130, fuse 150
  {
    entries: { run: 'Load', peak: 130, length: 2, joints: 1, ownSize: '1/0 AWG' },
    rules: { duty: 'bursts' },
    sources: [{ ...LEAD, chemistry: 'LiFePO4', ampHours: 100, packAmps: 100 }],
    verdict: ['packOverloaded'],
    size: '1/0 AWG',
    fuse: 150,
  },
  lamp([{ ...LEAD, packAmps: 4 }], ['packOverloaded']),
  // 5 A and 16 A of 20 A, the first of them through a charger beside the battery
  {
    ...lamp(
      [
        { ...LEAD, packAmps: 20 },
        { name: 'engine', kind: 'alternator' },
      ],
      ['packOverloaded'],
    ),
    others: [{ run: 'Heater', fedFrom: 'engine', peak: 16, length: 2, ownSize: '12 AWG' }],
  },
];

export const TOO_MANY_VOLTS: readonly StatedRow[] = [
  // 2.4 V a cell: 14.4 V
  lamp([LEAD], ['tooManyVolts'], { mostVolts: 14 }),
  // An alternator brings it to 14.8 V.
  lamp([LEAD, { name: 'engine', kind: 'alternator', chargeVolts: 14.8 }], ['tooManyVolts'], {
    mostVolts: 14.5,
  }),
  // 14.4 V and 40 K x 24 mV = 15.36 V
  lamp([{ ...LEAD, batteryColdestC: -15 }], ['tooManyVolts'], { mostVolts: 15 }),
  // 13.8 V of a supply
  lamp([{ ...BENCH, mostAmps: 20 }], ['tooManyVolts'], { mostVolts: 13.5 }),
];

export const SOURCE_UNKNOWN: readonly StatedRow[] = [
  lamp([LEAD, { name: 'tank', kind: 'barrel' }], ['sourceUnknown', 'notJudged'], {
    fedFrom: 'tank',
  }),
  lamp([{ ...LEAD, name: '' }], ['sourceUnknown']),
  // and has no milliohms to judge by
  lamp([{ name: 'battery', milliohms: 50 }], ['sourceUnknown', 'notJudged']),
];

export const SOURCE_NAMED_TWICE: readonly StatedRow[] = [
  lamp([{ ...LEAD, name: 'Lamp' }], ['sourceNamedTwice']),
  lamp([LEAD, { ...LEAD, name: 'Battery' }], ['sourceNamedTwice']),
  lamp([LEAD, { ...BENCH, name: 'lamp', mostAmps: 20 }], ['sourceNamedTwice'], { fedFrom: 'Lamp' }),
];

export const CHARGES_NO_BATTERY: readonly StatedRow[] = [
  lamp(
    [LEAD, { name: 'engine', kind: 'alternator', charges: 'van' }],
    ['chargesNoBattery', 'notJudged'],
    {
      fedFrom: 'engine',
    },
  ),
  lamp([BENCH, { name: 'engine', kind: 'charger' }], ['chargesNoBattery', 'notJudged'], {
    fedFrom: 'engine',
  }),
  lamp([LEAD, { ...BENCH, mostAmps: 20, charges: 'bench' }], ['chargesNoBattery'], {
    fedFrom: 'bench',
  }),
];

/** 12 A x (4 ft x 2.525 x 1.0393 + 3) mOhm = 0.162 V, of 0.414 V; 310.16 20 A; 12 x 1.25 = 15, fuse 15, as 240.4(D) allows. */
const HEATER: ScheduleRun = {
  run: 'Heater',
  fedFrom: 'bench',
  peak: 12,
  length: 2,
  ownSize: '14 AWG',
};
const heater = (bench: SupplyValues, verdict: StatedRow['verdict']): StatedRow => ({
  entries: HEATER,
  sources: [LEAD, { ...BENCH, ...bench }],
  verdict,
  size: '14 AWG',
  fuse: 15,
});

/** It gives 20.2 A for good: above the 20 A of the wire, below the 1.35 x 15 A = 20.25 A at which the fuse must open. */
export const SUPPLY_TOO_WEAK: readonly StatedRow[] = [
  heater({ mostAmps: 20.2 }, ['faultTooWeak']),
  heater({ mostAmps: 20.2, whenOver: 'limits' }, ['faultTooWeak']),
];
export const SUPPLY_TRIPS: readonly StatedRow[] = [
  heater({ mostAmps: 20.24, whenOver: 'trips' }, ['supplyTrips']),
  heater({ mostAmps: 20.2, whenOver: 'trips' }, ['supplyTrips']),
  heater({ mostAmps: 20.1, whenOver: 'trips' }, ['supplyTrips']),
];
/** Of what the supply gives no more is known than its volts. */
export const SUPPLY_NOT_JUDGED: readonly StatedRow[] = [heater({}, ['notJudged'])];

export const OK: readonly StatedRow[] = [
  // All that the supply gives the wire bears: it needs no fuse.
  heater({ mostAmps: 20 }, ['ok']),
  // The two others give 506 A into a fault of one.
  lamp([{ ...LEAD, ampHours: 200, parallel: 3, eachBreaks: 1000 }], ['ok']),
  lamp([{ ...LEAD, ampHours: 200, parallel: 2, eachBreaks: 260 }], ['ok']),
  // Other sources are none of its business.
  lamp([LEAD, { ...BENCH, mostAmps: 0.5 }, { name: 'tank', kind: 'barrel' }], ['ok']),
  lamp([{ ...LEAD, packAmps: 5 }], ['ok'], { mostVolts: 14.4 }),
  lamp([{ ...BENCH, mostAmps: 5, name: 'shelf' }, LEAD], ['ok'], { fedFrom: 'battery' }),
  // A battery on the output of the charger gives the fault: 253 A.
  lamp([LEAD, { name: 'engine', kind: 'alternator', chargeVolts: 14.4 }], ['ok'], {
    fedFrom: 'engine',
    mostVolts: 14.4,
  }),
  lamp([LEAD, { ...BENCH, charges: 'battery' }], ['ok'], { fedFrom: 'bench', mostVolts: 14.4 }),
];
