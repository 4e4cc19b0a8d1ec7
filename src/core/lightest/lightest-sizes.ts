/** The sizes of all runs of a list that together use the least metal, or cost the least money. */
import { conductorMassKg } from '../conductor';
import { lostVolts, runOhms } from '../drop';
import type { FeederTree } from '../feeder-tree';
import { carryingSizes, ratedSizes, type CarryDemand, type RatedSize } from '../gauge';
import type { Conditions } from '../ampacity';
import { RELATIVE_SLACK } from '../limits';
import { invalid, isRefusal, noAnswer, type Outcome, type Refusal } from '../outcome';
import { amount } from '../sentence';
import { formatSize, type ConductorSize, type Series } from '../size';
import { chooseLeast } from './choose';
import { leastLost, worthwhile, type SizingTree } from './sizing-tree';

/** The runs of a list by row; NaN where a cell cannot be read. Each run has two conductors. */
export interface RunsToSize {
  /** Amps of the run's own load; 0 for a run that only feeds others. */
  readonly amps: Float64Array;
  readonly lengthsM: Float64Array;
  /** Of the run's own load: share of the source volts that may be lost from the source to it. */
  readonly maxDrops: Float64Array;
  /** Of the run's own load: fewest volts that it works at; 0 for none. */
  readonly leastVolts: Float64Array;
  readonly jointMilliohms: Float64Array;
}

/** What holds for every run. */
export interface SizingRules extends Conditions, Pick<CarryDemand, 'continuous' | 'fuseLimit'> {
  readonly volts: number;
  /** Conductor temperature. */
  readonly tempC: number;
  readonly series: Series;
  /** Money for a metre of run by size, as text; a size without a price is not chosen. Left out, metal counts. */
  readonly pricesPerM?: ReadonlyMap<string, number> | undefined;
}

export interface LightestSizes {
  /** By row. */
  readonly sizes: readonly Outcome<ConductorSize>[];
  /** Kilograms of metal in all runs that have a size, both conductors, or their money. */
  readonly total: number;
  /** No sizes that serve the same trees come to less; the total itself where the sizes are proved the best. */
  readonly atLeast: number;
}

/** How far above the best a total is at most, as a share: 0 where it is proved the best. */
export function mostAboveBest({ total, atLeast }: LightestSizes): number {
  return total > atLeast ? total / atLeast - 1 : 0;
}

/** Half of the slack that comparing with a limit has: what is found here also passes where it is checked. */
const SLACK = RELATIVE_SLACK / 2;

/** Volts that may be lost on the way to a load, by its target and by the least that it works at. */
function budgetOf(maxDrop: number, leastVolts: number, volts: number): number {
  return Math.min(maxDrop * volts * (1 + SLACK), volts - leastVolts * (1 - SLACK));
}

interface RunOption {
  readonly size: ConductorSize;
  readonly drop: number;
  readonly cost: number;
}

/** One branch off the source: the rows of its runs, and the place of each one's feeder among them. */
interface Branch {
  readonly rows: readonly number[];
  readonly feederAt: readonly number[];
  /** Amps that each run carries. */
  readonly amps: readonly number[];
}

function branchesOf({ rowAt, feederAt, branchStarts }: FeederTree, own: Float64Array): Branch[] {
  return branchStarts.slice(0, -1).map((start, index) => {
    const end = branchStarts[index + 1]!;
    const rows = [...rowAt.subarray(start, end)];
    const feeders = Array.from(feederAt.subarray(start, end), (feeder) =>
      feeder < 0 ? -1 : feeder - start,
    );
    const amps = rows.map((row) => own[row]!);
    for (let at = rows.length - 1; at > 0; at -= 1) amps[feeders[at]!]! += amps[at]!;
    // Without the last digits, which adding up leaves behind and a sentence would show.
    return { rows, feederAt: feeders, amps: amps.map((sum) => Number(sum.toPrecision(12))) };
  });
}

/** Why a load cannot keep its budget, whatever the sizes. */
function whyTooFar(load: string, leastLostV: number, row: number, runs: RunsToSize, volts: number) {
  const least = runs.leastVolts[row]!;
  if (least > volts) return `${load} needs ${least} V and the source has ${volts} V`;
  const target = runs.maxDrops[row]! * volts;
  const most = Math.min(target, volts - least);
  const by = most < target ? `its ${least} V` : 'its target';
  return `on the way to ${load} the thickest sizes lose ${amount(leastLostV, 'V')} and ${by} allows ${amount(most, 'V')}; shorten its path, divide the load or raise the volts`;
}

/** Sizes of the runs of one list, under its rules. */
class Sizing {
  constructor(
    private readonly tree: FeederTree,
    private readonly runs: RunsToSize,
    private readonly rules: SizingRules,
    private readonly candidates: readonly RatedSize[],
  ) {}

  /** The row of a branch that keeps the others from being sized; undefined where there is none. */
  unknownIn({ rows }: Branch): number | undefined {
    const { amps, lengthsM, leastVolts, jointMilliohms } = this.runs;
    return rows.find(
      (row) =>
        this.tree.ambiguous.has(row) ||
        this.lacksTarget(row) ||
        Number.isNaN(amps[row]! + lengthsM[row]! + leastVolts[row]! + jointMilliohms[row]!),
    );
  }

  lacksTarget(row: number): boolean {
    return this.runs.amps[row]! > 0 && Number.isNaN(this.runs.maxDrops[row]!);
  }

  /** What a run may have, the thriftiest first. */
  private optionsOf(row: number, amps: number): Outcome<readonly RunOption[]> {
    const { rules, runs } = this;
    const carrying = carryingSizes({ ...rules, amps }, this.candidates);
    if (isRefusal(carrying)) return carrying;
    const lengthM = runs.lengthsM[row]!;
    const route = { ...rules, lengthM, jointMilliohms: runs.jointMilliohms[row]! };
    const options = carrying.map(({ size }): RunOption => {
      const perM = rules.pricesPerM?.get(formatSize(size));
      return {
        size,
        drop: lostVolts(amps, runOhms(size, route)),
        cost:
          perM === undefined ? 2 * conductorMassKg(size, lengthM, rules.material) : perM * lengthM,
      };
    });
    const found = worthwhile(options);
    return found.every(({ drop, cost }) => Number.isFinite(drop) && Number.isFinite(cost))
      ? found
      : noAnswer('the numbers are too large to compute with');
  }

  /** The sizes of a branch, with what they cost; or why there are none. */
  solve(branch: Branch): Outcome<{
    readonly sizes: readonly ConductorSize[];
    readonly cost: number;
    readonly atLeast: number;
  }> {
    const { runs, rules, tree } = this;
    const { volts } = rules;
    const options: (readonly RunOption[])[] = [];
    for (const [at, row] of branch.rows.entries()) {
      const found = this.optionsOf(row, branch.amps[at]!);
      if (isRefusal(found)) return noAnswer(`in ${tree.called(row)} ${found.why}`);
      options.push(found);
    }
    const sizing: SizingTree = {
      feederAt: branch.feederAt,
      budgets: branch.rows.map((row) =>
        runs.amps[row]! > 0
          ? budgetOf(runs.maxDrops[row]!, runs.leastVolts[row]!, volts)
          : Infinity,
      ),
      options: options.map((found) => ({
        drops: found.map(({ drop }) => drop),
        costs: found.map(({ cost }) => cost),
      })),
    };
    const lost = leastLost(sizing);
    const tooFar = lost.findIndex((least, at) => least > sizing.budgets[at]!);
    if (tooFar >= 0) {
      const row = branch.rows[tooFar]!;
      return noAnswer(whyTooFar(tree.called(row), lost[tooFar]!, row, runs, volts));
    }
    const choice = chooseLeast(sizing);
    if (choice === undefined) return noAnswer('the numbers are too large to compute with');
    return {
      sizes: choice.chosen.map((option, at) => options[at]![option]!.size),
      cost: choice.cost,
      atLeast: choice.atLeast,
    };
  }
}

/** The sizes to choose among: those of the series that have an ampacity, and a price where prices count. */
function candidatesOf(rules: SizingRules): Outcome<readonly RatedSize[]> {
  const rated = ratedSizes(rules, rules.series);
  const { pricesPerM } = rules;
  if (isRefusal(rated) || pricesPerM === undefined) return rated;
  const priced = rated.filter(({ size }) => pricesPerM.has(formatSize(size)));
  return priced.length > 0
    ? priced
    : noAnswer(`prices: no size of the series "${rules.series}" that may be used has a price`);
}

/**
 * The size of each run of a list so that all of a tree together use the least metal (or money, where sizes have prices),
 * while every load keeps its target and its least volts, counted from the source, and every run its ampacity and room for
 * a standard fuse; loads of steady amps. By row; no size in any row of a tree that has no such sizes, nor where a row of
 * the same tree cannot be read, since each run's share of the drop depends on the others'. What hangs on the source by
 * another run is another tree.
 */
export function lightestSizes(
  tree: FeederTree,
  runs: RunsToSize,
  rules: SizingRules,
): LightestSizes {
  const sizes = new Array<Outcome<ConductorSize>>(runs.amps.length).fill(
    invalid('its own row cannot be read, so nothing can be said of it'),
  );
  let [total, atLeast] = [0, 0];
  const answer = (rows: readonly number[], refusal: Refusal) => {
    for (const row of rows) sizes[row] = refusal;
  };
  const candidates = candidatesOf(rules);
  const branches = branchesOf(tree, runs.amps);
  if (isRefusal(candidates)) {
    for (const { rows } of branches) answer(rows, candidates);
    branches.length = 0;
  }
  const sizing = new Sizing(tree, runs, rules, isRefusal(candidates) ? [] : candidates);
  for (const branch of branches) {
    const { rows } = branch;
    const unknown = sizing.unknownIn(branch);
    if (unknown !== undefined) {
      const called = tree.called(unknown);
      answer(rows, invalid(`hangs together with ${called}, whose row is not whole; fix it first`));
      if (sizing.lacksTarget(unknown)) {
        sizes[unknown] = invalid('max_drop: blank, and this run has a load; give its target');
      }
      continue;
    }
    const found = sizing.solve(branch);
    if (isRefusal(found)) {
      answer(rows, noAnswer(`no sizes serve this tree: ${found.why}`));
      continue;
    }
    total += found.cost;
    atLeast += found.atLeast;
    for (const [at, row] of rows.entries()) sizes[row] = found.sizes[at]!;
  }
  for (const [row, refusal] of tree.refusals) sizes[row] = refusal;
  return { sizes, total, atLeast };
}
