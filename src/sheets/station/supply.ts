/** What a person says of the supply, and of how a load's time divides. */
import type { SupplyKey } from './supply-keys';

export type SupplyValues = Readonly<Partial<Record<SupplyKey, string | number>>>;

/** One load of the duty table: amps and shares of its time: transmit, receive, standby. */
export interface DutyLoad {
  readonly load: string;
  readonly amps: readonly (number | null)[];
  readonly shares: readonly (number | null)[];
}

export interface SupplyContent {
  readonly supply?: SupplyValues;
  readonly duty?: readonly DutyLoad[];
}
