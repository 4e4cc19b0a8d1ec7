/**
 * What the formulas of a workbook without the add-in point at beyond the schedule itself: named ranges of the Conductors
 * and Fuses sheets, and the columns of the Workings sheet, one row a run.
 */
import type { RowReferences } from './references';

export const DATA_KEYS = [
  /** Sizes as text, and by size in the same rows: what follows. */
  'sizes',
  'areaMm2',
  'ohmsPerM',
  'ampacity',
  /** 1 for a size that may be suggested, else 0; its place among those; its ampacity, 0 where it may not. */
  'choose',
  'order',
  'chooseAmps',
  /** Metres in the length unit, and whether the rules that wires, heat and sizes hang on can be used. */
  'metresPer',
  'wireOk',
  'heatOk',
  'seriesOk',
  /** Standard ratings, ascending. */
  'fuses',
  /** How many runs stand deeper than the workings reach. */
  'tooDeep',
  'chemistries',
  'restingCharge',
  'restingVolts',
] as const;
export type DataKey = (typeof DATA_KEYS)[number];

export interface NativeNames {
  readonly conductorsSheet: string;
  readonly fusesSheet: string;
  readonly workingsSheet: string;
  readonly data: Readonly<Record<DataKey, string>>;
}

/** Levels that the workings of a tree reach below and above a run. */
export const TREE_LEVELS = 4;
/** Fixed-point rounds for loads of steady power. */
export const POWER_ROUNDS = 3;
export const CHARGES = ['full', 'low'] as const;
export type Charge = (typeof CHARGES)[number];

type Level = 1 | 2 | 3 | 4;
type Round = 1 | 2 | 3;
type RoundKey = `${Charge}${Round}${'amps' | `sum${Level}` | 'drop'}`;

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
  | `load${Level}`
  | `unknown${Level}`
  | 'unknownVolts'
  | 'branchUnknown'
  | `${Charge}${0 | Round}volts`
  | `${Charge}Served`
  | RoundKey
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
