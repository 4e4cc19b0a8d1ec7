/** Bad rows, blanks and shapes of the functions over lists; their numbers are tested below them, in core. */
import { describe, expect, test } from 'vitest';
import { CellError, type Cell } from '../../src/functions/cell';
import { call, callRange } from './call';

/** A list told row by row, as the columns that the functions take. */
function columns(rows: readonly (readonly Cell[])[]): Cell[][][] {
  return rows[0]!.map((_, index) => rows.map((row) => [row[index]!]));
}

function shown(cell: Cell): unknown {
  return cell instanceof CellError ? `${cell.code} ${cell.sentence}` : cell;
}

/** Runs, fed_from and amps a row. */
function feedAmps(...rows: readonly (readonly Cell[])[]): unknown[] {
  return callRange('FEED_AMPS', ...columns(rows)).map(([cell]) => shown(cell!));
}

/** Runs, fed_from, loads, load_kind and ohms a row, from 12 V. */
function feedVolts(...rows: readonly (readonly Cell[])[]): unknown[] {
  return callRange('FEED_VOLTS', 12, ...columns(rows)).map(([cell]) =>
    typeof cell === 'number' ? Number(cell.toFixed(6)) : shown(cell!),
  );
}

const says = (text: string) => expect.stringContaining(text) as unknown;

describe('names of runs', () => {
  test('are compared without regard to case and outer spaces', () => {
    expect(feedAmps([' Trunk ', null, 1], ['relay', 'TRUNK', 2])).toEqual([3, 2]);
  });

  test('may be numbers', () => {
    expect(feedAmps([1, null, 1], [2, '1', 2], ['3', 2, 4])).toEqual([7, 6, 4]);
  });

  test('a feeder that is not in the list: the row and what hangs from it; the others stand', () => {
    expect(
      feedAmps(['trunk', null, 1], ['relay', 'trnk', 2], ['lamp', 'relay', 3], ['fan', 'trunk', 4]),
    ).toEqual([
      5,
      says('#VALUE! fed from "trnk", which is not in the list of runs'),
      says('#VALUE! fed through "relay", whose feeder "trnk" is not in the list'),
      4,
    ]);
  });

  test('a loop: every run of it and what hangs from it; the others stand', () => {
    expect(
      feedAmps(
        ['a', 'c', 1],
        ['b', 'a', 1],
        ['c', 'b', 1],
        ['lamp', 'a', 1],
        ['bulb', 'lamp', 1],
        ['self', 'self', 1],
        ['fine', null, 1],
      ),
    ).toEqual([
      says('#VALUE! "a" stands in a loop of feeders'),
      says('#VALUE! "b" stands in a loop of feeders'),
      says('#VALUE! "c" stands in a loop of feeders'),
      says('#VALUE! fed through "a", which stands in a loop'),
      says('#VALUE! fed through "a", which stands in a loop'),
      says('#VALUE! "self" stands in a loop of feeders'),
      1,
    ]);
  });

  test('a name twice: both rows; their loads still count in what feeds them', () => {
    expect(
      feedAmps(
        ['trunk', null, 1],
        ['radio', 'trunk', 2],
        ['Radio', 'trunk', 3],
        ['fan', 'trunk', 4],
      ),
    ).toEqual([10, says('#VALUE! "radio" names 2 runs'), says('#VALUE! "Radio" names 2 runs'), 4]);
  });

  test('what is fed from a name that stands twice, and what feeds it, is not known', () => {
    expect(
      feedAmps(
        ['trunk', null, 1],
        ['block', 'trunk', 2],
        ['block', null, 3],
        ['fan', 'block', 4],
        ['lamp', null, 5],
      ),
    ).toEqual([
      says('#VALUE! it feeds "block", whose load is not known'),
      says('names 2 runs'),
      says('names 2 runs'),
      says('#VALUE! fed from "block", which names 2 runs'),
      5,
    ]);
  });
});

describe('rows that cannot be read', () => {
  test('an error that comes in is passed on; what feeds the row is not known, what it feeds is', () => {
    expect(
      feedAmps(
        ['trunk', null, 1],
        ['relay', 'trunk', new CellError('#DIV/0!', 'came in')],
        ['lamp', 'relay', 3],
        ['fan', 'trunk', 4],
      ),
    ).toEqual([says('#VALUE! it feeds "relay", whose load is not known'), '#DIV/0! came in', 3, 4]);
  });

  test('a refused cell is told by its argument', () => {
    expect(feedAmps(['trunk', null, 1], ['relay', 'trunk', -2])).toEqual([
      says('it feeds "relay"'),
      '#VALUE! amps: -2 is less than 0',
    ]);
  });

  test('a feeder that cannot be read cuts off what hangs from the row', () => {
    const error = new CellError('#REF!', 'gone');
    expect(feedAmps(['a', error, 1], ['b', 'a', 2], ['c', null, 3])).toEqual([
      '#REF! gone',
      says('#VALUE! fed through "a", whose row has an error'),
      3,
    ]);
  });

  test('volts: a load that is not known moves its whole branch and no other', () => {
    expect(
      feedVolts(
        ['trunk', null, null, null, 0.1],
        ['relay', 'trunk', 'much', 'A', 0.1],
        ['fan', 'trunk', 1, 'A', 0.1],
        ['lamp', null, 2, 'A', 0.1],
      ),
    ).toEqual([
      says('#VALUE! "relay" is on the same branch'),
      says('#VALUE! loads: "much" is not a number'),
      says('#VALUE! "relay" is on the same branch'),
      11.8,
    ]);
  });

  test('volts: an unknown kind of load, likewise', () => {
    expect(feedVolts(['a', null, 1, 'VA', 0.1], ['b', null, 1, 'a', 0.1])).toEqual([
      says('#VALUE! load_kind: "VA" is not one of'),
      11.9,
    ]);
  });

  test('volts: a load that cannot be served is #N/A, the others are solved without it', () => {
    expect(
      feedVolts(
        ['trunk', null, null, null, 0.1],
        ['heater', 'trunk', 4000, 'W', 0.1],
        ['fan', 'trunk', 1, 'A', 0.1],
      ),
    ).toEqual([11.9, says('#N/A "heater" cannot be served: even alone on its path'), 11.8]);
  });
});

describe('blanks', () => {
  test('a blank row answers with nothing and changes nothing', () => {
    expect(
      feedAmps(['trunk', null, 1], [null, null, null], ['', ' ', ''], ['fan', 'trunk', 4]),
    ).toEqual([5, '', '', 4]);
    expect(feedVolts(['a', null, 1, 'A', 0.1], [null, null, null, null, null])).toEqual([11.9, '']);
  });

  test('blanks that a spreadsheet hands over as 0 read as blanks', () => {
    expect(feedAmps(['trunk', 0, 0], [0, 0, 0], [0, 0, 0], ['fan', 'trunk', 4])).toEqual([
      4,
      '',
      '',
      4,
    ]);
    expect(
      feedVolts(['trunk', 0, 0, 0, 0.1], ['fan', 'trunk', 1, 'A', 0.1], [0, 0, 0, 0, 0]),
    ).toEqual([11.9, 11.8, '']);
  });

  test('a run with no load of its own only feeds others', () => {
    expect(feedAmps(['trunk', null, null], ['fan', 'trunk', 4])).toEqual([4, 4]);
  });

  test('a load whose run has no name yet still counts in what feeds it', () => {
    expect(feedAmps(['trunk', null, 1], [null, 'trunk', 4])).toEqual([5, '']);
  });

  test('a run without ohms is empty; it spoils its branch only when it carries something', () => {
    expect(feedVolts(['a', null, 1, 'A', 0.1], ['b', 'a', null, null, null])).toEqual([11.9, '']);
    expect(feedVolts(['a', null, 1, 'A', 0.1], ['b', 'a', 2, 'A', null])).toEqual([
      says('"b" is on the same branch'),
      '',
    ]);
  });
});

describe('shapes', () => {
  test('rows in, a row out', () => {
    expect(callRange('FEED_AMPS', [['a', 'b']], [[null, 'a']], [[1, 2]])).toEqual([[3, 2]]);
  });

  test('a single cell holds for every row', () => {
    expect(callRange('FEED_AMPS', [['a'], ['b']], null, 2)).toEqual([[2], [2]]);
  });

  test('a short range runs out and says so', () => {
    const [, , last] = callRange('FEED_AMPS', [['a'], ['b'], ['c']], null, [[1], [2]]);
    expect(shown(last![0]!)).toBe(
      '#N/A amps: its range has 2 cells and ran out here; make the ranges of one size',
    );
  });

  test('a block of cells is refused', () => {
    expect(
      shown(
        call(
          'FEED_AMPS',
          [
            ['a', 'b'],
            ['c', 'd'],
          ],
          null,
          1,
        ),
      ),
    ).toBe('#VALUE! runs: a block of cells; give one column or one row');
  });
});

describe('volts at the source', () => {
  const RUNS = [['a'], ['b']];

  test('blank or refused, every row says so', () => {
    expect(callRange('FEED_VOLTS', null, RUNS, null, 1, 'A', 0.1)).toEqual([[''], ['']]);
    expect(
      callRange('FEED_VOLTS', 0, RUNS, null, 1, 'A', 0.1).map(([cell]) => shown(cell!)),
    ).toEqual(['#VALUE! volts: 0 is not above 0', '#VALUE! volts: 0 is not above 0']);
  });
});

describe('states of a load', () => {
  test('blank rows are left out; a row with one blank is an error', () => {
    expect(call('DUTY_AMPS', [[20], [null], [2]], [[0.1], [null], [0.5]])).toBe(3);
    expect(call('DUTY_AMPS', [[null]], [[null]])).toBe('');
    expect(shown(call('DUTY_AMPS', [[20], [2]], [[0.1], [null]]))).toBe(
      '#VALUE! share: row 2 of the list is blank here and has amps; fill it in, or clear both',
    );
  });

  test('shares of more than the whole, and the first error of the list', () => {
    expect(shown(call('HEATING_AMPS', [[20], [2]], [[0.6], [0.5]]))).toBe(
      "#VALUE! share: the shares sum to 1.1; they are parts of one load's time, at most 1 together",
    );
    expect(shown(call('HEATING_AMPS', [[20], [2]], [[60], [0.5]]))).toBe(
      '#VALUE! share: 60 is more than 1; a share is 0 to 1: write 30% or 0.3',
    );
    expect(shown(call('DUTY_AMPS', [[new CellError('#NUM!', 'in')], ['x']], [[0.6], [0.5]]))).toBe(
      '#NUM! in',
    );
  });
});

describe('batteries and panels', () => {
  test('0 amps never empty a battery', () => {
    expect(shown(call('BATTERY_HOURS', 100, 0))).toBe(
      '#N/A 0 amps never empty a battery: there is no such time',
    );
  });

  test('usual packs, and packs of other numbers of cells', () => {
    expect(call('BATTERY_VOLTS', 'Lead acid', 1)).toBe(12.65);
    expect(call('BATTERY_VOLTS', 'lead-acid', 1, 12)).toBeCloseTo(25.3, 12);
    expect(call('BATTERY_VOLTS', 'lifepo4', 1)).toBeCloseTo(13.4044, 12);
    expect(call('BATTERY_VOLTS', 'Li-ion', 1, 3)).toBeCloseTo(12.6, 12);
  });

  test('a charge of 80 is not 80 %', () => {
    expect(shown(call('BATTERY_VOLTS', 'lead-acid', 80))).toBe(
      '#VALUE! charge: 80 is more than 1; 80 means 8000 %; write 80% or 0.8',
    );
  });

  test.each([-1.01, -0.04, 0, 0.29, '-0.29%'])('a coefficient of %s is refused', (percentPerC) => {
    expect(shown(call('PV_COLD_VOLTS', 22, -20, percentPerC))).toEqual(
      says('write -0.29, not -0.29 %'),
    );
  });
});
