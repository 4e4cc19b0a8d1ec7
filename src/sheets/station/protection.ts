/** What a person may say of the Protection sheet. */
import type { ForRun } from './for-run';
import type { FuseEntryKey, ProtectionCellKey } from './protection-keys';

type TypedCellKey = Extract<
  ProtectionCellKey,
  'startC' | 'limitC' | 'fuseKind' | 'weakTimes' | 'surgeS'
>;

/** Figures of one run's fuse; what is left out follows from its kind. */
export type FuseEntries = Readonly<Partial<Record<FuseEntryKey, string | number>>> & ForRun;

export type ProtectionTyped = Readonly<Partial<Record<TypedCellKey, string | number>>> & {
  /** Run by run, in the order of the schedule. */
  readonly fuses?: readonly FuseEntries[];
};
