/** What a person may say of the Protection sheet. */
import type { FuseEntryKey, ProtectionCellKey } from './protection-keys';

type TypedCellKey = Extract<
  ProtectionCellKey,
  'startC' | 'limitC' | 'fuseKind' | 'weakTimes' | 'surgeS'
>;

/** Figures of one run's fuse; what is left out follows from its kind. */
export type FuseEntries = Readonly<Partial<Record<FuseEntryKey, string | number>>> & {
  /** The run that they are said for, where that is another than the one in their row; empty where it is left open. */
  readonly forRun?: string;
};

export type ProtectionTyped = Readonly<Partial<Record<TypedCellKey, string | number>>> & {
  /** Run by run, in the order of the schedule. */
  readonly fuses?: readonly FuseEntries[];
};
