/**
 * A chart of Excel's own over the cells of a sheet. Office has no words for those who cannot see a chart (altText stands
 * for shapes and tables alone): its title names it, and its figures stand in the table beside it.
 */
import { area } from '../../sheets/plan/area';
import type { BarLook, ChartPlan } from '../../sheets/plan/chart';
import { PALETTE } from '../../sheets/plan/palette';
import { rangeOf } from './range-of';
import { CALL_BYTES, type Step } from './step';

/** Light, dark and empty, in this order on a grey print too: Office sets no hatching. */
const FILLS: Readonly<Record<BarLook, string>> = {
  plain: PALETTE.line,
  hatched: PALETTE.danger,
  outlined: '#ffffff',
};
const GAP_PERCENT = 40;
/** Of the chart as a whole, and of each series. */
const [CALLS, SERIES_CALLS] = [20, 10];

function setSeries(
  sheet: Excel.Worksheet,
  series: Excel.ChartSeries,
  { categories }: ChartPlan,
  { nameText, values, look }: ChartPlan['series'][number],
): void {
  series.name = nameText;
  series.setValues(rangeOf(sheet, values));
  series.setXAxisValues(rangeOf(sheet, categories));
  series.gapWidth = GAP_PERCENT;
  series.format.fill.setSolidColor(FILLS[look]);
  series.format.line.color = PALETTE.darkText;
}

function setAxes({ categoryAxis, valueAxis }: Excel.ChartAxes, plan: ChartPlan): void {
  categoryAxis.title.text = plan.categoryTitle;
  valueAxis.title.text = plan.valueTitle;
  // The first line of the table on top, and the figures below the last.
  categoryAxis.reversePlotOrder = true;
  categoryAxis.position = 'Maximum';
  categoryAxis.tickLabelSpacing = 1;
  valueAxis.minimum = 0;
  valueAxis.numberFormat = plan.numberFormat;
}

/**
 * Made of one column, which gives one series whatever stands in it by then; Excel is not left to guess from texts and
 * numbers which column means what.
 */
function drawChart(sheet: Excel.Worksheet, plan: ChartPlan): void {
  const [first, ...others] = plan.series;
  if (first === undefined) return;
  const { row, column, rows } = first.values;
  const source = area(first.name.row, column, row + rows - first.name.row, 1);
  const chart = sheet.charts.add('BarClustered', rangeOf(sheet, source), 'Columns');
  chart.name = plan.title;
  setSeries(sheet, chart.series.getItemAt(0), plan, first);
  for (const other of others) setSeries(sheet, chart.series.add(other.nameText), plan, other);
  chart.title.text = plan.title;
  chart.legend.position = 'Bottom';
  setAxes(chart.axes, plan);
  chart.setPosition(rangeOf(sheet, plan.first));
  chart.width = plan.widthPt;
  chart.height = plan.heightPt;
}

/** The step that makes a chart. Made twice, it would be there twice: what is there of it goes first. */
export function chartStep(plan: ChartPlan): Step {
  return {
    bytes: (CALLS + SERIES_CALLS * plan.series.length) * CALL_BYTES,
    draw: (sheet) => {
      drawChart(sheet, plan);
    },
  };
}

/**
 * Takes a chart off its sheet: by its name, and one that Excel had only begun when it broke off, which has no more than
 * the column that it was made of. Anybody else's stay.
 */
export async function clearChart(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  { title, series: [first] }: ChartPlan,
): Promise<void> {
  const { charts } = sheet;
  charts.load('items/name');
  await context.sync();
  const there = charts.items.map((chart) => ({ chart, series: chart.series }));
  for (const { series } of there) series.load('items/name');
  await context.sync();
  for (const { chart, series } of there) {
    const { items } = series;
    const isBegun = items.length === 1 && items[0]?.name === first?.nameText;
    if (chart.name === title || isBegun) chart.delete();
  }
  await context.sync();
}
