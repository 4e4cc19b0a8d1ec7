/** Rules of entry and conditional formats of a plan, in the grid's own terms. */
import {
  DataValidationErrorStyle,
  DataValidationOperator,
  DataValidationRenderMode,
  DataValidationType,
  generateRandomId,
  type IRange,
  type ISheetDataValidationRule,
} from '@univerjs/core';
import {
  CFRuleType,
  CFSubRuleType,
  type IConditionFormattingRule,
  type IFormulaHighlightCell,
} from '@univerjs/preset-sheets-conditional-formatting';
import { areaAddress, type Area } from '../../sheets/plan/area';
import type { EntryPlan, HighlightPlan } from '../../sheets/plan/plan';
import { gridStyle } from './snapshot';

/**
 * For rules that come with a layout: the grid works out the heights of all rows that a list is offered in where a person
 * asks for one, of the sheet in view whichever it is, and a layout has its heights.
 */
export const AS_IT_STANDS = 'patched';

/** An area as the grid's range. */
export function gridRange(area: Area): IRange {
  return {
    startRow: area.row,
    startColumn: area.column,
    endRow: area.row + area.rows - 1,
    endColumn: area.column + area.columns - 1,
  };
}

type Limits = Pick<ISheetDataValidationRule, 'type' | 'operator' | 'formula1' | 'formula2'>;

function limits(entry: EntryPlan): Limits {
  if (entry.choices !== undefined) {
    return { type: DataValidationType.LIST, formula1: JSON.stringify(entry.choices) };
  }
  if (entry.choicesFrom !== undefined) {
    return {
      type: DataValidationType.LIST,
      formula1: `=${areaAddress(entry.choicesFrom, 'both')}`,
    };
  }
  const { least, most } = entry.number ?? {};
  const type = DataValidationType.DECIMAL;
  if (least !== undefined && most !== undefined) {
    const operator = DataValidationOperator.BETWEEN;
    return { type, operator, formula1: String(least), formula2: String(most) };
  }
  if (least !== undefined) {
    const operator = DataValidationOperator.GREATER_THAN_OR_EQUAL;
    return { type, operator, formula1: String(least) };
  }
  if (most !== undefined) {
    const operator = DataValidationOperator.LESS_THAN_OR_EQUAL;
    return { type, operator, formula1: String(most) };
  }
  return { type: DataValidationType.ANY };
}

/** A rule of entry: a list, limits, or only the prompt that the status line shows. */
export function validationRule(entry: EntryPlan): ISheetDataValidationRule {
  const othersAllowed = entry.othersAllowed === true || entry.choicesFrom !== undefined;
  return {
    uid: generateRandomId(),
    ranges: [gridRange(entry.area)],
    ...limits(entry),
    allowBlank: true,
    showDropDown: entry.choices !== undefined || entry.choicesFrom !== undefined,
    renderMode: DataValidationRenderMode.ARROW,
    // Never STOP, which throws away what was typed: it stays, marked, and the status line says what is wrong with it.
    errorStyle: othersAllowed ? DataValidationErrorStyle.INFO : DataValidationErrorStyle.WARNING,
    showErrorMessage: !othersAllowed,
    errorTitle: entry.promptTitle,
    error: entry.prompt,
    promptTitle: entry.promptTitle,
    prompt: entry.prompt,
  };
}

/** A conditional format by formula. */
export function highlightRule(
  highlight: HighlightPlan,
): IConditionFormattingRule<IFormulaHighlightCell> {
  return {
    cfId: generateRandomId(),
    ranges: [gridRange(highlight.area)],
    stopIfTrue: false,
    rule: {
      type: CFRuleType.highlightCell,
      subType: CFSubRuleType.formula,
      value: `=${highlight.formula}`,
      style: gridStyle(highlight.style),
    },
  };
}
