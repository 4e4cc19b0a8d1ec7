/** The columns of a list: those that are read as one of the schedule's, and those that are not. */
import type { Unit } from '../core/units';
import type { RunKey } from './headings';

export interface TypedColumn {
  readonly index: number;
  /** As the file has it; one that comes twice says which column it is. */
  readonly heading: string;
  readonly key: RunKey;
  readonly unit?: Unit;
  readonly bothWays: boolean;
  /** Some of its bare numbers are shares and others percent. */
  readonly mixed?: boolean;
  /** A person said so, whatever its heading says. */
  readonly said?: true;
}

/** A column that is not read. */
export interface UnreadColumn {
  readonly index: number;
  readonly heading: string;
  readonly why: string;
  /** Nothing is lost by it: it was said so, it is computed anew, or it only counts the rows. */
  readonly needless: boolean;
  /** What it would be read as, were another not read as the same. */
  readonly rival?: TypedColumn;
}
