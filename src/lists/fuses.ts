/** What a Protection sheet says of each run's fuse, by the place of its row. */
import { PROTECTION_COLUMNS } from '../sheets/protection/columns';
import type { FuseEntries, ProtectionTyped } from '../sheets/station/protection';
import { FUSE_ENTRY_KEYS, type FuseEntryKey } from '../sheets/station/protection-keys';
import { cellText, isEmpty, type RawTable } from './raw';

/** By the place in the list, from 0, in the order of the sheet's rows. */
export type FusesByPlace = ReadonlyMap<number, FuseEntries>;

/** The fuses of a Protection sheet; what still follows from their kind is not among them. */
export function fusesIn(table: RawTable | undefined): FusesByPlace {
  const fuses = new Map<number, FuseEntries>();
  const rows = table?.rows ?? [];
  for (const [index, header] of rows.entries()) {
    const texts = header.cells.map(cellText);
    const columns = FUSE_ENTRY_KEYS.map(
      (key) => [key, texts.indexOf(PROTECTION_COLUMNS[key].heading)] as const,
    );
    if (columns.some(([, column]) => column < 0)) continue;
    for (const { line, cells } of rows.slice(index + 1)) {
      const typed: Partial<Record<FuseEntryKey, string | number>> = {};
      for (const [key, column] of columns) {
        const cell = cells[column];
        if (cell === undefined || isEmpty(cell) || cell.computed === true) continue;
        typed[key] = typeof cell.value === 'number' ? cell.value : cellText(cell);
      }
      if (Object.keys(typed).length > 0) fuses.set(line - header.line - 1, typed);
    }
    break;
  }
  return fuses;
}

/** The protection with the fuses of the runs that were taken, in their order; a run without entries has none. */
export function withFuses(
  protection: ProtectionTyped,
  fuses: FusesByPlace,
  places: readonly number[],
): ProtectionTyped {
  const listed = places.map((place) => fuses.get(place) ?? {});
  const last = listed.findLastIndex((entries) => Object.keys(entries).length > 0);
  return last < 0 ? protection : { ...protection, fuses: listed.slice(0, last + 1) };
}
