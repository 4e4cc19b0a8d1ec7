/** The chart of a sheet in Excel: made of the cells that the plan names, once, whole or not at all. */
import { describe, expect, it } from 'vitest';
import type { SheetPlan } from '../../../src/sheets/plan/plan';
import { addInSheets, BOOK } from '../../../src/sheets/book';
import { newSchedule } from '../../../src/sheets/new-schedule';
import { CHART_ROW } from '../../../src/sheets/drop-chart/layout';
import { insertSchedule, missingSentence } from '../../../src/taskpane/insertion';
import { DEMO } from '../../../src/sheets/station/demo';
import { followingKeys } from '../../../src/sheets/station/extras';
import { freeScheduleNames } from '../../../src/sheets/station/naming';
import { Chart, Series, type RecordingExcel } from './recording-excel';
import { samplePlan } from './sample-plan';
import { outcomeOf, patientHost, workbook } from './stand-in';

const FREE = { sheets: new Set<string>(), names: new Set<string>() };
const TITLE = 'Drop of each load against its target';

const chartsIn = (excel: RecordingExcel, sheet: string) => excel.sheetNamed(sheet)!.charts;

describe('the Drop chart in Excel', () => {
  it('is offered where charts are drawn, and nowhere else', () => {
    expect(followingKeys(patientHost())).toContain('dropChart');
    expect(followingKeys({ hasCharts: false })).not.toContain('dropChart');
  });

  it('shows what is lost up to each load and its target, with its words', async () => {
    const excel = workbook();
    const { inserted } = await insertSchedule(patientHost(), 'demo', ['dropChart']);
    expect(inserted.missing).toEqual([]);
    const [chart, ...others] = chartsIn(excel, 'Drop chart');
    expect(others).toEqual([]);
    expect(chart).toMatchObject({ name: TITLE, type: 'BarClustered' });
    expect(Object.fromEntries(chart!.set)).toMatchObject({
      'title.text': TITLE,
      'axes.categoryAxis.title.text': 'Load at the end of the way',
      'axes.valueAxis.title.text': 'Share of the source volts',
      'axes.categoryAxis.reversePlotOrder': true,
      'axes.valueAxis.minimum': 0,
      'axes.valueAxis.numberFormat': '0 %',
      position: [CHART_ROW.header, 5],
    });
    // 24 loads: 26 runs without two that only feed others; four lines are free for more.
    const lines = { row: CHART_ROW.first, rows: 28, columns: 1 };
    expect(chart!.series.map(({ name, values }) => [name, values])).toEqual([
      ['Lost, within target', { ...lines, column: 1 }],
      ['Lost, over target', { ...lines, column: 2 }],
      ['Target of it', { ...lines, column: 3 }],
    ]);
    for (const { categories } of chart!.series) expect(categories).toEqual({ ...lines, column: 0 });
    const fills = chart!.series.map(({ set }) => set.get('format.fill.setSolidColor'));
    expect(new Set(fills).size).toBe(3);
  });

  it('has room for loads that are typed into an empty schedule', async () => {
    const excel = workbook();
    await insertSchedule(patientHost(), 'empty', ['dropChart']);
    expect(chartsIn(excel, 'Drop chart')[0]!.series[0]!.values?.rows).toBe(8);
  });

  it('costs a constant number of round trips, however many runs there are', async () => {
    const counts: number[] = [];
    for (const copies of [1, 3]) {
      const runs = Array.from({ length: copies }, (_, copy) =>
        DEMO.runs.map((run) => ({ ...run, run: `${run.run} ${copy}`, fedFrom: '' })),
      ).flat();
      const names = freeScheduleNames(FREE, BOOK);
      const layout = { names, references: 'table' as const, rows: runs.length };
      const plans = addInSheets(layout, { ...DEMO, runs, extras: ['dropChart'] });
      const plan = plans.find(({ chart }) => chart !== undefined)!;
      // Alone: its formulas want the schedule.
      const alone: SheetPlan = { ...plan, blocks: [], highlights: [] };
      const excel = workbook();
      await patientHost().insert([alone]);
      expect(chartsIn(excel, 'Drop chart')).toHaveLength(1);
      counts.push(excel.syncs);
    }
    expect(counts[1]).toBe(counts[0]);
  });
});

describe('a chart that Excel refuses', () => {
  const plans = newSchedule('demo', 'table', FREE, ['dropChart']);

  it('leaves the sheet standing, and is named in a sentence of the pane', async () => {
    const excel = workbook();
    excel.refuse = ({ path }) => (path.includes('charts.add') ? 'NotImplemented' : undefined);
    const { inserted } = await outcomeOf(patientHost().insert(plans));
    expect(excel.sheetNamed('Drop chart')!.at(CHART_ROW.header, 1)?.value).toBe(
      'Lost, within target',
    );
    expect(chartsIn(excel, 'Drop chart').map(({ name }) => name)).toEqual([]);
    expect(missingSentence(inserted!)).toMatch(
      /Refused or not confirmed: the chart of “Drop chart” \(this version of Excel cannot do it; [^)]*\)\. “Repair/,
    );
    excel.refuse = () => undefined;
    expect((await inserted!.repair()).missing).toEqual([]);
    expect(chartsIn(excel, 'Drop chart').map(({ name }) => name)).toEqual([TITLE]);
  });

  it.each(['name', 'setXAxisValues', 'axes.valueAxis.minimum', 'height'])(
    'at its %s is not left half made',
    async (member) => {
      const excel = workbook();
      excel.refuse = ({ path }) =>
        path.includes('charts.add') && path.endsWith(`.${member}`) ? 'InvalidArgument' : undefined;
      const { inserted } = await outcomeOf(patientHost().insert(plans));
      expect(inserted!.missing).toEqual([expect.stringMatching(/^the chart of “Drop chart” \(/)]);
      expect(inserted!.missing.join()).not.toContain('not whole');
      expect(chartsIn(excel, 'Drop chart').map(({ name }) => name)).toEqual([]);
    },
  );

  it('and cannot be taken away is told to stand there', async () => {
    const excel = workbook();
    excel.refuse = ({ path }) =>
      /charts.*\.(height|delete)$/.test(path) ? 'AccessDenied' : undefined;
    const { inserted } = await outcomeOf(patientHost().insert([samplePlan()]));
    expect(inserted!.missing).toEqual([
      expect.stringMatching(/^the chart of “Runs” \(.*; one that is not whole may stand there\)$/),
    ]);
    expect(chartsIn(excel, 'Runs')).toHaveLength(1);
    excel.refuse = () => undefined;
    expect((await inserted!.repair()).missing).toEqual([]);
    expect(chartsIn(excel, 'Runs')).toHaveLength(1);
  });

  it('leaves the charts of other people where it is made anew', async () => {
    const excel = workbook();
    excel.refuse = ({ path }) => (path.includes('charts.add') ? 'Conflict' : undefined);
    const { inserted } = await outcomeOf(patientHost().insert([samplePlan()]));
    excel.refuse = () => undefined;
    const sheet = excel.sheetNamed('Runs')!;
    const own = new Chart(sheet, 'Line', 'Chart 1');
    own.series.push(new Series(sheet, 'Amps'), new Series(sheet, 'Size'));
    const other = new Chart(sheet, 'Line', 'Rain');
    other.series.push(new Series(sheet, 'Millimetres'));
    sheet.charts.push(own, other);
    await inserted!.repair();
    expect(sheet.charts.map(({ name }) => name)).toEqual(['Chart 1', 'Rain', 'Amps of each run']);
  });
});
