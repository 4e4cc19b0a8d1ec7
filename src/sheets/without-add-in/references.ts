/**
 * What the formulas of a workbook without the add-in point at beyond the schedule itself: named ranges of the Conductors
 * and Fuses sheets, and the columns of the Workings sheet, one row a run.
 */
import type { DataKey } from '../station/data-keys';
import type { RowReferences } from '../station/references';

/** Fixed-point rounds for loads of steady power. */
export const ROUNDS = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10] as const;
export type Round = (typeof ROUNDS)[number];
export const LAST_ROUND = 10 satisfies Round;
/** Rounds after which the volts are carried on to where the moves of the last two rounds point. */
export const AHEAD_AFTER = [4, 8] as const satisfies readonly Round[];
export type AheadRound = (typeof AHEAD_AFTER)[number];
/** Volts closer than this count as settled. */
export const SETTLED_V = 0.001;
export const CHARGES = ['full', 'low'] as const;
export type Charge = (typeof CHARGES)[number];

/** Columns of the Workings sheet. */
export type WorkKey =
  | 'sizeRow'
  | 'lookedAt'
  | 'fuseNeeded'
  | 'byDrop'
  | 'byHeat'
  | 'byFuse'
  | 'chosen'
  | 'root'
  | 'misplaced'
  | 'startDrop'
  | 'load'
  | 'unknown'
  | 'unknownVolts'
  | 'branchUnknown'
  | `${Charge}${0 | Round}volts`
  | `${Charge}Served`
  | `${Charge}Rounds`
  | `${Charge}${AheadRound}ahead`
  | `${Charge}Unsettled`
  | `${Charge}${Round}${'amps' | 'drop'}`
  | 'amps'
  | `${Charge}Volts`;

export interface NativeReferences extends RowReferences {
  /** The Workings cell of the same run. */
  readonly work: Readonly<Record<WorkKey, string>>;
  /** The Workings column of all runs. */
  readonly workColumn: Readonly<Record<WorkKey, string>>;
  readonly data: Readonly<Record<DataKey, string>>;
  /** The place of the schedule's row that a row of Workings looks at. */
  readonly lookedAt: string;
}

export type NativeFormula = (row: NativeReferences) => string;
