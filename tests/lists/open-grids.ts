/** Plans as the sheets of an open workbook, without a spreadsheet. */
import { calculate } from '../../src/sheets/calculate/calculate';
import type { ComputedGrid, GridValue } from '../../src/sheets/plan/grid';
import { layBlocks } from '../../src/sheets/plan/lay-blocks';
import type { SheetPlan } from '../../src/sheets/plan/plan';

interface OpenGrid extends ComputedGrid {
  readonly values: GridValue[][];
  readonly computed: boolean[][];
}

/** Their cells with what formulas come to, as a host hands them over. */
export function openGrids(plans: readonly SheetPlan[]): OpenGrid[] {
  const calculated = calculate(plans);
  return plans.map(({ name, blocks }) => {
    const values: GridValue[][] = [];
    const computed: boolean[][] = [];
    for (const { row, column, content } of layBlocks(blocks)) {
      const isFormula = typeof content === 'object' && content !== null;
      const value = isFormula ? calculated.at(name, row, column) : content;
      (values[row] ??= [])[column] =
        typeof value === 'object' ? (value === null ? null : value.code) : value;
      (computed[row] ??= [])[column] = isFormula;
    }
    const columns = values.reduce((most, cells) => Math.max(most, cells.length), 0);
    const filled = <Of>(rows: Of[][], otherwise: Of) =>
      Array.from({ length: rows.length }, (_, row) =>
        Array.from({ length: columns }, (__, column) => rows[row]?.[column] ?? otherwise),
      );
    return {
      sheetName: name,
      values: filled<GridValue>(values, null),
      computed: filled(computed, false),
    };
  });
}
