/** What the sheets of a station take in place of calls of our functions, in a workbook without the add-in. */
import { nativeCall, STEP } from './native-calls';
import type { Call } from '../plan/formula';
import { there } from '../protection/formulas';
import { protectionReferences, TYPE_DATA } from '../protection/layout';
import { protectionSheetFormulas, type NativeProtection } from '../protection/sheet';
import { columnFormulas, type NativeSchedule } from '../schedule/sheet';
import { perLayout, type Layout } from '../station/layout';
import { GAUGE_COLUMNS } from './gauge';
import { steadyAtWriting, type SteadyAtWriting } from './steady-heat';
import { scheduleReferences } from './workings-sheet';

export interface NativeParts {
  readonly schedule: NativeSchedule;
  readonly supply: Call;
  readonly protection: NativeProtection;
}

/** What follows from the layout alone. */
const partsOf = (maySort: boolean) =>
  perLayout((layout) => {
    const { data, protect, rule } = layout.names;
    const references = scheduleReferences(layout, maySort);
    const looksUp = { data, types: TYPE_DATA };
    const row = protectionReferences(layout, data, 0);
    const [start, limit, material] = [protect.startC, protect.limitC, rule.material];
    return {
      schedule: {
        formulaAt: columnFormulas(
          references,
          Object.fromEntries(
            Object.entries(GAUGE_COLUMNS).map(([key, formula]) => [key, formula(references)]),
          ),
        ),
      },
      supply: nativeCall(looksUp),
      formulas: protectionSheetFormulas(
        layout,
        data,
        {
          head: nativeCall(looksUp),
          row: nativeCall(looksUp, {
            [STEP.sizeRow(there(row, 'size'))]:
              `INDEX(${references.workColumn.sizeRow},${row.own.place})`,
            [STEP.k(start, limit, material)]: protect.k,
          }),
        },
        ['steady'],
      ),
    };
  });

const SORTED_PARTS = partsOf(true);
const UNSORTED_PARTS = partsOf(false);

/** The parts for a layout; `steady` are the steady temperatures at writing, run by run, and `maySort` whether runs stay right when rows are sorted. */
export function nativeParts(
  layout: Layout,
  steady: readonly SteadyAtWriting[],
  maySort: boolean,
): NativeParts {
  const { schedule, supply, formulas } = (maySort ? SORTED_PARTS : UNSORTED_PARTS)(layout);
  return {
    schedule,
    supply,
    protection: {
      formulas,
      steady: steadyAtWriting(protectionReferences(layout, layout.names.data, 0), steady),
    },
  };
}
