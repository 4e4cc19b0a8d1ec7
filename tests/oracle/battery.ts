/** The battery and what it gives: typed, or usual for its chemistry and the house volts. */
import { restingVolts } from '../../src/core/battery';
import { MILLIOHM_AMP_HOURS } from '../../src/core/tables/battery-milliohms';
import { CHARGING_VOLTS } from '../../src/core/tables/charging-volts';
import { RESTING_VOLTS, type Chemistry } from '../../src/core/tables/resting-volts';
import type { StationContent } from '../../src/sheets/station/content';
import { onceAmps, runAmps, type OwnAmps } from './amps';
import { NO_ANSWER } from './figures';
import type { House } from './house';
import { isOnBattery, type Run } from './runs';

export interface BatteryFigures {
  readonly cells: number;
  readonly milliohms: number;
  readonly fullRest: number;
  readonly lowRest: number;
  /** All runs on it, each load at the share of its peak that counts at once. */
  readonly peakAmps: number;
  readonly fullTerminal: number;
  readonly lowTerminal: number;
  readonly chargingVolts: number;
  /** A short right at its terminals, at its strongest. */
  readonly breakAmps: number;
}

/** A pack of 12 V work for each 13 V of the house, at least one. */
const VOLTS_A_PACK = 13;

export function batteryOf(
  { supply = {} }: StationContent,
  runs: readonly Run[],
  house: House,
  own: readonly OwnAmps[],
): BatteryFigures {
  const chemistry = (supply.chemistry ?? 'lead-acid') as Chemistry;
  const { usualCells } = RESTING_VOLTS[chemistry];
  const packs = Math.max(1, Math.round(house.volts / VOLTS_A_PACK));
  const cells = Number(supply.cells ?? usualCells * packs);
  const usual =
    (MILLIOHM_AMP_HOURS[chemistry] / Number(supply.ampHours ?? 100)) * (cells / usualCells);
  const milliohms = Number(supply.milliohms ?? usual);
  const fullRest = Number(supply.fullRest ?? restingVolts(chemistry, 1, cells));
  const lowRest = Number(
    supply.lowRest ?? restingVolts(chemistry, Number(supply.lowCharge ?? 0.2), cells),
  );
  let peakAmps = 0;
  for (const run of runs) {
    if (run.feeder !== undefined || !isOnBattery(run, house)) continue;
    // A tree that cannot be told says so itself.
    if (runAmps(run, own) !== NO_ANSWER) peakAmps += onceAmps(run, own);
  }
  const sag = (peakAmps * milliohms) / 1000;
  // Measured milliohms are what they are; of the usual ones a good battery may have half.
  const strongest = supply.milliohms === undefined ? usual / 2 : milliohms;
  return {
    cells,
    milliohms,
    fullRest,
    lowRest,
    peakAmps,
    fullTerminal: fullRest - sag,
    lowTerminal: lowRest - sag,
    chargingVolts: Number(supply.chargingVolts ?? CHARGING_VOLTS[chemistry] * cells),
    breakAmps: Number(supply.batteryShortAmps ?? (1000 * fullRest) / strongest),
  };
}

/** Whether anything is typed that tells what a short of the battery draws. */
export function isStated({ supply = {} }: StationContent): boolean {
  return ['chemistry', 'ampHours', 'milliohms', 'batteryShortAmps'].some(
    (key) => supply[key as keyof typeof supply] !== undefined,
  );
}

/** Whether the house volts lie near what the battery has: from 85 % of its volts when low to 110 % of those at charge. */
export function fitsHouse({ lowRest, chargingVolts }: BatteryFigures, house: House): boolean {
  return house.volts >= 0.85 * lowRest && house.volts <= 1.1 * chargingVolts;
}
