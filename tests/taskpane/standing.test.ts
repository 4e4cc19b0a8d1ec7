import { describe, expect, test } from 'vitest';
import {
  calculationSentence,
  standingOf,
  standingSentence,
  unfilledSentence,
} from '../../src/taskpane/standing';
import { scheduleGrid } from './stand-in-host';

describe('the standing of the sheet in view', () => {
  test('an empty sheet and a sheet of other things are no schedule', () => {
    const other = {
      sheetName: 'Shopping',
      values: [
        ['Run', 'Verdict'],
        ['Bread', 'ok'],
      ],
    };
    for (const grid of [null, other]) {
      expect(standingOf(grid)).toEqual({ kind: 'no schedule' });
    }
    expect(standingSentence(standingOf(null))).toContain('no run schedule');
  });

  test('a schedule without runs asks for some', () => {
    const standing = standingOf(scheduleGrid());
    expect(standing).toMatchObject({ kind: 'schedule', runs: 0, notOk: 0, verdicts: [] });
    expect(standingSentence(standing)).toBe(
      '“Hill runs” has no runs yet. Give a row its load and its length.',
    );
  });

  test('runs are counted by verdict, the gravest word of a verdict setting its level', () => {
    const standing = standingOf(
      scheduleGrid(
        { verdict: 'ok' },
        { verdict: 'ok' },
        { verdict: 'drop over target' },
        { verdict: 'drop over target; no fuse fits' },
        { verdict: 'length missing' },
      ),
    );
    expect(standing).toEqual({
      kind: 'schedule',
      sheetName: 'Hill runs',
      runs: 5,
      notOk: 3,
      unfilled: [],
      verdicts: [
        { verdict: 'ok', runs: 2, level: 'ok' },
        { verdict: 'drop over target', runs: 1, level: 'fails' },
        { verdict: 'drop over target; no fuse fits', runs: 1, level: 'danger' },
        { verdict: 'length missing', runs: 1, level: 'unclear' },
      ],
    });
    expect(standingSentence(standing)).toBe('“Hill runs”: 5 runs, 3 not ok.');
  });

  test('one run that is ok is said so', () => {
    expect(standingSentence(standingOf(scheduleGrid({ verdict: 'ok' })))).toBe(
      '“Hill runs”: 1 run, all ok by the published figures.',
    );
  });

  test('an error value is never counted as ok, and is put into words', () => {
    const standing = standingOf(
      scheduleGrid({ verdict: '#NAME?' }, { verdict: '#BUSY!' }, { verdict: '#REF!' }),
    );
    expect(standing).toMatchObject({
      notOk: 3,
      verdicts: [
        { verdict: 'not calculated: the LOOM functions are not loaded', level: 'unclear' },
        { verdict: 'still being calculated', level: 'unclear' },
        { verdict: 'no verdict (#REF!)', level: 'unclear' },
      ],
    });
  });

  test('a row with a cell that is being calculated is not judged by what formulas make of it', () => {
    const standing = standingOf(
      scheduleGrid({ verdict: 'check the entries', dropVolts: '#BUSY!' }),
    );
    expect(standing).toMatchObject({ verdicts: [{ verdict: 'still being calculated', runs: 1 }] });
  });

  test('rows whose formulas were not filled down are named, with what to do', () => {
    const standing = standingOf(
      scheduleGrid({ verdict: 'ok', peak: 1, length: 2 }, { peak: 3 }, {}, { length: 4 }),
    );
    expect(standing).toMatchObject({ runs: 1, unfilled: [5, 7] });
    expect(unfilledSentence(standing)).toMatch(/^Rows 5 and 7 have entries but no formulas/);
    expect(unfilledSentence(standingOf(scheduleGrid({ verdict: 'ok' })))).toBe('');
    const many = standingOf(scheduleGrid(...Array.from({ length: 9 }, () => ({ peak: 1 }))));
    expect(unfilledSentence(many)).toMatch(/^Rows 4, 5, 6, 7, 8 and 4 more have/);
  });

  test('manual calculation is told, done calculation is not', () => {
    expect(calculationSentence('manual')).toMatch(/only when asked/);
    expect(calculationSentence('under way')).toMatch(/still calculating/);
    expect(calculationSentence('done')).toBe('');
  });
});
