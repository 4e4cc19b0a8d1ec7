import { describe, expect, test } from 'vitest';
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
      'Row 5, “Winch”: drop over target; over ampacity. 31 A flow where 10 AWG may carry 30.87 A; it loses 5.123 % of its source volts where 3 % is the target.',
    );
  });

  test('is selected from the name of its run to its verdict', () => {
    const grid = scheduleGrid(OK, OK, { run: 'Siren', verdict: 'no fuse fits' });
    const worst = worstRunOf(grid);
    expect(worst?.area).toMatchObject({ row: 5, column: 1, rows: 1 });
    const heading = grid.values[2]?.[1 + (worst?.area.columns ?? 0) - 1];
    expect(heading).toBe('Verdict');
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

  test('says what would mend too few volts, as the sheet has it', () => {
    const short = {
      run: 'Set',
      verdict: 'too few volts at low charge',
      lowVolts: 11.2,
      leastVolts: 11.7,
    };
    const told = (mend: string) => worstRunOf(scheduleGrid({ ...short, mend }))?.sentence;
    expect(told('thicker Hut trunk: 4 AWG')).toBe(
      'Row 4, “Set”: too few volts at low charge. 11.2 V are left at low charge where the load needs 11.7 V. What would mend it: thicker Hut trunk: 4 AWG.',
    );
    expect(told('#N/A')).not.toContain('mend');
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
