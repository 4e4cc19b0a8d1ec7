/**
 * The house rules: what holds for every run of a schedule unless the row says otherwise. Each is one named cell; its
 * meaning, choices, bounds and default come from the parameter of the functions that it is handed to.
 */
import { METHODS, type Installed } from '../../core/ampacity';
import { FUSE_LIMITS } from '../../core/fuse-limit';
import type { Parameter } from '../../functions/parameter';
import * as parameter from '../../functions/parameters/run';
import type { CellContent, CellStyle } from '../plan/plan';
import {
  chassisMilliohms,
  COUNTS,
  counts,
  duty,
  DUTY_CHOICES,
  jointsWhereBlank,
  returns,
  RETURNS,
  USUAL_CHASSIS_MILLIOHMS,
  USUAL_JOINT_MILLIOHMS,
} from './parameters';

/** How a formula points at each rule's cell. */
export type RuleReferences = Readonly<Record<RuleKey, string>>;

export interface HouseRule {
  readonly label: string;
  readonly parameter: Parameter;
  /** What stands in the cell of a new sheet: a value, or a formula over other rules. */
  initial(rules: RuleReferences): CellContent;
  readonly style?: CellStyle;
  /** Said when the cell is selected, beside the parameter's own meaning. */
  readonly hint?: string;
}

/** The parameter's own default, so that a schedule's figures are those of the bare functions. */
function fallbackOf(parameter: Parameter): () => CellContent {
  return () => parameter.fallback as CellContent;
}

const HOT = 'engine space' satisfies Installed;

export const RULE_KEYS = [
  'unit',
  'volts',
  'target',
  'series',
  'material',
  'tempC',
  'insulationC',
  'installed',
  'ambientC',
  'conductors',
  'duty',
  'counts',
  'joints',
  'fuseLimit',
  'returns',
  'chassis',
] as const;
export type RuleKey = (typeof RULE_KEYS)[number];

function usualAmbient({ installed }: RuleReferences): string {
  return `IF(${installed}="${HOT}",${METHODS[HOT].usualAmbientC},${METHODS.cable.usualAmbientC})`;
}

/**
 * A rule's cell, or its usual figure where it was emptied: some builds of Excel hand an empty cell to a function as 0,
 * and 0 degC would flatter the wire.
 */
const orUsual = (cell: string, usual: string) => `IF(${cell}="",${usual},${cell})`;

/** The ambient in force, as a formula without its leading "=". */
export function ambientInForce(rules: RuleReferences): string {
  return orUsual(rules.ambientC, usualAmbient(rules));
}

/** NFPA 70 holds for wiring ashore; craft have the table of 33 CFR 183 with a rule of its own for fuses. */
function usualFuseLimit({ installed }: RuleReferences): string {
  const [none, smallWires] = FUSE_LIMITS;
  return `IF(OR(${installed}="craft",${installed}="${HOT}"),"${none}","${smallWires}")`;
}

/** The rule for fuses of small wires in force, as a formula without its leading "=". */
export function fuseLimitInForce(rules: RuleReferences): string {
  return orUsual(rules.fuseLimit, usualFuseLimit(rules));
}

/** The conductor temperature in force, as a formula without its leading "=". */
export function conductorTempInForce(rules: RuleReferences): string {
  return orUsual(rules.tempC, ambientInForce(rules));
}

export const HOUSE_RULES: Readonly<Record<RuleKey, HouseRule>> = {
  unit: {
    label: 'Length unit',
    parameter: parameter.unit,
    initial: () => 'ft',
    hint: 'Every length of this sheet is in it.',
  },
  volts: {
    label: 'Source volts',
    parameter: parameter.volts,
    initial: () => 12,
    style: { numberFormat: '0.0# "V"' },
    hint: 'The lowest you count on while a load draws its peak; 12 until you write your own.',
  },
  target: {
    label: 'Drop target',
    parameter: parameter.maxDrop,
    initial: () => 0.03,
    style: { numberFormat: '0.0 %' },
    hint: '3 % is the usual limit, 2 % the habit for solar (common practice).',
  },
  series: {
    label: 'Size series',
    parameter: parameter.series,
    initial: fallbackOf(parameter.series),
  },
  material: {
    label: 'Conductor',
    parameter: parameter.material,
    initial: fallbackOf(parameter.material),
  },
  tempC: {
    label: 'Conductor temperature',
    parameter: parameter.tempC,
    initial: (rules) => ({ formula: `=${ambientInForce(rules)}` }),
    style: { numberFormat: '0 "°C"' },
    hint: 'Follows the ambient until you type over it. A loaded cable runs warmer than the air; 50 is a cautious figure (common practice).',
  },
  insulationC: {
    label: 'Insulation rating',
    parameter: parameter.insulationC,
    initial: fallbackOf(parameter.insulationC),
    style: { numberFormat: '0 "°C"' },
  },
  installed: {
    label: 'How installed',
    parameter: parameter.installed,
    initial: fallbackOf(parameter.installed),
    hint: 'cable: jacketed, bundled or in conduit; air: single conductors; craft: boats and the like.',
  },
  ambientC: {
    label: 'Ambient',
    parameter: parameter.ambientC,
    initial: (rules) => ({ formula: `=${usualAmbient(rules)}` }),
    style: { numberFormat: '0 "°C"' },
    hint: 'Follows the installation until you type over it.',
  },
  conductors: {
    label: 'Bundled conductors',
    parameter: parameter.conductors,
    initial: fallbackOf(parameter.conductors),
    style: { numberFormat: '0' },
    hint: 'Count both conductors of every run in the bundle.',
  },
  duty: { label: 'Duty of loads', parameter: duty, initial: () => DUTY_CHOICES[0] },
  counts: { label: 'Target counts', parameter: counts, initial: () => COUNTS[0] },
  joints: {
    label: 'Joints where blank',
    parameter: jointsWhereBlank,
    initial: () => USUAL_JOINT_MILLIOHMS,
    style: { numberFormat: '0.0# "mΩ"' },
  },
  returns: {
    label: 'Return',
    parameter: returns,
    initial: () => RETURNS[0],
    hint: 'Of every run that says nothing else. Never chassis in a boat: craft want two insulated wires.',
  },
  chassis: {
    label: 'Chassis',
    parameter: chassisMilliohms,
    initial: () => USUAL_CHASSIS_MILLIOHMS,
    style: { numberFormat: '0.0# "mΩ"' },
    hint: 'Measure it: a rusty earthing point has ten times as much.',
  },
  fuseLimit: {
    label: 'Small-wire fuse limit',
    parameter: parameter.fuseLimit,
    initial: (rules) => ({ formula: `=${usualFuseLimit(rules)}` }),
    hint: 'Copper: 18 AWG 7 A, 16 AWG 10 A, 14 AWG 15 A, 12 AWG 20 A, 10 AWG 30 A, whatever the wire may carry.',
  },
};
