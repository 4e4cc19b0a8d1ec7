/** The Drop chart: what is lost on the way to each load, against its target. */
import { area } from '../plan/area';
import { PRINT_FOOTER } from '../plan/cautions';
import { HIGHLIGHT_STYLES } from '../plan/highlight-styles';
import { HEADING_STYLE, PALETTE, QUIET_STYLE, SMALL_STYLE } from '../plan/palette';
import type { BarLook } from '../plan/chart';
import type { Block, CellStyle, SheetPlan } from '../plan/plan';
import type { StationContent } from '../station/content';
import { EXTRAS } from '../station/extras';
import type { Layout } from '../station/layout';
import { chartFormulas, chartWarning, chartWorkingFormulas } from './formulas';
import {
  CHART_COLUMN_CHARS,
  CHART_COLUMNS,
  CHART_FIRST,
  CHART_KEYS,
  CHART_ROW as ROW,
  CHART_WIDTH_PT,
  CHART_WORKING_COLUMNS,
  CHART_WORKING_KEYS,
  chartArea,
  chartColumn,
  chartReferences,
  dropChartName,
  type ChartKey,
} from './layout';

/** Names the schedule that the sheet belongs to, by which a reader finds it again. */
export const chartOf = (sheet: string) =>
  `Share of the source volts that is lost up to each load of the sheet "${sheet}", beside the drop target that it is held to.`;

const SHARE: CellStyle = { numberFormat: '0.00 %' };

export const CHART_COLUMNS_SHOWN: Readonly<
  Record<
    ChartKey,
    { readonly heading: string; readonly widthChars: number; readonly style: CellStyle }
  >
> = {
  run: { heading: 'Way to', widthChars: 25, style: { bold: true } },
  within: { heading: 'Lost, within target', widthChars: 12, style: SHARE },
  over: { heading: 'Lost, over target', widthChars: 12, style: { ...SHARE, bold: true } },
  target: { heading: 'Target of it', widthChars: 10, style: SHARE },
};

const SERIES = [
  ['within', 'plain'],
  ['over', 'hatched'],
  ['target', 'outlined'],
] as const satisfies readonly (readonly [ChartKey, BarLook])[];

/** Three bars a load, and what stands around them. */
const LINE_PT = 21;
const AROUND_PT = 90;

/** Lines that stay free below the loads of a schedule in which people go on typing, and the least of all. */
const [FREE_LINES, LEAST_LINES] = [4, 8];

/** How many lines the chart shows: those of the loads, with room for more where the schedule is typed in. */
function linesShown({ references }: Layout, content: StationContent): number {
  const loads = loadCount(content);
  return references === 'table' ? Math.max(LEAST_LINES, loads + FREE_LINES) : loads;
}

/** Loads of a content, as many as the table has lines: runs with a load, and ends of the tree. */
function loadCount({ runs }: StationContent): number {
  const feeders = new Set(runs.map(({ fedFrom }) => fedFrom?.trim().toLowerCase()));
  const loads = runs.filter(
    ({ peak, run }) =>
      String(peak ?? '').trim() !== '' ||
      (run !== undefined && !feeders.has(run.trim().toLowerCase())),
  );
  return Math.max(1, loads.length);
}

/** The plan of the Drop chart. */
export function dropChartSheet(layout: Layout, content: StationContent): SheetPlan {
  const references = chartReferences(layout);
  const formulas = chartFormulas(layout, references);
  const workings = chartWorkingFormulas(layout, references);
  const lines = linesShown(layout, content);
  const shown = (key: ChartKey) => area(ROW.first, chartColumn(key), lines, 1);
  return {
    name: dropChartName(layout.names),
    columnWidths: [
      ...CHART_KEYS.map((key) => CHART_COLUMNS_SHOWN[key].widthChars),
      2,
      ...Array.from({ length: CHART_COLUMNS }, () => CHART_COLUMN_CHARS),
      2,
      ...CHART_WORKING_KEYS.map(() => 7),
    ],
    hiddenColumns: CHART_WORKING_COLUMNS,
    blocks: [
      {
        area: area(ROW.title, 0),
        cells: [[EXTRAS.dropChart.sheetName]],
        style: { bold: true, fontSizePt: 16, fontColour: PALETTE.title },
      },
      { area: area(ROW.about, 0), cells: [[chartOf(layout.names.sheet)]], style: QUIET_STYLE },
      {
        area: area(ROW.warning, 0),
        cells: [[{ formula: `=${chartWarning(layout, references, lines)}` }]],
        style: { bold: true, fontColour: PALETTE.danger },
        afterTable: true,
      },
      {
        area: area(ROW.header, 0, 1, CHART_KEYS.length),
        cells: [CHART_KEYS.map((key) => CHART_COLUMNS_SHOWN[key].heading)],
        style: HEADING_STYLE,
      },
      ...CHART_KEYS.map((key): Block => ({
        area: chartArea(key, layout),
        fill: [`=${formulas[key]}`],
        style: { ...CHART_COLUMNS_SHOWN[key].style, border: 'all' },
        afterTable: true,
      })),
      ...CHART_WORKING_KEYS.map((key): Block => ({
        area: chartArea(key, layout),
        fill: [`=${workings[key]}`],
        style: SMALL_STYLE,
        afterTable: true,
      })),
    ],
    names: [],
    entries: [],
    highlights: [
      {
        area: chartArea('over', layout),
        formula: `ISNUMBER(${references.cell.over})`,
        style: HIGHLIGHT_STYLES.fails,
        meaning: 'more is lost than the target allows',
      },
    ],
    notes: [],
    frozenRows: 0,
    frozenColumns: 0,
    rowHeightsPt: { [ROW.title]: 24, [ROW.header]: 32 },
    chart: {
      first: CHART_FIRST,
      title: 'Drop of each load against its target',
      description: `Bars for ${loadCount(content)} loads: the share of the source volts that is lost up to each, hatched where it is over its target, and the target in outline. The figures stand in the table beside it.`,
      widthPt: CHART_WIDTH_PT,
      heightPt: AROUND_PT + LINE_PT * lines,
      categories: shown('run'),
      categoryTitle: 'Load at the end of the way',
      valueTitle: 'Share of the source volts',
      series: SERIES.map(([key, look]) => ({
        name: area(ROW.header, chartColumn(key)),
        nameText: CHART_COLUMNS_SHOWN[key].heading,
        values: shown(key),
        look,
      })),
      numberFormat: '0 %',
    },
    print: {
      landscape: false,
      area: area(
        0,
        0,
        ROW.first + Math.max(lines, Math.ceil((AROUND_PT + LINE_PT * lines) / 15)),
        CHART_FIRST.column + CHART_COLUMNS,
      ),
      footer: PRINT_FOOTER,
    },
  };
}
