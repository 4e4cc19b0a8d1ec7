/**
 * The runs of a station as trees that wait for their sizes: for each branch off a source what every size of each run loses
 * and costs, and what may be lost on the way to each load.
 *
 * Two trees of each. The careful one never flatters: loads in watts draw what they are sized for, and a load that counts
 * in part for its feeders counts wholly for itself. Its sizes keep every target. The free one never blames: what it cannot
 * be served with less of, no sizes can. Where the branch has steady amps alone, all of which count at once, they are one.
 */
import { RELATIVE_SLACK } from '../core/limits';
import { worthwhile, type SizingTree } from '../core/lightest/sizing-tree';
import type { ResultCell } from '../functions/cell';
import type { StationContent } from './station/content';
import { COUNTS } from './station/parameters';
import type { SizeInRun, StationOfSizes } from './size-options';

/** What is to be least. */
export type Aim = 'metal' | 'money';

export interface BranchRun {
  /** Its place in the list, from 0. */
  readonly run: number;
  /** Place of its feeder in the branch; -1 is the source. */
  readonly feederAt: number;
  /** Undefined where the schedule finds none that is thick enough. */
  readonly inUse: SizeInRun | undefined;
  /** What it may have, the wire in use among it. */
  readonly sizes: readonly SizeInRun[];
}

export interface Branch {
  /** A feeder stands before all that it feeds. */
  readonly runs: readonly BranchRun[];
  readonly careful: Model;
  /** Undefined where it is the careful one. */
  readonly free: Model | undefined;
  /**
   * Where some of its runs have no wire: what is said of it if no sizes serve it. The schedule gives each run of a path its
   * share of the volts; sizes chosen together may serve what no such share does.
   */
  readonly otherwise?: LeftBranch;
}

/** What a branch asks of its sizes: amps that count for the drop of each run, and volts that may be lost to its end. */
interface Model {
  readonly amps: readonly number[];
  readonly budgets: readonly number[];
}

/** A branch that keeps its sizes, and why. */
export interface LeftBranch {
  readonly runs: readonly number[];
  readonly why: string;
}

const number = (cell: ResultCell): number | undefined =>
  typeof cell === 'number' ? cell : undefined;

/** Half of the slack with which the sheets compare: what is found here also passes there. */
const SLACK = RELATIVE_SLACK / 2;

/** Rows by the root of their path, nearest to it first; those that lie nowhere are left out. */
function rowsByRoot({ values }: StationOfSizes): readonly (readonly number[])[] {
  const byRoot = new Map<ResultCell, number[]>();
  for (const [run, { root, depth, verdict }] of values.runs.entries()) {
    if (verdict === '' || typeof depth !== 'number' || depth < 0) continue;
    const rows = byRoot.get(root);
    if (rows === undefined) byRoot.set(root, [run]);
    else rows.push(run);
  }
  const depthOf = (run: number) => values.runs[run]!.depth as number;
  return [...byRoot.values()].map((rows) => rows.sort((a, b) => depthOf(a) - depthOf(b)));
}

/** What a row is reckoned with, in the wire in use if it has one; undefined where it lacks another figure. */
function figuresOf(station: StationOfSizes, content: StationContent, run: number) {
  const row = station.values.runs[run]!;
  const [once, alone, ownAmps, runAmps, jointOhms, volts, target] = [
    number(row.once),
    number(row.alone),
    number(row.ownAmps),
    number(row.runAmps),
    number(row.jointOhms),
    number(row.volts),
    number(row.target),
  ];
  const inUse = station.inUse(run);
  if (
    once === undefined ||
    alone === undefined ||
    ownAmps === undefined ||
    runAmps === undefined ||
    jointOhms === undefined ||
    volts === undefined ||
    target === undefined
  ) {
    return undefined;
  }
  const isWatts = row.kind === 'W';
  const typed = content.runs[run]!.leastVolts;
  const least = typeof typed === 'number' ? typed : isWatts ? number(row.assumedVolts) : undefined;
  const source = typeof row.source === 'number' ? row.source - 1 : 0;
  const milliohms = station.values.supply.sources[source]?.bankMilliohms;
  const inside =
    typeof row.battery === 'number' && row.battery > 0 ? (number(milliohms ?? '') ?? 0) / 1000 : 0;
  const lowSource = number(row.lowSource) ?? volts;
  return {
    once,
    alone,
    runAmps,
    jointOhms,
    isWatts,
    inUse,
    isJudged: row.judged === 1 && inUse !== undefined,
    isLoad: ownAmps > 0,
    targetVolts: volts * target * (1 + SLACK),
    /** Volts that may be lost with the battery low. */
    lowVolts: least === undefined ? Infinity : lowSource - alone * inside - least * (1 - SLACK),
  };
}

type Figures = NonNullable<ReturnType<typeof figuresOf>>;

/** For each run a figure of the loads at its end and beyond. */
function overLoads(
  feederAt: readonly number[],
  figures: readonly Figures[],
  of: (own: number, below: number) => number,
  none: number,
): readonly number[] {
  const found = figures.map(({ isLoad, alone }) => (isLoad ? alone : none));
  for (let at = feederAt.length - 1; at >= 0; at -= 1) {
    const feeder = feederAt[at]!;
    if (feeder >= 0) found[feeder] = of(found[feeder]!, found[at]!);
  }
  return found;
}

const dropOf = (amps: number, wireOhms: number, jointOhms: number) =>
  amps === 0 ? 0 : amps * (wireOhms + jointOhms);

/** Volts that are lost to the end of each run through the wires in use. */
function lostNow(
  feederAt: readonly number[],
  figures: readonly Figures[],
  amps: readonly number[],
): readonly number[] {
  const lost: number[] = [];
  for (const [at, { inUse, jointOhms }] of figures.entries()) {
    const feeder = feederAt[at]!;
    const drop = inUse === undefined ? 0 : dropOf(amps[at]!, inUse.wireOhms, jointOhms);
    lost.push((feeder < 0 ? 0 : lost[feeder]!) + drop);
  }
  return lost;
}

/** `lacksWire`: nothing is known of what is lost now, so that every load is to have what it asks. */
function modelsOf(
  feederAt: readonly number[],
  figures: readonly Figures[],
  countsEach: boolean,
  lacksWire: boolean,
) {
  const most = overLoads(feederAt, figures, Math.max, 0);
  const least = overLoads(feederAt, figures, Math.min, Infinity);
  const careful = figures.map(({ once }, at) => once + most[at]!);
  const free = figures.map(({ once }, at) => once + (least[at]! < Infinity ? least[at]! : 0));
  const hasWatts = figures.some(({ isWatts, isLoad }) => isWatts && isLoad);
  const carefulNow = lostNow(feederAt, figures, careful);
  // A load that misses its volts already may go on doing so, but lose no more.
  const budgets = (countsLow: boolean) =>
    figures.map(({ isLoad, targetVolts, lowVolts }, at) => {
      if (!isLoad) return Infinity;
      const asked = Math.min(countsEach ? Infinity : targetVolts, countsLow ? lowVolts : Infinity);
      return lacksWire ? asked : Math.max(asked, carefulNow[at]! * (1 + 1e-12));
    });
  const isOne = !hasWatts && careful.every((amps, at) => amps === free[at]);
  return {
    careful: { amps: careful, budgets: budgets(true) },
    free: isOne ? undefined : { amps: free, budgets: budgets(!hasWatts) },
  };
}

/** The branches of a station whose sizes may be chosen anew, and those that keep theirs. */
export function branchesOf(
  station: StationOfSizes,
  content: StationContent,
  mayChange: (run: number) => boolean,
): { readonly branches: readonly Branch[]; readonly left: readonly LeftBranch[] } {
  const { runs, rules } = station.values;
  const countsEach = rules.counts === COUNTS[1];
  const branches: Branch[] = [];
  const left: LeftBranch[] = [];
  /** A wire that is typed and cannot be read is the person's to mend. */
  const isLeftOpen = (run: number) => String(content.runs[run]!.ownSize ?? '').trim() === '';
  for (const rows of rowsByRoot(station)) {
    const found = rows.map((run) => figuresOf(station, content, run));
    const bad = found.findIndex((one) => one?.isJudged !== true);
    const otherwise: LeftBranch | undefined =
      bad < 0
        ? undefined
        : {
            runs: rows,
            why: `${calledRun(content, rows[bad]!)}: ${String(runs[rows[bad]!]!.verdict)}`,
          };
    const isServable = found.every(
      (one, index) => one !== undefined && (one.inUse !== undefined || isLeftOpen(rows[index]!)),
    );
    const lacksWire = found.some((one) => one?.inUse === undefined);
    if (otherwise !== undefined && !(isServable && lacksWire)) {
      left.push(otherwise);
      continue;
    }
    const figures = found as readonly Figures[];
    const at = new Map(rows.map((run, index) => [run + 1, index] as const));
    const feederAt = rows.map((run) => at.get(runs[run]!.place1 as number) ?? -1);
    const ofRuns = rows.map((run, index): BranchRun => {
      const { inUse, runAmps, jointOhms, targetVolts } = figures[index]!;
      const isFixed = inUse !== undefined && (!mayChange(run) || inUse.kg === 0);
      const keeps = ({ wireOhms }: SizeInRun) =>
        !countsEach || dropOf(runAmps, wireOhms, jointOhms) <= targetVolts;
      const others = isFixed
        ? []
        : station.carrying(run).filter((size) => size.name !== inUse?.name && keeps(size));
      const sizes = inUse === undefined ? others : [inUse, ...others];
      return { run, feederAt: feederAt[index]!, inUse, sizes };
    });
    branches.push({
      runs: ofRuns,
      ...modelsOf(feederAt, figures, countsEach, lacksWire),
      ...(otherwise && { otherwise }),
    });
  }
  return { branches, left };
}

/** A run as a sentence names it. */
export function calledRun({ runs }: StationContent, run: number): string {
  const name = String(runs[run]?.run ?? '').trim();
  return name === '' ? `run ${run + 1}` : name;
}

/** What a size counts for. Sizes without a price are no choice where money counts. */
export const worthOf = (aim: Aim, { kg, cost }: SizeInRun): number | undefined =>
  aim === 'metal' ? kg : cost;

/** A branch as the choice of the least takes it, and for each run the sizes that its options stand for. */
export function sizingTreeOf(
  { runs }: Branch,
  { amps, budgets }: Model,
  aim: Aim,
  jointOhms: (run: number) => number,
): { readonly tree: SizingTree; readonly sizes: readonly (readonly SizeInRun[])[] } {
  const options = runs.map(({ run, sizes }, at) =>
    worthwhile(
      sizes.flatMap((size) => {
        // A wire in use without a price is the only choice of its run.
        const cost = worthOf(aim, size) ?? (sizes.length === 1 ? 0 : undefined);
        const drop = dropOf(amps[at]!, size.wireOhms, jointOhms(run));
        return cost === undefined ? [] : [{ size, cost, drop }];
      }),
    ),
  );
  return {
    tree: {
      feederAt: runs.map(({ feederAt }) => feederAt),
      budgets,
      options: options.map((found) => ({
        drops: found.map(({ drop }) => drop),
        costs: found.map(({ cost }) => cost),
      })),
    },
    sizes: options.map((found) => found.map(({ size }) => size)),
  };
}
