/** The battery and what it gives: typed, or usual for its chemistry. */
import { restingVolts } from '../../src/core/battery';
import { MILLIOHM_AMP_HOURS } from '../../src/core/tables/battery-milliohms';
import type { Chemistry } from '../../src/core/tables/resting-volts';
import type { StationContent } from '../../src/sheets/station/content';
import { runAmps } from './amps';
import type { House } from './house';
import { isOnBattery, type Run } from './runs';

export interface BatteryFigures {
  readonly milliohms: number;
  readonly fullRest: number;
  readonly lowRest: number;
  /** All runs on it at their peak. */
  readonly peakAmps: number;
  readonly fullTerminal: number;
  readonly lowTerminal: number;
}

export function batteryOf(
  { supply = {} }: StationContent,
  runs: readonly Run[],
  house: House,
): BatteryFigures {
  const chemistry = (supply.chemistry ?? 'lead-acid') as Chemistry;
  const cells = supply.cells === undefined ? undefined : Number(supply.cells);
  const ampHours = Number(supply.ampHours ?? 100);
  const milliohms = Number(supply.milliohms ?? MILLIOHM_AMP_HOURS[chemistry] / ampHours);
  const lowCharge = Number(supply.lowCharge ?? 0.2);
  const fullRest = Number(supply.fullRest ?? restingVolts(chemistry, 1, cells));
  const lowRest = Number(supply.lowRest ?? restingVolts(chemistry, lowCharge, cells));
  let peakAmps = 0;
  for (const run of runs) {
    if (run.feeder === undefined && isOnBattery(run, house)) peakAmps += runAmps(run);
  }
  const sag = (peakAmps * milliohms) / 1000;
  return {
    milliohms,
    fullRest,
    lowRest,
    peakAmps,
    fullTerminal: fullRest - sag,
    lowTerminal: lowRest - sag,
  };
}
