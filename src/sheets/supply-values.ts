/** What the cells of the Supply sheet come to, outside any spreadsheet. */
import { MILLIOHM_AMP_HOURS } from '../core/tables/battery-milliohms';
import { CHEMISTRIES, RESTING_VOLTS, type Chemistry } from '../core/tables/resting-volts';
import { isBlank, type Cell, type ResultCell } from '../functions/cell';
import { attempt, callCell, evaluate, numberIn } from './evaluate';
import { SUPPLY_CELLS, SUPPLY_KEYS, USUAL_PEUKERT, type SupplyKey } from './supply/cells';
import type { DutyLoad, SupplyValues } from './station/supply';

export type SupplyInputs = Readonly<Record<SupplyKey, Cell>>;

export interface DutyValues {
  readonly mean: ResultCell;
  readonly heating: ResultCell;
  readonly daily: ResultCell;
}

export interface SupplyResult {
  readonly cells: Readonly<Record<SupplyKey, ResultCell>>;
  readonly duty: readonly DutyValues[];
}

/** What is typed, and where nothing is, what a new sheet holds; the rest stays blank. */
export function supplyInputs(typed: SupplyValues = {}): SupplyInputs {
  return Object.fromEntries(
    SUPPLY_KEYS.map((key) => [key, typed[key] ?? SUPPLY_CELLS[key].initial ?? null]),
  ) as Record<SupplyKey, Cell>;
}

function dutyValues({ amps, shares }: DutyLoad): DutyValues {
  const states = [[amps], [shares]] as const;
  const mean = evaluate('DUTY_AMPS', states)[0]![0]!;
  return {
    mean,
    heating: evaluate('HEATING_AMPS', states)[0]![0]!,
    daily: attempt(() => 24 * numberIn(mean)),
  };
}

const sum = (cells: readonly ResultCell[]): ResultCell =>
  attempt(() =>
    cells.reduce<number>(
      (total, cell) => (typeof cell === 'string' ? total : total + numberIn(cell)),
      0,
    ),
  );

/** Solves the sheet's cells from top to bottom; the counts of loads that are short come last, from the schedule. */
export function supplyResults(
  inputs: SupplyInputs,
  batteryAmps: readonly ResultCell[],
  duty: readonly DutyLoad[],
): SupplyResult & {
  withShortages(full: readonly ResultCell[], low: readonly ResultCell[]): SupplyResult;
} {
  const dutyResults = duty.map(dutyValues);
  const chemistry = CHEMISTRIES.find(
    (known) => known.toLowerCase() === String(inputs.chemistry).trim().toLowerCase(),
  );
  // An unknown word falls to the formula's last choice, as it does in a cell.
  const known: Chemistry = chemistry ?? CHEMISTRIES.at(-1)!;
  const usual = (key: SupplyKey, compute: () => ResultCell): ResultCell =>
    inputs[key] ?? attempt(compute);
  const rest = (charge: Cell, cells: Cell) =>
    callCell('BATTERY_VOLTS', inputs.chemistry, charge, cells);

  const cells = usual('cells', () => RESTING_VOLTS[known].usualCells);
  const milliohms = usual('milliohms', () => MILLIOHM_AMP_HOURS[known] / numberIn(inputs.ampHours));
  const usable = usual('usable', () => 1 - numberIn(inputs.lowCharge));
  const peukert = usual('peukert', () => USUAL_PEUKERT[known]);
  const fullRest = usual('fullRest', () => rest(1, cells));
  const lowRest = usual('lowRest', () => rest(inputs.lowCharge, cells));
  const peakAmps = sum(batteryAmps);
  const terminal = (resting: ResultCell) =>
    attempt(() => numberIn(resting) - (numberIn(peakAmps) * numberIn(milliohms)) / 1000);
  const meanAmps = sum(dutyResults.map(({ mean }) => mean));
  const panelDailyAh = attempt((): ResultCell =>
    isBlank(inputs.maximumPowerAmps) || isBlank(inputs.sunHours)
      ? ''
      : numberIn(inputs.maximumPowerAmps) * numberIn(inputs.sunHours),
  );
  const dailyAh = attempt(() => 24 * numberIn(meanAmps));

  const solved: Readonly<Partial<Record<SupplyKey, ResultCell>>> = {
    cells,
    milliohms,
    usable,
    peukert,
    fullRest,
    lowRest,
    peakAmps,
    fullTerminal: terminal(fullRest),
    lowTerminal: terminal(lowRest),
    panelDesignAmps: callCell('PV_DESIGN_AMPS', inputs.shortCircuitAmps),
    panelColdVolts: callCell(
      'PV_COLD_VOLTS',
      inputs.openCircuitVolts,
      inputs.coldestC,
      inputs.percentPerC,
    ),
    panelDailyAh,
    meanAmps,
    batteryHours:
      meanAmps === 0 ? '' : callCell('BATTERY_HOURS', inputs.ampHours, meanAmps, usable, peukert),
    dailyAh,
    dailyBalance: attempt(
      () => (panelDailyAh === '' ? 0 : numberIn(panelDailyAh)) - numberIn(dailyAh),
    ),
  };
  const result = (more: Readonly<Partial<Record<SupplyKey, ResultCell>>>): SupplyResult => ({
    cells: Object.fromEntries(
      SUPPLY_KEYS.map((key) => [key, more[key] ?? solved[key] ?? inputs[key] ?? '']),
    ) as Record<SupplyKey, ResultCell>,
    duty: dutyResults,
  });
  return {
    ...result({}),
    withShortages: (full, low) => result({ fullShort: sum(full), lowShort: sum(low) }),
  };
}
