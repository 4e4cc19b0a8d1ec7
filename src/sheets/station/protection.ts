/** What a person may say of the Protection sheet. */
import type { ProtectionCellKey } from './protection-keys';

export type ProtectionTyped = Readonly<
  Partial<Record<Extract<ProtectionCellKey, 'startC' | 'limitC'>, string | number>>
>;
