/**
 * The lightest sizes of a whole station that leave no run worse judged. The least metal, or money, is found for each
 * branch off a source; the station is then judged with these sizes as if they were typed, and where a run would be worse,
 * a size that made it so is ruled out and the next best are found. Each round rules out at least one size of a run and
 * never the one in use, so that the rounds end; with nothing left but the sizes in use nothing is changed.
 */
import { chooseLeast } from '../core/lightest/choose';
import { worsened, type Worsened } from './no-worse';
import {
  branchesOf,
  calledRun,
  sizingTreeOf,
  worthOf,
  type Aim,
  type Branch,
  type BranchRun,
  type LeftBranch,
} from './sizing-branches';
import { stationOfSizes, type SizeInRun, type StationOfSizes } from './size-options';
import { stationValues, type StationValues } from './station-values';
import type { StationContent } from './station/content';

/** After so many rounds the branches in which a run is still worse keep the sizes that they have. */
const MOST_ROUNDS = 60;

/** A saving below this share is a rounding error. */
const NO_SAVING = 1e-9;

export interface LightenedRun {
  /** Its place in the list, from 0. */
  readonly run: number;
  readonly called: string;
  readonly now: SizeInRun;
  readonly then: SizeInRun;
}

export interface Totals {
  readonly kg: number;
  /** Of the runs whose wire has a price; undefined where none has. */
  readonly cost: number | undefined;
  /** Runs whose wire has none. */
  readonly unpriced: number;
}

export interface Lightened {
  readonly aim: Aim;
  /** Why metal counts though there are prices; empty where they count, or there are none. */
  readonly whyMetal: string;
  /** Runs that get another wire, in the order of the list. */
  readonly changes: readonly LightenedRun[];
  /** Sizes to type: of a branch in which one changes all, since sizes of a path belong together. */
  readonly typed: readonly { readonly run: number; readonly size: string }[];
  readonly now: Totals;
  readonly then: Totals;
  /** How far above the least the result is at most, as a share of it; 0 where nothing less exists. */
  readonly mostAboveBest: number;
  /** Sizes that a better result would have were ruled out, since a run would have been worse judged. */
  readonly ruledOut: readonly {
    readonly called: string;
    readonly size: string;
    readonly words: string;
  }[];
  /** Branches that could not be sized. */
  readonly left: readonly LeftBranch[];
  /** What every run is judged with the sizes typed. */
  readonly values: StationValues;
}

export interface LightenOptions {
  /** Sizes that a person typed may be replaced too. */
  readonly mayChangeTyped: boolean;
}

/** What is to be said while it goes on. */
export interface LightenProgress {
  readonly round: number;
}

const isTyped = ({ runs }: StationContent, run: number) =>
  String(runs[run]?.ownSize ?? '').trim() !== '';

/** Sizes ruled out, by run. */
type RuledOut = Map<number, Set<string>>;

function ruleOut(ruled: RuledOut, run: number, names: readonly string[]): void {
  const known = ruled.get(run) ?? new Set<string>();
  for (const name of names) known.add(name);
  ruled.set(run, known);
}

function without(branch: Branch, ruled: RuledOut): Branch {
  const runs = branch.runs.map((one): BranchRun => {
    const out = ruled.get(one.run);
    return out === undefined
      ? one
      : { ...one, sizes: one.sizes.filter(({ name }) => !out.has(name)) };
  });
  return { ...branch, runs };
}

interface Chosen {
  readonly sizes: readonly SizeInRun[];
  readonly worth: number;
  /** No sizes that keep what the branch asks come to less. */
  readonly atLeast: number;
}

/** The wires in use, where nothing better is known. */
function inUseOf({ runs }: Branch, aim: Aim): Omit<Chosen, 'atLeast'> {
  const sizes = runs.map(({ inUse }) => inUse);
  return { sizes, worth: sizes.reduce((sum, size) => sum + (worthOf(aim, size) ?? 0), 0) };
}

function chosenOf(branch: Branch, aim: Aim, jointOhms: (run: number) => number): Chosen {
  const { tree, sizes } = sizingTreeOf(branch, branch.careful, aim, jointOhms);
  const choice = chooseLeast(tree);
  const now = inUseOf(branch, aim);
  if (choice === undefined) return { ...now, atLeast: 0 };
  return choice.cost < now.worth * (1 - NO_SAVING)
    ? {
        sizes: choice.chosen.map((option, at) => sizes[at]![option]!),
        worth: choice.cost,
        atLeast: choice.atLeast,
      }
    : { ...now, atLeast: Math.min(now.worth, choice.atLeast) };
}

/** What no sizes of a branch come to less than. */
function leastOf(branch: Branch, aim: Aim, first: Chosen, jointOhms: (run: number) => number) {
  if (branch.free === undefined) return first.atLeast;
  const { tree } = sizingTreeOf(branch, branch.free, aim, jointOhms);
  return Math.min(first.atLeast, chooseLeast(tree)?.atLeast ?? 0);
}

/** Money counts where there are prices, and every wire that may change has one. */
function aimOf(
  branches: readonly Branch[],
  content: StationContent,
): Pick<Lightened, 'aim' | 'whyMetal'> {
  const runs = branches.flatMap((branch) => branch.runs);
  const hasPrices = runs.some(({ sizes }) => sizes.some(({ cost }) => cost !== undefined));
  if (!hasPrices) return { aim: 'metal', whyMetal: '' };
  const unpriced = runs.find(({ inUse, sizes }) => sizes.length > 1 && inUse.cost === undefined);
  return unpriced === undefined
    ? { aim: 'money', whyMetal: '' }
    : {
        aim: 'metal',
        whyMetal: `the Wire list has no price of ${unpriced.inUse.name}, which ${calledRun(content, unpriced.run)} has now`,
      };
}

/** Places in a branch from a run to the source. */
function pathOf({ runs }: Branch, at: number): readonly number[] {
  return at < 0 ? [] : [at, ...pathOf({ runs } as Branch, runs[at]!.feederAt)];
}

interface Proposal {
  readonly branch: Branch;
  readonly sizes: readonly SizeInRun[];
}

const isChanged = ({ branch, sizes }: Proposal, at: number) =>
  sizes[at]!.name !== branch.runs[at]!.inUse.name;

/** The size that is proposed for a run, and those that go further the same way from the one in use. */
function asFarAs({ branch, sizes }: Proposal, at: number): readonly string[] {
  const { inUse, sizes: all } = branch.runs[at]!;
  const proposed = sizes[at]!;
  const isThinner = proposed.wireOhms > inUse.wireOhms;
  return all.flatMap(({ name, wireOhms }) => {
    const isFurther = isThinner ? wireOhms >= proposed.wireOhms : wireOhms <= proposed.wireOhms;
    return (isFurther || name === proposed.name) && name !== inUse.name ? [name] : [];
  });
}

/**
 * The changed runs that a worse one is laid to: the nearest on its way to the source that gets thinner, or else thicker; or
 * where none there changes, all of its branch that do, or all of the station. One at least, since with no change at all
 * nothing is worse.
 */
function blamed(proposals: readonly Proposal[], run: number) {
  const everyone = (of: readonly Proposal[]) =>
    of.flatMap((proposal) =>
      proposal.sizes.flatMap((_, at) => (isChanged(proposal, at) ? [{ proposal, at }] : [])),
    );
  const own = proposals.find(({ branch }) => branch.runs.some((one) => one.run === run));
  if (own === undefined) return everyone(proposals);
  const { branch, sizes } = own;
  const at = branch.runs.findIndex((one) => one.run === run);
  const changed = pathOf(branch, at).filter((place) => isChanged(own, place));
  const isThinner = (place: number) => sizes[place]!.wireOhms > branch.runs[place]!.inUse.wireOhms;
  const nearest = changed.find(isThinner) ?? changed[0];
  if (nearest !== undefined) return [{ proposal: own, at: nearest }];
  const inBranch = everyone([own]);
  return inBranch.length > 0 ? inBranch : everyone(proposals);
}

function totalsOf(
  station: StationOfSizes,
  content: StationContent,
  then?: ReadonlyMap<number, SizeInRun>,
) {
  let [kg, cost, priced, unpriced] = [0, 0, 0, 0];
  for (const run of content.runs.keys()) {
    const size = then?.get(run) ?? station.inUse(run);
    if (size === undefined) continue;
    kg += size.kg;
    if (size.cost === undefined) unpriced += 1;
    else priced += 1;
    cost += size.cost ?? 0;
  }
  return { kg, cost: priced > 0 ? cost : undefined, unpriced };
}

/** What is typed: every run of a branch in which one changes. */
function typedOf(proposals: readonly Proposal[]): Lightened['typed'] {
  return proposals
    .filter((proposal) => proposal.sizes.some((_, at) => isChanged(proposal, at)))
    .flatMap(({ branch, sizes }) =>
      branch.runs.map(({ run }, at) => ({ run, size: sizes[at]!.name })),
    )
    .sort((a, b) => a.run - b.run);
}

function withSizes(content: StationContent, typed: Lightened['typed']): StationContent {
  const byRun = new Map(typed.map(({ run, size }) => [run, size] as const));
  return {
    ...content,
    runs: content.runs.map((one, run) => {
      const size = byRun.get(run);
      return size === undefined ? one : { ...one, ownSize: size };
    }),
  };
}

/**
 * Finds the lightest sizes, a round after another, so that whoever asks can let others work in between. Sizes without a
 * price are not proposed where money counts.
 */
export function* lightening(
  given: StationContent,
  { mayChangeTyped }: LightenOptions,
): Generator<LightenProgress, Lightened> {
  // What follows the sizing says nothing of it.
  const content: StationContent = { ...given, extras: [] };
  const station = stationOfSizes(content);
  const before = station.values;
  const jointOhms = (run: number) => before.runs[run]!.jointOhms as number;
  const { branches, left } = branchesOf(
    station,
    content,
    (run) => mayChangeTyped || !isTyped(content, run),
  );
  const { aim, whyMetal } = aimOf(branches, content);
  const ruled: RuledOut = new Map();
  const ruledOut: { called: string; size: string; words: string }[] = [];
  let proposals: Proposal[] = [];
  let values = before;
  let atLeast = 0;
  let worth = 0;
  for (let round = 1; ; round += 1) {
    yield { round };
    worth = 0;
    proposals = branches.map((branch) => {
      const open = without(branch, ruled);
      const chosen = chosenOf(open, aim, jointOhms);
      worth += chosen.worth;
      if (round === 1) atLeast += leastOf(branch, aim, chosen, jointOhms);
      return { branch, sizes: chosen.sizes };
    });
    const typed = typedOf(proposals);
    if (typed.length === 0) {
      values = before;
      break;
    }
    values = stationValues(withSizes(content, typed));
    const worse = worsened(before, values);
    if (worse.length === 0) break;
    for (const one of worse) {
      for (const { proposal, at } of blamed(proposals, one.run)) {
        const { run, sizes, inUse } = proposal.branch.runs[at]!;
        ruledOut.push({
          called: calledRun(content, run),
          size: proposal.sizes[at]!.name,
          words: saidOf(content, one, run),
        });
        const names =
          round < MOST_ROUNDS
            ? asFarAs(proposal, at)
            : sizes.flatMap(({ name }) => (name === inUse.name ? [] : [name]));
        ruleOut(ruled, run, names);
      }
    }
  }
  const then = new Map(
    proposals.flatMap(({ branch, sizes }) =>
      branch.runs.map(({ run }, at) => [run, sizes[at]!] as const),
    ),
  );
  const changes = proposals
    .flatMap((proposal) =>
      proposal.branch.runs.flatMap(({ run, inUse }, at): LightenedRun[] =>
        isChanged(proposal, at)
          ? [{ run, called: calledRun(content, run), now: inUse, then: proposal.sizes[at]! }]
          : [],
      ),
    )
    .sort((a, b) => a.run - b.run);
  return {
    aim,
    whyMetal,
    changes,
    typed: typedOf(proposals),
    now: totalsOf(station, content),
    then: totalsOf(station, content, then),
    mostAboveBest: worth > atLeast * (1 + NO_SAVING) ? worth / atLeast - 1 : 0,
    ruledOut,
    left,
    values,
  };
}

/** What would have been said, and of which run where that is another. */
function saidOf(content: StationContent, { run, words }: Worsened, of: number): string {
  const said = words.length === 0 ? 'graver than now' : words.join('; ');
  return run === of ? said : `${calledRun(content, run)}: ${said}`;
}

/** All rounds at once. */
export function lighten(content: StationContent, options: LightenOptions): Lightened {
  const rounds = lightening(content, options);
  for (;;) {
    const { done, value } = rounds.next();
    if (done === true) return value;
  }
}
