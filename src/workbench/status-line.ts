/** The line under the grid: what is wrong with the last entry or the selected cell, or what belongs into the cell. */
import type { Grid } from '../hosts/workbench/grid';
import type { WorkbenchHost } from '../hosts/workbench/host';
import { readCell, readSheet } from '../hosts/workbench/read';
import {
  entryStatus,
  type CellStatus,
  onEntryRefused,
  selectedCellStatus,
  selectedPlace,
  type CellPlace,
} from '../hosts/workbench/status';
import { readSchedule } from '../sheets/schedule/reading';
import { levelOf, VERDICTS, verdictsIn } from '../sheets/station/verdicts';
import { verdictSentence } from '../taskpane/worst-run';

/** Why the selected verdict is what it is; undefined where another cell is selected, or all is ok. */
function verdictStatus(grid: Grid): CellStatus | undefined {
  const { workbook } = grid;
  const cell = workbook.getActiveCell();
  if (cell === null) return undefined;
  const sheet = workbook.getActiveSheet();
  const said = readCell(grid, sheet, cell.getRow(), cell.getColumn());
  if (typeof said !== 'string' || verdictsIn(said).every((key) => VERDICTS[key].level === 'ok')) {
    return undefined;
  }
  const reading = readSchedule(readSheet(grid, sheet)?.values ?? []);
  if (reading?.columnOf.verdict !== cell.getColumn()) return undefined;
  const row = reading.rows.find((one) => one.row === cell.getRow());
  if (row === undefined) return undefined;
  // Nothing is wrong with a run that one thing is left to confirm of.
  return { kind: levelOf(said) === 'check' ? 'hint' : 'error', text: verdictSentence(row) };
}

/**
 * Keeps the line true to the selected cell, after every edit, calculation and selection. An entry that its cell does not
 * take is told of although Enter has gone on to another cell, until the next cell is chosen. Returns the way to put a
 * hint in the line's place for a while, and with '' away again.
 */
export function showStatus(host: WorkbenchHost, line: HTMLElement): (hint: string) => void {
  const { grid, changes } = host;
  const { api } = grid;
  /** The cell edited last, and where the selection stood once Enter or Tab had left it. */
  let edited: CellPlace | undefined;
  let left: CellPlace | null | undefined;
  let hint = '';
  /** Why rows were left as they are, until another cell is chosen. */
  let refusal: { readonly text: string; readonly at: CellPlace | null } | undefined;

  const isAt = (a: CellPlace | null, b: CellPlace | null | undefined) =>
    a?.sheetId === b?.sheetId && a?.row === b?.row && a?.column === b?.column;

  const status = () => {
    if (hint !== '') return { kind: 'hint', text: hint };
    if (refusal !== undefined) {
      if (isAt(selectedPlace(grid), refusal.at)) return { kind: 'error', text: refusal.text };
      refusal = undefined;
    }
    if (edited !== undefined) {
      const now = selectedPlace(grid);
      if (left === undefined && !isAt(now, edited)) left = now;
      const against = entryStatus(grid, edited);
      const goneOn = left !== undefined && !isAt(now, left);
      if (against.kind === 'error' && !goneOn) return against;
      if (goneOn) edited = undefined;
    }
    return verdictStatus(grid) ?? selectedCellStatus(grid);
  };
  const show = () => {
    const { kind, text } = status();
    line.dataset['kind'] = kind;
    // Unchanged text is left alone: a screen reader would read it out again.
    if (line.textContent !== text) line.textContent = text;
  };
  api.addEvent(api.Event.SheetEditStarted, () => {
    edited = undefined;
    show();
  });
  api.addEvent(api.Event.SheetEditEnded, ({ worksheet, row, column, isConfirm }) => {
    if (!isConfirm) return;
    edited = { sheetId: worksheet.getSheetId(), row, column };
    left = undefined;
  });
  changes.onChangeOrSelection(show);
  onEntryRefused(grid, show);
  host.onRefusal((text) => {
    refusal = { text, at: selectedPlace(grid) };
    show();
  });
  show();
  return (text) => {
    hint = text;
    show();
  };
}
