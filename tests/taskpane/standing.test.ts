import { describe, expect, test } from 'vitest';
import { SCHEDULE_COLUMNS } from '../../src/sheets/schedule/columns';
import { FORMER_HEADINGS, LATER_COLUMNS } from '../../src/sheets/station/former';
import { WORD } from '../../src/sheets/station/verdicts';
import {
  calculationSentence,
  isAllOk,
  standingOf,
  standingSentence,
  unfilledSentence,
} from '../../src/taskpane/standing';
import { scheduleGrid } from './stand-in-host';

const NONE = { danger: 0, fails: 0, unclear: 0, check: 0, ok: 0 };

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
    expect(standing).toMatchObject({ kind: 'schedule', runs: 0, levels: NONE, verdicts: [] });
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
        { verdict: WORD.batteryAssumed },
      ),
    );
    expect(standing).toEqual({
      kind: 'schedule',
      sheetName: 'Hill runs',
      runs: 6,
      levels: { danger: 1, fails: 1, unclear: 1, check: 1, ok: 2 },
      unfilled: [],
      verdicts: [
        { verdict: 'drop over target; no fuse fits', runs: 1, level: 'danger' },
        { verdict: 'drop over target', runs: 1, level: 'fails' },
        { verdict: 'length missing', runs: 1, level: 'unclear' },
        { verdict: WORD.batteryAssumed, runs: 1, level: 'check' },
        { verdict: 'ok', runs: 2, level: 'ok' },
      ],
    });
    expect(standingSentence(standing)).toBe(
      '“Hill runs”: 6 runs, 1 danger, 1 fails, 1 unclear, 1 check, 2 ok.',
    );
  });

  test('a run that is left to confirm is neither ok nor wrong', () => {
    const standing = standingOf(
      scheduleGrid({ verdict: 'ok' }, { verdict: WORD.coveredByMain }, { verdict: WORD.craftFuse }),
    );
    expect(standing).toMatchObject({ levels: { ...NONE, check: 2, ok: 1 } });
    expect(isAllOk(standing)).toBe(false);
    expect(standingSentence(standing)).toBe('“Hill runs”: 3 runs, 2 check, 1 ok.');
  });

  test('the sheet’s own level counts, and never that of an error', () => {
    const standing = standingOf(
      scheduleGrid(
        { verdict: 'a word of another version', level: 1 },
        { verdict: 'a word of another version' },
        { verdict: '#NAME?', level: 5 },
        { verdict: 'ok', level: '#NAME?' },
      ),
    );
    expect(standing).toMatchObject({ levels: { ...NONE, danger: 1, unclear: 2, ok: 1 } });
  });

  test('a schedule with the former headings is read', () => {
    const { sheetName, values } = scheduleGrid({ verdict: 'drop over target', level: 2 });
    const later = LATER_COLUMNS.map((key) => SCHEDULE_COLUMNS[key].heading);
    const former = new Map(
      Object.entries(FORMER_HEADINGS).map(([key, heading]) => [
        SCHEDULE_COLUMNS[key as keyof typeof SCHEDULE_COLUMNS].heading,
        heading,
      ]),
    );
    const heads = values[2]!;
    const kept = heads.flatMap((text, column) =>
      later.some((heading) => heading === text) ? [] : [column],
    );
    const old = values.map((row, index) =>
      kept.map((column) => {
        const value = row[column] ?? null;
        return index === 2 ? (former.get(String(value)) ?? value) : value;
      }),
    );
    expect(old[2]).toContain('Own size');
    expect(old[2]).not.toContain('My wire');
    expect(standingOf({ sheetName, values: old })).toMatchObject({
      runs: 1,
      levels: { ...NONE, fails: 1 },
    });
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
      levels: { ...NONE, unclear: 3 },
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
