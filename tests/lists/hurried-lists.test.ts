import { describe, expect, it } from 'vitest';
import { sharedFile } from '../../src/hosts/xlsx/shared-file';
import { choicesFor, readChosen, readColumnMap, UnusableMap } from '../../src/lists/column-map';
import type { ScheduleRun } from '../../src/sheets/station/run';
import { RUN_KEYS } from '../../src/lists/headings';
import {
  NO_FEEDERS,
  openRuns,
  readRuns,
  UnreadHeadings,
  type ColumnQuestion,
} from '../../src/lists/read-runs';
import { HURRIED_LISTS, type HurriedList } from './hurried-lists';

const open = async ({ bytes, fileName }: HurriedList) => openRuns(await bytes(), fileName);

async function questionsOf(list: HurriedList): Promise<readonly ColumnQuestion[]> {
  const file = await open(list);
  try {
    return file.read().questions;
  } catch (fault) {
    if (fault instanceof UnreadHeadings) return fault.questions;
    throw fault;
  }
}

const answered = (list: HurriedList) =>
  readColumnMap(
    Object.entries({ ...list.asked, ...list.said }).filter(([, answer]) => answer !== ''),
  );

const CASES = Object.entries(HURRIED_LISTS);

describe('a list in a hurry', () => {
  it.each(CASES)('with %s: is asked what cannot be told', async (_, list) => {
    const questions = await questionsOf(list);
    const asked = questions.map(({ heading, suggested = '' }) => [heading, suggested]);
    expect(Object.fromEntries(asked)).toEqual(list.asked);
    for (const { values } of questions) {
      expect(values.length).toBeGreaterThan(0);
      expect(values.length).toBeLessThanOrEqual(3);
    }
  });

  it.each(CASES)('with %s: is taken in as it is answered', async (_, list) => {
    const report = (await open(list)).read(answered(list));
    expect(report.runs).toEqual(list.runs);
    expect(report.leftOver.map(({ heading }) => heading)).toEqual(list.leftOut ?? []);
    for (const { values } of report.leftOver) expect(values.length).toBeGreaterThan(0);
    const lost = report.problems.filter(({ taken }) => !taken).map(({ line }) => line);
    expect(lost).toEqual(list.notTaken ?? []);
    expect(report.lacksFeeders).toBe(!list.runs.some(({ fedFrom }) => fedFrom !== undefined));
    expect(report.remarks.includes(NO_FEEDERS)).toBe(report.lacksFeeders);
  });

  it('keeps its notes through the sheet and back', async () => {
    const noted: ScheduleRun[] = [];
    for (const [, list] of CASES) {
      const { runs } = (await open(list)).read(answered(list));
      noted.push(...runs.filter(({ notes }) => notes !== undefined));
    }
    expect(noted.filter(({ notes }) => notes?.includes('\n')).length).toBeGreaterThan(2);
    const named = noted.map(({ notes }, index) => ({ run: `Run ${index}`, notes: notes! }));
    const again = await readRuns(await sharedFile({ runs: named, title: 'Noted' }), 'shared.xlsx');
    expect(again.runs).toEqual(named);
    expect(again.questions).toEqual([]);
  });
});

describe('what is said of columns', () => {
  const LIST = 'Name,Draw,Draw too,Way\nBus,20,3,2\nRadio,12,4,1\n';
  const read = (...said: readonly (readonly [string, string])[]) =>
    readRuns(new TextEncoder().encode(LIST), 'draws.csv', { columns: readColumnMap(said) });
  const refusal = async (...said: readonly (readonly [string, string])[]) => {
    const fault = await (async () => read(...said))().catch((error: unknown) => error);
    expect(fault).toBeInstanceOf(UnusableMap);
    return (fault as Error).message;
  };

  it('may name a unit', async () => {
    const report = await read(['draw', 'Peak load (W)'], ['Way', 'One-way length (m)']);
    expect(report.runs[0]).toEqual({ run: 'Bus', peak: 20, kind: 'W', length: 2 });
    expect(report.lengthUnit).toBe('m');
  });

  it('may take amps and watts from two columns', async () => {
    const report = await read(['Draw', 'Peak load (W)'], ['Draw too', 'Peak load (A)']);
    expect(report.leftOver.map(({ heading }) => heading)).toEqual(['Way']);
    expect(report.runs[0]?.peak).toBe(20);
  });

  it('counts there and back where that is said', async () => {
    expect((await read(['Way', 'Length there and back (ft)'])).runs[0]?.length).toBe(1);
  });

  it('goes before what a heading says', async () => {
    const report = await read(['Name', 'Load'], ['Draw', 'Peak load'], ['Way', 'Run']);
    expect(report.runs[0]).toEqual({ run: '2', load: 'Bus', peak: 20 });
    const named = await readRuns(
      new TextEncoder().encode('Name,Tag no,Amps,Length (ft)\nBus,7,20,2\n'),
      'tags.csv',
      { columns: readColumnMap([['Tag no', 'Run']]) },
    );
    expect(named.runs[0]?.run).toBe('7');
    expect(named.leftOver).toEqual([
      { heading: 'Name', values: ['Bus'], why: '"Tag no" was chosen for it' },
    ]);
  });

  it('may be that a column is left out, which is not asked again', async () => {
    const report = await read(['Draw', 'Peak load'], ['Draw too', ''], ['Way', 'Leave out']);
    expect(report.questions).toEqual([]);
    expect(report.leftOver.map(({ why }) => why)).toEqual(Array(2).fill('left out, as was said'));
  });

  it('is refused where it cannot be, with a sentence that says what can', async () => {
    expect(await refusal(['Draw', 'Peak load'], ['Draw too', 'Peak'])).toBe(
      '"Draw" and "Draw too" cannot both be "Peak load"; choose one of them and leave the other out.',
    );
    expect(await refusal(['Draw', 'Peak load'], ['DRAW', 'Notes'])).toMatch(
      /"DRAW" is mapped twice/,
    );
    expect(await refusal(['Draw', 'Peek load'])).toMatch(
      /"Peek load" is no column .*did you mean "Peak load"\? The columns are Run, Fed from, .*Notes/,
    );
    expect(await refusal(['Draw', 'Verdict'])).toMatch(/"Verdict" is no column that a list gives/);
    expect(await refusal(['Draws', 'Peak load'])).toMatch(
      /"draws.csv" has no column "draws"; did you mean "Draw"\? Its columns are "Name", "Draw", /,
    );
  });

  it('is offered in words that mean every column of a run, and nothing twice', () => {
    for (const heading of ['Way', 'Way (m)', 'Draw (W)']) {
      const choices = choicesFor(heading);
      expect(new Set(choices).size).toBe(choices.length);
      const keys = choices.map((choice) => readChosen(choice)?.key);
      expect(new Set(keys)).toEqual(new Set(RUN_KEYS));
    }
    expect(choicesFor('Way')).toContain('One-way length (m)');
    expect(choicesFor('Way (m)')).not.toContain('One-way length (ft)');
  });
});
