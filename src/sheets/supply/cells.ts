/**
 * The named cells of the Supply sheet: battery and panel, what a person types and what follows from it. Meaning,
 * choices and bounds of what is typed come from the parameters of the functions.
 */
import { MILLIOHM_AMP_HOURS } from '../../core/tables/battery-milliohms';
import { CHEMISTRIES, RESTING_VOLTS, type Chemistry } from '../../core/tables/resting-volts';
import { numberParameter, type Parameter } from '../../functions/parameter';
import * as parameter from '../../functions/parameters/run';
import * as supply from '../../functions/parameters/supply';
import { text, type Call } from '../plan/formula';
import type { CellContent, CellStyle } from '../plan/plan';
import type { ColumnKey } from '../station/schedule-keys';
import type { SupplyKey } from '../station/supply-keys';

/** What the formulas of the Supply sheet may point at. */
export interface SupplyReferences {
  readonly call: Call;
  readonly supply: Readonly<Record<SupplyKey, string>>;
  /** Columns of the schedule. */
  readonly column: Readonly<Record<ColumnKey, string>>;
  /** The column of mean amps in the duty table of the same sheet. */
  readonly dutyMeans: string;
}

export interface SupplyCell {
  readonly label: string;
  readonly section: 'Battery' | 'Panel' | 'Days';
  /** A sentence that stands beside the cell. */
  readonly note: string;
  /** "typed": a value; "usual": a formula until overtyped; "computed". */
  readonly kind: 'typed' | 'usual' | 'computed';
  readonly parameter?: Parameter;
  readonly style?: CellStyle;
  /** The value of a new sheet, for typed cells. */
  readonly initial?: CellContent;
  /** Without the leading "=". */
  formula?(references: SupplyReferences): string;
}

const AMPS: CellStyle = { numberFormat: '0.0# "A"' };
const VOLTS: CellStyle = { numberFormat: '0.00 "V"' };
const SHARE: CellStyle = { numberFormat: '0.0 %' };
const AMP_HOURS: CellStyle = { numberFormat: '0.0 "Ah"' };
const COUNT: CellStyle = { numberFormat: '0' };

/** A formula that picks one figure by the chemistry typed. */
function byChemistry(chemistry: string, figure: (of: Chemistry) => number): string {
  const [last, ...others] = [...CHEMISTRIES].reverse();
  return others.reduce(
    (further, of) => `IF(${chemistry}=${text(of)},${figure(of)},${further})`,
    String(figure(last!)),
  );
}

/** Peukert's exponent where none is given; common practice, no source. */
export const USUAL_PEUKERT: Readonly<Record<Chemistry, number>> = {
  'lead-acid': 1.2,
  LiFePO4: 1,
  'Li-ion': 1,
};

export const SUPPLY_CELLS: Readonly<Record<SupplyKey, SupplyCell>> = {
  chemistry: {
    label: 'Chemistry',
    section: 'Battery',
    note: 'What the runs fed from the battery hang on. Lead-acid until you choose.',
    kind: 'typed',
    parameter: supply.chemistry,
    initial: 'lead-acid',
  },
  ampHours: {
    label: 'Capacity',
    section: 'Battery',
    note: 'Amp-hours as rated, over 20 hours for lead-acid. 100 until you write your own.',
    kind: 'typed',
    parameter: supply.ampHours,
    style: AMP_HOURS,
    initial: 100,
  },
  cells: {
    label: 'Cells in series',
    section: 'Battery',
    note: 'The usual pack of the chemistry in 12 V work, until overtyped.',
    kind: 'usual',
    parameter: supply.cells,
    style: COUNT,
    formula: ({ supply: cell }) =>
      byChemistry(cell.chemistry, (of) => RESTING_VOLTS[of].usualCells),
  },
  milliohms: {
    label: 'Internal resistance',
    section: 'Battery',
    note: 'From chemistry and amp-hours (common practice), until overtyped by a measurement.',
    kind: 'usual',
    parameter: parameter.jointMilliohms,
    style: { numberFormat: '0.0 "mΩ"' },
    formula: ({ supply: cell }) =>
      `${byChemistry(cell.chemistry, (of) => MILLIOHM_AMP_HOURS[of])}/${cell.ampHours}`,
  },
  lowCharge: {
    label: 'Low charge',
    section: 'Battery',
    note: 'The charge at which every load must still work.',
    kind: 'typed',
    parameter: supply.charge,
    style: SHARE,
    initial: 0.2,
  },
  usable: {
    label: 'Usable share',
    section: 'Battery',
    note: 'Of the capacity, before the battery is called empty.',
    kind: 'usual',
    parameter: supply.usable,
    style: SHARE,
    formula: ({ supply: cell }) => `1-${cell.lowCharge}`,
  },
  peukert: {
    label: "Peukert's exponent",
    section: 'Battery',
    note: 'Lead-acid about 1.1 to 1.3, the others 1 (common practice), until overtyped.',
    kind: 'usual',
    parameter: supply.peukert,
    style: { numberFormat: '0.00' },
    formula: ({ supply: cell }) => byChemistry(cell.chemistry, (of) => USUAL_PEUKERT[of]),
  },
  fullRest: {
    label: 'Resting volts, full',
    section: 'Battery',
    note: 'After hours without current, until overtyped by a measurement.',
    kind: 'usual',
    parameter: parameter.volts,
    style: VOLTS,
    formula: ({ supply: cell, call }) => call('BATTERY_VOLTS', cell.chemistry, '1', cell.cells),
  },
  lowRest: {
    label: 'Resting volts, low charge',
    section: 'Battery',
    note: 'The same at the low charge above.',
    kind: 'usual',
    parameter: parameter.volts,
    style: VOLTS,
    formula: ({ supply: cell, call }) =>
      call('BATTERY_VOLTS', cell.chemistry, cell.lowCharge, cell.cells),
  },
  peakAmps: {
    label: 'Peak current of all runs on it',
    section: 'Battery',
    note: 'Every load at its peak at once; runs from the panel or with other source volts are not on it.',
    kind: 'computed',
    style: AMPS,
    formula: ({ column }) => `SUM(${column.batteryAmps})`,
  },
  fullTerminal: {
    label: 'Terminal volts at that peak, full',
    section: 'Battery',
    note: 'Resting volts less what the internal resistance loses.',
    kind: 'computed',
    style: VOLTS,
    formula: ({ supply: cell }) => `${cell.fullRest}-${cell.peakAmps}*${cell.milliohms}/1000`,
  },
  lowTerminal: {
    label: 'Terminal volts at that peak, low charge',
    section: 'Battery',
    note: 'What every run starts from when the battery is low and all send at once.',
    kind: 'computed',
    style: VOLTS,
    formula: ({ supply: cell }) => `${cell.lowRest}-${cell.peakAmps}*${cell.milliohms}/1000`,
  },
  fullShort: {
    label: 'Loads with too few volts, full',
    section: 'Battery',
    note: 'Loads that fall under their least volts though the battery is full.',
    kind: 'computed',
    style: COUNT,
    formula: ({ column }) => `SUM(${column.shortFull})`,
  },
  lowShort: {
    label: 'Loads with too few volts, low charge',
    section: 'Battery',
    note: 'The schedule names them, and the thicker run that mends each.',
    kind: 'computed',
    style: COUNT,
    formula: ({ column }) => `SUM(${column.shortLow})`,
  },
  shortCircuitAmps: {
    label: 'Short-circuit current',
    section: 'Panel',
    note: 'As the data sheet of the panel gives it.',
    kind: 'typed',
    parameter: supply.shortCircuitAmps,
    style: AMPS,
  },
  maximumPowerAmps: {
    label: 'Current at maximum power',
    section: 'Panel',
    note: 'From the same data sheet.',
    kind: 'typed',
    parameter: supply.shortCircuitAmps,
    style: AMPS,
  },
  panelVolts: {
    label: 'Volts at maximum power',
    section: 'Panel',
    note: 'The source volts of runs fed from "panel".',
    kind: 'typed',
    parameter: parameter.volts,
    style: VOLTS,
  },
  panelTarget: {
    label: 'Drop target of panel runs',
    section: 'Panel',
    note: '2 %, the habit of solar installers (common practice): every volt lost is sun lost.',
    kind: 'typed',
    parameter: parameter.maxDrop,
    style: SHARE,
    initial: 0.02,
  },
  openCircuitVolts: {
    label: 'Open-circuit volts',
    section: 'Panel',
    note: 'At 25 °C, from the data sheet.',
    kind: 'typed',
    parameter: supply.openCircuitVolts,
    style: VOLTS,
  },
  coldestC: {
    label: 'Coldest morning',
    section: 'Panel',
    note: 'The lowest the site is known to reach; a cold panel gives more volts.',
    kind: 'typed',
    parameter: supply.coldestC,
    style: { numberFormat: '0 "°C"' },
  },
  percentPerC: {
    label: 'Coefficient of open-circuit volts',
    section: 'Panel',
    note: 'Per cent per degree as the data sheet prints it: -0.29.',
    kind: 'typed',
    parameter: supply.percentPerC,
    style: { numberFormat: '0.00' },
  },
  sunHours: {
    label: 'Sun hours a day',
    section: 'Panel',
    note: 'Hours of full sun that the poorest month is worth.',
    kind: 'typed',
    parameter: numberParameter('sun_hours', 'Hours of full sun a day.', { least: 0, most: 24 }),
    style: { numberFormat: '0.0 "h"' },
  },
  panelDesignAmps: {
    label: 'Current to choose its run and fuse for',
    section: 'Panel',
    note: '1.25 x 1.25 of the short-circuit current, NFPA 70 690.8: the least ampacity of its run.',
    kind: 'computed',
    style: AMPS,
    formula: ({ supply: cell, call }) => call('PV_DESIGN_AMPS', cell.shortCircuitAmps),
  },
  panelColdVolts: {
    label: 'Open-circuit volts on that morning',
    section: 'Panel',
    note: 'The controller and every part on the panel side must stand it.',
    kind: 'computed',
    style: VOLTS,
    formula: ({ supply: cell, call }) =>
      call('PV_COLD_VOLTS', cell.openCircuitVolts, cell.coldestC, cell.percentPerC),
  },
  panelDailyAh: {
    label: 'Gain a day',
    section: 'Panel',
    note: 'Current at maximum power times sun hours.',
    kind: 'computed',
    style: AMP_HOURS,
    formula: ({ supply: cell }) =>
      `IF(OR(${cell.maximumPowerAmps}="",${cell.sunHours}=""),"",${cell.maximumPowerAmps}*${cell.sunHours})`,
  },
  meanAmps: {
    label: 'Mean current of all loads',
    section: 'Days',
    note: 'Sum of the table below.',
    kind: 'computed',
    style: AMPS,
    formula: ({ dutyMeans }) => `SUM(${dutyMeans})`,
  },
  batteryHours: {
    label: 'Hours on the battery alone',
    section: 'Days',
    note: 'From full until the usable share is gone, at the mean current.',
    kind: 'computed',
    style: { numberFormat: '0.0 "h"' },
    formula: ({ supply: cell, call }) =>
      `IF(${cell.meanAmps}=0,"",${call('BATTERY_HOURS', cell.ampHours, cell.meanAmps, cell.usable, cell.peukert)})`,
  },
  dailyAh: {
    label: 'Drawn a day',
    section: 'Days',
    note: 'Mean current over 24 hours.',
    kind: 'computed',
    style: AMP_HOURS,
    formula: ({ supply: cell }) => `24*${cell.meanAmps}`,
  },
  dailyBalance: {
    label: 'Gained less drawn, a day',
    section: 'Days',
    note: 'Below zero the battery runs down day by day.',
    kind: 'computed',
    style: { numberFormat: '+0.0 "Ah";-0.0 "Ah";0 "Ah"' },
    formula: ({ supply: cell }) =>
      `IF(${cell.panelDailyAh}="",0,${cell.panelDailyAh})-${cell.dailyAh}`,
  },
};
