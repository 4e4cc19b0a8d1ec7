/** Rows of the schedule in view grow with their verdict and fix: the grid does not follow what formulas come to. */
import { ICommandService } from '@univerjs/core';
import { SetWorksheetRowHeightMutation } from '@univerjs/sheets';
import { readSchedule } from '../../sheets/schedule/reading';
import { runHeightsPt } from '../../sheets/row-heights';
import type { Changes } from './changes';
import type { Grid } from './grid';
import { readSheet } from './read';

const PX_PER_PT = 4 / 3;

/** So long without a key, a change or another selection, nobody is in the middle of a word. */
const IDLE_MS = 1200;

/**
 * Gives rows their height from now on, past undo: heights follow what undo takes back. A height that a person gave is never
 * lowered, and no row moves while a cell is written in.
 */
export function growRows(grid: Grid, changes: Changes, isCalculating: () => boolean): void {
  const commands = grid.univer.__getInjector().get(ICommandService);
  /** What a row was before it grew, and what it grew to. */
  const grown = new Map<string, { readonly before: number; readonly now: number }>();

  function grow(): void {
    if (grid.workbook.isCellEditing()) return;
    if (isCalculating()) {
      wait();
      return;
    }
    const sheet = grid.workbook.getActiveSheet();
    const used = readSheet(grid, sheet);
    const reading = used === null ? undefined : readSchedule(used.values);
    if (reading === undefined) return;
    const rowHeight: Record<number, number> = {};
    for (const [row, wantedPt] of runHeightsPt(reading)) {
      const key = `${sheet.getSheetId()} ${row}`;
      const [now, last] = [sheet.getSheet().getRowHeight(row), grown.get(key)];
      const before = last?.now === now ? last.before : now;
      const wanted = Math.max(before, Math.round(wantedPt * PX_PER_PT));
      if (wanted === now) continue;
      rowHeight[row] = wanted;
      grown.set(key, { before, now: wanted });
    }
    const rows = Object.keys(rowHeight).map(Number);
    if (rows.length === 0) return;
    commands.syncExecuteCommand(SetWorksheetRowHeightMutation.id, {
      unitId: grid.workbook.getId(),
      subUnitId: sheet.getSheetId(),
      ranges: rows.map((row) => ({ startRow: row, endRow: row, startColumn: 0, endColumn: 0 })),
      rowHeight,
    });
  }

  let waiting: ReturnType<typeof setTimeout> | undefined;
  const wait = () => {
    clearTimeout(waiting);
    waiting = setTimeout(grow, IDLE_MS);
  };
  changes.onChangeOrSelection(wait);
  document.addEventListener('keydown', wait, true);
}
