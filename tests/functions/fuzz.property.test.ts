/**
 * Every function of the catalogue, fed by its own description and by harm: thousands of calls of single cells and of
 * small ragged ranges each. Out come finite numbers, text, truth, or errors with a sentence; nothing is thrown.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/functions/catalogue';
import { CellError, type Cell, type Matrix } from '../../src/functions/cell';
import type { WorksheetFunction } from '../../src/functions/worksheet-function';
import { samples } from '../samples';
import { checkProperty, mixedCell, mixedRange } from './arbitrary-cells';

const { count: CALLS } = samples({ all: 10_000, usual: 5000 });
/** A ceiling for a busy machine, not a claim about speed. */
const TIMEOUT_MS = 120_000;
/** An error's sentence is read in a small box over a cell. */
const LONGEST_SENTENCE = 400;

/** Whether something came in that a sentence may quote as not being a number. */
function hasNoNumber(cameIn: ReadonlySet<unknown>): boolean {
  return [...cameIn].some(
    (cell) =>
      (typeof cell === 'number' && !Number.isFinite(cell)) ||
      (typeof cell === 'string' && /Infinity|NaN/.test(cell)),
  );
}

/** What is wrong with a cell that came out; undefined where nothing is. Plain code, since it runs a million times. */
function faultOf(cell: unknown, cameIn: ReadonlySet<unknown>): string | undefined {
  if (Object.is(cell, -0)) return 'the number -0';
  if (typeof cell === 'number') return Number.isFinite(cell) ? undefined : `the number ${cell}`;
  if (typeof cell === 'string' || typeof cell === 'boolean') return undefined;
  if (!(cell instanceof CellError)) return `no cell at all, a ${typeof cell}`;
  if (cameIn.has(cell)) return undefined;
  // Passed on, with a sentence of ours on the quotes that a text lacks.
  const isPassedOn =
    cell.code === '#NAME?' &&
    [...cameIn].some((came) => came instanceof CellError && came.code === '#NAME?');
  if (!isPassedOn && cell.code !== '#VALUE!' && cell.code !== '#N/A')
    return `an error of ours of kind ${cell.code}`;
  if (cell.sentence.trim() === '') return 'an error without a sentence';
  if (cell.sentence.length > LONGEST_SENTENCE) return 'an error with too long a sentence';
  if (/Infinity|NaN/.test(cell.sentence) && !hasNoNumber(cameIn)) {
    return `a number that is none in the sentence ${cell.sentence}`;
  }
  if (/undefined|\[object|\bnull\b/.test(cell.sentence)) return `the sentence ${cell.sentence}`;
  return undefined;
}

interface Tally {
  errors: number;
  answers: number;
}

function checkCall(entry: WorksheetFunction, given: readonly (Matrix | undefined)[], tally: Tally) {
  const cameIn = new Set<unknown>(given.flatMap((matrix) => matrix?.flat() ?? []));
  const result = entry.evaluate(given);
  const columns = result[0]?.length ?? 0;
  if (columns === 0) throw new Error('an empty result');
  for (const row of result) {
    if (row.length !== columns) throw new Error('a ragged result');
    for (const cell of row) {
      const fault = faultOf(cell, cameIn);
      if (fault !== undefined) throw new Error(`out came ${fault}`);
      if (cell instanceof CellError) tally.errors += 1;
      else if (cell !== '') tally.answers += 1;
    }
  }
}

/** The calls must have reached the computation as well as the refusals, or they would have proved little. */
function expectBothKinds(tally: Tally) {
  expect(tally.answers).toBeGreaterThan(CALLS / 400);
  expect(tally.errors).toBeGreaterThan(CALLS / 400);
}

/** Arguments left off the end as well, as callers do. */
function givenSome<T>(all: fc.Arbitrary<T[]>, count: number): fc.Arbitrary<T[]> {
  return fc
    .tuple(all, fc.oneof({ weight: 9, arbitrary: fc.constant(count) }, fc.nat(count)))
    .map(([cells, given]) => cells.slice(0, given));
}

describe.each(CATALOGUE.map((entry) => [entry.id, entry] as const))('%s', (_id, entry) => {
  const count = entry.takes.length;

  test(
    `${CALLS} hostile single cells`,
    () => {
      const tally: Tally = { errors: 0, answers: 0 };
      const cells = fc.tuple<Cell[]>(...entry.takes.map(mixedCell));
      checkProperty(
        fc.property(givenSome(cells, count), (given) => {
          checkCall(
            entry,
            given.map((cell) => [[cell]]),
            tally,
          );
        }),
        { numRuns: CALLS, seed: 3 },
      );
      expectBothKinds(tally);
    },
    TIMEOUT_MS,
  );

  test(
    `${CALLS} hostile ranges`,
    () => {
      const tally: Tally = { errors: 0, answers: 0 };
      const ranges = fc.tuple<Cell[][][]>(
        ...entry.takes.map((parameter) => mixedRange(parameter, entry.takes)),
      );
      checkProperty(
        fc.property(givenSome(ranges, count), (given) => {
          checkCall(entry, given, tally);
        }),
        { numRuns: CALLS, seed: 4 },
      );
      expectBothKinds(tally);
    },
    TIMEOUT_MS,
  );
});
