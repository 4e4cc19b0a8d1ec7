/** The formulas of a sheet; that of rows filled down once. */
import type { SheetPlan } from './plan';

export function formulasOf({ blocks }: SheetPlan): readonly string[] {
  return blocks.flatMap(({ cells = [], fill = [] }) => [
    ...fill.flatMap((formula) => formula ?? []),
    ...cells.flat().flatMap((cell) => (typeof cell === 'object' ? (cell?.formula ?? []) : [])),
  ]);
}
