/** The Protection sheet's formulas in functions that every spreadsheet knows. */
import {
  MATERIALS,
  RESISTANCE_LAW_LEAST_C,
  RESISTANCE_LAW_MOST_C,
} from '../../core/tables/materials';
import { SHORT_CIRCUIT_CONSTANTS } from '../../core/tables/short-circuit-constants';
import { USUAL_LIMIT_C, USUAL_START_C } from '../../core/withstand';
import { text } from '../plan/formula';
import { MULTIPLES } from '../protection/fuse-points';
import { BAD_ENTRY } from './gauge';
import {
  bearsFor,
  faultAt,
  hasCurrent,
  opensWithin,
  there,
  type ProtectionReferences,
} from '../protection/formulas';
import type { ProtectionCellReferences } from '../protection/cells';
import type { ProtectionKey } from '../station/protection-keys';
import { PROTECTION_FIGURES } from '../protection/words';
import { CellError, type Cell, type ResultCell } from '../../functions/cell';

export interface NativeProtectionReferences extends ProtectionReferences {
  /** Rows of the Conductors sheet, run by run. */
  readonly sizeRow: string;
}

/** Constants of the adiabatic equation by material, as they stand in columns of the sheet. */
export const ADIABATIC_HEADINGS = ['Material', 'J/(K mm³)', 'β, K', 'Ω mm', 'Melts, °C'] as const;
export const ADIABATIC_ROWS = MATERIALS.map((material) => {
  const { joulePerKelvinMm3, betaK, ohmMmAt20C, meltsC } = SHORT_CIRCUIT_CONSTANTS[material];
  return [material, joulePerKelvinMm3, betaK, ohmMmAt20C, meltsC] as const;
});

/** k by the constants: `columns` are those of ADIABATIC_ROWS. A span that makes no sense is a bad entry. */
export function nativeK(
  { rule, protect }: ProtectionCellReferences,
  columns: readonly string[],
): string {
  const [materials, heat, beta, ohmMm, melts] = columns;
  const at = `IF(${rule.material}="",1,MATCH(${rule.material},${materials},0))`;
  const of = (column: string | undefined) => `INDEX(${column},${at})`;
  const start = `IF(${protect.startC}="",${USUAL_START_C},${protect.startC})`;
  const limit = `IF(${protect.limitC}="",${USUAL_LIMIT_C},${protect.limitC})`;
  const sound = `AND(ISNUMBER(${start}),ISNUMBER(${limit}),${limit}>${start},${limit}<=${of(melts)},${start}>=${RESISTANCE_LAW_LEAST_C},${start}<=${RESISTANCE_LAW_MOST_C})`;
  return (
    `IF(${sound},SQRT(${of(heat)}*(${of(beta)}+20)/${of(ohmMm)}` +
    `*LN((${of(beta)}+${limit})/(${of(beta)}+${start}))),${BAD_ENTRY})`
  );
}

/** Straight between the points on logarithmic axes; the last time stands beyond the last point. */
function fuseSeconds({ own, types }: ProtectionReferences, fault: string): string {
  const times = `MAX(${fault}/${own.fuse},INDEX(${types.multiples},1,1))`;
  const point = `MATCH(${times},${types.multiples},1)`;
  const at = (table: string, step = '') => `INDEX(${table},${own.type},${point}${step})`;
  const multiple = (step = '') => `INDEX(${types.multiples},1,${point}${step})`;
  return (
    `IF(${point}=${MULTIPLES.length},${at(types.times)},${at(types.times)}*(${at(types.times, '+1')}/${at(types.times)})` +
    `^(LN(${times}/${multiple()})/LN(${multiple('+1')}/${multiple()})))`
  );
}

type NativeProtectionFormula = (row: NativeProtectionReferences) => string;

/** What replaces the formulas that call our functions, but for the steady temperature. */
export const NATIVE_PROTECTION = {
  farFault: (row) =>
    faultAt(
      row,
      row.own.farOhms,
      `${row.own.sourceVolts}/(${row.supply.milliohms}/1000+${row.own.farOhms})`,
    ),
  nearFault: (row) =>
    faultAt(
      row,
      row.own.nearOhms,
      `${row.own.sourceVolts}/(${row.supply.milliohms}/1000+${row.own.nearOhms})`,
    ),
  farOpens: (row) => opensWithin(row, row.own.farFault, fuseSeconds(row, row.own.farFault)),
  nearOpens: (row) => opensWithin(row, row.own.nearFault, fuseSeconds(row, row.own.nearFault)),
  farBears: (row) =>
    bearsFor(
      row,
      `(${row.protect.k}*INDEX(${row.sizes.areaMm2},INDEX(${row.sizeRow},${row.own.place}))/${row.own.farFault})^2`,
    ),
} as const satisfies Readonly<Partial<Record<ProtectionKey, NativeProtectionFormula>>>;

/** What a steady temperature was worked out from when the workbook was written, and what it came to. */
export interface SteadyAtWriting {
  readonly amps: ResultCell;
  readonly size: ResultCell;
  readonly airC: ResultCell;
  readonly material: Cell;
  readonly steady: ResultCell;
}

/**
 * The heat balance has no closed form, so the value of the writing stands for as long as what it was worked out from
 * stays as it was; after that the cell says that it is not computed.
 */
export function steadyAtWriting(
  row: ProtectionReferences,
  written: SteadyAtWriting | undefined,
): string {
  const otherwise = text(PROTECTION_FIGURES.notComputed);
  const value = written === undefined ? otherwise : asFormula(written, row, otherwise);
  return `IF(${hasCurrent(row)},${value},"")`;
}

function asFormula(
  { amps, size, airC, material, steady }: SteadyAtWriting,
  row: ProtectionReferences,
  otherwise: string,
): string {
  if (typeof amps !== 'number' || size instanceof CellError || typeof airC !== 'number') {
    return otherwise;
  }
  const value =
    steady instanceof CellError
      ? steady.code === '#N/A'
        ? 'NA()'
        : BAD_ENTRY
      : typeof steady === 'number'
        ? String(steady)
        : text(String(steady));
  const same = [
    `ABS(${there(row, 'runAmps')}-${amps})<=0.000001*${amps}`,
    `${there(row, 'size')}&""=${text(String(size))}`,
    `${row.protect.airC}=${airC}`,
    `${row.rule.material}&""=${text(String(material ?? ''))}`,
  ];
  return `IF(IFERROR(AND(${same.join(',')}),FALSE),${value},${otherwise})`;
}
