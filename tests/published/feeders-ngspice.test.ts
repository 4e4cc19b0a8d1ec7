/**
 * Trees of feeders against the circuit simulator ngspice: resistors for runs, current sources for loads of steady amps,
 * behavioural sources of current watts over volts for loads of steady power, solved for their operating point.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SOURCE } from '../../src/core/feeder-tree';
import { CellError } from '../../src/functions/cell';
import { listOfRuns, type TestRun } from '../core/feeder-trees';
import { callRange } from '../functions/call';
import { solveNetlist } from './ngspice';

const SOURCE_VOLTS = 12.6;
const TREES = 200;
const RELATIVE = 1e-6;
/** The simulator takes no resistor of 0 ohm. */
const LEAST_OHMS = 1e-4;

/** Half of the trees lose little, half run near to collapse or beyond it. */
const trees = [
  ...fc.sample(listOfRuns(25, 0.03), { numRuns: TREES / 2, seed: 12 }),
  ...fc.sample(listOfRuns(15, 0.6), { numRuns: TREES / 2, seed: 13 }),
].map((runs) => runs.map((run) => ({ ...run, ohms: Math.max(LEAST_OHMS, run.ohms) })));

const column = <Value>(values: readonly Value[]) => values.map((value) => [value]);

function feedVolts(runs: readonly TestRun[]): (number | undefined)[] {
  const answer = callRange(
    'FEED_VOLTS',
    SOURCE_VOLTS,
    column(runs.map(({ name }) => name)),
    column(runs.map(({ fedFrom }) => fedFrom)),
    column(runs.map(({ load }) => load)),
    column(runs.map(({ kind }) => kind)),
    column(runs.map(({ ohms }) => ohms)),
  );
  return answer.map(([cell]) => {
    if (cell instanceof CellError && cell.code === '#N/A') return undefined;
    if (typeof cell !== 'number') throw new Error(`not a number: ${JSON.stringify(cell)}`);
    return cell;
  });
}

/** Node at the far end of a run; `tree` keeps the trees of one netlist apart. */
function nodeOf(tree: number, name: string): string {
  return name === SOURCE ? 'source' : `t${tree}${name.replace('run ', 'n')}`;
}

/** The circuit of a tree, without the loads that cannot be served; the simulator starts from the source's volts. */
function elements(runs: readonly TestRun[], volts: readonly (number | undefined)[], tree: number) {
  return runs.flatMap(({ name, fedFrom, load, kind, ohms }, row) => {
    const node = nodeOf(tree, name);
    const lines = [
      `R${node} ${nodeOf(tree, fedFrom)} ${node} ${ohms}`,
      `.nodeset v(${node})=${SOURCE_VOLTS}`,
    ];
    if (load > 0 && volts[row] !== undefined) {
      lines.push(
        kind === 'A' ? `I${node} ${node} 0 ${load}` : `B${node} ${node} 0 I=${load}/V(${node})`,
      );
    }
    return lines;
  });
}

describe('trees of feeders', () => {
  const answers = trees.map(feedVolts);

  test('the generated trees are worth comparing', () => {
    const served = answers.flat().filter((volts) => volts !== undefined);
    const near = trees.filter(
      (runs, tree) =>
        runs.some(({ kind, load }) => kind === 'W' && load > 0) &&
        answers[tree]!.some((volts) => volts !== undefined && volts < 0.7 * SOURCE_VOLTS),
    );
    expect(served.length).toBeGreaterThan(1500);
    expect(near.length).toBeGreaterThan(25);
    expect(answers.filter((volts) => volts.includes(undefined)).length).toBeGreaterThan(25);
  });

  test('agree with ngspice to 1e-6', () => {
    const netlist = [
      `Vsource source 0 ${SOURCE_VOLTS}`,
      ...trees.flatMap((runs, tree) => elements(runs, answers[tree]!, tree)),
    ].join('\n');
    const compared = trees.flatMap((runs, tree) =>
      runs.flatMap(({ name }, row) => {
        const volts = answers[tree]![row];
        return volts === undefined ? [] : [{ node: nodeOf(tree, name), volts }];
      }),
    );
    const simulated = solveNetlist(
      netlist,
      compared.map(({ node }) => node),
    );
    let worst = 0;
    for (const { node, volts } of compared) {
      worst = Math.max(worst, Math.abs(volts / simulated[node]! - 1));
    }

    expect(worst).toBeLessThan(RELATIVE);
  });
});
