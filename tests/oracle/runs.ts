/** The runs of a station as numbers, hung on one another: a tree for each source, or for each loop of feeders. */
import type { StationContent } from '../../src/sheets/station/content';
import type { House } from './house';

/** Whether the run can be followed to a source; "tiedToAnother": not, for another run of its tree. */
export type Standing = 'followed' | 'tooDeep' | 'inLoop' | 'tiedToAnother';

export interface Run {
  readonly row: number;
  readonly feeder: Run | undefined;
  readonly feeds: Run[];
  /** Its path starts at the panel. */
  readonly fromPanel: boolean;
  readonly standing: Standing;
  /** Source volts or target are blank, since those of the panel are. */
  readonly isPanelBlank: boolean;
  /** An entry cannot be used, and whether it is one that spoils the load. */
  readonly isMisread: boolean;
  readonly isLoadMisread: boolean;
  /** Amps or watts taken in; none for a run that only feeds others. */
  readonly load: number;
  readonly isWatts: boolean;
  readonly lengthM: number;
  /** NaN where they are blank. */
  readonly volts: number;
  readonly target: number;
  readonly jointMilliohms: number;
  readonly ownSize: string | undefined;
  /** Has a fuse of its own; one that says neither yes nor no is not counted on. */
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

/** Runs above another that are followed. */
const MOST_ABOVE = 4;

/** Row of the feeder of each run; nothing for one on a source. */
function feedersOf({ runs }: StationContent): readonly (number | undefined)[] {
  return runs.map(({ fedFrom }) =>
    fedFrom === undefined || sameName(fedFrom, PANEL)
      ? undefined
      : runs.findIndex(({ run }) => sameName(run, fedFrom)),
  );
}

/** Rows above a run, nearest first, up to the source or once round a loop. */
function rowsAbove(row: number, feeders: readonly (number | undefined)[]): readonly number[] {
  const above: number[] = [];
  for (let at = feeders[row]; at !== undefined && !above.includes(at); at = feeders[at]) {
    above.push(at);
  }
  return above;
}

function standings(feeders: readonly (number | undefined)[]): readonly Standing[] {
  const above = feeders.map((_, row) => rowsAbove(row, feeders));
  const isInLoop = (row: number) => above[row]!.includes(row);
  const top = (row: number) => above[row]!.at(-1) ?? row;
  const isDeep = (row: number) => above[row]!.length > MOST_ABOVE;
  return feeders.map((_, row) => {
    if (isInLoop(row)) return 'inLoop';
    if (above[row]!.some(isInLoop)) return 'tiedToAnother';
    if (isDeep(row)) return 'tooDeep';
    const isTied = feeders.some((__, other) => isDeep(other) && top(other) === top(row));
    return isTied ? 'tiedToAnother' : 'followed';
  });
}

const isShare = (typed: string | number | undefined, isZeroToo: boolean) =>
  typed === undefined ||
  (typeof typed === 'number' && typed <= 1 && (typed > 0 || (isZeroToo && typed === 0)));

/** A figure of the panel; NaN where it is blank. */
const orNaN = (typed: string | number | undefined) =>
  typed === undefined || typed === '' ? NaN : Number(typed);

/** In the order of the list. */
export function runsOf(content: StationContent, house: House): readonly Run[] {
  const { panelVolts, panelTarget = 0.02 } = content.supply ?? {};
  const feeders = feedersOf(content);
  const standing = standings(feeders);
  const made = new Map<number, Run>();
  function make(row: number): Run {
    const known = made.get(row);
    if (known !== undefined) return known;
    const typed = content.runs[row]!;
    // A loop is cut up: each of its runs begins a tree, of which nothing can be told.
    const above = standing[row] === 'inLoop' ? undefined : feeders[row];
    const feeder = above === undefined ? undefined : make(above);
    const fromPanel =
      feeder?.fromPanel ?? (typed.fedFrom !== undefined && sameName(typed.fedFrom, PANEL));
    const isWatts = typed.kind === 'W';
    const fused = typed.fused === undefined || typed.fused === 'yes';
    const volts = orNaN(typed.volts ?? (fromPanel ? panelVolts : house.volts));
    const target = orNaN(typed.target ?? (fromPanel ? panelTarget : house.target));
    const isLoadMisread = !isShare(typed.atOnce, true) || !isShare(typed.efficiency, false);
    const run: Run = {
      row,
      feeder,
      feeds: [],
      fromPanel,
      standing: standing[row]!,
      isPanelBlank: Number.isNaN(volts + target),
      isMisread: isLoadMisread || !(fused || typed.fused === 'no'),
      isLoadMisread,
      load: isLoadMisread
        ? NaN
        : Number(typed.peak ?? 0) / (isWatts ? Number(typed.efficiency ?? 1) : 1),
      isWatts,
      lengthM: Number(typed.length) * house.metresPerUnit,
      volts,
      target,
      jointMilliohms: Number(typed.joints ?? (fused ? house.jointMilliohms : 0)),
      ownSize: typed.ownSize,
      fused,
      leastVolts: typed.leastVolts === undefined ? undefined : Number(typed.leastVolts),
      atOnce: isLoadMisread ? NaN : Number(typed.atOnce ?? 1),
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
  return root.standing !== 'inLoop' && !root.fromPanel && root.volts === house.volts;
}

/** The run and everything below it. */
export function subtreeOf(run: Run): readonly Run[] {
  return [run, ...run.feeds.flatMap(subtreeOf)];
}
