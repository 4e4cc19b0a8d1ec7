/** What a sheet says of each run in a row of its own, by the place of the row. */
import { cellText, isEmpty, type RawTable } from './raw';

/** What was typed in the columns of a row, by key. */
export type Entries<Key extends string> = Readonly<Partial<Record<Key, string | number>>>;
/** By the place in the list, from 0, in the order of the sheet's rows. */
export type ByPlace<Key extends string> = ReadonlyMap<number, Entries<Key>>;

/**
 * Entries of the rows below the row that has all of these headings; what a formula computes is not among them. `later` are
 * columns that old sheets lack.
 */
export function entriesByPlace<Key extends string, Later extends string = never>(
  table: RawTable | undefined,
  headings: Readonly<Record<Key, string>>,
  later?: Readonly<Record<Later, string>>,
): ByPlace<Key | Later> {
  const found = new Map<number, Entries<Key | Later>>();
  const rows = table?.rows ?? [];
  const keys = Object.keys(headings) as Key[];
  for (const [index, header] of rows.entries()) {
    const texts = header.cells.map(cellText);
    const columns = keys.map((key) => [key, texts.indexOf(headings[key])] as const);
    if (columns.some(([, column]) => column < 0)) continue;
    const laterKeys = Object.keys(later ?? {}) as Later[];
    const all = [...columns, ...laterKeys.map((key) => [key, texts.indexOf(later![key])] as const)];
    for (const { line, cells } of rows.slice(index + 1)) {
      const typed: Partial<Record<Key | Later, string | number>> = {};
      for (const [key, column] of all) {
        const cell = cells[column];
        if (cell === undefined || isEmpty(cell) || cell.computed === true) continue;
        typed[key] = typeof cell.value === 'number' ? cell.value : cellText(cell);
      }
      if (Object.keys(typed).length > 0) found.set(line - header.line - 1, typed);
    }
    break;
  }
  return found;
}

/** The entries of the runs that were taken, in their order, down to the last that has some; undefined where none has. */
export function inPlaces<Typed extends object>(
  entries: ReadonlyMap<number, Typed>,
  places: readonly number[],
): readonly Typed[] | undefined {
  const listed = places.map((place) => entries.get(place) ?? ({} as Typed));
  const last = listed.findLastIndex((one) => Object.keys(one).length > 0);
  return last < 0 ? undefined : listed.slice(0, last + 1);
}
