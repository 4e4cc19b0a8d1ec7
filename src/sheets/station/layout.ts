/** How many rows a station's sheets have, under which names, and how their formulas are written. */
import type { ReferenceStyle } from '../plan/plan';
import type { ScheduleNames } from './naming';

export interface Layout {
  readonly names: ScheduleNames;
  readonly references: ReferenceStyle;
  readonly rows: number;
  /** How many of the rows a print shows; all of them unless given. */
  readonly printedRows?: number;
}
