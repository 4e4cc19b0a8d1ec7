/**
 * Runs against the circuit simulator ngspice: an independent program solves the very circuit, source, two conductors,
 * or one and a chassis, joints and load. The conductors' 20 degC resistance is worked out here from ASTM B258 geometry and the IACS
 * resistivity, their temperature is left to the simulator's own law for resistors (tc1).
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { callNumber } from '../functions/call';
import { solveNetlist } from './ngspice';

/** Two ways to the same sum in double precision; the simulator's own tolerances are tighter. */
const RELATIVE = 1e-6;

const COPPER_PER_KELVIN = 0.00393;

function ohmsAt20C(gauge: number, lengthM: number): number {
  const diameterMm = 0.127 * 92 ** ((36 - gauge) / 39);
  return lengthM / (58 * (Math.PI / 4) * diameterMm ** 2);
}

interface Run {
  readonly volts: number;
  readonly gauge: number;
  readonly lengthM: number;
  readonly tempC: number;
  readonly jointMilliohms: number;
  /** Of a chassis that the current returns through, instead of a second conductor. */
  readonly chassisMilliohms?: number | undefined;
}

function netlistOf(run: Run, load: string): string {
  const ohms = ohmsAt20C(run.gauge, run.lengthM);
  const conductor = `${ohms} tc1=${COPPER_PER_KELVIN} temp=${run.tempC}`;
  return [
    `Vsource source 0 ${run.volts}`,
    `Rjoints source fused ${run.jointMilliohms / 1000}`,
    `Rout fused plus ${conductor}`,
    `Rback minus 0 ${run.chassisMilliohms === undefined ? conductor : run.chassisMilliohms / 1000}`,
    load,
  ].join('\n');
}

function voltsAtLoad(netlist: string): number {
  const { plus, minus } = solveNetlist(netlist, ['plus', 'minus']);
  return plus! - minus!;
}

const anyRun = fc.record({
  volts: fc.constantFrom(12.8, 13.8, 25.6),
  gauge: fc.integer({ min: 2, max: 14 }),
  lengthM: fc.integer({ min: 1, max: 12 }),
  tempC: fc.integer({ min: -20, max: 75 }),
  jointMilliohms: fc.integer({ min: 1, max: 30 }),
  chassisMilliohms: fc.constantFrom(undefined, 2, 15),
});

function arguments_({ lengthM, gauge, tempC, jointMilliohms, chassisMilliohms }: Run) {
  return [lengthM, 'm', gauge, 'copper', tempC, jointMilliohms, chassisMilliohms ?? null] as const;
}

test('12.8 V, 20 milliohms of joints, 15 m of 12 AWG each way, 20 A: 9.2736 V at the load', () => {
  const run = { volts: 12.8, gauge: 12, lengthM: 15, tempC: 20, jointMilliohms: 20 };
  const simulated = voltsAtLoad(netlistOf(run, 'Iload plus minus 20'));
  // Four decimals: the figure stands for conductors of 78.16 milliohms, rounded from 78.163.
  expect(simulated).toBeCloseTo(9.2736, 3);
  expect(callNumber('LOAD_VOLTS', run.volts, 20, ...arguments_(run))).toBeCloseTo(simulated, 8);
});

test('volts at a load of steady current, runs of many kinds', () => {
  fc.assert(
    fc.property(anyRun, fc.integer({ min: 1, max: 25 }), (run, amps) => {
      const simulated = voltsAtLoad(netlistOf(run, `Iload plus minus ${amps}`));
      const ours = callNumber('LOAD_VOLTS', run.volts, amps, ...arguments_(run));
      expect(Math.abs(ours / simulated - 1)).toBeLessThan(RELATIVE);
    }),
    { numRuns: 12, seed: 1 },
  );
});

test('amps of a load of steady power', () => {
  fc.assert(
    fc.property(anyRun, fc.integer({ min: 5, max: 60 }), (run, watts) => {
      const load = `Bload plus minus I = ${watts} / max(v(plus,minus), 1)\n.nodeset v(plus)=${run.volts}`;
      const simulated = watts / voltsAtLoad(netlistOf(run, load));
      const ohms = callNumber('RUN_OHMS', ...arguments_(run));
      const ours = callNumber('DRAW_AMPS', watts, run.volts, ohms);
      expect(Math.abs(ours / simulated - 1)).toBeLessThan(RELATIVE);
    }),
    { numRuns: 12, seed: 2 },
  );
});
