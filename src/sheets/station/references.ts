/** How formulas of a schedule point at things: cells of their row, whole columns, house rules, the Supply and Protection sheets. */
import type { Call } from '../plan/formula';
import type { RuleReferences } from './house-rules';
import type { ProtectionNameKey } from './protection-keys';
import type { ColumnKey } from './schedule-keys';
import type { SupplyKey } from './supply-keys';

type Supply = Readonly<Record<SupplyKey, string>>;

/** Figures of the source at a place among them. */
export function ofSource(sources: Supply, place: string): Supply {
  return Object.fromEntries(
    Object.entries(sources).map(([key, row]) => [key, `INDEX(${row},1,${place})`]),
  ) as Supply;
}

/** Columns that are solved for all runs at once and stand beside the table. */
export const FEED_KEYS = ['amps', 'fullVolts', 'lowVolts'] as const;
export type FeedKey = (typeof FEED_KEYS)[number];

/** Columns of the Verdicts sheet: every word, how grave it is, 4 for danger to 1 for check, and what to do in few words. */
export const VERDICT_NAME_KEYS = ['words', 'gravity', 'fixes'] as const;
export type VerdictNameKey = (typeof VERDICT_NAME_KEYS)[number];

export interface RowReferences {
  readonly call: Call;
  /** A cell of the same row. */
  readonly cell: Readonly<Record<ColumnKey, string>>;
  /** A column of all rows. */
  readonly column: Readonly<Record<ColumnKey, string>>;
  readonly rule: RuleReferences;
  readonly feed: Readonly<Record<FeedKey, string>>;
  /** Figures of the source that the path of the row starts at. */
  readonly supply: Supply;
  /** The same of all sources, each a row of the Supply sheet. */
  readonly sources: Supply;
  readonly protect: Readonly<Record<ProtectionNameKey, string>>;
  /** Columns of the list of verdicts. */
  readonly verdicts: Readonly<Record<VerdictNameKey, string>>;
  /** TRUE where the volts of the row have not come to rest; only a copy without the add-in has such rows. */
  readonly notSettled: string;
  /** The row's place among the rows of the schedule, from 1. */
  readonly place: string;
}
