/** The sheets on which something is typed run by run, in rows that follow the places of the schedule's. */
import { nameKey } from '../core/feeder-tree';
import type { ComputedGrid } from '../sheets/plan/grid';
import { PROTECTION_CELLS } from '../sheets/protection/cells';
import { PROTECTION_COLUMNS } from '../sheets/protection/columns';
import { FOR_RUN } from '../sheets/station/for-run';
import { FORMER_CONTACT_HEADING, LASTING_PROTECTION } from '../sheets/station/former';
import { FUSE_ENTRY_KEYS } from '../sheets/station/protection-keys';
import { BUILT_SIGNS, READING_HEADINGS } from './as-built';
import { FUSE_MAP_SIGNS, POSITION_HEADINGS } from './fuse-map';
import { gridTable } from './raw-grid';
import { companion } from './labelled';
import { MY_CONTACT_HEADINGS, PARTS_SIGNS } from './parts';
import { COLOUR_HEADINGS, WIRE_SIGNS } from './wire-list';

export interface RunEntrySheet {
  /** Labels by which the sheet is known. */
  readonly signs: readonly string[];
  /** Headings of the columns in which something is typed. */
  readonly headings: readonly string[];
}

export const PROTECTION_SIGNS: readonly string[] = LASTING_PROTECTION.map(
  (key) => PROTECTION_CELLS[key].label,
);

/** Of the sheets whose entries say for which run they are. */
const FOR_RUN_SIGNS = [PROTECTION_SIGNS, BUILT_SIGNS];

export const RUN_ENTRY_SHEETS: readonly RunEntrySheet[] = [
  {
    signs: PROTECTION_SIGNS,
    headings: FUSE_ENTRY_KEYS.map((key) => PROTECTION_COLUMNS[key].heading),
  },
  // By itself: former sheets have none.
  ...FOR_RUN_SIGNS.map((signs) => ({ signs, headings: [FOR_RUN.heading] })),
  { signs: WIRE_SIGNS, headings: Object.values(COLOUR_HEADINGS) },
  { signs: PARTS_SIGNS, headings: Object.values(MY_CONTACT_HEADINGS) },
  { signs: PARTS_SIGNS, headings: [FORMER_CONTACT_HEADING] },
  { signs: BUILT_SIGNS, headings: Object.values(READING_HEADINGS) },
  // Each by itself: former maps have but one.
  ...Object.values(POSITION_HEADINGS).map((heading) => ({
    signs: FUSE_MAP_SIGNS,
    headings: [heading],
  })),
];

/** The name of the Protection sheet that belongs to the schedule of a sheet. */
export function protectionOf(
  grids: readonly ComputedGrid[],
  sheetName: string,
): string | undefined {
  return companion(grids.map(gridTable), sheetName, PROTECTION_SIGNS)?.sheetName;
}

/** A cell that names the run that the entries beside it are for. */
export interface NamedThere {
  readonly sheetName: string;
  readonly row: number;
  readonly column: number;
}

/** The cells on the schedule's sheets in which entries are said to be for a run of this name. */
export function entriesFor(
  grids: readonly ComputedGrid[],
  schedule: string,
  name: string,
): readonly NamedThere[] {
  const tables = grids.map(gridTable);
  return FOR_RUN_SIGNS.flatMap((signs) => {
    const sheetName = companion(tables, schedule, signs)?.sheetName;
    const grid = grids.find((one) => one.sheetName === sheetName);
    const header = grid?.values.findIndex((cells) => cells.includes(FOR_RUN.heading)) ?? -1;
    if (grid === undefined || sheetName === undefined || header < 0) return [];
    const column = grid.values[header]!.indexOf(FOR_RUN.heading);
    return grid.values.flatMap((cells, row): NamedThere[] =>
      row > header && nameKey(String(cells[column] ?? '')) === nameKey(name)
        ? [{ sheetName, row, column }]
        : [],
    );
  });
}
