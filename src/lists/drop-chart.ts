/** Whether a schedule has a Drop chart; nothing is typed on it. */
import { CHART_COLUMNS_SHOWN } from '../sheets/drop-chart/sheet';
import { companion } from './labelled';
import type { RawTable } from './raw';

const CHART_SIGNS: readonly string[] = Object.values(CHART_COLUMNS_SHOWN).map(
  ({ heading }) => heading,
);

export function hasDropChart(tables: readonly RawTable[], schedule: string): boolean {
  return companion(tables, schedule, CHART_SIGNS) !== undefined;
}
