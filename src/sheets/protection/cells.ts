/** The named cells at the head of the Protection sheet. */
import { USUAL_LIMIT_C, USUAL_START_C } from '../../core/withstand';
import type { Parameter } from '../../functions/parameter';
import * as parameter from '../../functions/parameters/run';
import * as protection from '../../functions/parameters/protection';
import { text, type Call } from '../plan/formula';
import { BY_RATING } from '../../core/tables/fuse-kinds';
import { fuseKind } from '../station/fuse-kind';
import { ambientInForce, type RuleReferences } from '../station/house-rules';
import { surgeS, USUAL_SURGE_S, USUAL_WEAK_TIMES, weakTimes } from '../station/parameters';
import type { CellStyle } from '../plan/plan';
import type { ProtectionCellKey, ProtectionNameKey } from '../station/protection-keys';
import type { SupplyKey } from '../station/supply-keys';
import { warmthOver } from '../station/warmth';

/** What the formulas of the head point at. */
export interface ProtectionCellReferences {
  readonly call: Call;
  readonly rule: RuleReferences;
  readonly supply: Readonly<Record<SupplyKey, string>>;
  readonly protect: Readonly<Record<ProtectionNameKey, string>>;
}

export interface ProtectionCell {
  readonly label: string;
  /** Said of the cell, with its source. */
  readonly note: string;
  readonly style: CellStyle;
  /** The parameter of a typed cell, and the value of a new sheet. */
  readonly parameter?: Parameter;
  readonly initial?: number | string;
  /** Without the leading "=", for a computed cell. */
  formula?(references: ProtectionCellReferences): string;
}

const DEGREES: CellStyle = { numberFormat: '0 "°C"' };

export const PROTECTION_CELLS: Readonly<Record<ProtectionCellKey, ProtectionCell>> = {
  batteryFault: {
    label: 'Least breaking limit at the battery',
    note: 'Amps that a fuse right at the battery must break, from the Supply sheet.',
    style: { numberFormat: '#,##0 "A"' },
    formula: ({ supply }) => supply.breakAmps,
  },
  startC: {
    label: 'Conductor before the fault',
    note: 'IEC 60364-5-54: 70 °C for PVC warm from its load.',
    style: DEGREES,
    parameter: protection.startC,
    initial: USUAL_START_C,
  },
  limitC: {
    label: 'Most its insulation bears briefly',
    note: 'IEC 60364-5-54: 160 °C for PVC, for up to 5 s.',
    style: DEGREES,
    parameter: protection.limitC,
    initial: USUAL_LIMIT_C,
  },
  k: {
    label: 'k of the conductor, A √s per mm²',
    note: 'Adiabatic equation I² t = (k S)², IEC 60364-5-54 and IEC 60949, for the material of the house rules.',
    style: { numberFormat: '0.0' },
    formula: ({ rule, protect, call }) =>
      `SQRT(${call('WITHSTAND_SECONDS', text('1 mm2'), '1', protect.startC, protect.limitC, rule.material)})`,
  },
  airC: {
    label: 'Still air around the wires',
    note: 'The ambient of the house rules.',
    style: DEGREES,
    formula: ({ rule }) => ambientInForce(rule),
  },
  ratingC: {
    label: 'Insulation rating',
    note: 'Of the house rules.',
    style: DEGREES,
    formula: ({ rule }) =>
      `IF(${rule.insulationC}="",${parameter.insulationC.fallback},${rule.insulationC})`,
  },
  fuseKind: {
    label: 'Kind of fuse',
    note: 'Of every run that names no other: blade (1000 A at 32 V), bolt-in (2000 A at 32 V), high-breaking (20 kA at 125 V, from memory), your own, or by rating: blade up to 100 A, bolt-in above.',
    style: {},
    parameter: fuseKind,
    initial: BY_RATING,
  },
  weakTimes: {
    label: 'Milliohms of a tired battery, times',
    note: 'Old, cold or low it may have so many times its milliohms: a short at the far end must still blow the fuse. Ours, common practice.',
    style: { numberFormat: '0.0#' },
    parameter: weakTimes,
    initial: USUAL_WEAK_TIMES,
  },
  surgeS: {
    label: 'A load surges for',
    note: 'As it starts; a fuse that may open within it is left to confirm. Ours, common practice.',
    style: { numberFormat: '0.0# "s"' },
    parameter: surgeS,
    initial: USUAL_SURGE_S,
  },
  warm: {
    label: 'Resistance of warm wire, times',
    note: 'Of wire as warm as before the fault, over that at the conductor temperature of the house rules.',
    style: { numberFormat: '0.000' },
    formula: ({ rule, protect }) => {
      const start = `IF(${protect.startC}="",${USUAL_START_C},${protect.startC})`;
      return warmthOver(rule, start);
    },
  },
};
