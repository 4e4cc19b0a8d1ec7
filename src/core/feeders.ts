/**
 * Runs that feed one another: the current in each, and the volts at each far end with steady-current and steady-power
 * loads mixed. Kirchhoff's laws on a tree, two passes over its runs a round, so that time grows with their number.
 */
import { loadVolts, steadyPowerAmps } from './drop';
import { nameKey, type FeederTree } from './feeder-tree';
import { RELATIVE_SLACK } from './limits';
import { invalid, isRefusal, noAnswer, type Outcome } from './outcome';

export const LOAD_KINDS = ['A', 'W'] as const;
/** "A": a load of steady current, amps. "W": a load of steady power, watts, which draws more as its volts sink. */
export type LoadKind = (typeof LOAD_KINDS)[number];

/** What hangs at the far end of each run and what the run is made of, by row. NaN: the row's cell cannot be read. */
export interface FedRuns {
  /** Amps of a load of kind "A", watts of kind "W"; 0 for a run that only feeds others. */
  readonly loads: Float64Array;
  readonly kinds: readonly LoadKind[];
  /** Ohms of the run, both conductors and joints. */
  readonly ohms: Float64Array;
}

/** One answer a row, refusals of the tree put in; `answer` is asked for the rows that have a place in it. */
function byRow(
  tree: FeederTree,
  rows: number,
  answer: (position: number, row: number) => Outcome<number>,
): Outcome<number>[] {
  const answers = new Array<Outcome<number>>(rows).fill(
    invalid('its own row cannot be read, so nothing can be said of it'),
  );
  for (let position = 0; position < tree.rowAt.length; position += 1) {
    const row = tree.rowAt[position]!;
    answers[row] = answer(position, row);
  }
  for (const [row, refusal] of tree.refusals) answers[row] = refusal;
  return answers;
}

/** The numbers of the rows by position. */
function byPosition(rowAt: Int32Array, ofRow: Float64Array): Float64Array {
  const found = new Float64Array(rowAt.length);
  for (let at = 0; at < found.length; at += 1) found[at] = ofRow[rowAt[at]!]!;
  return found;
}

/**
 * Sums up the tree: at each position its own load and all that hangs from it, and the position whose load is not known
 * where that keeps the sum from being known (-1 where it is).
 */
function carriedBy(tree: FeederTree, loads: Float64Array) {
  const { rowAt, feederAt } = tree;
  const sum = byPosition(rowAt, loads);
  const unknownAt = new Int32Array(rowAt.length).fill(-1);
  for (let at = rowAt.length - 1; at >= 0; at -= 1) {
    if (unknownAt[at]! < 0 && (Number.isNaN(sum[at]!) || tree.ambiguous.has(rowAt[at]!))) {
      unknownAt[at] = at;
    }
    const feeder = feederAt[at]!;
    if (feeder < 0) continue;
    sum[feeder]! += sum[at]!;
    if (unknownAt[at]! >= 0) unknownAt[feeder] = unknownAt[at]!;
  }
  return { sum, unknownAt };
}

/**
 * Amps in each run, by row: its own load and all that it feeds. Refused with a sentence that names the run to fix: a
 * run that has no place in the tree, and a run that feeds one whose load is not known, since a sum without it would be
 * too small. Kirchhoff's current law.
 */
export function feedAmps(tree: FeederTree, amps: Float64Array): Outcome<number>[] {
  const { sum, unknownAt } = carriedBy(tree, amps);
  return byRow(tree, amps.length, (position) => {
    const unknown = unknownAt[position]!;
    return unknown < 0
      ? sum[position]!
      : invalid(
          `it feeds ${tree.called(tree.rowAt[unknown]!)}, whose load is not known; fix that row first`,
        );
  });
}

/** Volts within which a solution is settled, and the share of the source volts that serves above a few kilovolts. */
const SETTLED_V = 1e-9;
const SETTLED_SHARE = 1e-13;
/** A mismatch, as a share of the source volts, that is no more than rounding: a tree at the very point of collapse. */
const ROUNDING_SHARE = 1e-11;
/** At the point of collapse a round halves the distance; this many of them are far below any rounding. */
const MOST_ROUNDS = 80;

/** The tree's numbers by position, with the room that solving takes. */
class Solver {
  private readonly feederAt: Int32Array;
  private readonly ohms: Float64Array;
  readonly amps: Float64Array;
  readonly watts: Float64Array;
  /** The solution, once `settle` says that there is one. */
  readonly volts: Float64Array;
  private readonly offset: Float64Array;
  private readonly slope: Float64Array;
  /** Volts of the source behind the branch that is being solved. */
  sourceVolts = 0;

  constructor(tree: FeederTree, runs: FedRuns) {
    const { rowAt, feederAt } = tree;
    this.feederAt = feederAt;
    this.ohms = byPosition(rowAt, runs.ohms);
    this.amps = new Float64Array(rowAt.length);
    this.watts = new Float64Array(rowAt.length);
    for (let at = 0; at < rowAt.length; at += 1) {
      const row = rowAt[at]!;
      (runs.kinds[row] === 'W' ? this.watts : this.amps)[at] = runs.loads[row]!;
    }
    this.volts = new Float64Array(rowAt.length);
    this.offset = new Float64Array(rowAt.length);
    this.slope = new Float64Array(rowAt.length);
  }

  /** Turns to a branch off the source, positions `from` to `to`, and to the volts that feed it. */
  beginBranch(from: number, to: number, sourceVolts: number): void {
    this.sourceVolts = sourceVolts;
    this.volts.fill(sourceVolts, from, to);
  }

  /** Takes the load at a position out, or puts it back; hands over what is needed to put it back. */
  swapLoad(at: number, load: readonly [amps: number, watts: number]): readonly [number, number] {
    const before = [this.amps[at]!, this.watts[at]!] as const;
    [this.amps[at], this.watts[at]] = load;
    return before;
  }

  /** Ohms of the whole path from the source, by position. */
  pathOhms(): Float64Array {
    const path = Float64Array.from(this.ohms);
    for (let at = 0; at < path.length; at += 1) {
      const feeder = this.feederAt[at]!;
      if (feeder >= 0) path[at]! += path[feeder]!;
    }
    return path;
  }

  /**
   * Solves one branch off the source, positions `from` to `to`, in place; false where no volts satisfy its loads.
   *
   * A round sweeps from the ends to the source and back with each steady-power load replaced by its tangent at the volts
   * of the round before. P / v bends upwards, so from any volts that are too high (the source's own are) every round
   * comes out still at or above the true volts and below the last: it cannot overshoot, and it lands on the higher of
   * the two solutions, the one that a circuit switched on takes. When the tangents leave a run no positive resistance,
   * or a load no volts, the branch has no solution at all.
   */
  settle(from: number, to: number): boolean {
    const settled = Math.max(SETTLED_V, SETTLED_SHARE * this.sourceVolts);
    for (let round = 0; round < MOST_ROUNDS; round += 1) {
      if (!this.sweepToSource(from, to)) return this.holdsAsItIs(from, to);
      const step = this.sweepToEnds(from, to);
      if (Number.isNaN(step)) return false;
      if (step <= settled) return true;
    }
    return this.holdsAsItIs(from, to);
  }

  /** Currents as offset + slope x volts of the feeder's end; false where a run's tangents outweigh its resistance. */
  private sweepToSource(from: number, to: number): boolean {
    const { feederAt, ohms, amps, watts, volts, offset, slope } = this;
    offset.fill(0, from, to);
    slope.fill(0, from, to);
    for (let at = to - 1; at >= from; at -= 1) {
      const power = watts[at]!;
      if (power > 0) {
        offset[at]! += (2 * power) / volts[at]!;
        slope[at]! -= power / volts[at]! ** 2;
      }
      offset[at]! += amps[at]!;
      const left = 1 + slope[at]! * ohms[at]!;
      if (!(left > 0)) return false;
      offset[at]! /= left;
      slope[at]! /= left;
      const feeder = feederAt[at]!;
      if (feeder < 0) continue;
      offset[feeder]! += offset[at]!;
      slope[feeder]! += slope[at]!;
    }
    return true;
  }

  /** New volts from those currents; answers with the largest change, NaN where a load is left no volts. */
  private sweepToEnds(from: number, to: number): number {
    const { feederAt, ohms, amps, watts, volts, offset, slope, sourceVolts } = this;
    const rounding = RELATIVE_SLACK * sourceVolts;
    let largest = 0;
    for (let at = from; at < to; at += 1) {
      const feeder = feederAt[at]!;
      const fedAt = feeder < 0 ? sourceVolts : volts[feeder]!;
      const reached = fedAt - ohms[at]! * (offset[at]! + slope[at]! * fedAt);
      if (watts[at]! > 0 ? !(reached > 0) : amps[at]! > 0 && !(reached >= -rounding)) return NaN;
      largest = Math.max(largest, Math.abs(volts[at]! - reached));
      volts[at] = reached;
    }
    return largest;
  }

  /** Whether the volts at hand satisfy every run but for rounding; plain Ohm and Kirchhoff, no tangents. */
  private holdsAsItIs(from: number, to: number): boolean {
    const { feederAt, ohms, amps, watts, volts, offset, sourceVolts } = this;
    offset.fill(0, from, to);
    for (let at = to - 1; at >= from; at -= 1) {
      offset[at]! += amps[at]! + (watts[at]! > 0 ? watts[at]! / volts[at]! : 0);
      const feeder = feederAt[at]!;
      if (feeder >= 0) offset[feeder]! += offset[at]!;
    }
    for (let at = from; at < to; at += 1) {
      const feeder = feederAt[at]!;
      const fedAt = feeder < 0 ? sourceVolts : volts[feeder]!;
      const mismatch = Math.abs(volts[at]! - fedAt + ohms[at]! * offset[at]!);
      if (!(mismatch <= ROUNDING_SHARE * sourceVolts)) return false;
    }
    return true;
  }
}

/**
 * A bound for the work on a hopeless branch: after so many refusals, by its runs, the number of loads refused at once
 * doubles, and so on. A branch of a thousand runs gets a thousand refusals one by one, any branch at least sixteen.
 */
const RUNS_TIMES_REFUSALS = 1_000_000;
const LEAST_REFUSALS = 16;

/**
 * Decides which loads of a branch that cannot serve them all go without, and leaves the branch solved for the others.
 * First, those that even alone on their path could not be served. Then the others are taken in from the least demanding
 * to the most (the share of the source volts that a load at its nominal current would lose on its own path; ties by
 * name), and one that the branch does not bear beside those already taken is left out. So the answer does not depend on
 * the order of the rows, no load left out could be put back, and many small loads come before one large load.
 *
 * Loads are tried in blocks that halve when refused and double when taken, so that the trials are few. Only in a branch
 * that must leave out very many (see RUNS_TIMES_REFUSALS) are blocks refused whole, and some of theirs might have fitted.
 */
function shedLoads(
  solver: Solver,
  from: number,
  to: number,
  pathOhms: Float64Array,
  nameAt: (position: number) => string,
): Map<number, string> {
  const { amps, watts, volts, sourceVolts } = solver;
  const left = new Map<number, string>();
  const leaveOut = (at: number) =>
    left.set(at, 'the runs it shares with other loads cannot deliver it');
  let waiting: number[] = [];
  const loads = new Map<number, readonly [number, number]>();
  for (let at = from; at < to; at += 1) {
    if (amps[at] === 0 && watts[at] === 0) continue;
    const alone =
      watts[at]! > 0
        ? steadyPowerAmps(watts[at]!, sourceVolts, pathOhms[at]!)
        : loadVolts(sourceVolts, amps[at]!, pathOhms[at]!);
    loads.set(at, solver.swapLoad(at, [0, 0]));
    if (isRefusal(alone)) left.set(at, `even alone on its path, ${alone.why}`);
    else waiting.push(at);
  }
  const demand = (at: number) => {
    const [ownAmps, ownWatts] = loads.get(at)!;
    return (ownAmps + ownWatts / sourceVolts) * pathOhms[at]!;
  };
  const byName = (a: number, b: number) => (nameAt(a) < nameAt(b) ? -1 : 1);
  waiting.sort((a, b) => demand(a) - demand(b) || byName(a, b));

  volts.fill(sourceVolts, from, to);
  let settled = volts.slice(from, to);
  const patience = Math.max(LEAST_REFUSALS, RUNS_TIMES_REFUSALS / (to - from));
  let refusedBlocks = 0;
  let size = waiting.length;
  while (waiting.length > 0) {
    const block = waiting.slice(0, size);
    for (const at of block) solver.swapLoad(at, loads.get(at)!);
    if (solver.settle(from, to)) {
      settled = volts.slice(from, to);
      waiting = waiting.slice(block.length);
      size *= 2;
      continue;
    }
    for (const at of block) solver.swapLoad(at, [0, 0]);
    volts.set(settled, from);
    const smallest = 2 ** Math.floor(refusedBlocks / patience);
    if (block.length > smallest) {
      size = Math.max(smallest, block.length >> 1);
      continue;
    }
    refusedBlocks += 1;
    size = smallest;
    block.forEach(leaveOut);
    waiting = waiting.slice(block.length);
  }
  return left;
}

/**
 * Volts at the far end of each run, by row, from sources of steady volts: one for all, or by row that of the runs that no
 * other run feeds (the others' are not looked at; NaN is one that cannot be read). Loads that cannot be served have no answer
 * and say why, and the rest is solved as though they were not there (see `shedLoads`). Refused with a sentence that
 * names the run to fix: a run that has no place in the tree, and every run of a branch off the source in which a load
 * or a resistance is not known, since its current moves the volts of them all; a run that carries nothing moves none.
 */
export function feedVolts(
  tree: FeederTree,
  sourceVolts: number | Float64Array,
  runs: FedRuns,
): Outcome<number>[] {
  const { rowAt, branchStarts } = tree;
  const carried = carriedBy(tree, runs.loads);
  const ohms = Float64Array.from(runs.ohms);
  for (let position = 0; position < rowAt.length; position += 1) {
    const row = rowAt[position]!;
    if (Number.isNaN(ohms[row]!) && carried.sum[position] === 0) ohms[row] = 0;
  }
  const solver = new Solver(tree, { ...runs, ohms });
  const voltsOf = (row: number) =>
    typeof sourceVolts === 'number' ? sourceVolts : sourceVolts[row]!;
  let pathOhms: Float64Array | undefined;
  const unserved = new Map<number, string>();
  const unknownAt = new Int32Array(rowAt.length).fill(-1);

  for (let branch = 0; branch + 1 < branchStarts.length; branch += 1) {
    const from = branchStarts[branch]!;
    const to = branchStarts[branch + 1]!;
    const branchVolts = voltsOf(rowAt[from]!);
    solver.beginBranch(from, to, branchVolts);
    let unknown = Number.isNaN(branchVolts) ? from : carried.unknownAt[from]!;
    for (let at = from; at < to && unknown < 0; at += 1) {
      if (Number.isNaN(ohms[rowAt[at]!]!)) unknown = at;
    }
    if (unknown >= 0) {
      unknownAt.fill(unknown, from, to);
    } else if (!solver.settle(from, to)) {
      pathOhms ??= solver.pathOhms();
      const nameAt = (at: number) => nameKey(tree.called(rowAt[at]!));
      for (const [at, why] of shedLoads(solver, from, to, pathOhms, nameAt)) unserved.set(at, why);
    }
  }

  return byRow(tree, runs.loads.length, (position, row) => {
    const unknown = unknownAt[position]!;
    if (unknown >= 0) {
      return invalid(
        `${tree.called(rowAt[unknown]!)} is on the same branch and its load, ohms or source volts are not known; fix that row first`,
      );
    }
    const why = unserved.get(position);
    return why === undefined
      ? Math.max(0, solver.volts[position]!)
      : noAnswer(
          `${tree.called(row)} cannot be served: ${why}; the other rows are solved without it`,
        );
  });
}
