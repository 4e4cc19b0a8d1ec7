/** Bad rows, blanks and shapes of the functions for building; their numbers are tested in core and published. */
import { describe, expect, test } from 'vitest';
import { CellError, type Cell } from '../../src/functions/cell';
import { call, callRange } from './call';

function shown(cell: Cell): unknown {
  return cell instanceof CellError ? `${cell.code} ${cell.sentence}` : cell;
}

const says = (text: string) => expect.stringContaining(text) as unknown;

describe('JOINT_MILLIOHMS', () => {
  test('more volts at the load than at the source', () => {
    expect(shown(call('JOINT_MILLIOHMS', 12.6, 12.9, 20, 2, 'm', '10 AWG'))).toEqual(
      says('#VALUE! volts_out: 12.9 V at the load is more than the 12.6 V at the source'),
    );
  });

  test('no current', () => {
    expect(shown(call('JOINT_MILLIOHMS', 12.6, 12.6, 0, 2, 'm', '10 AWG'))).toBe(
      '#VALUE! amps: 0 is not above 0; measure while the load runs',
    );
  });

  test('blank readings stay quiet, row by row', () => {
    const rows = callRange('JOINT_MILLIOHMS', [[12.6], [null]], [[12.5], [null]], 10, 0, 'm', 10);
    expect(rows[0]![0]).toBeCloseTo(10, 9);
    expect(rows[1]![0]).toBe('');
  });
});

describe('SPOOL_PLAN', () => {
  const plan = (
    ...given: Parameters<typeof callRange> extends [string, ...infer Rest] ? Rest : never
  ) => callRange('SPOOL_PLAN', ...given).map((row) => row.map(shown));

  test('rows in the order of cutting, the left over in the row of the last piece', () => {
    expect(plan([['relay'], ['camera'], ['siren']], [[4], [6], [3]], 10)).toEqual([
      [1, 1, 'camera', 6, ''],
      [1, 2, 'relay', 4, 0],
      [2, 1, 'siren', 3, 7],
    ]);
  });

  test('a run longer than any spool, a name twice and an error that comes in: last, and the others stand', () => {
    const error = new CellError('#REF!', 'came in');
    expect(
      plan(
        [['trunk'], ['relay'], ['camera'], ['Camera'], ['siren'], [error], ['pump']],
        [[30], [4], [1], [2], ['far'], [3], [error]],
        [[10], [25]],
        0.5,
      ),
    ).toEqual([
      [1, 1, 'relay', 4.5, 5.5],
      [
        says('#N/A "trunk" wants 30.5 in one piece and the longest spool has 25'),
        '',
        'trunk',
        30.5,
        '',
      ],
      [says('#VALUE! "camera" names 2 runs'), '', 'camera', 1.5, ''],
      [says('#VALUE! "Camera" names 2 runs'), '', 'Camera', 2.5, ''],
      ['#VALUE! lengths: "far" is not a number', '', 'siren', '', ''],
      ['#REF! came in', '', '', 3, ''],
      ['#REF! came in', '', 'pump', '', ''],
    ]);
  });

  test('blank rows are left out, and blanks that come as 0 read as blanks', () => {
    expect(
      plan([['relay'], [null], [0], ['camera']], [[4], [null], [0], [null]], [[10], [null]]),
    ).toEqual([[1, 1, 'relay', 4, 6]]);
    expect(plan([[null]], [[null]], 10)).toEqual([['']]);
    expect(plan([['relay']], [[4]], null)).toEqual([['']]);
  });

  test('spool lengths in any shape, none of them bad', () => {
    expect(plan([['relay']], [[11]], [[10, 25, null]])).toEqual([[1, 1, 'relay', 11, 14]]);
    expect(plan([['relay']], [[11]], [[10], [0]])).toEqual([
      ['#VALUE! spool_lengths: 0 is not above 0'],
    ]);
    expect(plan([['relay']], [[11]], [[10], [new CellError('#NUM!', 'in')]])).toEqual([
      ['#NUM! in'],
    ]);
  });

  test('a spare that cannot be read is told once', () => {
    expect(plan([['relay'], ['siren']], [[11], [1]], 25, -1)).toEqual([
      ['#VALUE! spare: -1 is less than 0'],
    ]);
  });
});
