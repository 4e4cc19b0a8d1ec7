/**
 * A million hostile calls of the functions, by what functions.json says of them: `npm run fuzz`, with figures at the end.
 * `-- --calls N` makes another number, `-- --seed N` the same ones again. Ends with 1 where anything came out that may not.
 */
import { parseArgs } from 'node:util';
import fc from 'fast-check';
import { CATALOGUE } from '../../src/functions/catalogue';
import type { Matrix } from '../../src/functions/cell';
import { functionsMetadata } from '../../src/functions/metadata';
import type { WorksheetFunction } from '../../src/functions/worksheet-function';
import { checkProperty, readsLists } from './arbitrary-cells';
import {
  cellCalls,
  checkCall,
  checkSame,
  emptyTally,
  longCalls,
  rangeCalls,
} from './hostile-calls';

/** What share of the calls is of each kind; of long ranges few, since each takes as long as hundreds of others. */
const SHARES = { cells: 0.5, ranges: 0.499, long: 0.001 };
/** Rows of a long range: lists belong together, and a tree of hundreds of runs is sized for seconds. */
const LONG = { cells: 2000, lists: 40 };

function kinds(entry: WorksheetFunction): readonly (readonly [fc.Arbitrary<Matrix[]>, number])[] {
  const rows = readsLists(entry.takes) ? LONG.lists : LONG.cells;
  return [
    [cellCalls(entry), SHARES.cells],
    [rangeCalls(entry), SHARES.ranges],
    [longCalls(entry, rows), SHARES.long],
  ];
}

function main(): void {
  const { values } = parseArgs({
    options: { calls: { type: 'string' }, seed: { type: 'string' } },
  });
  const calls = Number(values.calls ?? 1_000_000);
  const seed = Number(values.seed ?? Date.now() % 2 ** 31);
  if (!Number.isInteger(calls) || calls < 1 || !Number.isInteger(seed)) {
    throw new Error('--calls and --seed take whole numbers');
  }
  const described = functionsMetadata(CATALOGUE).functions.map(({ id }) => id);
  const each = Math.ceil(calls / described.length);
  console.log(`${calls} calls of ${described.length} functions, seed ${seed}`);
  console.log(
    ['function', 'calls', 'cells', 'answers', 'errors', 'blank', 'wrong', 's']
      .map((head, place) => (place === 0 ? head.padEnd(18) : head.padStart(10)))
      .join(''),
  );

  const total = { made: 0, cells: 0, wrong: 0 };
  const began = performance.now();
  for (const id of described) {
    const entry = CATALOGUE.find((one) => one.id === id)!;
    const tally = emptyTally();
    const started = performance.now();
    let made = 0;
    let wrong = 0;
    for (const [given, share] of kinds(entry)) {
      try {
        checkProperty(
          fc.property(given, (matrices) => {
            made += 1;
            checkSame(entry, matrices, checkCall(entry, matrices, tally));
          }),
          { numRuns: Math.max(1, Math.round(each * share)), seed },
        );
      } catch (fault) {
        wrong += 1;
        console.error(`${id}: ${fault instanceof Error ? fault.message : String(fault)}`);
      }
    }
    const cells = tally.answers + tally.errors + tally.blanks;
    const seconds = (performance.now() - started) / 1000;
    console.log(
      id.padEnd(18) +
        [made, cells, tally.answers, tally.errors, tally.blanks, wrong, seconds.toFixed(1)]
          .map((figure) => String(figure).padStart(10))
          .join(''),
    );
    total.made += made;
    total.cells += cells;
    total.wrong += wrong;
  }
  console.log(
    `${total.made} calls, each made twice: ${total.cells} cells, ${total.wrong} kinds of calls with something wrong; ${((performance.now() - began) / 1000).toFixed(0)} s.`,
  );
  if (total.wrong > 0) process.exitCode = 1;
}

main();
