/** Which rule of entries a cell has, asked once and not at every drawing of it. */
import type { Univer } from '@univerjs/core';
import { SheetDataValidationModel } from '@univerjs/preset-sheets-data-validation';

/** The grid's rules of one sheet by their areas, with the parts that it keeps to itself. */
interface RuleAreas {
  /** Set from a change until the tree is made anew. */
  readonly _dirty: boolean;
  /** Its root is another object whenever it was made anew. */
  readonly _tree: { readonly data: object };
}

interface InnerModel {
  _ensureRuleMatrix(unitId: string, sheetId: string): RuleAreas;
}

/** Above the number of columns of a sheet. */
const COLUMNS = 32_768;

/**
 * Keeps what the grid (0.25.1) found for a cell until its rules change: it searches a tree of areas for every cell at every
 * drawing, several times, which took a fifth of the time between an edit and its answer. To be called when there is a workbook.
 */
export function askEntryRulesOnce(univer: Univer): void {
  const model = univer.__getInjector().get(SheetDataValidationModel);
  const areasOf = (unitId: string, sheetId: string) =>
    (model as unknown as InnerModel)._ensureRuleMatrix(unitId, sheetId);
  const find = model.getRuleIdByLocation.bind(model);
  const found = new WeakMap<object, Map<number, string | undefined>>();
  model.getRuleIdByLocation = (unitId, sheetId, row, column) => {
    const { _dirty: isChanging, _tree: tree } = areasOf(unitId, sheetId);
    if (isChanging) return find(unitId, sheetId, row, column);
    const rules = found.get(tree.data) ?? new Map<number, string | undefined>();
    found.set(tree.data, rules);
    const cell = row * COLUMNS + column;
    let rule = rules.get(cell);
    if (rule === undefined && !rules.has(cell)) {
      rule = find(unitId, sheetId, row, column);
      rules.set(cell, rule);
    }
    return rule;
  };
}
