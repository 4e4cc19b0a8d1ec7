/** Stations with several sources of every kind, good and bad entries among them. */
import type { StationContent } from '../../src/sheets/station/content';
import type { ScheduleRun } from '../../src/sheets/station/run';

const RUNS: readonly ScheduleRun[] = [
  { run: 'Hut trunk', fedFrom: 'Hut bank', length: 6, unfused: 0.4 },
  { run: 'Relay', fedFrom: 'Hut trunk', peak: 14, length: 5, leastVolts: 11, mostVolts: 15 },
  { run: 'Link', fedFrom: 'Hut trunk', peak: 40, kind: 'W', length: 9, leastVolts: 10, surge: 9 },
  { run: 'Lamps', peak: 2, length: 20, mostVolts: 14 },
  {
    run: 'Panel feed',
    fedFrom: 'Roof panel',
    peak: 8,
    length: 18,
    fused: 'no',
    endsAt: 'Hut bank',
    endFused: 'yes',
  },
  { run: 'Second panel feed', fedFrom: 'Roof panel', peak: 8, length: 18, endsAt: 'Hut bank' },
  { run: 'Van feed', fedFrom: 'Van battery', length: 10, ownSize: '2 AWG', unfused: 0.3 },
  { run: 'Van set', fedFrom: 'Van feed', peak: 22, length: 6, leastVolts: 11.5, mostVolts: 15 },
  { run: 'Van pump', fedFrom: 'Van feed', peak: 90, kind: 'W', length: 12, surge: 45 },
  { run: 'Van winch', fedFrom: 'Van battery', peak: 60, length: 9, surge: 170, returns: 'chassis' },
  { run: 'Van lamps', fedFrom: 'Van feed', peak: 6, length: 14, returns: 12, leastVolts: 10.5 },
  { run: 'Charge link', fedFrom: 'Engine', peak: 20, length: 8 },
  {
    run: 'Engine to battery',
    fedFrom: 'Engine',
    peak: 45,
    length: 6,
    fused: 'no',
    endsAt: 'van battery',
    endFused: 'yes',
  },
  {
    run: 'Van to case',
    fedFrom: 'Van battery',
    peak: 20,
    length: 9,
    endsAt: 'Case A',
    endFused: 'yes',
  },
  { run: 'Depot charge', fedFrom: 'Depot supply', peak: 15, length: 5, endsAt: 'Case B' },
  { run: 'Case A set', fedFrom: 'Case A', peak: 20, length: 3, leastVolts: 11 },
  { run: 'Case A amplifier', fedFrom: 'Case A', peak: 25, length: 3, atOnce: 0.5 },
  { run: 'Case B set', fedFrom: 'Case B', peak: 8, length: 4 },
  { run: 'Bench set', fedFrom: 'Bench supply', peak: 20, length: 4 },
  { run: 'Bench lamp', fedFrom: 'Bench supply', peak: 3, length: 6, ownSize: '18 AWG' },
  { run: 'Bench iron', fedFrom: 'Bench supply', peak: 60, kind: 'W', length: 5, leastVolts: 11 },
  { run: 'Depot trunk', fedFrom: 'Depot supply', length: 10 },
  { run: 'Depot set', fedFrom: 'Depot trunk', peak: 18, length: 7, leastVolts: 11 },
  { run: 'Depot gate', fedFrom: 'Depot supply', peak: 5, length: 30, volts: 24 },
];

const SOURCES: StationContent['sources'] = [
  {
    name: 'Hut bank',
    kind: 'battery',
    chemistry: 'lead-acid',
    ampHours: 120,
    parallel: 2,
    eachBreaks: 2000,
    batteryColdestC: -10,
  },
  {
    name: 'Roof panel',
    kind: 'panel',
    shortCircuitAmps: 9.5,
    maximumPowerAmps: 8.9,
    panelVolts: 17,
    openCircuitVolts: 21.6,
    coldestC: -15,
    percentPerC: -0.29,
    sunHours: 3,
  },
  {
    name: 'Van battery',
    kind: 'battery',
    volts: 12.8,
    chemistry: 'lead-acid',
    ampHours: 95,
    milliohms: 6,
    mainFuse: 150,
    mainFuseKind: 'bolt-in',
    mainCable: '1/0 AWG',
  },
  { name: 'Engine', kind: 'alternator', volts: 14, charges: 'van battery', chargeVolts: 14.7 },
  { name: 'Case A', kind: 'battery', chemistry: 'LiFePO4', ampHours: 30, packAmps: 30 },
  { name: 'Case B', kind: 'battery', volts: 12, lowCharge: 0.5 },
  { name: 'Bench supply', kind: 'power supply', volts: 13.8, mostAmps: 25, whenOver: 'limits' },
  { name: 'Depot supply', kind: 'power supply', volts: 13.8, mostAmps: 60, charges: 'Case B' },
];

const DUTY: StationContent['duty'] = [
  { load: 'Relay', amps: [14, 0.8, 0.3], shares: [0.05, 0.3, 0.65] },
  { load: 'Van set', source: 'Van battery', amps: [22, 1.5, 0.4], shares: [0.02, 0.2, 0.5] },
  { load: 'Nobody', source: 'Boat', amps: [2, null, null], shares: [1, null, null] },
];

/** A club that says all of its sources, and one that says much of it wrongly. */
export const SOURCE_STATIONS: readonly StationContent[] = [
  { title: 'River watch, all sources', runs: RUNS, sources: SOURCES, duty: DUTY },
  {
    title: 'River watch, in a hurry',
    rules: { volts: 13.2, counts: 'in each run', installed: 'craft' },
    runs: [
      ...RUNS.map((run) => (run.run === 'Lamps' ? { ...run, fedFrom: 'Hut bnak' } : run)),
      { run: 'Case B', fedFrom: 'panel', peak: 4, length: 8 },
      { run: 'Boat lamp', fedFrom: 'Boat', peak: 1, length: 8, returns: 'keel' },
      { run: 'To nowhere', fedFrom: 'Case B', peak: 5, length: 8, endsAt: 'Raft', surge: 'much' },
      { run: 'In a ring', fedFrom: 'Case B', peak: 5, length: 8, endsAt: 'case b' },
    ],
    sources: SOURCES.map((source) => {
      if (source.name === 'Engine') return { ...source, charges: 'Roof panel' };
      if (source.name === 'Bench supply') return { ...source, mostAmps: 12, whenOver: 'trips' };
      if (source.name === 'Case A') return { name: 'Boat', kind: 'pedals' };
      return source.name === 'Hut bank' ? { ...source, ampHours: 300, eachBreaks: 400 } : source;
    }),
    duty: DUTY,
  },
];
