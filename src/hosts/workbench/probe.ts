/** What the check of the workbench needs beyond the pane's own commands. */
import type { FWorksheet } from '@univerjs/sheets/facade';
import type { Queue } from '../one-at-a-time';
import type { HostProbe, Provocation } from '../sheet-host';
import type { Grid } from './grid';
import { readSheet } from './read';
import { gridRange } from './rules';

function sheetNamed({ workbook }: Grid, name: string): FWorksheet {
  const sheet = workbook.getSheetByName(name);
  if (sheet === null) throw new Error(`There is no sheet named ${name}.`);
  return sheet;
}

function provocations(grid: Grid): readonly Provocation[] {
  return [
    {
      what: 'a sheet that is not there',
      provoke: ({ freeSheet }) =>
        Promise.resolve()
          .then(() => {
            sheetNamed(grid, freeSheet);
            return null;
          })
          .catch((fault: unknown) => (fault instanceof Error ? fault.message : String(fault))),
      says: /There is no sheet named/,
    },
  ];
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
        return Promise.resolve();
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
    provocations: provocations(grid),
    // As in a working column of a row that is not filled in yet; Excel refuses to add text.
    ownFault: { is: 0, insteadOf: '#VALUE!', why: 'the grid adds empty text as 0' },
  };
}
