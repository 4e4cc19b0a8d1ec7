/** Heights of rows whose words want more than a line, and how much the crew's page prints, by what they come to. */
import { HEAD_AREAS } from './crew/layout';
import { forLines } from './crew/sheet';
import { PROTECTION_COLUMNS } from './protection/columns';
import { PROTECTION_ROW } from './protection/layout';
import { SCHEDULE_COLUMNS } from './schedule/columns';
import { ROW } from './schedule/layout';
import { SOURCE_WIDTH, supplyArea } from './supply/layout';
import type { SheetPlan } from './plan/plan';
import type { StationValues } from './station-values';
import type { ScheduleNames } from './station/naming';

const LINE_PT = 15;
/** Bold text is wider than the figure that a column's width counts in. */
const BOLD_WIDTH = 1.15;

/** A text that wraps, and its column's width in characters. */
type Wrapped = readonly (readonly [text: unknown, widthChars: number])[];

function withHeights(plan: SheetPlan, first: number, rows: readonly Wrapped[]): SheetPlan {
  const heights = rows.flatMap((texts, index) => {
    const lines = texts.map(([text, width]) =>
      Math.ceil((String(text).length * BOLD_WIDTH) / width),
    );
    const most = Math.max(...lines);
    return most > 1 ? [[first + index, most * LINE_PT] as const] : [];
  });
  return { ...plan, rowHeightsPt: { ...plan.rowHeightsPt, ...Object.fromEntries(heights) } };
}

/** The sheets of a station, with rows of the schedule and of Protection as high as their words need at the start. */
export function withRowHeights(
  plans: readonly SheetPlan[],
  { sheet, supplySheet, protectionSheet, crewSheet }: ScheduleNames,
  { runs, supply, protection, sheets }: StationValues,
): readonly SheetPlan[] {
  const { verdict, mend } = SCHEDULE_COLUMNS;
  const heights = new Map([
    [
      sheet,
      (plan: SheetPlan) =>
        withHeights(
          plan,
          ROW.first,
          runs.map((run) => [
            [run.verdict, verdict.widthChars],
            [run.mend, mend.widthChars],
          ]),
        ),
    ],
    [
      supplySheet,
      (plan: SheetPlan) =>
        (['says', 'mainState'] as const).reduce(
          (higher, key) =>
            withHeights(higher, supplyArea(key).row, [
              supply.sources.map((source) => [source[key], SOURCE_WIDTH]),
            ]),
          plan,
        ),
    ],
    [
      protectionSheet,
      (plan: SheetPlan) =>
        withHeights(
          plan,
          PROTECTION_ROW.first,
          protection.rows.map(({ words }) => [[words, PROTECTION_COLUMNS.words.widthChars]]),
        ),
    ],
  ]);
  const { row, column } = HEAD_AREAS.wanted;
  const wanted = Number(sheets.at(crewSheet, row, column));
  heights.set(crewSheet, (plan) => forLines(plan, wanted));
  return plans.map((plan) => heights.get(plan.name)?.(plan) ?? plan);
}
