/**
 * Whether a row that a person adds below gets its formulas by itself. Excel fills them in unless its autocorrection is
 * switched off, and no call tells that: so a row is added, looked at, and taken away again.
 */
import type { SheetPlan } from '../../sheets/plan/plan';
import type { Added } from './added';
import { stubbornly, type Pause } from './clearing';

/** Undefined where it could not be found out. Rejects where the row that was added may still be there. */
export async function fillsNewRows(
  added: Added,
  plans: readonly SheetPlan[],
  pause: Pause,
): Promise<boolean | undefined> {
  let fills: boolean | undefined;
  for (const [sheet, { table }] of plans.entries()) {
    const computed = table?.columns.flatMap(({ formula }, at) => (formula === undefined ? [] : at));
    if (table === undefined || computed === undefined || computed.length === 0) continue;
    try {
      const formulas = await added.addRow(sheet, table.name);
      const isFilled = computed.every((at) => String(formulas[at]).startsWith('='));
      fills = isFilled && fills !== false;
    } catch {
      // It is not worth an insertion; the row may have been added all the same.
    }
    await stubbornly(() => added.removeRow(sheet, table.name, table.area.rows - 1), pause);
  }
  return fills;
}
