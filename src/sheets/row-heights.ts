/** Heights of rows whose words want more than a line, and how much the crew's page prints, by what they come to. */
import { BUILT_COLUMNS } from './as-built/columns';
import { asBuiltName, BUILT_ROW, builtColumn } from './as-built/layout';
import { HEAD_AREAS } from './crew/layout';
import { forLines } from './crew/sheet';
import { PROTECTION_COLUMNS } from './protection/columns';
import { PROTECTION_ROW } from './protection/layout';
import { SCHEDULE_COLUMNS } from './schedule/columns';
import { ROW } from './schedule/layout';
import type { ScheduleReading } from './schedule/reading';
import { SOURCE_WIDTH, supplyArea } from './supply/layout';
import type { SheetPlan } from './plan/plan';
import type { StationValues } from './station-values';
import type { ScheduleNames } from './station/naming';

const LINE_PT = 15;
/** Bold text is wider than the figure that a column's width counts in. */
const BOLD_WIDTH = 1.15;

/** A text that wraps, and its column's width in characters. */
type Wrapped = readonly (readonly [text: unknown, widthChars: number])[];

/** How many lines the longest of the texts takes. */
const linesOf = (texts: Wrapped) =>
  Math.max(...texts.map(([text, width]) => Math.ceil((String(text).length * BOLD_WIDTH) / width)));

/** How high the rows of a schedule have to be for their verdicts and fixes, by zero-based row, in points. */
export function runHeightsPt({ rows }: ScheduleReading): ReadonlyMap<number, number> {
  const { verdict, mend } = SCHEDULE_COLUMNS;
  return new Map(
    rows.map(({ row, values }) => [
      row,
      LINE_PT *
        linesOf([
          [values.verdict ?? '', verdict.widthChars],
          [values.mend ?? '', mend.widthChars],
        ]),
    ]),
  );
}

function withHeights(plan: SheetPlan, first: number, rows: readonly Wrapped[]): SheetPlan {
  const heights = rows.flatMap((texts, index) => {
    const most = linesOf(texts);
    return most > 1 ? [[first + index, most * LINE_PT] as const] : [];
  });
  return { ...plan, rowHeightsPt: { ...plan.rowHeightsPt, ...Object.fromEntries(heights) } };
}

/** The sheets of a station, with rows of runs as high as their words need at the start. */
export function withRowHeights(
  plans: readonly SheetPlan[],
  names: ScheduleNames,
  { runs, supply, protection, sheets }: StationValues,
): readonly SheetPlan[] {
  const { sheet, supplySheet, protectionSheet, crewSheet } = names;
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
  heights.set(asBuiltName(names), (plan) =>
    withHeights(
      plan,
      BUILT_ROW.first,
      runs.map((_, index) => [
        [
          sheets.at(plan.name, BUILT_ROW.first + index, builtColumn('verdict')) ?? '',
          BUILT_COLUMNS.verdict.widthChars,
        ],
      ]),
    ),
  );
  const { row, column } = HEAD_AREAS.wanted;
  const wanted = Number(sheets.at(crewSheet, row, column));
  heights.set(crewSheet, (plan) => forLines(plan, wanted));
  return plans.map((plan) => heights.get(plan.name)?.(plan) ?? plan);
}
