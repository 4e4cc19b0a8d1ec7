/**
 * Our worksheet functions in functions that every spreadsheet knows (Excel 2016, Excel for the web, LibreOffice 7.4), each
 * written once. They look up what the Conductors and Fuses sheets hold for the house rules in force, and answer as the
 * functions do: an error that comes in goes through, a bad entry is #VALUE!, a question without an answer #N/A.
 */
import { fuseShare } from '../../core/fuse';
import { ARCING_ALLOWANCE_S } from '../../core/fuse-time';
import { RELATIVE_SLACK } from '../../core/limits';
import { BRIGHT_SUN, CONTINUOUS, RATED_AT_C } from '../../core/solar';
import { RESISTANCE_LAW_LEAST_C, RESISTANCE_LAW_MOST_C } from '../../core/tables/materials';
import { USUAL_LIMIT_C, USUAL_START_C } from '../../core/withstand';
import type { NumberBounds, Parameter } from '../../functions/parameter';
import * as supply from '../../functions/parameters/supply';
import { BAD_ENTRY, type Call } from '../plan/formula';
import type { TypeData } from '../protection/formulas';
import { conductorsOf } from '../schedule/row';
import { MULTIPLES } from '../protection/fuse-points';
import type { DataKey } from '../station/data-keys';

/** What the forms look things up in. */
export interface NativeData {
  readonly data: Readonly<Record<DataKey, string>>;
  readonly types: TypeData;
}

/** Cells in which a step of a form already stands, by what it is a step of. */
export type WorkedCells = Readonly<Record<string, string>>;

/** The names of the steps that a workbook may keep in cells of its own. */
export const STEP = {
  sizeRow: (size: string) => `row of ${size}`,
  fuseNeeded: (amps: string, continuous: string) => `fuse for ${amps}, ${continuous}`,
  k: (startC: string, limitC: string, material: string) => `k of ${startC}, ${limitC}, ${material}`,
} as const;

export const WITHIN = `(1+${RELATIVE_SLACK})`;

/** Over a limit that it may equal. */
export const over = (value: string, limit: string) => `${value}>${limit}*${WITHIN}`;

export const isAmount = (cell: string) => `AND(ISNUMBER(${cell}),${cell}>=0)`;
const isBlankOr = (cell: string, test: string) => `OR(${cell}="",${test})`;

/** Errors that come in go through, in the order of the arguments; then what cannot be used is a bad entry. */
function settled(given: readonly string[], usable: string, expression: string): string {
  const [first, ...others] = given;
  if (first === undefined) return `IF(${usable},${expression},${BAD_ENTRY})`;
  return `IF(ISERROR(${first}),${first},${settled(others, usable, expression)})`;
}

function within(cell: string, { least, above, most, below }: NumberBounds): string {
  const tests = [
    `ISNUMBER(${cell})`,
    ...(least === undefined ? [] : [`${cell}>=${least}`]),
    ...(above === undefined ? [] : [`${cell}>${above}`]),
    ...(most === undefined ? [] : [`${cell}<=${most}`]),
    ...(below === undefined ? [] : [`${cell}<${below}`]),
  ];
  return `AND(${tests.join(',')})`;
}

const asParameterAsks = (cell: string, { bounds = {} }: Parameter) => within(cell, bounds);

/** Empty text where one of the cells is blank, as a function answers a blank required argument. */
const quietWithout = (cells: readonly string[], expression: string) =>
  `IF(OR(${cells.map((cell) => `${cell}=""`).join(',')}),"",${expression})`;

/** The place of a size among the listed ones: as it is written, or as a bare gauge. */
export function sizeRow({ data }: Pick<NativeData, 'data'>, size: string): string {
  return (
    `IF(ISERROR(${size}),${size},IF(${size}="","",` +
    `IFERROR(MATCH(${size},${data.sizes},0),IFERROR(MATCH(${size}&" AWG",${data.sizes},0),${BAD_ENTRY}))))`
  );
}

/** The smallest standard rating for a current, whatever the wire; none past the largest. */
export function fuseNeeded(
  { data }: Pick<NativeData, 'data'>,
  amps: string,
  continuous: string,
): string {
  const needed = `${amps}*IF(${continuous},${fuseShare(true)},${fuseShare(false)})`;
  const short = `SUMPRODUCT(--(${over(needed, data.fuses)}))`;
  return settled(
    [amps],
    isAmount(amps),
    `IF(${short}=ROWS(${data.fuses}),NA(),INDEX(${data.fuses},${short}+1))`,
  );
}

/** k of the adiabatic equation, by the constants of the material; a span that makes no sense is a bad entry. */
function k({ data }: NativeData, startC: string, limitC: string, material: string): string {
  const at = `IF(${material}="",1,MATCH(${material},${data.materials},0))`;
  const of = (column: DataKey) => `INDEX(${data[column]},${at})`;
  const start = `IF(${startC}="",${USUAL_START_C},${startC})`;
  const limit = `IF(${limitC}="",${USUAL_LIMIT_C},${limitC})`;
  const sound =
    `AND(ISNUMBER(${start}),ISNUMBER(${limit}),${limit}>${start},${limit}<=${of('meltsC')},` +
    `${start}>=${RESISTANCE_LAW_LEAST_C},${start}<=${RESISTANCE_LAW_MOST_C})`;
  return (
    `IF(${sound},SQRT(${of('joulePerKelvinMm3')}*(${of('betaK')}+20)/${of('ohmMm')}` +
    `*LN((${of('betaK')}+${limit})/(${of('betaK')}+${start}))),${BAD_ENTRY})`
  );
}

/** Straight between the points on logarithmic axes; beyond the last at a constant I2t, and the arc. */
function fuseSeconds({ types }: NativeData, rating: string, fault: string): string {
  const type = `MATCH(${rating},${types.fromA},1)`;
  const times = `MAX(${fault}/${rating},INDEX(${types.multiples},1,1))`;
  const point = `MATCH(${times},${types.multiples},1)`;
  const at = (table: string, step = '') => `INDEX(${table},${type},${point}${step})`;
  const multiple = (step = '') => `INDEX(${types.multiples},1,${point}${step})`;
  return (
    `IF(${point}=${MULTIPLES.length},MIN(${at(types.times)},${at(types.times)}*(${multiple()}/${times})^2+${ARCING_ALLOWANCE_S}),${at(types.times)}*(${at(types.times, '+1')}/${at(types.times)})` +
    `^(LN(${times}/${multiple()})/LN(${multiple('+1')}/${multiple()})))`
  );
}

/** Volts of a rested pack: straight between the points of its chemistry. */
function batteryVolts({ data }: NativeData, chemistry: string, charge: string, cells: string) {
  const { chemistries, restingCharge, restingVolts } = data;
  const first = `MATCH(${chemistry},${chemistries},0)`;
  const points = `COUNTIF(${chemistries},${chemistry})`;
  const reached = `SUMPRODUCT((${chemistries}=${chemistry})*(${restingCharge}<=${charge}))`;
  const from = `(${first}-1+MAX(1,MIN(${points}-1,${reached})))`;
  const point = (of: string, step = '') => `INDEX(${of},${from}${step})`;
  const rise = `(${point(restingVolts, '+1')}-${point(restingVolts)})/(${point(restingCharge, '+1')}-${point(restingCharge)})`;
  return quietWithout(
    [chemistry, charge],
    `IF(AND(${asParameterAsks(charge, supply.charge)},COUNTIF(${chemistries},${chemistry})>0),` +
      `(${point(restingVolts)}+(${charge}-${point(restingCharge)})*${rise})*${cells},${BAD_ENTRY})`,
  );
}

/** Mean and r.m.s. of a row of states; each state wants both its amps and its share. */
const states = (amps: string, shares: string, expression: string) =>
  `IF(SUMPRODUCT(--ISNUMBER(${amps}))+SUMPRODUCT(--ISNUMBER(${shares}))=0,"",` +
  `IF(AND(SUMPRODUCT(--(ISNUMBER(${amps})<>ISNUMBER(${shares})))=0,SUMPRODUCT(--ISTEXT(${amps}))+SUMPRODUCT(--ISTEXT(${shares}))=0,` +
  `SUM(${shares})<=${WITHIN},MIN(${amps},${shares})>=0),${expression},${BAD_ENTRY}))`;

/** One form: where things are looked up, where its steps stand, and the arguments. */
type NativeForm = (
  native: NativeData,
  worked: (step: string, expression: string) => string,
  args: readonly string[],
) => string;

/** The forms by the function's id. Sizes are chosen, and trees solved, in columns of the Workings sheet instead. */
const NATIVE_FORMS: Readonly<Record<string, NativeForm>> = {
  RUN_OHMS: (native, worked, [length, , size, , , joints = '', back = '']) => {
    const row = worked(STEP.sizeRow(size!), sizeRow(native, size!));
    const { metresPer, ohmsPerM, wireOk } = native.data;
    const given = [joints, back].filter((argument) => argument !== '');
    const conductors = back === '' ? '2' : conductorsOf(back);
    const wire = `${conductors}*${length}*${metresPer}*INDEX(${ohmsPerM},${row})`;
    const sound = [
      isAmount(length!),
      ...(joints === '' ? [] : [isBlankOr(joints, isAmount(joints))]),
      ...(back === '' ? [] : [isBlankOr(back, `AND(ISNUMBER(${back}),${back}>0)`)]),
      wireOk,
    ];
    return settled(
      [length!, row, ...given],
      `AND(${sound.join(',')})`,
      [wire, ...given.map((milliohms) => `N(${milliohms})/1000`)].join('+'),
    );
  },
  AMPACITY: (native, worked, [size]) => {
    const row = worked(STEP.sizeRow(size!), sizeRow(native, size!));
    return settled([row], native.data.heatOk, `INDEX(${native.data.ampacity},${row})`);
  },
  FUSE_FOR: (native, worked, [amps, size, , , , , , continuous]) => {
    const row = worked(STEP.sizeRow(size!), sizeRow(native, size!));
    const ampacity = `INDEX(${native.data.ampacity},${row})`;
    const needed = worked(
      STEP.fuseNeeded(amps!, continuous!),
      fuseNeeded(native, amps!, continuous!),
    );
    const limit = `INDEX(${native.data.fuseLimitA},${row})`;
    return settled(
      [amps!, row],
      `AND(${isAmount(amps!)},${native.data.heatOk},${native.data.limitOk})`,
      `IF(ISERROR(${ampacity}),${ampacity},IF(ISERROR(${needed}),${needed},IF(OR(${over(needed, ampacity)},${over(needed, limit)}),NA(),${needed})))`,
    );
  },
  FAULT_AMPS: (_, __, [volts, milliohms, ohms]) => `${volts}/(${milliohms}/1000+${ohms})`,
  FUSE_SECONDS: (native, _, [rating, fault]) => fuseSeconds(native, rating!, fault!),
  WITHSTAND_SECONDS: (native, worked, [size, amps, startC, limitC, material]) => {
    const row = worked(STEP.sizeRow(size!), sizeRow(native, size!));
    const ofSpan = worked(
      STEP.k(startC!, limitC!, material!),
      k(native, startC!, limitC!, material!),
    );
    return `(${ofSpan}*INDEX(${native.data.areaMm2},${row})/${amps})^2`;
  },
  BATTERY_VOLTS: (native, _, [chemistry, charge, cells]) =>
    batteryVolts(native, chemistry!, charge!, cells!),
  BATTERY_HOURS: (_, __, [ampHours, amps, usable, peukert]) => {
    const hours = supply.ratedHours.fallback;
    return quietWithout(
      [ampHours!],
      settled(
        [ampHours!, amps!, usable!, peukert!],
        `AND(${asParameterAsks(ampHours!, supply.ampHours)},ISNUMBER(${amps}),${asParameterAsks(usable!, supply.usable)},${asParameterAsks(peukert!, supply.peukert)})`,
        `${usable}*${hours}*(${ampHours}/(${amps}*${hours}))^${peukert}`,
      ),
    );
  },
  PV_DESIGN_AMPS: (_, __, [amps]) =>
    quietWithout(
      [amps!],
      `IF(${isAmount(amps!)},${BRIGHT_SUN}*${CONTINUOUS}*${amps},${BAD_ENTRY})`,
    ),
  PV_COLD_VOLTS: (_, __, [volts, coldestC, percentPerC]) =>
    quietWithout(
      [volts!, coldestC!, percentPerC!],
      settled(
        [volts!, coldestC!, percentPerC!],
        `AND(${asParameterAsks(volts!, supply.openCircuitVolts)},${asParameterAsks(coldestC!, supply.coldestC)},${asParameterAsks(percentPerC!, supply.percentPerC)})`,
        `${volts}*(1+${percentPerC}/100*(${coldestC}-${RATED_AT_C}))`,
      ),
    ),
  DUTY_AMPS: (_, __, [amps, shares]) => states(amps!, shares!, `SUMPRODUCT(${amps},${shares})`),
  HEATING_AMPS: (_, __, [amps, shares]) =>
    states(amps!, shares!, `SQRT(SUMPRODUCT(${amps},${amps},${shares}))`),
};

/** A call that writes the native form. Throws for a function that has none: its column then has a form of its own. */
export function nativeCall(native: NativeData, cells: WorkedCells = {}): Call {
  const worked = (step: string, expression: string) => cells[step] ?? expression;
  return (id, ...args) => {
    const form = NATIVE_FORMS[id];
    if (form === undefined) throw new Error(`${id} has no native form`);
    return form(native, worked, args);
  };
}
