/**
 * FEED_VOLTS as a cell calls it, reading its columns included, for trees of a thousand to a hundred thousand runs: ten
 * times the runs should take about ten times as long, whatever the shape. Compare within one run.
 */
import { bench, describe } from 'vitest';
import type { Matrix } from '../../src/functions/cell';
import { regularRuns } from '../core/feeder-trees';
import { callRange } from '../functions/call';

const COUNTS = [1_000, 10_000, 100_000];
/** Share of the source volts that the loads would lose: easy, near collapse, and so much that many go unserved. */
const STRESSES = { easy: 0.1, 'near collapse': 0.3, hopeless: 2 };

function columnsOf(runs: ReturnType<typeof regularRuns>): readonly Matrix[] {
  return [
    runs.map(({ name }) => [name]),
    runs.map(({ fedFrom }) => [fedFrom]),
    runs.map(({ load }) => [load]),
    runs.map(({ kind }) => [kind]),
    runs.map(({ ohms }) => [ohms]),
  ];
}

for (const [stress, share] of Object.entries(STRESSES)) {
  describe.each(['chain', 'fan', 'in twos'] as const)(`${stress}, %s`, (shape) => {
    for (const count of COUNTS) {
      const columns = columnsOf(regularRuns(shape, count, share));
      bench(
        `${count} runs`,
        () => {
          callRange('FEED_VOLTS', 12, ...columns);
        },
        { iterations: 3, time: 0, warmupIterations: 1, warmupTime: 0 },
      );
    }
  });
}
