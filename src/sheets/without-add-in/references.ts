/**
 * What the formulas of a workbook without the add-in point at beyond the schedule itself: named ranges of the Conductors
 * and Fuses sheets, and the columns of the Workings sheet, one row a run.
 */
import type { DataKey } from '../station/data-keys';
import type { RowReferences } from '../station/references';

/** Fixed-point rounds for loads of steady power. */
export const ROUNDS = [1, 2, 3] as const;
export type Round = (typeof ROUNDS)[number];
export const POWER_ROUNDS = 3 satisfies Round;
export const CHARGES = ['full', 'low'] as const;
export type Charge = (typeof CHARGES)[number];

/** Columns of the Workings sheet. */
export type WorkKey =
  | 'sizeRow'
  | 'fuseNeeded'
  | 'byDrop'
  | 'byHeat'
  | 'byFuse'
  | 'chosen'
  | 'root'
  | 'misplaced'
  | 'deep'
  | 'load'
  | 'unknown'
  | 'unknownVolts'
  | 'branchUnknown'
  | `${Charge}${0 | Round}volts`
  | `${Charge}Served`
  | `${Charge}${Round}${'amps' | 'drop'}`
  | 'amps'
  | `${Charge}Volts`;

export interface NativeReferences extends RowReferences {
  /** The Workings cell of the same run. */
  readonly work: Readonly<Record<WorkKey, string>>;
  /** The Workings column of all runs. */
  readonly workColumn: Readonly<Record<WorkKey, string>>;
  readonly data: Readonly<Record<DataKey, string>>;
}

export type NativeFormula = (row: NativeReferences) => string;
