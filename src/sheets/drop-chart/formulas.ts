/** What the Drop chart shows, as formulas; they are the same with and without the add-in. */
import { saidOfRun } from '../crew/said';
import { text } from '../plan/formula';
import { columnReferences, runsFollowed } from '../schedule/layout';
import type { Layout } from '../station/layout';
import { COUNTS } from '../station/parameters';
import type { ColumnKey } from '../station/schedule-keys';
import type { ChartKey, ChartReferences, ChartWorkingKey } from './layout';

export function chartWorkingFormulas(
  layout: Layout,
  { above, column, number }: ChartReferences,
): Readonly<Record<ChartWorkingKey, string>> {
  const schedule = columnReferences(layout, true);
  const there = (key: ColumnKey) => `INDEX(${schedule[key]},${number})`;
  // A run that only feeds others has no load whose target could be missed.
  const isShown = `IF(${number}>ROWS(${schedule.level}),FALSE,IF(ISNUMBER(${there('target')}),IF(OR(LEN(${there('peak')})>0,LEN(TRIM(${there('run')}))>0),IF(LEN(${there('peak')})>0,TRUE,COUNTIF(${schedule.place1},${number})=0),FALSE),FALSE))`;
  return {
    upTo: `N(${above.upTo})+IF(${isShown},1,0)`,
    place: `IF(${number}>MAX(${column.upTo}),0,MATCH(${number},${column.upTo},0))`,
  };
}

export function chartFormulas(
  layout: Layout,
  { cell }: ChartReferences,
): Readonly<Record<ChartKey, string>> {
  const schedule = columnReferences(layout, true);
  const { rule } = layout.names;
  const there = (key: ColumnKey) => `INDEX(${schedule[key]},${cell.place})`;
  const whereLine = (formula: string) => `IF(${cell.place}=0,"",${formula})`;
  // What the target counts for: each run by itself, or the whole way to the load.
  const lost = `IF(${rule.counts}=${text(COUNTS[1])},${there('dropShare')},${there('pathDrop')})`;
  const isOver = `IFERROR(N(${there('overDrop')})>0,FALSE)`;
  const where = (test: string) => whereLine(`IF(ISNUMBER(${lost}),IF(${test},${lost},""),"")`);
  return {
    run: whereLine(
      `${saidOfRun(layout, cell.place).name}&IF(ISNUMBER(${lost}),"",${text(' (not known)')})`,
    ),
    within: where(`NOT(${isOver})`),
    over: where(isOver),
    target: whereLine(`IF(ISNUMBER(${there('target')}),${there('target')},"")`),
  };
}

/** What brings a chart of all lines. */
const REMEDY: Readonly<Record<Layout['references'], string>> = {
  cells: 'take a new copy',
  names: 'take a new copy',
  table: 'delete this sheet, and add it again with the pane',
};

/** What the chart leaves out; empty where it leaves out nothing. */
export function chartWarning(layout: Layout, { column }: ChartReferences, shown: number): string {
  const { level } = columnReferences(layout, true);
  const all = `MAX(${column.upTo})`;
  return [
    `IF(${all}>${shown},"The chart shows the first ${shown} of "&${all}&${text(` lines: ${REMEDY[layout.references]}. `)},"")`,
    `IF(ROWS(${level})>${runsFollowed(layout)},${text('The schedule has more runs than this sheet follows: take a new copy. ')},"")`,
  ].join('&');
}
