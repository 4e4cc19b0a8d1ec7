/** What the Drawing sheet says of runs, as formulas, and whether the schedule is still as it was drawn. */
import { saidOfRun } from '../crew/said';
import { text } from '../plan/formula';
import { columnReferences, runsFollowed } from '../schedule/layout';
import type { Layout } from '../station/layout';
import type { ColumnKey } from '../station/schedule-keys';
import type { DrawingKey, DrawingReferences } from './layout';

const BETWEEN = '&"|"&';

/**
 * A run as it is drawn, in one text. Figures are counted in whole steps: a text of a whole number is the same wherever
 * decimals are written with a comma.
 */
function asDrawn(schedule: Readonly<Record<ColumnKey, string>>, number: string): string {
  const there = (key: ColumnKey) => `INDEX(${schedule[key]},${number})`;
  const steps = (key: ColumnKey, perUnit: number) =>
    `IF(ISNUMBER(${there(key)}),ROUND(${there(key)}*${perUnit},0),"-")`;
  const words = (key: ColumnKey) => `IFERROR(TRIM(${there(key)}),"-")`;
  return [
    ...(['run', 'load', 'fedFrom', 'endsAt', 'size', 'fused', 'endFused', 'verdict'] as const).map(
      words,
    ),
    steps('oneWay', 100),
    steps('fuse', 10),
    steps('dropVolts', 100),
    steps('pathDrop', 10_000),
    steps('loadVolts', 100),
    steps('lowVolts', 100),
  ].join(BETWEEN);
}

/** The workings in their first row, to be filled down; what was drawn is no formula. */
export function drawingFormulas(
  layout: Layout,
  { cell, number }: DrawingReferences,
): Readonly<Record<Exclude<DrawingKey, 'drawn'>, string>> {
  const schedule = columnReferences(layout, true);
  const there = (key: ColumnKey) => `INDEX(${schedule[key]},${number})`;
  const said = saidOfRun(layout, number);
  const whereThere = (formula: string) => `IF(${cell.there}=0,"",${formula})`;
  return {
    there: `IF(${number}>ROWS(${schedule.level}),0,IF(ISERROR(${there('level')}),1,IF(OR(LEN(${there('level')})>0,LEN(TRIM(${there('run')}))>0),1,0)))`,
    name: whereThere(said.name),
    far: whereThere(said.far),
    wire: whereThere(said.wire),
    length: whereThere(said.length),
    now: whereThere(asDrawn(schedule, number)),
  };
}

/** What stands over the picture where it is not to be trusted; empty where it is. */
export function drawingWarning(layout: Layout, { column }: DrawingReferences): string {
  const { level } = columnReferences(layout, true);
  const changed = `SUMPRODUCT(--(${column.now}<>${column.drawn}))`;
  return [
    `IF(IFERROR(${changed},1)=0,"",${text('THE SCHEDULE HAS CHANGED since this was drawn: do not go by it; draw it again, or take a new copy. ')})`,
    `IF(ROWS(${level})>${runsFollowed(layout)},${text('The schedule has more runs than this sheet follows: take a new copy. ')},"")`,
  ].join('&');
}
