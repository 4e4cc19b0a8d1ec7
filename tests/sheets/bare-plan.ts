/** A sheet with nothing on it, for tests to add to. */
import { area } from '../../src/sheets/plan/area';
import type { SheetPlan } from '../../src/sheets/plan/plan';

export const BARE_PLAN: SheetPlan = {
  name: 'Runs',
  columnWidths: [],
  blocks: [],
  names: [],
  entries: [],
  highlights: [],
  notes: [],
  frozenRows: 0,
  frozenColumns: 0,
  print: { landscape: true, area: area(0, 0), footer: '' },
};
