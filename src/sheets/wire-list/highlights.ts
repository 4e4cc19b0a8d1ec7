/** Where the Wire list draws the eye. */
import { area } from '../plan/area';
import { HIGHLIGHT_STYLES } from '../plan/highlight-styles';
import type { HighlightPlan } from '../plan/plan';
import { LINES, runArea, buyColumn, WIRE_ROW, type WireReferences } from './layout';

export function wireHighlights({ cell, buy, run }: WireReferences, rows: number): HighlightPlan[] {
  const says = runArea('says', rows);
  return [
    {
      area: says,
      formula: `LEN(${cell.wrong})>0`,
      style: HIGHLIGHT_STYLES.fails,
      meaning: 'a run that is missing from the lines',
    },
    {
      area: says,
      formula: `LEN(${run.says})>0`,
      style: HIGHLIGHT_STYLES.check,
      meaning: 'a run whose verdict is to be read first',
    },
    {
      area: area(WIRE_ROW.firstLine, buyColumn('says'), LINES, 1),
      formula: `AND(${cell.lineRun}>0,OR(LEN(${buy.price})=0,LEN(${buy.mass})=0))`,
      style: HIGHLIGHT_STYLES.check,
      meaning: 'a line without a price or a mass',
    },
  ];
}
