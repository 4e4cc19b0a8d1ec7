/** All that a person says of a station: its runs and rules, what feeds them, and what protection is judged by. */
import type { RuleKey } from './house-rules';
import type { ProtectionTyped } from './protection';
import type { ScheduleRun } from './run';
import type { SupplyContent } from './supply';

export interface ScheduleContent {
  readonly runs: readonly ScheduleRun[];
  /** House rules that differ from the usual. */
  readonly rules?: Readonly<Partial<Record<RuleKey, string | number>>>;
  readonly title: string;
}

export interface ProtectionContent {
  readonly protection?: ProtectionTyped;
}

export type StationContent = ScheduleContent & SupplyContent & ProtectionContent;
