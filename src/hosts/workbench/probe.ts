/** What the check of the workbench needs beyond the pane's own commands. */
import type { FWorksheet } from '@univerjs/sheets/facade';
import type { Queue } from '../one-at-a-time';
import type { HostProbe } from '../sheet-host';
import type { Grid } from './grid';
import { readSheet } from './read';
import { gridRange } from './rules';

function sheetNamed({ workbook }: Grid, name: string): FWorksheet {
  const sheet = workbook.getSheetByName(name);
  if (sheet === null) throw new Error(`There is no sheet named ${name}.`);
  return sheet;
}

/** The probe of the grid; `calculated` resolves when no cell waits to be calculated. */
export function workbenchProbe(
  grid: Grid,
  writing: Queue,
  calculated: () => Promise<void>,
): HostProbe {
  return {
    called: 'the workbench',
    about: () => Promise.resolve(['Platform: the grid of the workbench, in this browser']),
    keepView: () => {
      const sheet = grid.workbook.getActiveSheet();
      return Promise.resolve(() => {
        grid.workbook.setActiveSheet(sheet);
        const now = grid.workbook.getActiveSheet();
        return Promise.resolve({
          isBack: now.getSheetId() === sheet.getSheetId(),
          inView: now.getSheetName(),
        });
      });
    },
    read: (sheetName) => Promise.resolve(readSheet(grid, sheetNamed(grid, sheetName))),
    write: (sheetName, area, content) =>
      writing(async () => {
        const range = sheetNamed(grid, sheetName).getRange(gridRange(area));
        if (content === null) range.clearContent();
        else range.setValue(typeof content === 'object' ? { f: content.formula } : content);
        await calculated();
      }),
    // What a grid refuses, the pane's own commands find out.
    provocations: [],
  };
}
