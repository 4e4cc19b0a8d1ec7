/** What the joints of a finished run resist, measured under load, and what such a measurement can tell. */
import { runOhms } from './drop';
import { isRefusal, invalid, type Outcome } from './outcome';
import type { ConductorSize } from './size';
import type { Material } from './tables/materials';

/** Volts between both conductors at either end of a run, read while a load draws its amps. */
export interface LoadedRun {
  readonly voltsIn: number;
  readonly voltsOut: number;
  readonly amps: number;
  readonly size: ConductorSize;
  /** One way; both conductors carry the current. */
  readonly lengthM: number;
  readonly material: Material;
  /** Conductor temperature. */
  readonly tempC: number;
}

const MILLI = 1000;

function wireMilliohms({ size, lengthM, material, tempC }: LoadedRun): number {
  return MILLI * runOhms(size, { lengthM, material, tempC, jointMilliohms: 0 });
}

function refuseReadings({ voltsIn, voltsOut, amps }: LoadedRun): Outcome<undefined> {
  if (!(amps > 0))
    return invalid('amps: 0 A lose nothing in any joint; measure while the load runs');
  return voltsOut > voltsIn
    ? invalid(
        `volts_out: ${voltsOut} V at the load is more than the ${voltsIn} V at the source; the readings are swapped, or not of one moment`,
      )
    : undefined;
}

/**
 * Milliohms measured beyond those of the wire: what fuse, contacts and crimps add. Ohm's law. Below 0 where the run
 * resists less than its wire is computed to. Refused where no current flows, or the load has more volts than the source.
 */
export function jointMilliohms(run: LoadedRun): Outcome<number> {
  const refusal = refuseReadings(run);
  if (isRefusal(refusal)) return refusal;
  return (MILLI * (run.voltsIn - run.voltsOut)) / run.amps - wireMilliohms(run);
}

/** How far readings and wire may be off. */
export interface MeasuringDoubt {
  /** The meter's resolution: a reading may be one step off either way. */
  readonly voltsStep: number;
  readonly ampsStep: number;
  /** Share by which the wire may resist more or less than computed; see WIRE_DOUBT_SHARE. */
  readonly wireShare: number;
}

export const JOINT_FINDINGS = {
  sound: 'joints sound',
  look: 'look at the joints',
  unsure: 'cannot tell',
} as const;
export type JointFinding = (typeof JOINT_FINDINGS)[keyof typeof JOINT_FINDINGS];

export interface JudgedJoints {
  readonly milliohms: number;
  /** The joints are somewhere between these two; no most where the amps may be none at all. */
  readonly leastMilliohms: number;
  readonly mostMilliohms: number | undefined;
  readonly finding: JointFinding;
}

/**
 * Whether the joints of a finished run resist more than `limitMilliohms`: those planned for, and what may come on top (see
 * EXCESS_MILLIOHMS). A finding is sure: it holds wherever within the doubt the true values are, and where both would be
 * possible it is "cannot tell".
 */
export function judgeJoints(
  run: LoadedRun,
  doubt: MeasuringDoubt,
  limitMilliohms: number,
): Outcome<JudgedJoints> {
  const milliohms = jointMilliohms(run);
  if (isRefusal(milliohms)) return milliohms;
  const { voltsStep, ampsStep, wireShare } = doubt;
  const lost = run.voltsIn - run.voltsOut;
  const wire = wireMilliohms(run);
  const leastLost = lost - 2 * voltsStep;
  const leastAmps = run.amps - ampsStep;
  const mostAmps = run.amps + ampsStep;
  // What was lost is at least nothing: the run has no source of its own.
  const leastMilliohms = (MILLI * Math.max(0, leastLost)) / mostAmps - wire * (1 + wireShare);
  const mostMilliohms =
    leastAmps > 0
      ? (MILLI * (lost + 2 * voltsStep)) / leastAmps - wire * (1 - wireShare)
      : undefined;
  const sound = mostMilliohms !== undefined && mostMilliohms <= limitMilliohms;
  const finding =
    leastMilliohms > limitMilliohms
      ? JOINT_FINDINGS.look
      : sound
        ? JOINT_FINDINGS.sound
        : JOINT_FINDINGS.unsure;
  return { milliohms, leastMilliohms, mostMilliohms, finding };
}
