import { describe, expect, test } from 'vitest';
import { WORD } from '../../src/sheets/station/verdicts';
import { worstRunOf } from '../../src/taskpane/worst-run';
import { scheduleGrid } from './stand-in-host';

const OK = { run: 'Lamp', verdict: 'ok' };

describe('the worst run', () => {
  test('is none where all are ok, and none on another sheet', () => {
    expect(worstRunOf(scheduleGrid(OK))).toBeUndefined();
    expect(worstRunOf({ sheetName: 'Shopping', values: [['Bread', 2]] })).toBeUndefined();
  });

  test('is told with its row, its name and the figures of each fault', () => {
    const worst = worstRunOf(
      scheduleGrid(OK, {
        run: 'Winch',
        runAmps: 31,
        size: '10 AWG',
        ampacity: 30.87,
        dropShare: 0.0512345,
        target: 0.03,
        verdict: 'drop over target; over ampacity',
      }),
    );
    expect(worst?.sentence).toBe(
      'Row 5, “Winch”: drop over target; over ampacity. 31 A in 10 AWG, whose ampacity is 30.87 A; drop 5.123 %, target 3 %.',
    );
  });

  test('is selected from the name of its run to its verdict and fix', () => {
    const grid = scheduleGrid(OK, OK, { run: 'Siren', verdict: 'no fuse fits' });
    const worst = worstRunOf(grid);
    expect(worst?.area).toMatchObject({ row: 5, column: 1, rows: 1 });
    const heading = grid.values[2]?.[1 + (worst?.area.columns ?? 0) - 1];
    expect(heading).toBe('Fix');
  });

  test('a danger to the cable comes before a greater drop', () => {
    const worst = worstRunOf(
      scheduleGrid(
        { run: 'Camera', verdict: 'drop over target', dropShare: 0.3, target: 0.03 },
        { run: 'Siren', verdict: 'no fuse fits' },
      ),
    );
    expect(worst?.sentence).toBe(
      'Row 5, “Siren”: no fuse fits. No standard fuse both carries the load and protects the conductor.',
    );
  });

  test('is found by level: what is left to confirm comes last, whatever it loses', () => {
    const confirm = { run: 'Box', verdict: WORD.batteryAssumed, dropShare: 0.4, target: 0.03 };
    const rows = [OK, confirm, { run: 'Pump', verdict: WORD.lengthMissing }];
    expect(worstRunOf(scheduleGrid(...rows))?.sentence).toMatch(/^Row 6, “Pump”/);
    expect(worstRunOf(scheduleGrid(OK, confirm))?.sentence).toMatch(/^Row 5, “Box”/);
    const strange = { run: 'Old', verdict: 'a word of another version', level: 1 };
    expect(worstRunOf(scheduleGrid(...rows, strange))?.sentence).toMatch(/^Row 7, “Old”/);
  });

  test('of the same level is the one on which the most amps hang', () => {
    const lamp = { run: 'Lamp', verdict: WORD.fuse, runAmps: 1 };
    const trunk = { run: 'Trunk', verdict: WORD.heat, runAmps: 60 };
    const sets = { run: 'Sets', verdict: WORD.fuse, runAmps: 40 };
    expect(worstRunOf(scheduleGrid(lamp, trunk, sets))?.sentence).toMatch(/^Row 5, “Trunk”/);
    expect(worstRunOf(scheduleGrid(lamp, sets))?.sentence).toMatch(/^Row 5, “Sets”/);
  });

  test('tells the drop to the load where it is more than its own', () => {
    const missed = {
      run: 'Set',
      verdict: WORD.drop,
      dropShare: 0.01,
      pathDrop: 0.042,
      target: 0.03,
    };
    expect(worstRunOf(scheduleGrid(missed))?.sentence).toBe(
      'Row 4, “Set”: drop over target. Drop 1 %, 4.2 % to the load, target 3 %.',
    );
  });

  test('says what fixes too few volts, as the sheet has it', () => {
    const short = {
      run: 'Set',
      verdict: WORD.tooFewVolts,
      lowVolts: 11.2,
      leastVolts: 11.7,
    };
    const told = (fix: string) => worstRunOf(scheduleGrid({ ...short, mend: fix }))?.sentence;
    expect(told('thicker Hut trunk: 4 AWG')).toBe(
      'Row 4, “Set”: too few volts with the battery low. 11.2 V with the battery low, minimum 11.7 V. Fix: thicker Hut trunk: 4 AWG.',
    );
    expect(told('#N/A')).not.toContain('Fix');
  });

  test('without a name or readable figures the row and the verdict are told', () => {
    const worst = worstRunOf(
      scheduleGrid({ run: '  ', verdict: 'over ampacity', ampacity: '#N/A' }),
    );
    expect(worst?.sentence).toBe(
      'Row 4: over ampacity. More current flows than the published table allows the conductor as installed.',
    );
  });

  test('a row that is not calculated is told in words', () => {
    const worst = worstRunOf(scheduleGrid({ run: 'Lamp', verdict: '#NAME?' }));
    expect(worst?.sentence).toBe(
      'Row 4, “Lamp”: not calculated: the LOOM functions are not loaded.',
    );
  });
});
