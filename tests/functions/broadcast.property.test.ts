/** Ranges anywhere: over the whole catalogue, an array's result is the one-cell results, laid out as a spreadsheet does. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/functions/catalogue';
import { CellError, ERROR_CODES, type Cell, type Matrix } from '../../src/functions/cell';
import type { WorksheetFunction } from '../../src/functions/worksheet-function';
import { anyErrorCell, checkProperty, mixedCell, readsLists, soundCell } from './arbitrary-cells';

const CELL_BY_CELL = CATALOGUE.filter(({ takes }) => !readsLists(takes));
const named = (entries: readonly WorksheetFunction[]) =>
  entries.map((entry) => [entry.id, entry] as const);

/** A rectangle of one, two or three rows and columns. */
function rectangle(cell: fc.Arbitrary<Cell>): fc.Arbitrary<Cell[][]> {
  const side = fc.constantFrom(1, 1, 2, 3);
  return fc.tuple(side, side).chain(([rows, columns]) => {
    const row = fc.array(cell, { minLength: columns, maxLength: columns });
    return fc.array(row, { minLength: rows, maxLength: rows });
  });
}

/** The cell of a range that stands for a place of the result; undefined where the range ran out. */
function cellFor(matrix: Matrix, row: number, column: number): Cell | undefined {
  const line = matrix.length === 1 ? matrix[0] : matrix[row];
  return line?.length === 1 ? line[0] : line?.[column];
}

test('there is something to check, and the list functions are not part of it', () => {
  expect(CELL_BY_CELL.length).toBeGreaterThan(10);
});

describe.each(named(CELL_BY_CELL))('%s', (_id, entry) => {
  test('array results equal one-cell results; where a range ran out, #N/A names it', () => {
    const ranges = fc.tuple<Cell[][][]>(
      ...entry.takes.map((parameter) => rectangle(mixedCell(parameter))),
    );
    checkProperty(
      fc.property(ranges, (given) => {
        const result = entry.evaluate(given);
        const rows = Math.max(...given.map((matrix) => matrix.length));
        const columns = Math.max(...given.map((matrix) => matrix[0]!.length));
        expect(result).toHaveLength(rows);
        for (const [row, line] of result.entries()) {
          expect(line).toHaveLength(columns);
          for (const [column, answer] of line.entries()) {
            const cells = given.map((matrix) => cellFor(matrix, row, column));
            const ranOut = given.findIndex(
              (matrix) =>
                (matrix.length > 1 && row >= matrix.length) ||
                (matrix[0]!.length > 1 && column >= matrix[0]!.length),
            );
            if (ranOut >= 0) {
              expect(answer).toBeInstanceOf(CellError);
              const error = answer as CellError;
              expect(error.code).toBe('#N/A');
              expect(error.sentence).toMatch(
                new RegExp(`^${entry.takes[ranOut]!.name}: .*ran out`),
              );
            } else {
              expect(answer).toEqual(entry.evaluate(cells.map((cell) => [[cell!]]))[0]![0]);
            }
          }
        }
      }),
      { numRuns: 200, seed: 5 },
    );
  });

  const sound = fc.tuple<Cell[]>(...entry.takes.map(soundCell));
  const answerOf = (cells: readonly Cell[]) => entry.evaluate(cells.map((cell) => [[cell]]))[0]![0];
  const anyBlank = fc.constantFrom(null, '', '  ', '\u00a0');
  const required = entry.takes.flatMap(({ fallbackText }, index) =>
    fallbackText === undefined ? [index] : [],
  );
  const optional = entry.takes.flatMap(({ fallbackText }, index) =>
    fallbackText === undefined ? [] : [index],
  );

  test('an error that comes in is passed on, whatever else is in the row', () => {
    const index = fc.nat(entry.takes.length - 1);
    checkProperty(
      fc.property(
        sound,
        anyErrorCell,
        index,
        anyBlank,
        index,
        (cells, error, at, blank, blankAt) => {
          const answer = answerOf(cells.with(blankAt, blank).with(at, error));
          if (error.code !== '#NAME?' || entry.takes[at]!.quotedText === undefined) {
            expect(answer).toBe(error);
          } else {
            expect(answer).toMatchObject({
              code: error.code,
              sentence: expect.stringContaining('needs quotes') as string,
            });
          }
        },
      ),
      { numRuns: 200, seed: 6 },
    );
  });

  test('a blank required argument answers empty text, even beside one that cannot be read', () => {
    checkProperty(
      fc.property(
        sound,
        fc.constantFrom(...required),
        anyBlank,
        fc.nat(entry.takes.length - 1),
        fc.boolean(),
        (cells, at, blank, badAt, bad) => {
          const given = bad ? cells.with(badAt, 'no such thing') : cells;
          expect(answerOf(given.with(at, blank))).toBe('');
        },
      ),
      { numRuns: 200, seed: 7 },
    );
  });

  test('an optional argument may be blank, or left off the end: it takes its default', () => {
    checkProperty(
      fc.property(sound, anyBlank, (cells, blank) => {
        const blanked = optional.reduce((given, index) => given.with(index, blank), cells);
        expect(answerOf(blanked)).toEqual(answerOf(cells.slice(0, required.length)));
      }),
      { numRuns: 50, seed: 8 },
    );
  });

  test('the same arguments, the same result', () => {
    checkProperty(
      fc.property(sound, (cells) => {
        expect(answerOf(cells)).toEqual(answerOf(cells));
      }),
      { numRuns: 50, seed: 9 },
    );
  });
});

describe('an error in one row is an error in that row alone', () => {
  test.each(ERROR_CODES)('%s', (code) => {
    const error = new CellError(code, 'came in');
    const drop = CELL_BY_CELL.find(({ id }) => id === 'DCDROP')!;
    const column = drop.evaluate([
      [[20], [error], [null], ['many'], [20]],
      [[6]],
      [['ft']],
      [[12]],
    ]);
    const [first, second, third, fourth, fifth] = column.map(([cell]) => cell);
    expect(first).toBeCloseTo(0.3812, 4);
    expect(second).toBe(error);
    expect(third).toBe('');
    expect(fourth).toEqual(new CellError('#VALUE!', 'amps: "many" is not a number'));
    expect(fifth).toBe(first);
  });
});

describe('parameters that are read alike in every function', () => {
  const cells = CELL_BY_CELL.flatMap((entry) =>
    entry.takes.map((parameter, index) => [entry.id, parameter.name, entry, index] as const),
  );
  const withCell = (entry: WorksheetFunction, index: number, cell: Cell) => {
    const given = entry.takes.map((_, at): Cell => {
      const example = entry.example.given[at] ?? null;
      return Array.isArray(example) ? null : (example as Cell);
    });
    return entry.evaluate(given.with(index, cell).map((one) => [[one]]))[0]![0];
  };

  test.each(cells.filter(([, , entry, index]) => entry.takes[index]!.bounds !== undefined))(
    '%s, %s: a truth where a number belongs is #VALUE!, a number as text is a number',
    (_id, name, entry, index) => {
      for (const truth of [true, false]) {
        expect(withCell(entry, index, truth)).toEqual(
          new CellError('#VALUE!', `${name}: ${truth ? 'TRUE' : 'FALSE'} is not a number`),
        );
      }
      const example = entry.example.given[index];
      if (typeof example === 'number') {
        expect(withCell(entry, index, ` ${example} `)).toEqual(withCell(entry, index, example));
      }
      for (const none of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
        expect(withCell(entry, index, none)).toMatchObject({ code: '#VALUE!' });
      }
    },
  );

  test.each(cells.filter(([, , entry, index]) => entry.takes[index]!.choices !== undefined))(
    '%s, %s: an unknown parameter is #VALUE! and the sentence lists those that are known',
    (_id, name, entry, index) => {
      const answer = withCell(entry, index, 'furlong');
      expect(answer).toMatchObject({ code: '#VALUE!' });
      const { sentence } = answer as CellError;
      expect(sentence).toContain(`${name}: "furlong" is not one of `);
      for (const choice of entry.takes[index]!.choices!) expect(sentence).toContain(`"${choice}"`);
    },
  );
});
