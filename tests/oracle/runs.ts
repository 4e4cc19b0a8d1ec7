/** The runs of an ordinary station as numbers, hung on one another: a tree for each source. */
import type { StationContent } from '../../src/sheets/station/content';
import type { House } from './house';

export interface Run {
  readonly row: number;
  readonly feeder: Run | undefined;
  readonly feeds: Run[];
  readonly fromPanel: boolean;
  /** Amps or watts taken in; none for a run that only feeds others. */
  readonly load: number;
  readonly isWatts: boolean;
  readonly lengthM: number;
  readonly volts: number;
  readonly target: number;
  readonly jointMilliohms: number;
  readonly ownSize: string | undefined;
  readonly fused: boolean;
  readonly leastVolts: number | undefined;
  /** Share of its peak that its load adds while volts are judged. */
  readonly atOnce: number;
  readonly saysEfficiency: boolean;
  /** Between the battery and its fuse; nothing where it is not known. */
  readonly unfusedM: number | undefined;
}

const PANEL = 'panel';

function sameName(a: string | undefined, b: string): boolean {
  return a?.trim().toLowerCase() === b.trim().toLowerCase();
}

/** In the order of the list. */
export function runsOf(content: StationContent, house: House): readonly Run[] {
  const { panelVolts, panelTarget } = content.supply ?? {};
  const made = new Map<number, Run>();
  function make(row: number): Run {
    const known = made.get(row);
    if (known !== undefined) return known;
    const typed = content.runs[row]!;
    const fromPanel = sameName(typed.fedFrom, PANEL);
    const feeder =
      typed.fedFrom === undefined || fromPanel
        ? undefined
        : make(content.runs.findIndex(({ run }) => sameName(run, typed.fedFrom!)));
    const isWatts = typed.kind === 'W';
    const fused = typed.fused !== 'no';
    const run: Run = {
      row,
      feeder,
      feeds: [],
      fromPanel,
      load: Number(typed.peak ?? 0) / (isWatts ? Number(typed.efficiency ?? 1) : 1),
      isWatts,
      lengthM: Number(typed.length) * house.metresPerUnit,
      volts: Number(typed.volts ?? (fromPanel ? panelVolts : house.volts)),
      target: Number(typed.target ?? (fromPanel ? (panelTarget ?? 0.02) : house.target)),
      jointMilliohms: Number(typed.joints ?? (fused ? house.jointMilliohms : 0)),
      ownSize: typed.ownSize,
      fused,
      leastVolts: typed.leastVolts === undefined ? undefined : Number(typed.leastVolts),
      atOnce: Number(typed.atOnce ?? 1),
      saysEfficiency: typed.efficiency !== undefined,
      unfusedM:
        typed.unfused === undefined ? undefined : Number(typed.unfused) * house.metresPerUnit,
    };
    feeder?.feeds.push(run);
    made.set(row, run);
    return run;
  }
  return content.runs.map((_, row) => make(row));
}

/** The run itself, its feeder, and so on up to the one that hangs on a source. */
export function pathOf(run: Run): readonly Run[] {
  return run.feeder === undefined ? [run] : [run, ...pathOf(run.feeder)];
}

export function rootOf(run: Run): Run {
  return run.feeder === undefined ? run : rootOf(run.feeder);
}

/** Whether the run's tree hangs on the battery: neither on the panel nor on a source of other volts. */
export function isOnBattery(run: Run, house: House): boolean {
  const root = rootOf(run);
  return !root.fromPanel && root.volts === house.volts;
}

/** The run and everything below it. */
export function subtreeOf(run: Run): readonly Run[] {
  return [run, ...run.feeds.flatMap(subtreeOf)];
}
