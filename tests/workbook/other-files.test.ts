/** What other programs make of a shared workbook, and what the reader says to that. */
import { beforeAll, describe, expect, it } from 'vitest';
import { readRuns, UnreadableFile } from '../../src/lists/read-runs';
import { DEMO } from '../../src/sheets/station/demo';
import { savedAs } from './libreoffice';
import { writeWorkbook } from '../../src/hosts/xlsx/write';
import { sharedCopy } from '../../src/sheets/shared-copy';
import { scheduleNames } from '../../src/sheets/station/naming';
import { sharedFile } from '../../src/hosts/xlsx/shared-file';

describe('a shared workbook saved by LibreOffice', { timeout: 120_000 }, () => {
  let demo: Uint8Array;
  beforeAll(async () => {
    demo = await sharedFile(DEMO, { rows: DEMO.runs.length });
  });

  /** With the schedule in front: a .csv has one sheet, the first. */
  const scheduleFirst = async () => {
    // With rows to spare, which come as formulas of nothing.
    const { plans, values } = sharedCopy(DEMO, { rows: DEMO.runs.length + 12 });
    const isSchedule = ({ name }: { readonly name: string }) => name === scheduleNames().sheet;
    return writeWorkbook(
      [...plans.filter(isSchedule), ...plans.filter((plan) => !isSchedule(plan))],
      values,
    );
  };

  const saved = (ending: 'xls' | 'ods') => savedAs({ demo }, ending)['demo']!;

  it('as .csv still holds its runs, as they are shown', async () => {
    const csv = savedAs({ demo: await scheduleFirst() }, 'csv')['demo']!;
    const report = await readRuns(csv, 'demo.csv');
    expect(report.runs).toHaveLength(DEMO.runs.length);
    expect([report.questions, report.leftOver]).toEqual([[], []]);
    for (const [index, run] of report.runs.entries()) {
      const {
        run: name,
        fedFrom,
        load,
        kind,
        peak,
        length,
        joints,
        ownSize,
        leastVolts,
      } = DEMO.runs[index]!;
      const typed = { run: name, fedFrom, load, kind, peak, length, joints, ownSize, leastVolts };
      expect(run).toMatchObject(
        Object.fromEntries(Object.entries(typed).filter(([, value]) => value !== undefined)),
      );
    }
    // A .csv has one sheet: what the runs are fed from otherwise stands on another.
    const names = (DEMO.sources ?? []).map(({ name }) => name);
    const fed = DEMO.runs.filter(({ fedFrom }) => names.includes(fedFrom));
    expect(fed.length).toBeGreaterThan(5);
    expect(report.problems.map(({ why }) => why)).toEqual(
      fed.map(({ fedFrom }) => `Fed from: no run or source of the list is called "${fedFrom}"`),
    );
  });

  it('as .xls is refused with the way out', async () => {
    await expect(readRuns(saved('xls'), 'demo.xls')).rejects.toThrow(
      new UnreadableFile(
        '"demo.xls" is in the format of old spreadsheets (.xls). Save it as .xlsx and take that in.',
      ),
    );
  });

  it('as .ods is refused with the way out', async () => {
    await expect(readRuns(saved('ods'), 'demo.ods')).rejects.toThrow(/^"demo\.ods" .*\.xlsx/);
  });
});
