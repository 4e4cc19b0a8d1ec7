/** Panel and days: what the panel gives, what the loads draw, how long the battery lasts. */
import { batteryHours } from '../../src/core/battery';
import { dutyAmps, heatingAmps } from '../../src/core/duty';
import { pvColdVolts, pvDesignAmps } from '../../src/core/solar';
import type { StationContent } from '../../src/sheets/station/content';
import { figure, type Figure } from './figures';

const HOURS_A_DAY = 24;
/** Peukert's exponent where none is typed; lead-acid by common practice. */
const USUAL_PEUKERT: Readonly<Record<string, number>> = { 'lead-acid': 1.2 };

export interface Days {
  readonly panelDesignAmps: number;
  /** Nothing where something that tells them is blank. */
  readonly panelColdVolts: Figure | undefined;
  readonly panelDailyAh: number;
  readonly meanAmps: number;
  /** Nothing where no load is listed. */
  readonly batteryHours: Figure | undefined;
  readonly dailyAh: number;
  readonly dailyBalance: number;
}

export interface DutyFigures {
  readonly mean: Figure;
  readonly heating: Figure;
  readonly daily: Figure;
}

/** For a station whose panel is typed in full, what tells its cold volts aside. */
export function daysOf({ supply = {}, duty = [] }: StationContent): {
  readonly days: Days;
  readonly duty: readonly DutyFigures[];
} {
  const typed = (key: keyof typeof supply) => Number(supply[key]);
  const rows = duty.map(({ amps, shares }): DutyFigures => {
    const states = amps.flatMap((of, at) => {
      const share = shares[at] ?? null;
      return of === null || share === null ? [] : [{ amps: of, share }];
    });
    const mean = figure(dutyAmps(states));
    return {
      mean,
      heating: figure(heatingAmps(states)),
      daily: typeof mean === 'number' ? HOURS_A_DAY * mean : mean,
    };
  });
  const cold = ['openCircuitVolts', 'coldestC', 'percentPerC'] as const;
  let meanAmps = 0;
  for (const { mean } of rows) if (typeof mean === 'number') meanAmps += mean;
  const panelDailyAh = typed('maximumPowerAmps') * typed('sunHours');
  const chemistry = String(supply.chemistry ?? 'lead-acid');
  return {
    duty: rows,
    days: {
      panelDesignAmps: pvDesignAmps(typed('shortCircuitAmps')),
      panelColdVolts: cold.some((key) => supply[key] === undefined)
        ? undefined
        : figure(pvColdVolts(typed(cold[0]), typed(cold[1]), typed(cold[2]))),
      panelDailyAh,
      meanAmps,
      batteryHours:
        meanAmps === 0
          ? undefined
          : figure(
              batteryHours(
                {
                  ampHours: Number(supply.ampHours ?? 100),
                  ratedHours: 20,
                  peukert: Number(supply.peukert ?? USUAL_PEUKERT[chemistry] ?? 1),
                  usable: Number(supply.usable ?? 1 - Number(supply.lowCharge ?? 0.2)),
                },
                meanAmps,
              ),
            ),
      dailyAh: HOURS_A_DAY * meanAmps,
      dailyBalance: panelDailyAh - HOURS_A_DAY * meanAmps,
    },
  };
}
