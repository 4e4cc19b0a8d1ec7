/**
 * One row of a schedule with what it must say, worked out from printed tables and never from this code. mOhm/ft: annealed
 * copper at 20 degC over the gauges of ASTM B258 (classic wire table), over 0.61 for aluminium; mOhm/m: IEC 60228 class 5.
 * What wire bears: k = 115 for copper, 76 for aluminium, IEC 60364-5-54. Fuses: ISO 8820 ratings, breaking and times.
 */
import type { ProtectionTyped } from '../../../src/sheets/station/protection';
import type { RuleKey } from '../../../src/sheets/station/house-rules';
import type { ScheduleRun } from '../../../src/sheets/station/run';
import type { SupplyValues } from '../../../src/sheets/station/supply';
import type { VerdictKey } from '../../../src/sheets/station/verdicts';

export interface StatedRow {
  readonly entries: ScheduleRun;
  /** Runs that stand above it in the list. */
  readonly others?: readonly ScheduleRun[];
  /** Where they are not those of a new sheet. */
  readonly rules?: Readonly<Partial<Record<RuleKey, string | number>>>;
  /** A lead-acid battery of 50 milliohms where nothing else is said: 12.65 V full, 253 A in a dead short. */
  readonly supply?: SupplyValues;
  readonly protection?: ProtectionTyped;
  /** All that is said of it, in whatever order. */
  readonly verdict: readonly VerdictKey[];
  /** In use; null where there is none. */
  readonly size: string | null;
  /** Amps of its own fuse; null where none can be told. */
  readonly fuse: number | 'none' | null;
}
