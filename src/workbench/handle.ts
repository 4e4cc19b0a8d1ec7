/**
 * `window.loomWorkbench`: a small handle for the console and the browser tests, since a grid drawn on a canvas
 * cannot be read from the page. The pane does not use it.
 */
import { ConditionalFormattingService } from '@univerjs/preset-sheets-conditional-formatting';
import type { FRange } from '@univerjs/sheets/facade';
import type { WorkbenchHost } from '../hosts/workbench/host';
import { readCell } from '../hosts/workbench/read';
import type { SheetHost } from '../hosts/sheet-host';
import type { GridValue } from '../sheets/plan/grid';

export interface WorkbenchHandle {
  /** Resolves when the demo stands there calculated. */
  readonly ready: Promise<void>;
  /** The workbook as the pane sees it. */
  readonly host: SheetHost;
  readonly sheetNames: () => string[];
  /** The calculated value at an address such as "C5"; an error as its text. */
  readonly readCell: (sheetName: string, address: string) => GridValue;
  /** Types a value, or a formula with its leading "=", and resolves when everything is calculated. */
  readonly writeCell: (sheetName: string, address: string, value: GridValue) => Promise<void>;
  /** Resolves when no cell waits to be calculated. */
  readonly calculated: () => Promise<void>;
  /** Puts an empty row before a zero-based row, as the grid's own menu does. */
  readonly insertRow: (sheetName: string, row: number) => void;
  /** Selects a cell, as a click would. */
  readonly select: (sheetName: string, address: string) => void;
  /** The fill that a conditional format gives a cell at present, or null. */
  readonly highlightOf: (sheetName: string, address: string) => string | null;
}

declare global {
  interface Window {
    loomWorkbench?: WorkbenchHandle;
  }
}

export function workbenchHandle(host: WorkbenchHost, ready: Promise<void>): WorkbenchHandle {
  const { grid } = host;

  const sheetNamed = (name: string) => {
    const sheet = grid.workbook.getSheetByName(name);
    if (sheet === null) throw new Error(`There is no sheet named ${name}.`);
    return sheet;
  };
  const rangeAt = (sheetName: string, address: string): FRange =>
    sheetNamed(sheetName).getRange(address);

  return {
    ready,
    host,
    sheetNames: () => grid.workbook.getSheets().map((sheet) => sheet.getSheetName()),
    readCell(sheetName, address) {
      const range = rangeAt(sheetName, address);
      return readCell(grid, sheetNamed(sheetName), range.getRow(), range.getColumn());
    },
    async writeCell(sheetName, address, value) {
      const range = rangeAt(sheetName, address);
      if (value === null) range.clearContent();
      else range.setValue(value);
      await host.calculated();
    },
    calculated: () => host.calculated(),
    insertRow(sheetName, row) {
      sheetNamed(sheetName).insertRowBefore(row);
    },
    select(sheetName, address) {
      grid.workbook.setActiveSheet(sheetNamed(sheetName));
      rangeAt(sheetName, address).activate();
    },
    highlightOf(sheetName, address) {
      const range = rangeAt(sheetName, address);
      const format = grid.univer
        .__getInjector()
        .get(ConditionalFormattingService)
        .composeStyle(
          grid.workbook.getId(),
          sheetNamed(sheetName).getSheetId(),
          range.getRow(),
          range.getColumn(),
        );
      return format?.style?.bg?.rgb ?? null;
    },
  };
}
