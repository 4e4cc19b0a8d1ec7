/** An insertion into the workbench's grid as the pane follows it, and the way to take it back. */
import type { FWorksheet } from '@univerjs/sheets/facade';
import type { Queue } from '../one-at-a-time';
import type { Inserted, Watch } from '../sheet-host';
import type { Grid } from './grid';

/** Tells how far it is, and throws where it is to stop. */
export function stepOf({ progress, signal }: Watch, share: number): void {
  progress?.(share);
  if (signal?.aborted === true) throw new Error('it was stopped.');
}

/** Sheets and names that stand complete; the grid makes looks and content at once. */
export function insertedSheets(
  { workbook }: Grid,
  writing: Queue,
  sheets: readonly FWorksheet[],
  names: readonly string[],
): Inserted {
  const inserted: Inserted = {
    missing: [],
    repair: () => Promise.resolve(inserted),
    remove: () =>
      writing(() => {
        for (const name of names) workbook.deleteDefinedName(name);
        for (const sheet of sheets) {
          if (workbook.getSheetBySheetId(sheet.getSheetId()) !== null) workbook.deleteSheet(sheet);
        }
        return Promise.resolve();
      }),
  };
  return inserted;
}
