/** What a person says of the supply, and of how a load's time divides. */
import type { SupplyKey } from './supply-keys';

export type SupplyValues = Readonly<Partial<Record<SupplyKey, string | number>>>;

/** One load of the duty table: amps and shares of its time: transmit, receive, standby. */
export interface DutyLoad {
  readonly load: string;
  /** Name of its source; the first one left out. */
  readonly source?: string;
  readonly amps: readonly (number | null)[];
  readonly shares: readonly (number | null)[];
}

export interface SupplyContent {
  /** One battery and one panel together, where there is nothing else. */
  readonly supply?: SupplyValues;
  /** Every source by itself, a column of the sheet each; counts instead of `supply`. */
  readonly sources?: readonly SupplyValues[];
  readonly duty?: readonly DutyLoad[];
}
