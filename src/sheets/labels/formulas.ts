/** What the labels say, as formulas: two for each run, one at either end. */
import { saidOfRun, shortened } from '../crew/said';
import { text } from '../plan/formula';
import { columnReferences, runsFollowed } from '../schedule/layout';
import type { Layout } from '../station/layout';
import { LABEL_CELL_KEYS } from '../station/labels';
import type { ColumnKey } from '../station/schedule-keys';
import { LEVELS } from '../station/verdicts';
import { ENDS, type LabelHeadKey, type LabelReferences, type LabelWorkingKey } from './layout';
import { USUAL_STOCK, type Stock } from './stock';

const LINE_BREAK = 'CHAR(10)';
/** What must not be labelled as if it were well. */
const DOUBTED = ['danger', 'fails', 'unclear'] as const;
const UNCLEAR = LEVELS.indexOf('unclear') + 1;

/** Characters that a line of a label holds in its type. */
export interface LabelChars {
  readonly name: number;
  readonly line: number;
}

export function labelWorkingFormulas(
  layout: Layout,
  { cell, above, column, number, head }: LabelReferences,
  chars: LabelChars,
): Readonly<Record<LabelWorkingKey, string>> {
  const schedule = columnReferences(layout, true);
  const there = (key: ColumnKey) => `INDEX(${schedule[key]},${number})`;
  const said = saidOfRun(layout, number);
  const whereThere = (formula: string) => `IF(${cell.there}=0,"",${formula})`;
  const ofRun = (key: LabelWorkingKey) => `INDEX(${column[key]},${cell.ofRun})`;
  const isNear = `${number}<>2*INT(${number}/2)`;
  const other = `IF(${isNear},"to "&${ofRun('far')},"from "&${ofRun('near')})`;
  const sized = `${ofRun('wire')}&", fuse "&${ofRun('fuse')}`;
  const doubt = DOUBTED.reduceRight(
    (further, level) =>
      `IF(${ofRun('level')}=${LEVELS.indexOf(level) + 1},${LINE_BREAK}&${text(`NOT OK: ${level}`)},${further})`,
    '""',
  );
  const whereLabel = (formula: string) => `IF(${cell.ofRun}=0,"",${formula})`;
  return {
    there: `IF(${number}>ROWS(${schedule.level}),0,IF(ISERROR(${there('level')}),1,IF(OR(LEN(${there('level')})>0,LEN(TRIM(${there('run')}))>0),1,0)))`,
    upTo: `N(${above.upTo})+${cell.there}`,
    name: whereThere(said.name),
    near: whereThere(said.near),
    far: whereThere(said.far),
    wire: whereThere(said.wire),
    fuse: whereThere(said.fuse),
    length: whereThere(said.length),
    level: `IF(${cell.there}=0,0,IF(ISNUMBER(${there('level')}),${there('level')},${UNCLEAR}))`,
    ofRun: `IF(${number}>${head.labels},0,MATCH(INT((${number}+1)/${ENDS}),${column.upTo},0))`,
    labelName: whereLabel(shortened(ofRun('name'), chars.name)),
    labelText: whereLabel(
      `${shortened(other, chars.line)}&${LINE_BREAK}&${shortened(sized, chars.line)}&${LINE_BREAK}&${ofRun('length')}&${doubt}`,
    ),
  };
}

/** What stands in a place of the stock, counted from 1. */
export function slotFormula(
  { head, column }: LabelReferences,
  key: 'labelName' | 'labelText',
  slot: number,
): string {
  return `IF(OR(${slot}<=${head.used},${slot}-${head.used}>${head.labels}),"",INDEX(${column[key]},${slot}-${head.used}))`;
}

export function labelHeadFormulas({
  column,
  typed,
}: LabelReferences): Readonly<Record<LabelHeadKey, string>> {
  return {
    labels: `${ENDS}*SUM(${column.there})`,
    used: `IF(ISNUMBER(${typed.used}),INT(MAX(0,${typed.used})),0)`,
  };
}

/** What is wrong with the sheet; empty where nothing is. */
export function labelWarning(
  layout: Layout,
  { head, typed }: LabelReferences,
  stock: Stock,
  printedLabels: number,
): string {
  const asDrawn = LABEL_CELL_KEYS.flatMap((key) => {
    if (key === 'used') return [];
    const drawn = stock[key];
    const usual = USUAL_STOCK[key];
    const said = (figure: string | number) =>
      typeof figure === 'string' ? text(figure) : String(figure);
    return [`IF(${typed[key]}="",${said(usual)},${typed[key]})=${said(drawn)}`];
  });
  const schedule = columnReferences(layout, true);
  return [
    `IF(AND(${asDrawn.join(',')}),"",${text('These labels are not drawn for the figures above. Share a copy: it is drawn for them, if labels of that size can be. ')})`,
    `IF(${head.labels}+${head.used}>${printedLabels},${text('Widen the print area: labels stand below it. ')},"")`,
    `IF(ROWS(${schedule.level})>${runsFollowed(layout)},${text('The schedule has more runs than this sheet follows: take a new copy. ')},"")`,
  ].join('&');
}
