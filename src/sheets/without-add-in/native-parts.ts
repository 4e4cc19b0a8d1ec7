/** What the sheets of a station take in place of calls of our functions, in a workbook without the add-in. */
import { nativeCall, STEP } from './native-calls';
import type { Call } from '../plan/formula';
import { there } from '../protection/formulas';
import { protectionReferences, TYPE_DATA } from '../protection/layout';
import type { NativeProtection } from '../protection/sheet';
import type { NativeSchedule } from '../schedule/sheet';
import type { Layout } from '../station/layout';
import { GAUGE_COLUMNS } from './gauge';
import { steadyAtWriting, type SteadyAtWriting } from './steady-heat';
import { nativeReferences } from './workings-sheet';

export interface NativeParts {
  readonly schedule: NativeSchedule;
  readonly supply: Call;
  readonly protection: NativeProtection;
}

/** The parts for a layout; `steady` are the steady temperatures at writing, run by run. */
export function nativeParts(layout: Layout, steady: readonly SteadyAtWriting[]): NativeParts {
  const { data, protect, rule } = layout.names;
  const references = nativeReferences(layout, 0, 'schedule');
  const looksUp = { data, types: TYPE_DATA };
  const row = protectionReferences(layout, data, 0);
  const [start, limit, material] = [protect.startC, protect.limitC, rule.material];
  return {
    schedule: {
      references,
      columns: Object.fromEntries(
        Object.entries(GAUGE_COLUMNS).map(([key, formula]) => [key, formula(references)]),
      ),
    },
    supply: nativeCall(looksUp),
    protection: {
      headCall: nativeCall(looksUp),
      rowCall: nativeCall(looksUp, {
        [STEP.sizeRow(there(row, 'size'))]:
          `INDEX(${references.workColumn.sizeRow},${row.own.place})`,
        [STEP.k(start, limit, material)]: protect.k,
      }),
      sizes: data,
      steady: (index) => steadyAtWriting(protectionReferences(layout, data, index), steady[index]),
    },
  };
}
