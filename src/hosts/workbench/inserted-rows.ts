/** Rows that a person puts into a schedule get its formulas, as a table of Excel gives them, in the same step of undo. */
import { InsertRowByRangeCommand } from '@univerjs/sheets';
import { lackingRows } from '../../sheets/schedule/repair';
import type { SheetEdits } from '../edits';
import type { Grid } from './grid';
import { readComputed, readSheet } from './read';
import { beginUndoStep } from './undo-step';

/** Every way to insert rows comes to this command of the grid, which does its work at once. */
const INSERTION = InsertRowByRangeCommand.id;

export function fillInsertedRows(grid: Grid, edits: SheetEdits): void {
  const { api, workbook } = grid;
  let endStep: (() => void) | undefined;
  const end = () => {
    endStep?.();
    endStep = undefined;
  };
  api.addEvent(api.Event.BeforeCommandExecute, ({ id }) => {
    if (id !== INSERTION || endStep !== undefined) return;
    endStep = beginUndoStep(grid);
    // One that fails is never said to be executed.
    setTimeout(end, 0);
  });
  api.addEvent(api.Event.CommandExecuted, ({ id }) => {
    if (id !== INSERTION) return;
    const sheet = workbook.getActiveSheet();
    const used = readSheet(grid, sheet);
    const lacking =
      used === null ? [] : lackingRows({ ...used, computed: readComputed(grid, sheet, used) });
    const columns = Math.max(0, ...lacking.flatMap((row) => row.columns.map((at) => at + 1)));
    if (lacking.length > 0) {
      edits.fillRows(sheet.getSheetName(), lacking, columns).catch(() => {
        // The sheet says by itself how many rows have no answer.
      });
    }
    end();
  });
}
