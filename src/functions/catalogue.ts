/** Every worksheet function, in the order that help shows them. */
import { BUILDING_FUNCTIONS } from './catalogue/building';
import { CONDUCTOR_FUNCTIONS } from './catalogue/conductor';
import { PROTECTION_FUNCTIONS } from './catalogue/protection';
import { RUN_FUNCTIONS } from './catalogue/run';
import { SUPPLY_FUNCTIONS } from './catalogue/supply';
import type { WorksheetFunction } from './worksheet-function';

/** The name space that workbooks write before the dot. */
export const NAMESPACE = 'LOOM';

export const CATALOGUE: readonly WorksheetFunction[] = [
  ...CONDUCTOR_FUNCTIONS,
  ...RUN_FUNCTIONS,
  ...PROTECTION_FUNCTIONS,
  ...SUPPLY_FUNCTIONS,
  ...BUILDING_FUNCTIONS,
];

const BY_ID = new Map(CATALOGUE.map((entry) => [entry.id, entry]));

/** The catalogue entry of an id; undefined where there is none. */
export function findFunction(id: string): WorksheetFunction | undefined {
  return BY_ID.get(id);
}
