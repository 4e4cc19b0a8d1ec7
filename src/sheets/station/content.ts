/** All that a person says of a station: its runs and rules, what feeds them, and what protection is judged by. */
import type { RuleKey } from './house-rules';
import type { ProtectionTyped } from './protection';
import type { ScheduleRun } from './run';
import type { AsBuiltTyped } from './as-built';
import type { ExtraKey } from './extras';
import type { FuseMapTyped } from './fuse-map';
import type { SupplyContent } from './supply';
import type { LabelsTyped } from './labels';
import type { PartsTyped } from './parts';
import type { WireListTyped } from './wire-list';

export interface ScheduleContent {
  readonly runs: readonly ScheduleRun[];
  /** House rules that differ from the usual. */
  readonly rules?: Readonly<Partial<Record<RuleKey, string | number>>>;
  readonly title: string;
}

export interface ProtectionContent {
  readonly protection?: ProtectionTyped;
}

/** What is said on the sheets that stand where they are wanted. */
export interface ExtrasContent {
  /** The sheets that are wanted; none unless given. */
  readonly extras?: readonly ExtraKey[];
  readonly wireList?: WireListTyped;
  readonly parts?: PartsTyped;
  readonly labels?: LabelsTyped;
  readonly asBuilt?: AsBuiltTyped;
  readonly fuseMap?: FuseMapTyped;
}

/** What a reading or another content says of those sheets. */
export function extrasOf(of: ExtrasContent): ExtrasContent {
  const { extras, wireList, parts, labels, asBuilt, fuseMap } = of;
  return {
    ...(extras && { extras }),
    ...(wireList && { wireList }),
    ...(parts && { parts }),
    ...(labels && { labels }),
    ...(asBuilt && { asBuilt }),
    ...(fuseMap && { fuseMap }),
  };
}

export type StationContent = ScheduleContent & SupplyContent & ProtectionContent & ExtrasContent;
