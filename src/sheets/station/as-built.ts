/** What a person writes down of finished runs: the meter, and readings run by run. */
import type { ForRun } from './for-run';
import type { TypedCells } from './named-cells';

export const BUILT_CELL_KEYS = ['excess', 'voltsStep', 'ampsStep', 'wireDoubt', 'tempC'] as const;
export type BuiltCellKey = (typeof BUILT_CELL_KEYS)[number];

export const READING_KEYS = ['voltsIn', 'voltsOut', 'amps', 'date', 'by'] as const;
export type ReadingKey = (typeof READING_KEYS)[number];
export type Readings = Readonly<Partial<Record<ReadingKey, string | number>>> & ForRun;

export interface AsBuiltTyped {
  readonly cells?: TypedCells<BuiltCellKey>;
  /** Run by run, in the order of the schedule. */
  readonly runs?: readonly Readings[];
}
