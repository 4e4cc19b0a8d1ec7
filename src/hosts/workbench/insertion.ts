/** An insertion into the workbench's grid as the pane follows it, and the way to take it back. */
import type { FWorksheet } from '@univerjs/sheets/facade';
import type { Queue } from '../one-at-a-time';
import type { Inserted, Watch } from '../sheet-host';
import type { Grid } from './grid';
import { removeNames } from './names';

/** Tells how far it is, and throws where it is to stop. */
export function stepOf({ progress, signal }: Watch, share: number): void {
  progress?.(share);
  if (signal?.aborted === true) throw new Error('it was stopped.');
}

/** Takes sheets out again, and then their names, which no formula of theirs uses any more. */
export function removeSheets(
  grid: Grid,
  sheets: readonly FWorksheet[],
  names: readonly string[],
): void {
  const { workbook } = grid;
  for (const sheet of sheets) {
    if (workbook.getSheetBySheetId(sheet.getSheetId()) !== null) workbook.deleteSheet(sheet);
  }
  removeNames(grid, names);
}

/** Sheets and names that stand complete; the grid makes looks and content at once. */
export function insertedSheets(
  grid: Grid,
  writing: Queue,
  sheets: readonly FWorksheet[],
  names: readonly string[],
): Inserted {
  const inserted: Inserted = {
    missing: [],
    repair: () => Promise.resolve(inserted),
    remove: () =>
      writing(() => {
        removeSheets(grid, sheets, names);
        return Promise.resolve();
      }),
  };
  return inserted;
}
