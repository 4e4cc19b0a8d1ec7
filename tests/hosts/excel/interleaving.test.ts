/** Two insertions at once, other people in the same workbook, names that nobody lists, and the way to stop. */
import { describe, expect, it } from 'vitest';
import { newSchedule } from '../../../src/sheets/new-schedule';
import { insertSchedule } from '../../../src/taskpane/insertion';
import { outcomeOf, patientHost, stateOf, workbook } from './stand-in';
import { samplePlan } from './sample-plan';

describe('two insertions at once', () => {
  it('of one pane wait for one another, and both schedules stand', async () => {
    const excel = workbook();
    const host = patientHost();
    const told = await Promise.all([insertSchedule(host, 'demo'), insertSchedule(host, 'empty')]);
    expect(told.map(({ sentence }) => sentence.slice(0, 30))).toEqual([
      expect.stringContaining('“Run schedule”'),
      expect.stringContaining('“Run schedule 2”'),
    ]);
    // The workbook's own, and six of each.
    expect(excel.sheetNames).toHaveLength(13);
    expect(excel.tableNames).toEqual(['LoomRuns', 'LoomRuns2']);
  });

  it('of two people both stand, under names of their own', async () => {
    const excel = workbook();
    const [one, other] = [patientHost(), patientHost()];
    await Promise.all([insertSchedule(one, 'demo'), insertSchedule(other, 'demo')]);
    expect(excel.tableNames).toHaveLength(2);
    // The workbook's own, and six of each.
    expect(excel.sheetNames).toHaveLength(13);
  });
});

describe('a sheet of another person', () => {
  it('added under a name of ours after the check is never removed', async () => {
    const excel = workbook();
    const host = patientHost();
    const plans = newSchedule('demo', host.references, await host.taken());
    excel.refuse = ({ path }) => {
      if (path === 'workbook.worksheets.add' && excel.sheetNamed('Supply') === undefined) {
        const theirs = excel.newSheet('Supply');
        excel.fill(theirs, { rowIndex: 0, columnIndex: 0, values: [['Generator fuel']] });
      }
      return undefined;
    };
    const { fault, said } = await outcomeOf(host.insert(plans));
    expect(said).toMatch(
      /^Nothing was inserted, the workbook is as it was: a sheet, table or name/,
    );
    expect(fault?.namesTaken).toBe(true);
    expect(excel.sheetNames).toEqual(['Notes', 'Supply']);
    expect(excel.sheetNamed('Supply')!.at(0, 0)?.value).toBe('Generator fuel');
    const { sentence } = await insertSchedule(host, 'demo');
    expect(sentence).toContain('“Supply 2”');
  });

  it('is not cleared up where the very first addition is refused', async () => {
    const excel = workbook();
    const host = patientHost();
    excel.isProtected = true;
    const before = stateOf(excel);
    const { said } = await outcomeOf(host.insert([samplePlan()]));
    expect(said).toMatch(/^Nothing was inserted.*protected/);
    expect(stateOf(excel)).toBe(before);
    expect(excel.done.filter(({ path }) => path.endsWith('delete'))).toEqual([]);
  });

  it('keeps a defined name that is called like ours', async () => {
    const excel = workbook();
    const host = patientHost();
    excel.refuse = ({ path }) => {
      if (path === 'workbook.names.add' && excel.names.size === 0) {
        excel.define('Data_volts', excel.sheets[0]!, { row: 0, column: 0, rows: 1, columns: 1 });
      }
      return undefined;
    };
    const { fault } = await outcomeOf(host.insert([samplePlan('Runs'), samplePlan('Data')]));
    expect(fault?.namesTaken).toBe(true);
    expect(excel.definedNames).toEqual(['Data_volts']);
  });
});

it('a chart sheet under a name of ours counts as taken: the next names are used', async () => {
  const excel = workbook();
  const host = patientHost();
  excel.newSheet('Supply', true);
  const { sentence } = await insertSchedule(host, 'demo');
  expect(sentence).toContain(
    '“Run schedule 2”, “House rules 2”, “Supply 2”, “Protection 2”, “Verdicts 2” and “Crew sheet 2”',
  );
  expect(excel.sheetNames).toEqual([
    'Notes',
    'Supply',
    'Run schedule 2',
    'House rules 2',
    'Supply 2',
    'Protection 2',
    'Verdicts 2',
    'Crew sheet 2',
  ]);
});

describe('stopping', () => {
  it('leaves the workbook as it was, wherever it stops', async () => {
    const host = patientHost();
    let stops = 0;
    for (let at = 0; at < 1; at += 0.05) {
      const excel = workbook();
      const before = stateOf(excel);
      const stopping = new AbortController();
      const progress = (share: number) => {
        if (share >= at) stopping.abort();
      };
      const plans = [samplePlan('Runs'), samplePlan('Data')];
      const { said, inserted } = await outcomeOf(
        host.insert(plans, { progress, signal: stopping.signal }),
      );
      if (inserted !== undefined) continue;
      stops += 1;
      expect(said).toBe('Stopped: nothing was inserted, the workbook is as it was.');
      expect(stateOf(excel)).toBe(before);
    }
    expect(stops).toBeGreaterThan(15);
  });

  it('can be undone as a whole when it is done, and only it', async () => {
    const excel = workbook();
    const host = patientHost();
    const before = stateOf(excel);
    const first = await host.insert([samplePlan('Runs')]);
    await host.insert([samplePlan('Data')]);
    await first.remove();
    expect(excel.sheetNames).toEqual(['Notes', 'Data']);
    expect(excel.definedNames).toEqual(['Data_volts']);
    expect(stateOf(excel)).not.toBe(before);
  });
});

describe('a cell that is being edited', () => {
  it('holds an insertion back, which then goes on', async () => {
    const excel = workbook();
    const host = patientHost();
    let leave: () => void = () => undefined;
    excel.editing = new Promise((resolve) => (leave = resolve));
    const insertion = host.insert([samplePlan()]);
    await new Promise((resolve) => setTimeout(resolve, 10));
    expect(excel.done).toEqual([]);
    excel.editing = undefined;
    leave();
    expect((await insertion).missing).toEqual([]);
  });
});
