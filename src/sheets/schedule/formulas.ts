/**
 * The formulas of the schedule's computed columns, in our functions and plain arithmetic. Six of them call a function of
 * ours in every row; a load that misses its volts or its drop costs one more.
 */
import type { ColumnKey } from '../station/schedule-keys';
import { FIX_FORMULAS } from './fix';
import { JUDGEMENT_FORMULAS } from './judgement';
import { LOAD_FORMULAS } from './loads';
import { PLACE_FORMULAS } from './places';
import { QUANTITY_FORMULAS } from './quantities';
import type { RowFormula } from './row';
import { SIZING_FORMULAS } from './sizing';
import { VOLTS_FORMULAS } from './volts';

export const SCHEDULE_FORMULAS = {
  ...QUANTITY_FORMULAS,
  ...LOAD_FORMULAS,
  ...PLACE_FORMULAS,
  ...SIZING_FORMULAS,
  ...VOLTS_FORMULAS,
  ...JUDGEMENT_FORMULAS,
  ...FIX_FORMULAS,
} as const satisfies Partial<Record<ColumnKey, RowFormula>>;

export type FormulaKey = keyof typeof SCHEDULE_FORMULAS;
