/**
 * A station of several sources against the circuit simulator ngspice, which solves its very circuit: batteries with their
 * resistance, a power supply that limits its current, wires and joints, a chassis, loads of steady amps. Volts while all
 * draw, and while one load after the other starts; short circuits at the far ends of runs, from either end of one that joins
 * two batteries. The copper's 20 degC resistance is worked out here from ASTM B258 and IACS; its temperature is left to the
 * simulator's own law for resistors (tc1).
 */
import { describe, expect, test } from 'vitest';
import type { StationContent } from '../../src/sheets/station/content';
import type { ScheduleRun } from '../../src/sheets/station/run';
import { stationValues } from '../../src/sheets/station-values';
import { solveNetlist } from './ngspice';

/** Two ways to the same sum in double precision; the simulator's own tolerances are tighter. */
const RELATIVE = 1e-6;
const COPPER_PER_KELVIN = 0.00393;
const AMBIENT_C = 30;
/** Of wire warm from its load, before a fault (IEC 60364-5-54), and the milliohms of a tired battery, times. */
const BEFORE_FAULT_C = 70;
const TIRED = 2;
/** What a fault meets in a chassis, times its milliohms. */
const BAD_CHASSIS = 10;

/** Lead-acid, full and at 20 %; LiFePO4 at the same (resting volts of the sheet, which tests of their own hold to a table). */
const BATTERIES = {
  Hut: { chemistry: 'lead-acid', milliohms: 14, parallel: 2 },
  Van: { chemistry: 'lead-acid', milliohms: 9, parallel: 1 },
  Case: { chemistry: 'LiFePO4', milliohms: 22, parallel: 1 },
} as const;
const SUPPLY = { volts: 13.8, mostAmps: 25 };

const runs: readonly ScheduleRun[] = [
  { run: 'Trunk', fedFrom: 'Hut', length: 4, ownSize: '6 AWG', joints: 2 },
  { run: 'Relay', fedFrom: 'Trunk', peak: 14, length: 3, ownSize: '10 AWG', leastVolts: 10 },
  { run: 'Link', fedFrom: 'Trunk', peak: 4, length: 6, ownSize: '14 AWG', leastVolts: 10 },
  { run: 'Sump', fedFrom: 'Trunk', peak: 5, surge: 22, length: 5, ownSize: '12 AWG' },
  { run: 'Gate', fedFrom: 'Hut', peak: 3, surge: 30, length: 7, ownSize: '12 AWG' },
  { run: 'Rack', fedFrom: 'Van', length: 5, ownSize: '4 AWG', joints: 1 },
  { run: 'Set', fedFrom: 'Rack', peak: 22, length: 2, ownSize: '8 AWG', leastVolts: 10 },
  { run: 'Fan', fedFrom: 'Van', peak: 8, surge: 26, length: 3, ownSize: '12 AWG', returns: 7 },
  { run: 'Lamp', fedFrom: 'Van', peak: 2, length: 6, ownSize: '16 AWG', returns: 'chassis' },
  { run: 'Joined', fedFrom: 'Van', peak: 10, length: 6, ownSize: '8 AWG', endsAt: 'Case' },
  { run: 'Radio', fedFrom: 'Case', peak: 10, length: 2, ownSize: '12 AWG', leastVolts: 10 },
  { run: 'Bench', fedFrom: 'Supply', peak: 16, length: 3, ownSize: '10 AWG', leastVolts: 10 },
];
const station: StationContent = {
  title: 'Sources',
  rules: { unit: 'm', ambientC: AMBIENT_C, joints: 3, chassis: 2 },
  sources: [
    ...Object.entries(BATTERIES).map(([name, battery]) => ({
      name,
      kind: 'battery',
      lowCharge: 0.2,
      ...battery,
    })),
    { name: 'Supply', kind: 'power supply', whenOver: 'limits', ...SUPPLY },
  ],
  runs,
};
const values = stationValues(station);
const byName = (name: string) => runs.findIndex(({ run }) => run === name);
const restOf = (name: string, charge: 'fullRest' | 'lowRest') =>
  Number(values.supply.sources[Object.keys(BATTERIES).indexOf(name)]![charge]);

const milliohmsOf = (name: string) => {
  const { milliohms, parallel } = BATTERIES[name as keyof typeof BATTERIES];
  return milliohms / parallel;
};
const isBattery = (name: string) => name in BATTERIES;
const node = (name: string) => `n${name.toLowerCase()}`;

function ohmsAt20C(ownSize: string, lengthM: number): number {
  const diameterMm = 0.127 * 92 ** ((36 - Number.parseInt(ownSize, 10)) / 39);
  return lengthM / (58 * (Math.PI / 4) * diameterMm ** 2);
}

interface Conditions {
  readonly charge: 'fullRest' | 'lowRest';
  readonly wireC: number;
  readonly batteryTimes: number;
  readonly chassisTimes: number;
}
const IN_USE: Conditions = {
  charge: 'lowRest',
  wireC: AMBIENT_C,
  batteryTimes: 1,
  chassisTimes: 1,
};
const IN_FAULT: Conditions = {
  charge: 'lowRest',
  wireC: BEFORE_FAULT_C,
  batteryTimes: TIRED,
  chassisTimes: BAD_CHASSIS,
};

/** Sources alone, each from its node to 0. A supply gives its volts up to its most amps, through next to no resistance. */
function sources({ charge, batteryTimes }: Conditions): string[] {
  return [
    ...Object.keys(BATTERIES).flatMap((name) => [
      `V${name} cell${name} 0 ${restOf(name, charge)}`,
      `R${name} cell${name} ${node(name)} ${(milliohmsOf(name) * batteryTimes) / 1000}`,
    ]),
    `BSupply 0 ${node('Supply')} I=min(${SUPPLY.mostAmps}, (${SUPPLY.volts}-V(${node('Supply')}))/1e-9)`,
  ];
}

/** A run as one resistor for each of its parts. The way back of each is its own, so that node 0 stands for the source. */
function wires({ wireC, chassisTimes }: Conditions): string[] {
  return runs.flatMap(({ run = '', fedFrom = '', length, ownSize = '', joints = 3, returns }) => {
    const from = node(fedFrom);
    const to = node(run);
    const ohms = ohmsAt20C(ownSize, Number(length));
    const copper = `${ohms} tc1=${COPPER_PER_KELVIN} temp=${wireC}`;
    const chassis = returns === 'chassis' ? 2 : returns;
    return [
      `Rj${run} ${from} j${run} ${Number(joints) / 1000}`,
      `Ro${run} j${run} o${run} ${copper}`,
      `Rb${run} o${run} ${to} ${chassis === undefined ? copper : (Number(chassis) * chassisTimes) / 1000}`,
    ];
  });
}

const load = ({ run = '', peak }: ScheduleRun, amps = peak) =>
  amps === undefined ? [] : [`I${run} ${node(run)} 0 ${amps}`];

describe('volts', () => {
  test.each([
    ['loadVolts', 'fullRest'],
    ['lowVolts', 'lowRest'],
  ] as const)('%s while all draw', (key, charge) => {
    const conditions = { ...IN_USE, charge };
    const netlist = [
      ...sources(conditions),
      ...wires(conditions),
      ...runs.flatMap((run) => load(run)),
    ].join('\n');
    const names = runs.map(({ run = '' }) => run);
    const solved = solveNetlist(netlist, names.map(node));
    for (const [place, name] of names.entries()) {
      const ours = Number(values.runs[place]![key]);
      expect(Math.abs(ours / solved[node(name)]! - 1), name).toBeLessThan(RELATIVE);
    }
  });

  test('the least of each load while one starts after the other', () => {
    const held = runs.filter(({ leastVolts }) => leastVolts !== undefined);
    const least = new Map<string, number>();
    for (const starting of runs.filter(({ surge }) => surge !== undefined)) {
      const netlist = [
        ...sources(IN_USE),
        ...wires(IN_USE),
        ...runs.flatMap((run) => load(run, run === starting ? Number(run.surge) : run.peak)),
      ].join('\n');
      const solved = solveNetlist(
        netlist,
        held.map(({ run = '' }) => node(run)),
      );
      for (const { run = '' } of held) {
        least.set(run, Math.min(least.get(run) ?? Infinity, solved[node(run)]!));
      }
    }
    const told = held.map(({ run = '' }) => {
      const { surgeVolts, lowVolts } = values.runs[byName(run)]!;
      return [run, Number(surgeVolts === '' ? lowVolts : surgeVolts)] as const;
    });
    for (const [run, volts] of told) {
      expect(Math.abs(volts / least.get(run)! - 1), run).toBeLessThan(RELATIVE);
    }
    // Some are disturbed by a start, and some by none.
    expect(
      new Set(held.map(({ run = '' }) => values.runs[byName(run)]!.surgeVolts === '')).size,
    ).toBe(2);
  });
});

describe('short circuits', () => {
  /** Amps through a dead short at a node, by the drop of a resistor that is nothing beside the rest. */
  const SHORT_OHMS = 1e-9;
  const shortAt = (name: string, elements: readonly string[]) =>
    solveNetlist([...elements, `Rshort ${node(name)} 0 ${SHORT_OHMS}`].join('\n'), [node(name)])[
      node(name)
    ]! / SHORT_OHMS;

  test.each(runs.map(({ run = '' }) => run))('at the far end of %s', (run) => {
    const path = [run];
    for (let at = runs[byName(run)]!; !isBattery(at.fedFrom!) && at.fedFrom !== 'Supply';) {
      path.push(at.fedFrom!);
      at = runs[byName(at.fedFrom!)]!;
    }
    const own = wires(IN_FAULT).filter((line) =>
      path.some((name) => line.slice(2).startsWith(`${name} `)),
    );
    const source = runs[byName(path.at(-1)!)]!.fedFrom!;
    const feeding = sources(IN_FAULT).filter((line) => line.slice(1).startsWith(`${source} `));
    const simulated = shortAt(run, [...feeding, ...own]);
    const ours = Number(values.protection.rows[byName(run)]!.farFault);
    expect(Math.abs(ours / simulated - 1)).toBeLessThan(RELATIVE);
  });

  test('at the source end of a run that joins two batteries, from its other end', () => {
    const own = wires(IN_FAULT)
      .filter((line) => line.slice(2).startsWith('Joined '))
      .map((line) => line.replace(` ${node('Joined')} `, ` ${node('Case')} `));
    const feeding = sources(IN_FAULT).filter((line) => line.slice(1).startsWith('Case '));
    const simulated = shortAt('Van', [...feeding, ...own]);
    const ours = Number(values.protection.rows[byName('Joined')]!.endFar);
    expect(Math.abs(ours / simulated - 1)).toBeLessThan(RELATIVE);
    // Right at that battery, full and as it is: half the usual milliohms are not taken, since these are typed.
    const strong = { ...IN_FAULT, charge: 'fullRest', batteryTimes: 1 } as const;
    const near = shortAt(
      'Case',
      sources(strong).filter((line) => line.slice(1).startsWith('Case ')),
    );
    expect(
      Math.abs(Number(values.protection.rows[byName('Joined')]!.endNear) / near - 1),
    ).toBeLessThan(RELATIVE);
  });
});
