/** Joints of finished runs: the milliohms measured, and that a finding holds wherever the true values are. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { runOhms } from '../../src/core/drop';
import {
  JOINT_FINDINGS,
  jointMilliohms,
  judgeJoints,
  type JudgedJoints,
  type LoadedRun,
  type MeasuringDoubt,
} from '../../src/core/joints';
import { awg } from '../../src/core/size';
import { EXCESS_MILLIOHMS } from '../../src/core/tables/joint-practice';
import { refusalText } from './refusal-text';

/** 2 m of 10 AWG, both conductors: 4 m at 1 / (58 x 5.2612 mm2) ohm per metre, 13.11 milliohms. */
const WIRE = { size: awg(10), lengthM: 2, material: 'copper', tempC: 20 } as const;
const WIRE_MILLIOHMS = 13.11;

/** A meter of 3 1/2 digits: 10 mV and 0.1 A a step. */
const METER: MeasuringDoubt = { voltsStep: 0.01, ampsStep: 0.1, wireShare: 0.05 };

function reading(voltsIn: number, voltsOut: number, amps: number): LoadedRun {
  return { ...WIRE, voltsIn, voltsOut, amps };
}

function judged(run: LoadedRun, limitMilliohms: number): JudgedJoints {
  return judgeJoints(run, METER, limitMilliohms) as JudgedJoints;
}

describe('jointMilliohms', () => {
  test('0.4 V lost at 20 A are 20 milliohms, less those of the wire', () => {
    expect(jointMilliohms(reading(13.2, 12.8, 20))).toBeCloseTo(20 - WIRE_MILLIOHMS, 2);
  });

  test('below 0 where the run resists less than its wire would', () => {
    expect(jointMilliohms(reading(13.2, 13, 20))).toBeCloseTo(10 - WIRE_MILLIOHMS, 2);
  });

  test('gives back the joints that a run was computed with', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 50, noNaN: true }),
        fc.double({ min: 0.5, max: 100, noNaN: true }),
        fc.double({ min: -20, max: 80, noNaN: true }),
        (joints, amps, tempC) => {
          const ohms = runOhms(WIRE.size, { ...WIRE, tempC, jointMilliohms: joints });
          const voltsIn = 24;
          const measured = { ...reading(voltsIn, voltsIn - amps * ohms, amps), tempC };
          expect(jointMilliohms(measured)).toBeCloseTo(joints, 6);
        },
      ),
    );
  });

  test('refuses more volts at the load than at the source, and no current', () => {
    expect(refusalText(jointMilliohms(reading(12.6, 12.9, 20)))).toBe(
      'invalid: volts_out: 12.9 V at the load is more than the 12.6 V at the source; the readings are swapped, or not of one moment',
    );
    expect(refusalText(jointMilliohms(reading(12.6, 12.6, 0)))).toMatch(/^invalid: amps: 0 A/);
    expect(refusalText(judgeJoints(reading(12.6, 12.9, 20), METER, 5))).toMatch(/^invalid: /);
  });
});

describe('judgeJoints', () => {
  test('a bad crimp of 15 milliohms shows at 20 A', () => {
    const { milliohms, finding } = judged(reading(13.2, 12.64, 20), EXCESS_MILLIOHMS);
    expect(milliohms).toBeCloseTo(14.9, 1);
    expect(finding).toBe(JOINT_FINDINGS.look);
  });

  test('sound joints show as sound at 20 A', () => {
    expect(judged(reading(13.2, 12.91, 20), EXCESS_MILLIOHMS).finding).toBe(JOINT_FINDINGS.sound);
  });

  test('the same bad crimp cannot be told at 0.5 A: one step of the meter is 20 milliohms', () => {
    const run = reading(13.2, 13.186, 0.5);
    expect(run.voltsIn - run.voltsOut).toBeCloseTo(0.5 * 0.028, 9);
    expect(judged(run, EXCESS_MILLIOHMS).finding).toBe(JOINT_FINDINGS.unsure);
  });

  test('where the amps may be none there is no most, and never a sound joint', () => {
    const { mostMilliohms, finding } = judged(reading(13.2, 13.2, 0.1), 1e6);
    expect(mostMilliohms).toBeUndefined();
    expect(finding).toBe(JOINT_FINDINGS.unsure);
  });

  test('whatever the true volts, amps and wire within the doubt, the true joints lie between, and a finding is true', () => {
    const off = fc.double({ min: -1, max: 1, noNaN: true });
    const seen = { sound: 0, look: 0, unsure: 0 };
    fc.assert(
      fc.property(
        fc.record({
          joints: fc.double({ min: 0, max: 20, noNaN: true }),
          limit: fc.double({ min: 1, max: 12, noNaN: true }),
        }),
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.tuple(off, off, off, off),
        ({ joints, limit }, trueAmps, [offIn, offOut, offAmps, offWire]) => {
          const wire = runOhms(WIRE.size, { ...WIRE, jointMilliohms: 0 });
          const trueOhms = wire * (1 + METER.wireShare * offWire) + joints / 1000;
          const trueOut = 24 - trueAmps * trueOhms;
          const run = reading(
            24 + METER.voltsStep * offIn,
            trueOut + METER.voltsStep * offOut,
            trueAmps + METER.ampsStep * offAmps,
          );
          fc.pre(run.voltsOut <= run.voltsIn);
          const { leastMilliohms, mostMilliohms, finding } = judged(run, limit);
          const rounding = 1e-9;
          expect(leastMilliohms).toBeLessThanOrEqual(joints + rounding);
          expect(mostMilliohms).toBeGreaterThanOrEqual(joints - rounding);
          if (finding === JOINT_FINDINGS.look) expect(joints).toBeGreaterThan(limit - rounding);
          if (finding === JOINT_FINDINGS.sound) expect(joints).toBeLessThan(limit + rounding);
          for (const key of ['sound', 'look', 'unsure'] as const) {
            if (JOINT_FINDINGS[key] === finding) seen[key] += 1;
          }
        },
      ),
      { numRuns: 2000, seed: 7 },
    );
    // All three must have come up, or the property said little.
    expect(Math.min(seen.sound, seen.look, seen.unsure)).toBeGreaterThan(50);
  });
});
