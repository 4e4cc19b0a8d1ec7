/** Volts at the far end of every run, for one state of the battery: others at what counts at once, the load in full. */
import { buildFeederTree } from '../../src/core/feeder-tree';
import { feedVolts } from '../../src/core/feeders';
import { figure, from, NO_ANSWER, type Figure } from './figures';
import type { OwnAmps } from './amps';
import type { BatteryFigures } from './battery';
import { isOnBattery, pathOf, type Run } from './runs';
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
  battery: BatteryFigures,
  terminalVolts: number,
  own: readonly OwnAmps[],
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
      loads: Float64Array.from(runs, ({ load, atOnce }) => load * atOnce),
      kinds: runs.map(({ isWatts }) => (isWatts ? 'W' : 'A')),
      ohms: Float64Array.from(ohms, (of) => (of === NO_ANSWER ? NaN : of)),
    },
  );
  const rest = (run: Run): Figure => {
    const { rest: amps } = own[run.row]!;
    if (amps === 0) return 0;
    let lost = isOnBattery(run, house) ? (amps * battery.milliohms) / 1000 : 0;
    for (const { row } of pathOf(run)) {
      const of = ohms[row]!;
      if (of === NO_ANSWER) return NO_ANSWER;
      lost += amps * of;
    }
    return lost;
  };
  // A battery that its loads pull down to nothing has no volts to give.
  const isDead = (run: Run) => isOnBattery(run, house) && terminalVolts <= 0;
  const left = (run: Run, outcome: (typeof solved)[number]): Figure =>
    isDead(run) ||
    ohms[run.row] === NO_ANSWER ||
    run.standing !== 'followed' ||
    Number.isNaN(own[run.row]!.most)
      ? NO_ANSWER
      : from(figure(outcome), (volts) => from(rest(run), (lost) => volts - lost));
  return solved.map((outcome, row) => ({
    volts: left(runs[row]!, outcome),
    cannotBeServed: typeof outcome !== 'number' && outcome.refused === 'none',
  }));
}
