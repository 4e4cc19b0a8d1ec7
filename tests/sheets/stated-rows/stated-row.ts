/**
 * One row of a schedule with what it must say, worked out from printed tables and never from this code. mOhm/ft: annealed
 * copper at 20 degC over the gauges of ASTM B258 (classic wire table), over 0.61 for aluminium; mOhm/m: IEC 60228 class 5.
 * What wire bears: k = 115 for copper, 76 for aluminium, IEC 60364-5-54. Fuses: ISO 8820 ratings, breaking and times.
 *
 * How the reasons read. "x 1.0393" is copper at the 30 degC of the ambient (0.393 % a kelvin; aluminium 0.403 %), "+ 3" the
 * milliohms of a fused run's joints, "of 0.36 V" what the run may lose by its target, less what is lost above it. "18 x
 * 1.25 = 22.5, fuse 25": 125 % of a continuous load, NFPA 70 210.20, and the next rating. 240.4(D) limits the fuses of
 * small wires. 18 and 16 AWG: 310.16 prints 90 degC alone, times sqrt(45/60) for 75 degC, rounded down. "far": a short at the
 * far end, of a tired battery: its volts at low charge (lead-acid at 20 %: 11.89 + 0.8 x 0.17 = 12.026 V; LiFePO4: 4 x
 * (3.1942 + 0.1115 / 0.2087 x 0.083) = 12.954 V) over twice its milliohms and wire at 70 degC (1.1965 / 1.0393 of that at
 * 30 degC). "near": a short right behind the fuse, of a full battery (12.65 V; 13.404 V) and its milliohms as they are
 * typed, half the usual ones where nothing is. Then how long the fuse may take and the wire bears it; beyond 6 times the
 * rating the fuse melts at the I2t of that point, and 2 ms for the arc. Heat by 310.17 at 90 degC: the rise grows as the
 * square of the amps.
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
  /** Every source by itself, instead of the one battery. */
  readonly sources?: readonly SupplyValues[];
  /** The battery's milliohms are not typed, and so the usual ones. */
  readonly usualMilliohms?: boolean;
  readonly protection?: ProtectionTyped;
  /** All that is said of it, in whatever order. */
  readonly verdict: readonly VerdictKey[];
  /** In use; null where there is none. */
  readonly size: string | null;
  /** Amps of its own fuse; null where none can be told. */
  readonly fuse: number | 'none' | null;
}
