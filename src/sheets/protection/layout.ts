/** Where the parts of the Protection sheet stand, and how its formulas point at them. */
import { FUSE_TYPES } from '../../core/tables/iso-8820-types';
import { area, areaAddress, cellAddress, quotedSheetName, type Area } from '../plan/area';
import { MULTIPLES } from './fuse-points';
import {
  PROTECTION_CELL_KEYS,
  PROTECTION_KEYS,
  type ProtectionCellKey,
  type ProtectionColumnNameKey,
  type ProtectionKey,
  type ProtectionNameKey,
} from '../station/protection-keys';
import type { GuardData, ProtectionReferences, TypeData } from './formulas';
import { columnReferences } from '../schedule/layout';
import type { Layout } from '../station/layout';
import { ofSource } from '../station/references';
import { callAddIn, type Call } from '../plan/formula';

/** Zero-based rows of the sheet's parts. */
export const PROTECTION_ROW = { title: 0, caution: 1, cells: 2, header: 12, first: 13 } as const;
/** Named cells stand at the left, the table of fuse types beside them. */
export const HEAD = { label: 0, value: 3 } as const;
export const TYPES = {
  title: 2,
  header: 3,
  first: 4,
  name: 9,
  ratings: 10,
  breakingA: 11,
  times: 12,
  source: 12 + MULTIPLES.length,
} as const;

const SIDE = PROTECTION_KEYS.length + 1;
/** Right of everything: what the formulas need of the fuse types, and of sizes or materials. */
export const SIDE_TYPES = {
  fromA: SIDE,
  factors: SIDE + 1,
  steepness: SIDE + 1 + MULTIPLES.length,
  mayOpen: SIDE + 1 + 2 * MULTIPLES.length,
} as const;
export const SIDE_COLUMNS = SIDE_TYPES.mayOpen + 1;

export function protectionColumn(key: ProtectionKey): number {
  return PROTECTION_KEYS.indexOf(key);
}

export function protectionArea(key: ProtectionKey, rows: number): Area {
  return area(PROTECTION_ROW.first, protectionColumn(key), rows, 1);
}

export function protectionCell(key: ProtectionCellKey): Area {
  return area(PROTECTION_ROW.cells + PROTECTION_CELL_KEYS.indexOf(key), HEAD.value);
}

/** The area of a name; columns take in the row below, so that rows put in above it are theirs. */
export function protectionNameArea(key: ProtectionNameKey, rows: number): Area {
  return key === 'verdict' || key === 'confirm' || key === 'guardedFrom' || key === 'homeless'
    ? protectionArea(key, rows + 1)
    : protectionCell(key);
}

const typeRows = (column: number, columns = 1) =>
  areaAddress(area(TYPES.first, column, FUSE_TYPES.length, columns), 'both');

export const TYPE_DATA: TypeData = {
  fromA: typeRows(SIDE_TYPES.fromA),
  names: typeRows(TYPES.name),
  breakingA: typeRows(TYPES.breakingA),
  multiples: areaAddress(area(TYPES.header, TYPES.times, 1, MULTIPLES.length), 'both'),
  times: typeRows(TYPES.times, MULTIPLES.length),
  factors: typeRows(SIDE_TYPES.factors, MULTIPLES.length),
  steepness: typeRows(SIDE_TYPES.steepness, MULTIPLES.length),
  mayOpen: typeRows(SIDE_TYPES.mayOpen),
};

/** A column of this sheet, as formulas of other sheets point at it. */
export function protectionElsewhere(
  key: ProtectionColumnNameKey,
  { names, references, rows }: Layout,
): string {
  return references === 'names'
    ? names.protectColumn[key]
    : `${quotedSheetName(names.protectionSheet)}!${areaAddress(protectionArea(key, rows), 'both')}`;
}

/**
 * The kind that is typed for the fuse of a run, by its place from 1; empty past the sheet's rows, which a schedule's table
 * may grow beyond.
 */
export function ownFuseKind(place: string, layout: Layout): string {
  const kinds = protectionElsewhere('kind', layout);
  return `IF(${place}>ROWS(${kinds}),"",INDEX(${kinds},${place}))`;
}

/** References of the run at a place of the list, from 0. */
export function protectionReferences(
  layout: Layout,
  sizes: GuardData,
  index: number,
  call: Call = callAddIn,
): ProtectionReferences {
  const { names } = layout;
  const column = columnReferences(layout, true);
  const place = cellAddress(PROTECTION_ROW.first + index, protectionColumn('place'), 'column');
  return {
    call,
    own: Object.fromEntries(
      PROTECTION_KEYS.map((key) => [
        key,
        cellAddress(PROTECTION_ROW.first + index, protectionColumn(key), 'column'),
      ]),
    ) as Record<ProtectionKey, string>,
    ownColumn: Object.fromEntries(
      PROTECTION_KEYS.map((key) => [key, areaAddress(protectionArea(key, layout.rows), 'both')]),
    ) as Record<ProtectionKey, string>,
    column,
    rule: names.rule,
    sources: names.supply,
    supply: ofSource(names.supply, `INDEX(${column.source},${place})`),
    protect: names.protect,
    sizes,
    types: TYPE_DATA,
    header: cellAddress(PROTECTION_ROW.header, 0, 'both'),
  };
}
