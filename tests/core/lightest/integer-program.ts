/** The sizing of a tree as an integer program, for a general-purpose solver that knows nothing of trees. */
import loadHighs from 'highs';
import type { SizingTree } from '../../../src/core/lightest/sizing-tree';

type Solver = Awaited<ReturnType<typeof loadHighs>>;

/** Volts in which the program is written: its tolerances are absolute, and small against thousandths of a volt. */
const PER_VOLT = 1000;

/** To the very end, and without the searches by which it looks for good answers early: that takes half the time. */
const OPTIONS = {
  output_flag: false,
  mip_rel_gap: 0,
  mip_abs_gap: 0,
  primal_feasibility_tolerance: 1e-9,
  mip_feasibility_tolerance: 1e-9,
  mip_heuristic_effort: 0,
  mip_allow_restart: false,
  mip_detect_symmetry: false,
};

const sum = (terms: readonly string[]) => terms.join('\n + ');

/** A variable for each size of each run, of which one is 1, and a limit for the volts lost to each load. */
function programOf({ feederAt, options, budgets }: SizingTree, isWhole: boolean): string {
  const names = options.map(({ drops }, at) => drops.map((_, option) => `x${at}_${option}`));
  const cost = options.flatMap(({ costs }, at) =>
    costs.map((one, option) => `${one} ${names[at]![option]}`),
  );
  const pathTo = (at: number): readonly number[] => (at < 0 ? [] : [...pathTo(feederAt[at]!), at]);
  const limits = budgets.flatMap((budget, at) => {
    const drops = pathTo(at).flatMap((run) =>
      options[run]!.drops.map((drop, option) => `${drop * PER_VOLT} ${names[run]![option]}`),
    );
    return budget < Infinity ? [`${sum(drops)} <= ${budget * PER_VOLT}`] : [];
  });
  const all = names.flat();
  return [
    'Minimize',
    ` cost: ${sum(cost)}`,
    'Subject To',
    ...[...names.map((ofRun) => `${sum(ofRun)} = 1`), ...limits].map(
      (row, at) => ` c${at}: ${row}`,
    ),
    ...(isWhole ? ['Binary', ...all] : []),
    'End',
  ].join('\n');
}

/** The least cost by the solver; with sizes that may be mixed along a run where `isWhole` is false. */
export function solved(solver: Solver, tree: SizingTree, isWhole: boolean): number {
  const { Status, ObjectiveValue } = solver.solve(programOf(tree, isWhole), OPTIONS);
  if (Status !== 'Optimal') throw new Error(`the solver says ${Status}`);
  return ObjectiveValue;
}

export { loadHighs as loadSolver };
