/**
 * The lightest sizes of a whole station that leave no run worse judged. The least metal, or money, is found for each
 * branch off a source; the station is then judged with these sizes as if they were typed, and where a run would be worse,
 * a size that made it so is ruled out and the next best are found. Each round rules out at least one size of a run and
 * never the one in use, so that the rounds end; with nothing left but the sizes in use nothing is changed.
 *
 * A branch in which the schedule finds no wire for some run is served if any sizes together serve it, whatever they weigh.
 */
import { chooseLeast } from '../core/lightest/choose';
import type { SizingTree } from '../core/lightest/sizing-tree';
import { VERDICT_JOINT } from '../core/verdict';
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
import { stationValues, type RunValues, type StationValues } from './station-values';
import { LEVELS, VERDICTS } from './station/verdicts';
import type { StationContent } from './station/content';

/** After so many rounds the branches in which a run is still worse keep the sizes that they have. */
const MOST_ROUNDS = 60;

/** A saving below this share is a rounding error. */
const NO_SAVING = 1e-9;

export interface LightenedRun {
  /** Its place in the list, from 0. */
  readonly run: number;
  readonly called: string;
  /** Undefined where it has no wire that is thick enough. */
  readonly now: SizeInRun | undefined;
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
  /** Runs that had no wire and get one, and what is said of them then besides. */
  readonly served: readonly { readonly called: string; readonly words: readonly string[] }[];
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
  /** By run; undefined where it has no wire and gets none. */
  readonly sizes: readonly (SizeInRun | undefined)[];
  readonly worth: number;
  /** No sizes that keep what the branch asks come to less. */
  readonly atLeast: number;
}

/** The wires in use, where nothing better is known. */
function inUseOf({ runs }: Branch, aim: Aim): Omit<Chosen, 'atLeast'> {
  const sizes = runs.map(({ inUse }) => inUse);
  const worth = sizes.reduce(
    (sum, size) => sum + (size === undefined ? 0 : (worthOf(aim, size) ?? 0)),
    0,
  );
  return { sizes, worth };
}

/** Undefined also where a run has nothing left to choose among. */
const leastIn = (tree: SizingTree) =>
  tree.options.some(({ drops }) => drops.length === 0) ? undefined : chooseLeast(tree);

function chosenOf(branch: Branch, aim: Aim, jointOhms: (run: number) => number): Chosen {
  const { tree, sizes } = sizingTreeOf(branch, branch.careful, aim, jointOhms);
  const choice = leastIn(tree);
  const now = inUseOf(branch, aim);
  if (choice === undefined) return { ...now, atLeast: 0 };
  const isLacking = branch.otherwise !== undefined;
  return isLacking || choice.cost < now.worth * (1 - NO_SAVING)
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
  return Math.min(first.atLeast, leastIn(tree)?.atLeast ?? 0);
}

/** Money counts where there are prices, and every wire that may change has one. */
function aimOf(
  branches: readonly Branch[],
  content: StationContent,
): Pick<Lightened, 'aim' | 'whyMetal'> {
  const runs = branches.flatMap((branch) => branch.runs);
  const hasPrices = runs.some(({ sizes }) => sizes.some(({ cost }) => cost !== undefined));
  if (!hasPrices) return { aim: 'metal', whyMetal: '' };
  const unpriced = runs.find(
    ({ inUse, sizes }) => sizes.length > 1 && inUse !== undefined && inUse.cost === undefined,
  );
  return unpriced?.inUse === undefined
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
  readonly sizes: Chosen['sizes'];
}

const isChanged = ({ branch, sizes }: Proposal, at: number) =>
  sizes[at]?.name !== branch.runs[at]!.inUse?.name;
const changesAny = (proposal: Proposal) =>
  proposal.branch.runs.some((_, at) => isChanged(proposal, at));
/** A branch without wires that finds none now either. */
const staysOpen = (proposal: Proposal) =>
  proposal.branch.otherwise !== undefined && !changesAny(proposal);

/** The size that is proposed for a run, and those that go further the same way from the one in use. */
function asFarAs({ branch, sizes }: Proposal, at: number): readonly string[] {
  const { inUse, sizes: all } = branch.runs[at]!;
  const proposed = sizes[at]!;
  if (inUse === undefined) return [proposed.name];
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
  const isThinner = (place: number) =>
    sizes[place]!.wireOhms > (branch.runs[place]!.inUse?.wireOhms ?? Infinity);
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
    .filter(changesAny)
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
  const atLeast = new Map<Branch, number>();
  const worth = new Map<Branch, number>();
  for (let round = 1; ; round += 1) {
    yield { round };
    proposals = branches.map((branch) => {
      const open = without(branch, ruled);
      const chosen = chosenOf(open, aim, jointOhms);
      worth.set(branch, chosen.worth);
      if (round === 1) atLeast.set(branch, leastOf(branch, aim, chosen, jointOhms));
      return { branch, sizes: chosen.sizes };
    });
    const typed = typedOf(proposals);
    if (typed.length === 0) {
      values = before;
      break;
    }
    values = stationValues(withSizes(content, typed));
    const worse = worseWith(proposals, before, values);
    if (worse.length === 0) break;
    for (const one of worse) {
      for (const { proposal, at } of blamed(proposals, one.run)) {
        const { run, sizes, inUse } = proposal.branch.runs[at]!;
        if (inUse !== undefined) {
          ruledOut.push({
            called: calledRun(content, run),
            size: proposal.sizes[at]!.name,
            words: saidOf(content, one, run),
          });
        }
        const names =
          round < MOST_ROUNDS
            ? asFarAs(proposal, at)
            : sizes.flatMap(({ name }) => (name === inUse?.name ? [] : [name]));
        ruleOut(ruled, run, names);
      }
    }
  }
  const then = new Map(
    proposals.flatMap(({ branch, sizes }) =>
      branch.runs.flatMap(({ run }, at) => {
        const size = sizes[at];
        return size === undefined ? [] : [[run, size] as const];
      }),
    ),
  );
  const sized = proposals.filter((proposal) => !staysOpen(proposal));
  const sumOf = (of: ReadonlyMap<Branch, number>) =>
    sized.reduce((sum, { branch }) => sum + of.get(branch)!, 0);
  const [found, least] = [sumOf(worth), sumOf(atLeast)];
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
    served: changes.flatMap(({ run, called, now }) =>
      now === undefined ? [{ called, words: wordsOf(values.runs[run]!) }] : [],
    ),
    typed: typedOf(proposals),
    now: totalsOf(station, content),
    then: totalsOf(station, content, then),
    mostAboveBest: found > least * (1 + NO_SAVING) ? found / least - 1 : 0,
    ruledOut,
    left: [
      ...left,
      ...proposals.flatMap((proposal) =>
        staysOpen(proposal) ? (proposal.branch.otherwise ?? []) : [],
      ),
    ].sort((one, other) => one.runs[0]! - other.runs[0]!),
    values,
  };
}

/** What another wire mends. All else that is said of a run that had none was only not seen before. */
const OF_SIZE: readonly string[] = (
  [
    ...['heat', 'tooHot', 'fuse', 'needsFuse', 'fuseTooSlow', 'faultTooWeak', 'noAmpacity'],
    ...['noSize', 'noRoom', 'cannotBeServed', 'tooFewVolts', 'startVolts', 'fewerVolts', 'drop'],
  ] as const satisfies readonly (keyof typeof VERDICTS)[]
).map((key) => VERDICTS[key].word);

/** What is said of a run, piece by piece; nothing where it is ok. */
function wordsOf({ verdict, level }: RunValues): readonly string[] {
  return level === LEVELS.length ? [] : String(verdict).split(VERDICT_JOINT);
}

/**
 * The runs that sizes leave worse judged: graver than they were, or, where a wire was lacking so that nothing could be
 * judged, still not judged or in need of another wire.
 */
function worseWith(
  proposals: readonly Proposal[],
  before: StationValues,
  after: StationValues,
): readonly Worsened[] {
  const served = new Set(
    proposals
      .filter((proposal) => proposal.branch.otherwise !== undefined && changesAny(proposal))
      .flatMap(({ branch }) => branch.runs.map(({ run }) => run))
      .filter((run) => before.runs[run]!.judged !== 1),
  );
  return [
    ...worsened(before, after).filter(({ run }) => !served.has(run)),
    ...[...served].flatMap((run): Worsened[] => {
      const now = after.runs[run]!;
      const words = wordsOf(now);
      const isServed = now.judged === 1 && !words.some((word) => OF_SIZE.includes(word));
      return isServed ? [] : [{ run, words }];
    }),
  ];
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
