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
const partsOfLayout = perLayout((layout) => {
  const { data, protect, rule } = layout.names;
  const references = scheduleReferences(layout);
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

/** The parts for a layout; `steady` are the steady temperatures at writing, run by run. */
export function nativeParts(layout: Layout, steady: readonly SteadyAtWriting[]): NativeParts {
  const { schedule, supply, formulas } = partsOfLayout(layout);
  return {
    schedule,
    supply,
    protection: {
      formulas,
      steady: (index) =>
        steadyAtWriting(protectionReferences(layout, layout.names.data, index), steady[index]),
    },
  };
}
