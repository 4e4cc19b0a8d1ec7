/** Where the parts of the Supply sheet stand. */
import { area, type Area } from '../plan/area';
import { SUPPLY_KEYS, type SupplyKey } from '../station/supply-keys';
import { SOURCE_COLUMNS } from '../station/sources';
import { SECTIONS, SUPPLY_CELLS, type Section } from './cells';

/** The first source's column, and that of the sentences beside them. */
export const COLUMN = { label: 0, value: 1, note: 1 + SOURCE_COLUMNS } as const;
const FIRST_ROW = 2;

/** Width of a source's column, in characters. */
export const SOURCE_WIDTH = 13;

/** Headings of the duty table, by which a reader finds it again. */
export const DUTY_HEADINGS = [
  'Load',
  'Transmit, A',
  'Receive, A',
  'Standby, A',
  'Share transmit',
  'Share receive',
  'Share standby',
  'Mean current',
  'Heating current',
  'Drawn a day',
  'Fed from',
] as const;
export const DUTY = {
  load: 0,
  amps: 1,
  shares: 4,
  states: 3,
  mean: 7,
  heating: 8,
  daily: 9,
  source: 10,
} as const;
/** A working beside the table: the place of the load's source. */
export const DUTY_PLACE = DUTY.source + 2;
/** Zero-based rows of the sections and their cells, from the order of the table. */
export const ROWS = (() => {
  const titles = new Map<Section, number>();
  const cells = new Map<SupplyKey, number>();
  let row = FIRST_ROW;
  for (const section of SECTIONS) {
    titles.set(section, row++);
    for (const key of SUPPLY_KEYS) {
      if (SUPPLY_CELLS[key].section === section) cells.set(key, row++);
    }
    row += 1;
  }
  return { titles, cells, dutyTitle: row, dutyHeader: row + 1, dutyFirst: row + 2 };
})();

/** The cell of a source, by its place among them from 0. */
export function supplyArea(key: SupplyKey, source = 0): Area {
  return area(ROWS.cells.get(key)!, COLUMN.value + source);
}

/** The cells of all sources. */
export function supplyRow(key: SupplyKey): Area {
  return area(ROWS.cells.get(key)!, COLUMN.value, 1, SOURCE_COLUMNS);
}
