/** Volts at the far end of every run, for one state of the battery. */
import { buildFeederTree } from '../../src/core/feeder-tree';
import { feedVolts } from '../../src/core/feeders';
import { figure, NO_ANSWER, type Figure } from './figures';
import { isOnBattery, type Run } from './runs';
import type { House } from './house';

export interface ArrivingVolts {
  readonly volts: Figure;
  /** The path cannot bring the load what it wants, at whatever current. */
  readonly cannotBeServed: boolean;
}

/** `ohms` by row; rows are called by their number, since only their places matter here. */
export function voltsAtLoads(
  runs: readonly Run[],
  house: House,
  terminalVolts: number,
  ohms: readonly Figure[],
): readonly ArrivingVolts[] {
  const tree = buildFeederTree(
    runs.map(({ row }) => String(row)),
    runs.map(({ feeder }) => (feeder === undefined ? '' : String(feeder.row))),
  );
  const solved = feedVolts(
    tree,
    Float64Array.from(runs, (run) => (isOnBattery(run, house) ? terminalVolts : run.volts)),
    {
      loads: Float64Array.from(runs, ({ load }) => load),
      kinds: runs.map(({ isWatts }) => (isWatts ? 'W' : 'A')),
      ohms: Float64Array.from(ohms, (of) => (of === NO_ANSWER ? NaN : of)),
    },
  );
  return solved.map((outcome) => ({
    volts: figure(outcome),
    cannotBeServed: typeof outcome !== 'number' && outcome.refused === 'none',
  }));
}
