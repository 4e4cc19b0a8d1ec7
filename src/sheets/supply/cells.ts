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
import type { CellStyle } from '../plan/plan';
import * as typed from '../station/parameters';
import type { ColumnKey } from '../station/schedule-keys';
import { SOURCE_KINDS, type SourceKind } from '../station/source-kinds';
import type { SupplyKey } from '../station/supply-keys';

/** What the formulas of the Supply sheet may point at. */
export interface SupplyReferences {
  readonly call: Call;
  /** Cells of the source's own column. */
  readonly supply: Readonly<Record<SupplyKey, string>>;
  /** The same of all sources, each a row. */
  readonly sources: Readonly<Record<SupplyKey, string>>;
  /** The source's place among them, from 1. */
  readonly place: string;
  readonly rule: RuleReferences;
  /** Columns of the schedule. */
  readonly column: Readonly<Record<ColumnKey, string>>;
  /** Columns of the duty table of the same sheet: mean amps, and the place of the source. */
  readonly duty: { readonly means: string; readonly sources: string };
}

export const SECTIONS = ['Source', 'Battery', 'Supply', 'Panel', 'Days'] as const;
export type Section = (typeof SECTIONS)[number];

export interface SupplyCell {
  readonly label: string;
  readonly section: Section;
  /** Kinds of source of which it is said; blank for the others. */
  readonly kinds: readonly SourceKind[];
  /** A sentence that stands beside the cell. */
  readonly note: string;
  /** "typed": a value; "usual": a formula until overtyped; "computed". */
  readonly kind: 'typed' | 'usual' | 'computed';
  readonly parameter?: Parameter;
  readonly style?: CellStyle;
  /** What a computed cell holds where the source is of another kind; nothing unless given. */
  readonly otherwise?: string;
  /** Without the leading "=". */
  formula?(references: SupplyReferences): string;
}

const AMPS: CellStyle = { numberFormat: '0.0# "A"' };
const VOLTS: CellStyle = { numberFormat: '0.00 "V"' };
const SHARE: CellStyle = { numberFormat: '0.0 %' };
const AMP_HOURS: CellStyle = { numberFormat: '0.0 "Ah"' };
const COUNT: CellStyle = { numberFormat: '0' };
/** 0 says that there is none. */
const COLUMN_NUMBER: CellStyle = { numberFormat: '0;;' };

type Cells = SupplyReferences['supply'];

const BATTERIES = ['battery'] as const satisfies readonly SourceKind[];
const PANELS = ['panel'] as const satisfies readonly SourceKind[];
const SUPPLIES = ['power supply'] as const satisfies readonly SourceKind[];
/** Kinds that bring a battery its charge. */
const CHARGERS = ['charger', 'alternator'] as const satisfies readonly SourceKind[];

/** The source is one of these kinds. */
export function isKind({ kind }: Cells, kinds: readonly SourceKind[]): string {
  return kinds.length === 1
    ? `${kind}=${text(kinds[0]!)}`
    : `OR(${kinds.map((of) => `${kind}=${text(of)}`).join(',')})`;
}

/** How many batteries alike stand side by side; one where nothing is said. */
const parallelOf = ({ parallel }: Cells) => `IF(${parallel}="",1,${parallel})`;

/** The row of a figure, and what it is summed over where another row has this place. */
const sumWhere = (where: string, place: string, summed: string) =>
  `SUMIF(${where},${place},${summed})`;

/** A six-cell lead-acid battery is charged at so many volts more for every kelvin below 25 C; from memory. */
const COLD_VOLTS_A_CELL = 0.024 / 6;
const WARM_C = 25;

/** Above so many amp-hours a battery of a bank wants a fuse of its own: ABYC E-11 (from memory, check the text). */
const BANK_AMP_HOURS = 500;

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

/** Words that each stand after VERDICT_JOINT, without the first of those. */
const joined = (words: string) => `MID(${words},${VERDICT_JOINT.length + 1},500)`;

/** What is wrong with a source itself, each word after VERDICT_JOINT; empty where nothing is. */
function sourceSays({ supply: cell, sources, column, place }: SupplyReferences): string {
  const told = (test: string, key: VerdictKey) =>
    `IF(${test},${text(VERDICT_JOINT + WORD[key])},"")`;
  const more = (limit: string) =>
    `IF(AND(ISNUMBER(${limit}),ISNUMBER(${cell.peakAmps})),${cell.peakAmps}>${limit}*(1+${RELATIVE_SLACK}),FALSE)`;
  // One load starts at a time, beside what counts at once.
  const most = `SUMPRODUCT(MAX((${column.source}=${place})*(${column.sourceKind}<>"")*${column.surgeAdds}))`;
  const starts = (limit: string, kinds: readonly SourceKind[]) =>
    `IF(AND(${isKind(cell, kinds)},ISNUMBER(${limit}),ISNUMBER(${cell.peakAmps})),IF(${most}>0,AND(${cell.peakAmps}<=${limit}*(1+${RELATIVE_SLACK}),${cell.peakAmps}+${most}>${limit}*(1+${RELATIVE_SLACK})),FALSE),FALSE)`;
  // The others of a bank feed a fault in one.
  const others = `${cell.breakAmps}*(${parallelOf(cell)}-1)/${parallelOf(cell)}`;
  const fused = `IF(AND(ISNUMBER(${cell.eachBreaks}),ISNUMBER(${cell.breakAmps})),${cell.eachBreaks}*(1+${RELATIVE_SLACK})>=${others},FALSE)`;
  const bank = `AND(${isKind(cell, BATTERIES)},IF(ISNUMBER(${cell.parallel}),${cell.parallel}>1,FALSE),NOT(${fused}))`;
  const big = `${ampHoursOf(cell)}*${parallelOf(cell)}>${BANK_AMP_HOURS}`;
  return [
    told(`AND(${bank},${big})`, 'bankUnfused'),
    told(`IF(${isKind(cell, SUPPLIES)},${more(cell.mostAmps)},FALSE)`, 'supplyOverloaded'),
    told(`IF(${isKind(cell, BATTERIES)},${more(cell.packAmps)},FALSE)`, 'packOverloaded'),
    told(`OR(TRIM(${cell.name})="",NOT(${isKind(cell, SOURCE_KINDS)}))`, 'sourceUnknown'),
    told(
      `IF(TRIM(${cell.name})="",FALSE,OR(COUNTIF(${sources.name},TRIM(${cell.name}))>1,COUNTIF(${column.run},TRIM(${cell.name}))>0))`,
      'sourceNamedTwice',
    ),
    told(
      `IF(${cell.charges}="",${isKind(cell, CHARGERS)},TRUE)*(${cell.chargesAt}=0)*(${isKind(cell, BATTERIES)}=FALSE)>0`,
      'chargesNoBattery',
    ),
    told(`AND(${bank},NOT(${big}))`, 'bankFuse'),
    told(
      `OR(${starts(cell.mostAmps, SUPPLIES)},${starts(cell.packAmps, BATTERIES)})`,
      'sourceStart',
    ),
  ].join('&');
}

/** Peukert's exponent where none is given; common practice, no source. */
export const USUAL_PEUKERT: Readonly<Record<Chemistry, number>> = {
  'lead-acid': 1.2,
  LiFePO4: 1,
  'Li-ion': 1,
};

export const SUPPLY_CELLS: Readonly<Record<SupplyKey, SupplyCell>> = {
  name: {
    label: 'Name',
    section: 'Source',
    kinds: SOURCE_KINDS,
    note: 'What stands under "Fed from" in the runs that start at it. Blank there: the first.',
    kind: 'typed',
    style: { numberFormat: '@', bold: true },
  },
  kind: {
    label: 'Kind of source',
    section: 'Source',
    kinds: SOURCE_KINDS,
    note: 'battery, power supply, panel; charger or alternator for one that stands beside a battery.',
    kind: 'typed',
    parameter: typed.sourceKind,
  },
  volts: {
    label: 'Source volts',
    section: 'Source',
    kinds: SOURCE_KINDS,
    note: 'What drops are counted against: those of the house rules, or of the panel, until you type over it.',
    kind: 'usual',
    parameter: parameter.volts,
    style: VOLTS,
    formula: ({ supply: cell, rule }) =>
      `IF(${isKind(cell, PANELS)},IF(${cell.panelVolts}="","",${cell.panelVolts}),IF(${rule.volts}="","",${rule.volts}))`,
  },
  charges: {
    label: 'Battery on its output',
    section: 'Source',
    kinds: [...PANELS, ...CHARGERS, ...SUPPLIES],
    note: 'Name of the battery that it charges. Blank: the first battery; for a power supply, none.',
    kind: 'typed',
    style: { numberFormat: '@' },
  },
  chargesAt: {
    label: 'Its column',
    section: 'Source',
    kinds: [...PANELS, ...CHARGERS, ...SUPPLIES],
    note: 'Which of the sources that battery is; 0 for none.',
    kind: 'computed',
    style: COLUMN_NUMBER,
    otherwise: '0',
    formula: ({ supply: cell, sources }) =>
      `IF(${cell.charges}="",IF(${isKind(cell, SUPPLIES)},0,IFERROR(MATCH("battery",${sources.kind},0),0)),` +
      `IFERROR(IF(INDEX(${sources.kind},1,MATCH(TRIM(${cell.charges}),${sources.name},0))="battery",MATCH(TRIM(${cell.charges}),${sources.name},0),0),0))`,
  },
  governs: {
    label: 'Judged as column',
    section: 'Source',
    kinds: SOURCE_KINDS,
    note: 'Whose faults and low volts its runs are judged by: a battery on the output of a charger or a power supply gives the most and the least.',
    kind: 'computed',
    style: COLUMN_NUMBER,
    otherwise: '0',
    formula: ({ supply: cell, place }) =>
      `IF(${isKind(cell, [...BATTERIES, ...PANELS])},${place},IF(${cell.chargesAt}>0,${cell.chargesAt},IF(${isKind(cell, SUPPLIES)},${place},0)))`,
  },
  says: {
    label: 'Found wrong',
    style: { wrap: true },
    section: 'Source',
    kinds: SOURCE_KINDS,
    note: 'What is wrong with the source itself; it stands in the verdicts of its runs too.',
    kind: 'computed',
    formula: (references) =>
      `IF(AND(${references.supply.name}="",${references.supply.kind}=""),"",${joined(sourceSays(references))})`,
  },
  chemistry: {
    label: 'Chemistry',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'What the runs fed from the battery hang on. Blank: lead-acid is assumed, and what fuses must break is not judged.',
    kind: 'typed',
    parameter: supply.chemistry,
  },
  ampHours: {
    label: 'Capacity',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'Amp-hours as rated, over 20 hours for lead-acid. Blank: 100 is assumed.',
    kind: 'typed',
    parameter: supply.ampHours,
    style: AMP_HOURS,
  },
  parallel: {
    label: 'Batteries alike in parallel',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'Blank: one. Capacity and currents are then those of all, with equal links taken for granted.',
    kind: 'typed',
    parameter: typed.parallel,
    style: COUNT,
  },
  eachBreaks: {
    label: 'Fuse at each of them breaks',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'Amps that the fuse right at each battery of a bank breaks: the others all feed a fault in one. Blank: none there.',
    kind: 'typed',
    parameter: protection.shortAmps,
    style: { numberFormat: '#,##0 "A"' },
  },
  cells: {
    label: 'Cells in series',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'The usual pack of the chemistry for the source volts of the house rules, until you type over it.',
    kind: 'usual',
    parameter: supply.cells,
    style: COUNT,
    formula: ({ supply: cell }) =>
      `${byChemistry(cell, (of) => RESTING_VOLTS[of].usualCells)}*MAX(1,ROUND(${cell.volts}/${VOLTS_A_PACK},0))`,
  },
  milliohms: {
    label: 'Internal resistance',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'Of one battery, from chemistry, cells and amp-hours (common practice), until you type a measurement over it.',
    kind: 'usual',
    parameter: parameter.jointMilliohms,
    style: { numberFormat: '0.0 "mΩ"' },
    formula: ({ supply: cell }) => usualMilliohms(cell),
  },
  bankMilliohms: {
    label: 'Internal resistance of all',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'That of one, over how many stand in parallel.',
    kind: 'computed',
    style: { numberFormat: '0.0 "mΩ"' },
    formula: ({ supply: cell }) => `${cell.milliohms}/${parallelOf(cell)}`,
  },
  packAmps: {
    label: 'Most amps its own protection allows',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'Of all together, from the data sheet of a pack that switches itself off above it; blank where there is no such switch.',
    kind: 'typed',
    parameter: protection.rating,
    style: { numberFormat: '0 "A"' },
  },
  batteryShortAmps: {
    label: 'Short-circuit current, from its maker',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'What the battery gives into a dead short, from its data sheet; blank where it is not known.',
    kind: 'typed',
    parameter: supply.shortCircuitAmps,
    style: { numberFormat: '#,##0 "A"' },
  },
  lowCharge: {
    label: 'Low charge',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'The charge at which every load must still work.',
    kind: 'usual',
    parameter: supply.charge,
    style: SHARE,
    formula: () => '0.2',
  },
  usable: {
    label: 'Usable share',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'Of the capacity, before the battery is called empty.',
    kind: 'usual',
    parameter: supply.usable,
    style: SHARE,
    formula: ({ supply: cell }) => `1-${cell.lowCharge}`,
  },
  peukert: {
    label: "Peukert's exponent",
    section: 'Battery',
    kinds: BATTERIES,
    note: 'Lead-acid about 1.1 to 1.3, the others 1 (common practice), until you type over it.',
    kind: 'usual',
    parameter: supply.peukert,
    style: { numberFormat: '0.00' },
    formula: ({ supply: cell }) => byChemistry(cell, (of) => USUAL_PEUKERT[of]),
  },
  fullRest: {
    label: 'Resting volts, full',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'After hours without current, until you type a measurement over it.',
    kind: 'usual',
    parameter: parameter.volts,
    style: VOLTS,
    formula: ({ supply: cell, call }) => call('BATTERY_VOLTS', chemistryOf(cell), '1', cell.cells),
  },
  lowRest: {
    label: 'Resting volts, battery low',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'The same at the low charge above.',
    kind: 'usual',
    parameter: parameter.volts,
    style: VOLTS,
    formula: ({ supply: cell, call }) =>
      call('BATTERY_VOLTS', chemistryOf(cell), cell.lowCharge, cell.cells),
  },
  batteryColdestC: {
    label: 'Coldest morning at the battery',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'Where its charger raises the volts of lead-acid in the cold: 24 mV a kelvin below 25 °C for six cells (from memory, confirm). Blank: not raised.',
    kind: 'typed',
    parameter: supply.coldestC,
    style: { numberFormat: '0 "°C"' },
  },
  chargingVolts: {
    label: 'Most volts while charging',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'What its circuits can reach: 2.4, 3.65 or 4.2 V a cell (common practice, from memory), until you type over it.',
    kind: 'usual',
    parameter: parameter.volts,
    style: VOLTS,
    formula: ({ supply: cell, sources, place }) => {
      const cold = `IF(AND(${chemistryOf(cell)}="lead-acid",ISNUMBER(${cell.batteryColdestC})),${COLD_VOLTS_A_CELL}*${cell.cells}*MAX(0,${WARM_C}-${cell.batteryColdestC}),0)`;
      const pushed = `SUMPRODUCT(MAX((${sources.chargesAt}=${place})*${sources.pushes}))`;
      return `MAX(${byChemistry(cell, (of) => CHARGING_VOLTS[of])}*${cell.cells}+${cold},${pushed})`;
    },
  },
  stated: {
    label: 'Battery described',
    section: 'Battery',
    kinds: BATTERIES,
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
    kinds: BATTERIES,
    note: '1 where this battery is one for the source volts of the house rules.',
    kind: 'computed',
    style: COUNT,
    formula: ({ supply: cell }) =>
      `IF(AND(ISNUMBER(${cell.volts}),ISNUMBER(${cell.lowRest}),ISNUMBER(${cell.chargingVolts})),` +
      `IF(AND(${cell.volts}>=0.85*${cell.lowRest},${cell.volts}<=1.1*${cell.chargingVolts}),1,0),0)`,
  },
  peakAmps: {
    label: 'Most current at once',
    section: 'Source',
    kinds: [...BATTERIES, ...SUPPLIES],
    note: 'Every load at the share of its peak that counts at once; runs with other source volts are not on it.',
    kind: 'computed',
    style: AMPS,
    formula: ({ column, place }) => sumWhere(column.source, place, column.batteryAmps),
  },
  fullTerminal: {
    label: 'Terminal volts at that current, full',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'Resting volts less what the internal resistance loses.',
    kind: 'computed',
    style: VOLTS,
    formula: ({ supply: cell }) => `${cell.fullRest}-${cell.peakAmps}*${cell.bankMilliohms}/1000`,
  },
  lowTerminal: {
    label: 'Terminal volts at that current, battery low',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'What every run starts from when the battery is low.',
    kind: 'computed',
    style: VOLTS,
    formula: ({ supply: cell }) => `${cell.lowRest}-${cell.peakAmps}*${cell.bankMilliohms}/1000`,
  },
  lowSagging: {
    label: 'Terminal volts for loads in watts',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'What loads in watts without minimum volts are sized for, battery low: with what they draw more as the volts sink.',
    kind: 'computed',
    style: VOLTS,
    formula: ({ supply: cell, column, rule, place }) => {
      const amps = sumWhere(column.battery, place, column.houseOnce);
      const first = `(${cell.lowRest}-${amps}*${cell.bankMilliohms}/1000)`;
      return `MAX(${cell.volts}/2,${cell.lowRest}-${amps}*${cell.volts}/MAX(${cell.volts}/2,${first}*(1-${rule.target}))*${cell.bankMilliohms}/1000)`;
    },
  },
  fullShort: {
    label: 'Loads with too few volts, full',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'Loads that fall under their minimum volts though the battery is full.',
    kind: 'computed',
    style: COUNT,
    formula: ({ column, place }) => sumWhere(column.source, place, column.shortFull),
  },
  lowShort: {
    label: 'Loads with too few volts, battery low',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'The schedule names them, and the thicker run that fixes each.',
    kind: 'computed',
    style: COUNT,
    formula: ({ column, place }) => sumWhere(column.source, place, column.shortLow),
  },
  breakAmps: {
    label: 'Least breaking limit of a fuse at the battery',
    section: 'Battery',
    kinds: BATTERIES,
    note: "The maker's short-circuit current, or resting volts, full, over the milliohms typed, or over half the usual ones: a good battery has no more (ours, common practice).",
    kind: 'computed',
    style: { numberFormat: '#,##0 "A"' },
    formula: ({ supply: cell }) => {
      const usual = usualMilliohms(cell);
      const isUsual = `IFERROR(ABS(${cell.milliohms}-${usual})<=0.000001*${cell.milliohms},FALSE)`;
      const milliohms = `${cell.bankMilliohms}*IF(${isUsual},${STRONG_SHARE},1)`;
      return `IF(ISNUMBER(${cell.batteryShortAmps}),${cell.batteryShortAmps}*${parallelOf(cell)},IF(AND(ISNUMBER(${cell.milliohms}),ISNUMBER(${cell.fullRest})),IF(${cell.milliohms}>0,${cell.fullRest}/(${milliohms}/1000),NA()),NA()))`;
    },
  },
  mainFuse: {
    label: 'Main fuse at the battery',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'Its rating in amps; blank where there is none.',
    kind: 'typed',
    parameter: protection.rating,
    style: { numberFormat: '0 "A"' },
  },
  mainFuseKind: {
    label: 'Kind of the main fuse',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'Blank: blade up to 100 A, bolt-in above.',
    kind: 'typed',
    parameter: fuseKind,
  },
  mainFuseBreaks: {
    label: 'Amps that it breaks',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'By its kind, until you type over it from the sheet of its maker.',
    kind: 'usual',
    parameter: protection.shortAmps,
    style: { numberFormat: '#,##0 "A"' },
    formula: ({ supply: cell }) => byKind(cell, ({ breaksA }) => breaksA),
  },
  mainFuseVolts: {
    label: 'Volts that it is rated for',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'By its kind, until you type over it.',
    kind: 'usual',
    parameter: parameter.volts,
    style: { numberFormat: '0 "V"' },
    formula: ({ supply: cell }) => byKind(cell, ({ ratedVolts }) => ratedVolts),
  },
  mainCable: {
    label: 'Cable behind the main fuse',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'Its size, such as 2 AWG or 35 mm2, between the main fuse and the fuses of the runs.',
    kind: 'typed',
    parameter: parameter.size,
    style: { numberFormat: '@' },
  },
  mainCableAmps: {
    label: 'Ampacity of that cable',
    section: 'Battery',
    kinds: BATTERIES,
    note: 'As installed by the house rules.',
    kind: 'computed',
    style: AMPS,
    formula: ({ supply: cell, rule, call }) =>
      `IF(${cell.mainCable}="","",${call('AMPACITY', cell.mainCable, rule.insulationC, ambientInForce(rule), rule.conductors, rule.installed, rule.material)})`,
  },
  mainState: {
    label: 'Main fuse',
    style: { wrap: true },
    section: 'Battery',
    kinds: BATTERIES,
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
      const words =
        `IF(${isOver},${said('mainFuse')},"")&IF(${mayNot},${said('mainBreaks')},"")` +
        `&IF(${volts},${said('mainVolts')},"")&IF(${small},${said('mainSmall')},"")`;
      return `IF(ISNUMBER(${cell.mainFuse}),${joined(words)},"")`;
    },
  },
  mostAmps: {
    label: 'Most amps',
    section: 'Supply',
    kinds: SUPPLIES,
    note: 'What it can give, from its plate: its fault current is about the same.',
    kind: 'typed',
    parameter: protection.rating,
    style: AMPS,
  },
  whenOver: {
    label: 'Above that it',
    section: 'Supply',
    kinds: SUPPLIES,
    note: 'limits: goes on giving that current (also where blank). trips: switches off.',
    kind: 'typed',
    parameter: typed.whenOver,
  },
  chargeVolts: {
    label: 'Volts that it charges at',
    section: 'Supply',
    kinds: CHARGERS,
    note: 'The most it brings its battery to, from its manual; the loads on that battery must bear them.',
    kind: 'typed',
    parameter: parameter.volts,
    style: VOLTS,
  },
  pushes: {
    label: 'Volts it brings to a battery',
    section: 'Supply',
    kinds: [...CHARGERS, ...SUPPLIES, ...PANELS, ...BATTERIES],
    note: '0 where it says nothing of them.',
    kind: 'computed',
    style: { numberFormat: '0.00 "V";;' },
    otherwise: '0',
    formula: ({ supply: cell }) =>
      `IF(${isKind(cell, CHARGERS)},IF(ISNUMBER(${cell.chargeVolts}),${cell.chargeVolts},0),IF(${isKind(cell, SUPPLIES)},IF(ISNUMBER(${cell.volts}),${cell.volts},0),0))`,
  },
  caution: {
    label: 'Caution',
    section: 'Supply',
    kinds: ['alternator'],
    note: 'An alternator whose battery is cut off while it charges lets the volts jump (load dump).',
    kind: 'computed',
    formula: () => text('load dump'),
  },
  shortCircuitAmps: {
    label: 'Short-circuit current',
    section: 'Panel',
    kinds: PANELS,
    note: 'As the data sheet of the panel gives it.',
    kind: 'typed',
    parameter: supply.shortCircuitAmps,
    style: AMPS,
  },
  maximumPowerAmps: {
    label: 'Current at maximum power',
    section: 'Panel',
    kinds: PANELS,
    note: 'From the same data sheet.',
    kind: 'typed',
    parameter: supply.shortCircuitAmps,
    style: AMPS,
  },
  panelVolts: {
    label: 'Volts at maximum power',
    section: 'Panel',
    kinds: PANELS,
    note: 'The source volts of runs fed from "panel".',
    kind: 'typed',
    parameter: parameter.volts,
    style: VOLTS,
  },
  panelTarget: {
    label: 'Drop target of panel runs',
    section: 'Panel',
    kinds: PANELS,
    note: '2 %, the habit of solar installers (common practice): every volt lost is sun lost.',
    kind: 'usual',
    parameter: parameter.maxDrop,
    style: SHARE,
    formula: () => '0.02',
  },
  openCircuitVolts: {
    label: 'Open-circuit volts',
    section: 'Panel',
    kinds: PANELS,
    note: 'At 25 °C, from the data sheet.',
    kind: 'typed',
    parameter: supply.openCircuitVolts,
    style: VOLTS,
  },
  coldestC: {
    label: 'Coldest morning',
    section: 'Panel',
    kinds: PANELS,
    note: 'The lowest the site is known to reach; a cold panel gives more volts.',
    kind: 'typed',
    parameter: supply.coldestC,
    style: { numberFormat: '0 "°C"' },
  },
  percentPerC: {
    label: 'Coefficient of open-circuit volts',
    section: 'Panel',
    kinds: PANELS,
    note: 'Per cent per degree as the data sheet prints it: -0.29.',
    kind: 'typed',
    parameter: supply.percentPerC,
    style: { numberFormat: '0.00' },
  },
  sunHours: {
    label: 'Sun hours a day',
    section: 'Panel',
    kinds: PANELS,
    note: 'Hours of full sun that the poorest month is worth.',
    kind: 'typed',
    parameter: numberParameter('sun_hours', 'Hours of full sun a day.', { least: 0, most: 24 }),
    style: { numberFormat: '0.0 "h"' },
  },
  panelDesignAmps: {
    label: 'Current to choose its run and fuse for',
    section: 'Panel',
    kinds: PANELS,
    note: '1.25 x 1.25 of the short-circuit current, NFPA 70 690.8: the least ampacity of its run.',
    kind: 'computed',
    style: AMPS,
    formula: ({ supply: cell, call }) => call('PV_DESIGN_AMPS', cell.shortCircuitAmps),
  },
  panelColdVolts: {
    label: 'Open-circuit volts on that morning',
    section: 'Panel',
    kinds: PANELS,
    note: 'The controller and every part on the panel side must stand it.',
    kind: 'computed',
    style: VOLTS,
    formula: ({ supply: cell, call }) =>
      call('PV_COLD_VOLTS', cell.openCircuitVolts, cell.coldestC, cell.percentPerC),
  },
  panelDailyAh: {
    label: 'Gain a day',
    section: 'Panel',
    kinds: PANELS,
    note: 'Current at maximum power times sun hours.',
    kind: 'computed',
    style: AMP_HOURS,
    formula: ({ supply: cell }) =>
      `IF(OR(${cell.maximumPowerAmps}="",${cell.sunHours}=""),"",${cell.maximumPowerAmps}*${cell.sunHours})`,
  },
  meanAmps: {
    label: 'Mean current of all loads',
    section: 'Days',
    kinds: BATTERIES,
    note: 'Sum of the table below.',
    kind: 'computed',
    style: AMPS,
    formula: ({ duty, place }) => sumWhere(duty.sources, place, duty.means),
  },
  batteryHours: {
    label: 'Hours on the battery alone',
    section: 'Days',
    kinds: BATTERIES,
    note: 'From full until the usable share is gone, at the mean current.',
    kind: 'computed',
    style: { numberFormat: '0.0 "h"' },
    formula: ({ supply: cell, call }) =>
      `IF(${cell.meanAmps}=0,"",${call('BATTERY_HOURS', `${ampHoursOf(cell)}*${parallelOf(cell)}`, cell.meanAmps, cell.usable, cell.peukert)})`,
  },
  dailyAh: {
    label: 'Drawn a day',
    section: 'Days',
    kinds: BATTERIES,
    note: 'Mean current over 24 hours.',
    kind: 'computed',
    style: AMP_HOURS,
    formula: ({ supply: cell }) => `24*${cell.meanAmps}`,
  },
  dailyBalance: {
    label: 'Gained less drawn, a day',
    section: 'Days',
    kinds: BATTERIES,
    note: 'Below zero the battery runs down day by day.',
    kind: 'computed',
    style: { numberFormat: '+0.0 "Ah";-0.0 "Ah";0 "Ah"' },
    formula: ({ supply: cell, sources, place }) =>
      `${sumWhere(sources.chargesAt, place, sources.panelDailyAh)}-${cell.dailyAh}`,
  },
};
