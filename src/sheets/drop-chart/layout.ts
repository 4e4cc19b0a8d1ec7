/** Where the parts of the Drop chart stand: its table, the chart beside it, workings out of sight. */
import { area, areaAddress, cellAddress, type Area } from '../plan/area';
import { columnWidthPt } from '../plan/column-width';
import { runsFollowed } from '../schedule/layout';
import { EXTRAS } from '../station/extras';
import type { Layout } from '../station/layout';
import type { ScheduleNames } from '../station/naming';

/** Zero-based rows of the sheet's parts. */
export const CHART_ROW = { title: 0, about: 1, warning: 2, header: 3, first: 4 } as const;

/** What is shown of a load; a loss stands in one of two columns, so that the chart can show which target it misses. */
export const CHART_KEYS = ['run', 'within', 'over', 'target'] as const;
export type ChartKey = (typeof CHART_KEYS)[number];

/** By the row of the schedule, and by the line of the table. */
export const CHART_WORKING_KEYS = ['upTo', 'place'] as const;
export type ChartWorkingKey = (typeof CHART_WORKING_KEYS)[number];

export const CHART_WIDTH_PT = 420;
export const CHART_COLUMN_CHARS = 9;
/** Columns that the chart lies over, beside the table. */
export const CHART_COLUMNS = Math.ceil(CHART_WIDTH_PT / columnWidthPt(CHART_COLUMN_CHARS));
const CHART_FROM = CHART_KEYS.length + 1;
const WORKINGS_FROM = CHART_FROM + CHART_COLUMNS + 1;
export const CHART_FIRST = area(CHART_ROW.header, CHART_FROM);
export const CHART_WORKING_COLUMNS: readonly number[] = CHART_WORKING_KEYS.map(
  (_, index) => WORKINGS_FROM + index,
);

export function dropChartName(names: ScheduleNames): string {
  return names.sheetNamed(EXTRAS.dropChart.sheetName);
}

export function chartColumn(key: ChartKey | ChartWorkingKey): number {
  const shown = (CHART_KEYS as readonly string[]).indexOf(key);
  return shown >= 0
    ? shown
    : WORKINGS_FROM + (CHART_WORKING_KEYS as readonly string[]).indexOf(key);
}

export function chartArea(key: ChartKey | ChartWorkingKey, layout: Layout): Area {
  return area(CHART_ROW.first, chartColumn(key), runsFollowed(layout), 1);
}

type AnyKey = ChartKey | ChartWorkingKey;

export interface ChartReferences {
  readonly cell: Readonly<Record<AnyKey, string>>;
  readonly above: Readonly<Record<AnyKey, string>>;
  readonly column: Readonly<Record<AnyKey, string>>;
  /** The row's number from 1: of a run, or of a line. */
  readonly number: string;
}

export function chartReferences(layout: Layout): ChartReferences {
  const keyed = (point: (key: AnyKey) => string) =>
    Object.fromEntries(
      [...CHART_KEYS, ...CHART_WORKING_KEYS].map((key) => [key, point(key)]),
    ) as Record<AnyKey, string>;
  return {
    cell: keyed((key) => cellAddress(CHART_ROW.first, chartColumn(key), 'column')),
    above: keyed((key) => cellAddress(CHART_ROW.header, chartColumn(key), 'column')),
    column: keyed((key) => areaAddress(chartArea(key, layout), 'both')),
    number: `(ROW()-ROW(${cellAddress(CHART_ROW.header, 0, 'both')}))`,
  };
}
