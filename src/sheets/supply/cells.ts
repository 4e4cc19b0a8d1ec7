/**
 * The named cells of the Supply sheet: battery and panel, what a person types and what follows from it. Meaning,
 * choices and bounds of what is typed come from the parameters of the functions.
 */
import { MILLIOHM_AMP_HOURS } from '../../core/tables/battery-milliohms';
import { CHEMISTRIES, RESTING_VOLTS, type Chemistry } from '../../core/tables/resting-volts';
import { numberParameter, type Parameter } from '../../functions/parameter';
import * as parameter from '../../functions/parameters/run';
import * as supply from '../../functions/parameters/supply';
import { CHARGING_VOLTS } from '../../core/tables/charging-volts';
import { BY_RATING, type FuseKind } from '../../core/tables/fuse-kinds';
import { RELATIVE_SLACK } from '../../core/limits';
import { VERDICT_JOINT } from '../../core/verdict';
import * as protection from '../../functions/parameters/protection';
import { text, type Call } from '../plan/formula';
import { ambientInForce, fuseLimitInForce, type RuleReferences } from '../station/house-rules';
import { figureByKind, fuseKind } from '../station/fuse-kind';
import { ASSUMED } from '../station/assumed-battery';
import { WORD, type VerdictKey } from '../station/verdicts';
import type { CellContent, CellStyle } from '../plan/plan';
import type { ColumnKey } from '../station/schedule-keys';
import type { SupplyKey } from '../station/supply-keys';

/** What the formulas of the Supply sheet may point at. */
export interface SupplyReferences {
  readonly call: Call;
  readonly supply: Readonly<Record<SupplyKey, string>>;
  readonly rule: RuleReferences;
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

type Cells = SupplyReferences['supply'];

const chemistryOf = ({ chemistry }: Cells) =>
  `IF(${chemistry}="",${text(ASSUMED.chemistry)},${chemistry})`;
const ampHoursOf = ({ ampHours }: Cells) => `IF(${ampHours}="",${ASSUMED.ampHours},${ampHours})`;

/** A size that carries every standard fuse, to ask for the rating alone. */
const THICK = '4/0 AWG';

/** Source volts of one usual pack, so that 11 to 14 V ask for one, 22 to 29 V for two, 44 to 58 V for four. */
const VOLTS_A_PACK = 13;

/** Share of the usual milliohms that a good battery may have: for what its fuses must break. Ours, common practice. */
const STRONG_SHARE = 0.5;

/** A formula that picks one figure by the chemistry in force. */
function byChemistry({ chemistry }: Cells, figure: (of: Chemistry) => number): string {
  const others = CHEMISTRIES.filter((of) => of !== ASSUMED.chemistry);
  const [last, ...rest] = [...others].reverse();
  const known = rest.reduce(
    (further, of) => `IF(${chemistry}=${text(of)},${figure(of)},${further})`,
    String(figure(last!)),
  );
  return `IF(OR(${chemistry}="",${chemistry}=${text(ASSUMED.chemistry)}),${figure(ASSUMED.chemistry)},${known})`;
}

/** Usual milliohms: those of one pack times the packs in series. */
function usualMilliohms(cell: Cells): string {
  const packs = `${cell.cells}/${byChemistry(cell, (of) => RESTING_VOLTS[of].usualCells)}`;
  return `${byChemistry(cell, (of) => MILLIOHM_AMP_HOURS[of])}*${packs}/${ampHoursOf(cell)}`;
}

/** A figure of the main fuse by its kind, or by its rating; a fuse of one's own has none. */
function byKind({ mainFuse, mainFuseKind }: Cells, figure: (of: FuseKind) => number): string {
  return `IF(${mainFuse}="","",${figureByKind(mainFuseKind, text(BY_RATING), mainFuse, figure)})`;
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
    note: 'What the runs fed from the battery hang on. Blank: lead-acid is assumed, and what fuses must break is not judged.',
    kind: 'typed',
    parameter: supply.chemistry,
  },
  ampHours: {
    label: 'Capacity',
    section: 'Battery',
    note: 'Amp-hours as rated, over 20 hours for lead-acid. Blank: 100 is assumed.',
    kind: 'typed',
    parameter: supply.ampHours,
    style: AMP_HOURS,
  },
  cells: {
    label: 'Cells in series',
    section: 'Battery',
    note: 'The usual pack of the chemistry for the source volts of the house rules, until you type over it.',
    kind: 'usual',
    parameter: supply.cells,
    style: COUNT,
    formula: ({ supply: cell, rule }) =>
      `${byChemistry(cell, (of) => RESTING_VOLTS[of].usualCells)}*MAX(1,ROUND(${rule.volts}/${VOLTS_A_PACK},0))`,
  },
  milliohms: {
    label: 'Internal resistance',
    section: 'Battery',
    note: 'From chemistry, cells and amp-hours (common practice), until you type a measurement over it.',
    kind: 'usual',
    parameter: parameter.jointMilliohms,
    style: { numberFormat: '0.0 "mΩ"' },
    formula: ({ supply: cell }) => usualMilliohms(cell),
  },
  batteryShortAmps: {
    label: 'Short-circuit current, from its maker',
    section: 'Battery',
    note: 'What the battery gives into a dead short, from its data sheet; blank where it is not known.',
    kind: 'typed',
    parameter: supply.shortCircuitAmps,
    style: { numberFormat: '#,##0 "A"' },
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
    note: 'Lead-acid about 1.1 to 1.3, the others 1 (common practice), until you type over it.',
    kind: 'usual',
    parameter: supply.peukert,
    style: { numberFormat: '0.00' },
    formula: ({ supply: cell }) => byChemistry(cell, (of) => USUAL_PEUKERT[of]),
  },
  fullRest: {
    label: 'Resting volts, full',
    section: 'Battery',
    note: 'After hours without current, until you type a measurement over it.',
    kind: 'usual',
    parameter: parameter.volts,
    style: VOLTS,
    formula: ({ supply: cell, call }) => call('BATTERY_VOLTS', chemistryOf(cell), '1', cell.cells),
  },
  lowRest: {
    label: 'Resting volts, battery low',
    section: 'Battery',
    note: 'The same at the low charge above.',
    kind: 'usual',
    parameter: parameter.volts,
    style: VOLTS,
    formula: ({ supply: cell, call }) =>
      call('BATTERY_VOLTS', chemistryOf(cell), cell.lowCharge, cell.cells),
  },
  chargingVolts: {
    label: 'Most volts while charging',
    section: 'Battery',
    note: 'What its circuits can reach: 2.4, 3.65 or 4.2 V a cell (common practice, from memory), until you type over it.',
    kind: 'usual',
    parameter: parameter.volts,
    style: VOLTS,
    formula: ({ supply: cell }) => `${byChemistry(cell, (of) => CHARGING_VOLTS[of])}*${cell.cells}`,
  },
  stated: {
    label: 'Battery described',
    section: 'Battery',
    note: 'yes once chemistry, amp-hours, milliohms or short-circuit current is typed; until then what fuses must break is not judged.',
    kind: 'computed',
    formula: ({ supply: cell }) => {
      const measured = `IFERROR(ABS(${cell.milliohms}-${usualMilliohms(cell)})>0.000001*${cell.milliohms},TRUE)`;
      return `IF(OR(${cell.chemistry}<>"",${cell.ampHours}<>"",${cell.batteryShortAmps}<>"",${measured}),"yes","no")`;
    },
  },
  fits: {
    label: 'Fits the source volts',
    section: 'Battery',
    note: '1 where this battery is one for the source volts of the house rules.',
    kind: 'computed',
    style: COUNT,
    formula: ({ supply: cell, rule }) =>
      `IF(AND(ISNUMBER(${rule.volts}),ISNUMBER(${cell.lowRest}),ISNUMBER(${cell.chargingVolts})),` +
      `IF(AND(${rule.volts}>=0.85*${cell.lowRest},${rule.volts}<=1.1*${cell.chargingVolts}),1,0),0)`,
  },
  peakAmps: {
    label: 'Most current at once',
    section: 'Battery',
    note: 'Every load at the share of its peak that counts at once; runs from the panel or with other source volts are not on it.',
    kind: 'computed',
    style: AMPS,
    formula: ({ column }) => `SUM(${column.batteryAmps})`,
  },
  fullTerminal: {
    label: 'Terminal volts at that current, full',
    section: 'Battery',
    note: 'Resting volts less what the internal resistance loses.',
    kind: 'computed',
    style: VOLTS,
    formula: ({ supply: cell }) => `${cell.fullRest}-${cell.peakAmps}*${cell.milliohms}/1000`,
  },
  lowTerminal: {
    label: 'Terminal volts at that current, battery low',
    section: 'Battery',
    note: 'What every run starts from when the battery is low.',
    kind: 'computed',
    style: VOLTS,
    formula: ({ supply: cell }) => `${cell.lowRest}-${cell.peakAmps}*${cell.milliohms}/1000`,
  },
  lowSagging: {
    label: 'Terminal volts for loads in watts',
    section: 'Battery',
    note: 'What loads in watts without minimum volts are sized for, battery low: with what they draw more as the volts sink.',
    kind: 'computed',
    style: VOLTS,
    formula: ({ supply: cell, column, rule }) => {
      const amps = `SUMIF(${column.battery},1,${column.houseOnce})`;
      const first = `(${cell.lowRest}-${amps}*${cell.milliohms}/1000)`;
      return `MAX(${rule.volts}/2,${cell.lowRest}-${amps}*${rule.volts}/MAX(${rule.volts}/2,${first}*(1-${rule.target}))*${cell.milliohms}/1000)`;
    },
  },
  fullShort: {
    label: 'Loads with too few volts, full',
    section: 'Battery',
    note: 'Loads that fall under their minimum volts though the battery is full.',
    kind: 'computed',
    style: COUNT,
    formula: ({ column }) => `SUM(${column.shortFull})`,
  },
  lowShort: {
    label: 'Loads with too few volts, battery low',
    section: 'Battery',
    note: 'The schedule names them, and the thicker run that fixes each.',
    kind: 'computed',
    style: COUNT,
    formula: ({ column }) => `SUM(${column.shortLow})`,
  },
  breakAmps: {
    label: 'Least breaking limit of a fuse at the battery',
    section: 'Battery',
    note: "The maker's short-circuit current, or resting volts, full, over the milliohms typed, or over half the usual ones: a good battery has no more (ours, common practice).",
    kind: 'computed',
    style: { numberFormat: '#,##0 "A"' },
    formula: ({ supply: cell }) => {
      const usual = usualMilliohms(cell);
      const isUsual = `IFERROR(ABS(${cell.milliohms}-${usual})<=0.000001*${cell.milliohms},FALSE)`;
      const milliohms = `${cell.milliohms}*IF(${isUsual},${STRONG_SHARE},1)`;
      return `IF(ISNUMBER(${cell.batteryShortAmps}),${cell.batteryShortAmps},IF(AND(ISNUMBER(${cell.milliohms}),ISNUMBER(${cell.fullRest})),IF(${cell.milliohms}>0,${cell.fullRest}/(${milliohms}/1000),NA()),NA()))`;
    },
  },
  mainFuse: {
    label: 'Main fuse at the battery',
    section: 'Battery',
    note: 'Its rating in amps; blank where there is none.',
    kind: 'typed',
    parameter: protection.rating,
    style: { numberFormat: '0 "A"' },
  },
  mainFuseKind: {
    label: 'Kind of the main fuse',
    section: 'Battery',
    note: 'Blank: blade up to 100 A, bolt-in above.',
    kind: 'typed',
    parameter: fuseKind,
  },
  mainFuseBreaks: {
    label: 'Amps that it breaks',
    section: 'Battery',
    note: 'By its kind, until you type over it from the sheet of its maker.',
    kind: 'usual',
    parameter: protection.shortAmps,
    style: { numberFormat: '#,##0 "A"' },
    formula: ({ supply: cell }) => byKind(cell, ({ breaksA }) => breaksA),
  },
  mainFuseVolts: {
    label: 'Volts that it is rated for',
    section: 'Battery',
    note: 'By its kind, until you type over it.',
    kind: 'usual',
    parameter: parameter.volts,
    style: { numberFormat: '0 "V"' },
    formula: ({ supply: cell }) => byKind(cell, ({ ratedVolts }) => ratedVolts),
  },
  mainCable: {
    label: 'Cable behind the main fuse',
    section: 'Battery',
    note: 'Its size, such as 2 AWG or 35 mm2, between the main fuse and the fuses of the runs.',
    kind: 'typed',
    parameter: parameter.size,
    style: { numberFormat: '@' },
  },
  mainCableAmps: {
    label: 'Ampacity of that cable',
    section: 'Battery',
    note: 'As installed by the house rules.',
    kind: 'computed',
    style: AMPS,
    formula: ({ supply: cell, rule, call }) =>
      `IF(${cell.mainCable}="","",${call('AMPACITY', cell.mainCable, rule.insulationC, ambientInForce(rule), rule.conductors, rule.installed, rule.material)})`,
  },
  mainState: {
    label: 'Main fuse',
    section: 'Battery',
    note: 'Held against its cable, the loads and the battery.',
    kind: 'computed',
    formula: ({ supply: cell, rule, call }) => {
      // A standard rating that the cable may have is its own answer; another is held against the ampacity alone.
      const fuse = (size: string) =>
        call(
          'FUSE_FOR',
          cell.mainFuse,
          size,
          rule.insulationC,
          ambientInForce(rule),
          rule.conductors,
          rule.installed,
          rule.material,
          'FALSE',
          fuseLimitInForce(rule),
        );
      const isStandard = `IFERROR(${fuse(text(THICK))}=${cell.mainFuse},FALSE)`;
      const isLimited = `IF(${isStandard},NOT(ISNUMBER(${fuse(cell.mainCable)})),FALSE)`;
      const said = (key: VerdictKey) => text(VERDICT_JOINT + WORD[key]);
      const isOver = `IF(ISNUMBER(${cell.mainCableAmps}),OR(${cell.mainFuse}>${cell.mainCableAmps}*(1+${RELATIVE_SLACK}),${isLimited}),${cell.mainCable}<>"")`;
      const mayNot = `IF(${cell.stated}="yes",IF(AND(ISNUMBER(${cell.breakAmps}),ISNUMBER(${cell.mainFuseBreaks})),${cell.breakAmps}>${cell.mainFuseBreaks}*(1+${RELATIVE_SLACK}),TRUE),FALSE)`;
      const volts = `IF(AND(ISNUMBER(${cell.mainFuseVolts}),ISNUMBER(${cell.chargingVolts})),MAX(${cell.chargingVolts},${cell.fullRest})>${cell.mainFuseVolts},TRUE)`;
      const small = `IF(ISNUMBER(${cell.peakAmps}),${cell.peakAmps}>${cell.mainFuse}*(1+${RELATIVE_SLACK}),FALSE)`;
      return (
        `IF(ISNUMBER(${cell.mainFuse}),IF(${isOver},${said('mainFuse')},"")&IF(${mayNot},${said('mainBreaks')},"")` +
        `&IF(${volts},${said('mainVolts')},"")&IF(${small},${said('mainSmall')},""),"")`
      );
    },
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
      `IF(${cell.meanAmps}=0,"",${call('BATTERY_HOURS', ampHoursOf(cell), cell.meanAmps, cell.usable, cell.peukert)})`,
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
