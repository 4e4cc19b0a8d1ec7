/** The Drop chart: a line for each load, its loss in the column that says whether the target holds, by hand. */
import { describe, expect, it } from 'vitest';
import { calculate } from '../../../src/sheets/calculate/calculate';
import {
  CHART_KEYS,
  CHART_ROW,
  chartColumn,
  dropChartName,
  type ChartKey,
} from '../../../src/sheets/drop-chart/layout';
import type { SheetPlan } from '../../../src/sheets/plan/plan';
import { sharedCopy } from '../../../src/sheets/shared-copy';
import type { StationContent } from '../../../src/sheets/station/content';
import { scheduleNames } from '../../../src/sheets/station/naming';

const sheet = dropChartName(scheduleNames());

/** 2 mohm a metre and 3 mohm of joints each: figures that can be had by hand. */
const STATION: StationContent = {
  title: 'Hut',
  rules: { unit: 'm', volts: 12, target: 0.03, joints: 3, tempC: 20 },
  runs: [
    { run: 'Trunk', length: 2, ownSize: '16 mm2' },
    { run: 'Radio', fedFrom: 'Trunk', peak: 10, length: 1.5, ownSize: '6 mm2' },
    { run: 'Lamp', fedFrom: 'Trunk', peak: 2, length: 20, ownSize: '1 mm2', target: 0.05 },
    { run: 'Sluice', peak: 400, length: 400 },
  ],
};

function linesOf(plans: readonly SheetPlan[]) {
  const values = calculate(plans);
  return Array.from({ length: 6 }, (_, line) =>
    CHART_KEYS.map((key: ChartKey) => values.at(sheet, CHART_ROW.first + line, chartColumn(key))),
  );
}

const plansOf = (content: StationContent) =>
  sharedCopy({ ...content, extras: ['dropChart'] }, { rows: 6 }).plans;

describe('the Drop chart', () => {
  // IEC 60228, class 5, at 20 degC: 16 mm2 1.21, 6 mm2 3.3, 1 mm2 19.5 mohm a metre.
  const trunkVolts = 12 * (2 * 2 * 0.00121 + 0.003);
  const radio = (trunkVolts + 10 * (2 * 1.5 * 0.0033 + 0.003)) / 12;
  const lamp = (trunkVolts + 2 * (2 * 20 * 0.0195 + 0.003)) / 12;

  it('has loads alone, with what is lost up to them, and which miss their target', () => {
    const [first, second, third, fourth] = linesOf(plansOf(STATION));
    expect(first).toEqual(['Radio', expect.closeTo(radio, 6), '', 0.03]);
    expect(second).toEqual(['Lamp', '', expect.closeTo(lamp, 6), 0.05]);
    expect(third).toEqual(['Sluice (not known)', '', '', 0.03]);
    expect(fourth).toEqual(['', '', '', '']);
  });

  it('takes the loss of each run alone where the house counts so', () => {
    const each = { ...STATION, rules: { ...STATION.rules, counts: 'in each run' } };
    const [first] = linesOf(plansOf(each));
    expect(first![1]).toBeCloseTo((10 * (2 * 1.5 * 0.0033 + 0.003)) / 12, 6);
  });

  it('shows cells of its table, and lies over none that holds anything', () => {
    const plan = plansOf(STATION).find(({ name }) => name === sheet)!;
    const { chart, blocks, hiddenColumns, columnWidths } = plan;
    const row = (of: { row: number; rows: number }) => [of.row, of.rows];
    expect(row(chart!.categories)).toEqual([CHART_ROW.first, 3]);
    for (const { values, name } of chart!.series) {
      expect(row(values)).toEqual([CHART_ROW.first, 3]);
      expect(name).toMatchObject({ row: CHART_ROW.header, column: values.column });
    }
    // Columns right of the chart's first that hold something are hidden workings.
    const held = blocks.filter(
      ({ area }) =>
        area.row >= CHART_ROW.header && area.column + area.columns > chart!.first.column,
    );
    for (const { area } of held) expect(hiddenColumns).toContain(area.column);
    // ECMA-376: 7 pixels a character, 96 to the inch.
    const between = columnWidths.slice(chart!.first.column, Math.min(...hiddenColumns!));
    const widthPt = (between.reduce((sum, width) => sum + width, 0) * 7 * 72) / 96;
    expect(widthPt).toBeGreaterThan(chart!.widthPt * 0.9);
  });
});
