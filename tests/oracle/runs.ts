/** The runs of an ordinary station as numbers, hung on one another: a tree for each source. */
import type { StationContent } from '../../src/sheets/station/content';
import type { House } from './house';

export interface Run {
  readonly row: number;
  readonly feeder: Run | undefined;
  readonly feeds: Run[];
  readonly fromPanel: boolean;
  /** Amps or watts; none for a run that only feeds others. */
  readonly load: number;
  readonly isWatts: boolean;
  readonly lengthM: number;
  readonly volts: number;
  readonly target: number;
  readonly jointMilliohms: number;
  readonly ownSize: string | undefined;
  readonly fused: boolean;
  readonly leastVolts: number | undefined;
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
    const run: Run = {
      row,
      feeder,
      feeds: [],
      fromPanel,
      load: Number(typed.peak ?? 0),
      isWatts: typed.kind === 'W',
      lengthM: Number(typed.length) * house.metresPerUnit,
      volts: Number(typed.volts ?? (fromPanel ? panelVolts : house.volts)),
      target: Number(typed.target ?? (fromPanel ? (panelTarget ?? 0.02) : house.target)),
      jointMilliohms: Number(typed.joints ?? 0),
      ownSize: typed.ownSize,
      fused: typed.fused !== 'no',
      leastVolts: typed.leastVolts === undefined ? undefined : Number(typed.leastVolts),
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
