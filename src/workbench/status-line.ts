/** The line under the grid: the sentence behind the selected cell's error, or what belongs into the cell. */
import type { WorkbenchHost } from '../hosts/workbench/host';
import { selectedCellStatus } from '../hosts/workbench/status';

/** Keeps the line true to the selected cell, after every edit, calculation and selection. */
export function showStatus(host: WorkbenchHost, line: HTMLElement): void {
  const show = () => {
    const { kind, text } = selectedCellStatus(host.grid);
    line.dataset['kind'] = kind;
    // Unchanged text is left alone: a screen reader would read it out again.
    if (line.textContent !== text) line.textContent = text;
  };
  host.changes.onChangeOrSelection(show);
  show();
}
