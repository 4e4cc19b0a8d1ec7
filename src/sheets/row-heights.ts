/** Heights of the schedule's rows whose words want more than a line, by what they come to. */
import { SCHEDULE_COLUMNS } from './schedule/columns';
import { ROW } from './schedule/layout';
import type { SheetPlan } from './plan/plan';
import type { RunValues } from './station-values';

const LINE_PT = 15;
/** Bold text is wider than the figure that a column's width counts in. */
const BOLD_WIDTH = 1.15;

const WRAPPED = (['verdict', 'mend'] as const).map(
  (key) => [key, SCHEDULE_COLUMNS[key].widthChars] as const,
);

/** The schedule's plan with its rows as high as their words need at the start. */
export function withRowHeights(plan: SheetPlan, runs: readonly RunValues[]): SheetPlan {
  const heights = runs.flatMap((values, index) => {
    const lines = WRAPPED.map(([key, width]) =>
      Math.ceil((String(values[key]).length * BOLD_WIDTH) / width),
    );
    const most = Math.max(...lines);
    return most > 1 ? [[ROW.first + index, most * LINE_PT] as const] : [];
  });
  return { ...plan, rowHeightsPt: { ...plan.rowHeightsPt, ...Object.fromEntries(heights) } };
}
