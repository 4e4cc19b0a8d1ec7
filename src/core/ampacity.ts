/** Ampacity: what a conductor may carry for heat, from the published tables with their own corrections. */
import { isRefusal, noAnswer, type Outcome } from './outcome';
import { formatSize, sizeAreaMm2, type ConductorSize } from './size';
import { atMost } from './limits';
import type { AmpacityTable } from './tables/ampacity-table';
import { gaugeAreaMm2 } from './tables/awg';
import { CFR33_183_425, ENGINE_SPACE_AMBIENT_C, ENGINE_SPACE_SHARE } from './tables/33cfr-183-425';
import { MATERIAL_CONSTANTS, type Material } from './tables/materials';
import { BUNDLING_310_15 } from './tables/nfpa70-310-15-bundling';
import { NFPA70_310_16 } from './tables/nfpa70-310-16';
import { NFPA70_310_17 } from './tables/nfpa70-310-17';

export const INSTALLATIONS = ['cable', 'air', 'craft', 'engine space'] as const;
/** Which published table holds; see METHODS. */
export type Installed = (typeof INSTALLATIONS)[number];

/** One way of installing: its table, the ambient it is used at, and its own corrections. */
export interface AmpacityMethod {
  readonly table: AmpacityTable;
  readonly usualAmbientC: number;
  /** Whether NFPA 70 310.15(C)(1) derates more than three conductors together. */
  readonly bundled: boolean;
  /** Printed shares at `usualAmbientC` where that is not the table's own ambient. */
  readonly shareAtUsualAmbient?: ReadonlyMap<number, number>;
  /** The coldest air that the rule's corrections cover; colder air counts as that. */
  readonly coldestC?: number;
  /** The greatest share that an ambient may leave, where the rule gives nothing for cold air. */
  readonly mostAmbientShare?: number;
  /** Where the share of an ambient comes from. */
  readonly ambientSource: string;
}

const EQUATION_310_15 = 'NFPA 70 310.15(B)';

/** Coldest row of NFPA 70 table 310.15(B)(1)(1), "10 or less". */
const COLDEST_310_15_C = 10;

export const METHODS: Readonly<Record<Installed, AmpacityMethod>> = {
  cable: {
    table: NFPA70_310_16,
    usualAmbientC: 30,
    bundled: true,
    coldestC: COLDEST_310_15_C,
    ambientSource: EQUATION_310_15,
  },
  air: {
    table: NFPA70_310_17,
    usualAmbientC: 30,
    bundled: true,
    coldestC: COLDEST_310_15_C,
    ambientSource: EQUATION_310_15,
  },
  craft: {
    table: CFR33_183_425,
    usualAmbientC: 30,
    bundled: false,
    mostAmbientShare: 1,
    ambientSource: `${EQUATION_310_15}, never above 1`,
  },
  'engine space': {
    table: CFR33_183_425,
    usualAmbientC: ENGINE_SPACE_AMBIENT_C,
    bundled: false,
    shareAtUsualAmbient: ENGINE_SPACE_SHARE,
    mostAmbientShare: 1,
    ambientSource: `note 1 of the table for ${ENGINE_SPACE_AMBIENT_C} degC, partly from memory, other air by ${EQUATION_310_15}`,
  },
};

export interface Conditions {
  /** Temperature rating of the insulation. */
  readonly insulationC: number;
  /** Surrounding air; left out, the method's usual one. */
  readonly ambientC: number | undefined;
  /** Current-carrying conductors together. */
  readonly conductors: number;
  readonly installed: Installed;
  readonly material: Material;
}

/** The published column in force: the hottest not above the rating. */
export function columnFor(table: AmpacityTable, insulationC: number): Outcome<number> {
  const { columnsC } = table;
  let index = columnsC.length - 1;
  while (index >= 0 && !(columnsC[index]! <= insulationC)) index -= 1;
  return index >= 0
    ? index
    : noAnswer(
        `${table.title} has no column for insulation of ${insulationC} degC; its coolest is ${columnsC[0]} degC`,
      );
}

/**
 * sqrt((Tc - Ta) / (Tc - Tref)), NFPA 70 310.15(B): the share of the ampacity left in another ambient, for insulation
 * of `columnC`. Zero at and above the rating.
 */
export function ambientShare(columnC: number, ambientC: number, referenceC: number): number {
  return Math.sqrt(Math.max(0, columnC - ambientC) / (columnC - referenceC));
}

/** Share left with so many current-carrying conductors together, NFPA 70 310.15(C)(1). */
export function bundlingShare(conductors: number): number {
  let row = BUNDLING_310_15.length - 1;
  while (row >= 0 && BUNDLING_310_15[row]!.conductorsFrom > conductors) row -= 1;
  return BUNDLING_310_15[row]?.share ?? 1;
}

/**
 * Amps of one row in one column, at the table's own ambient. A cell that the table leaves empty (16 and 18 AWG below
 * 90 degC) follows from the row's next hotter cell by the correction equation, rounded down to whole amps.
 */
export function rowAmps(
  table: AmpacityTable,
  material: Material,
  gauge: number,
  column: number,
): number | undefined {
  const row = table[MATERIAL_CONSTANTS[material].ampacityAs].get(gauge);
  if (row === undefined) return undefined;
  const printed = row[column];
  if (printed !== null && printed !== undefined) return printed;
  const hotter = row.findIndex((amps, index) => index > column && amps !== null);
  const hotterC = table.columnsC[hotter];
  const columnC = table.columnsC[column];
  const hotterAmps = row[hotter];
  if (hotterC === undefined || columnC === undefined || typeof hotterAmps !== 'number')
    return undefined;
  const cooler = (columnC - table.referenceAmbientC) / (hotterC - table.referenceAmbientC);
  return Math.floor(hotterAmps * Math.sqrt(cooler));
}

/** The rows of a table that hold for a material, as arrays. */
interface Rows {
  readonly gauges: Int8Array;
  readonly areasMm2: Float64Array;
  /** By column and row, amps; NaN where there are none. */
  readonly amps: readonly Float64Array[];
  /** The thinnest that the rule lets a single conductor be; 0 where it has no such rule. */
  readonly thinnestMm2: number;
}

function rowsOf(table: AmpacityTable, material: Material): Rows {
  const gauges = [...table[MATERIAL_CONSTANTS[material].ampacityAs].keys()];
  const { thinnestSingle } = table;
  return {
    gauges: Int8Array.from(gauges),
    areasMm2: Float64Array.from(gauges, gaugeAreaMm2),
    amps: table.columnsC.map((_, column) =>
      Float64Array.from(gauges, (gauge) => rowAmps(table, material, gauge, column) ?? NaN),
    ),
    thinnestMm2: thinnestSingle === undefined ? 0 : gaugeAreaMm2(thinnestSingle.gauge),
  };
}

/** Made when first asked for. */
const ROWS = new Map<AmpacityTable, Partial<Record<Material, Rows>>>();

function findRows(table: AmpacityTable, material: Material): Rows {
  let ofTable = ROWS.get(table);
  if (ofTable === undefined) ROWS.set(table, (ofTable = {}));
  return (ofTable[material] ??= rowsOf(table, material));
}

/** The row that holds for a size: its own, or for an area the thickest that is not thicker; -1 where there is none. */
function rowFor({ gauges, areasMm2 }: Rows, size: ConductorSize): number {
  let row = gauges.length - 1;
  if (size.kind === 'awg') while (row >= 0 && gauges[row] !== size.gauge) row -= 1;
  else while (row >= 0 && !atMost(areasMm2[row]!, size.areaMm2)) row -= 1;
  return row;
}

/**
 * Published amps of a size before corrections: its own row, or for an area the thickest row that is not thicker. None
 * for a size thinner than the rule lets a single conductor be.
 */
export function publishedAmps(
  table: AmpacityTable,
  material: Material,
  size: ConductorSize,
  column: number,
): Outcome<number> {
  const rows = findRows(table, material);
  if (!atMost(rows.thinnestMm2, sizeAreaMm2(size))) {
    return noAnswer(`${table.thinnestSingle!.rule}; ${formatSize(size)} is thinner`);
  }
  const amps = rows.amps[column]?.[rowFor(rows, size)];
  return amps === undefined || Number.isNaN(amps)
    ? noAnswer(`${table.title} has no row for ${formatSize(size)} in ${material}`)
    : amps;
}

/** The gauge whose row holds for a size, and whether that row prints this column; undefined where there is no row. */
export function publishedRow(
  table: AmpacityTable,
  material: Material,
  size: ConductorSize,
  column: number,
): { readonly gauge: number; readonly isPrinted: boolean } | undefined {
  const rows = findRows(table, material);
  const gauge = rows.gauges[rowFor(rows, size)];
  if (gauge === undefined) return undefined;
  const row = table[MATERIAL_CONSTANTS[material].ampacityAs].get(gauge);
  return { gauge, isPrinted: typeof row?.[column] === 'number' };
}

/**
 * The share that an ambient leaves for insulation of `columnC`, within what the rule's corrections cover: colder air
 * than the coldest of its table counts as that, and where the rule gives nothing for the cold the share is at most 1.
 */
export function shareInAmbient(installed: Installed, columnC: number, ambientC: number): number {
  const { table, usualAmbientC, shareAtUsualAmbient, coldestC, mostAmbientShare } =
    METHODS[installed];
  const airC = Math.max(ambientC, coldestC ?? ambientC);
  const printed = shareAtUsualAmbient?.get(columnC);
  const share =
    printed === undefined
      ? ambientShare(columnC, airC, table.referenceAmbientC)
      : printed * ambientShare(columnC, airC, usualAmbientC);
  return Math.min(share, mostAmbientShare ?? share);
}

/** The share that the corrections leave of an ampacity published in a column, by its place in the table. */
export function correctionShare(
  conditions: Omit<Conditions, 'insulationC' | 'material'>,
  column: number,
): Outcome<number> {
  const { conductors, installed } = conditions;
  const { table, usualAmbientC, bundled } = METHODS[installed];
  const columnC = table.columnsC[column]!;
  const ambientC = conditions.ambientC ?? usualAmbientC;
  if (ambientC >= columnC) {
    return noAnswer(
      `at ${ambientC} degC around it, insulation of the ${columnC} degC column carries nothing`,
    );
  }
  const forAmbient = shareInAmbient(installed, columnC, ambientC);
  return bundled ? forAmbient * bundlingShare(conductors) : forAmbient;
}

/**
 * Amps a conductor may carry under the conditions: the published figure times the share its own table's corrections
 * leave. None where the table has no such row or column, or the air is as hot as the insulation may be.
 */
export function ampacity(size: ConductorSize, conditions: Conditions): Outcome<number> {
  const { table } = METHODS[conditions.installed];
  const column = columnFor(table, conditions.insulationC);
  if (isRefusal(column)) return column;
  const amps = publishedAmps(table, conditions.material, size, column);
  if (isRefusal(amps)) return amps;
  const share = correctionShare(conditions, column);
  return isRefusal(share) ? share : amps * share;
}
