/** Changes that the pane makes in the workbench's grid. */
import { CellValueType, ICommandService, type ICellData } from '@univerjs/core';
import {
  SetColHiddenCommand,
  SetRangeValuesCommand,
  SetSpecificColsVisibleCommand,
} from '@univerjs/sheets';
import type { FWorksheet } from '@univerjs/sheets/facade';
import { filledDown } from '../../sheets/plan/fill-down';
import type { GridValue } from '../../sheets/plan/grid';
import type { SheetEdits } from '../edits';
import type { Changes } from './changes';
import type { Grid } from './grid';
import { beginUndoStep } from './undo-step';

function typedCell(content: GridValue): ICellData {
  if (content === null) return { v: null, f: null, si: null, t: null, p: null };
  const t =
    typeof content === 'number'
      ? CellValueType.NUMBER
      : typeof content === 'string'
        ? CellValueType.STRING
        : CellValueType.BOOLEAN;
  return {
    v: typeof content === 'boolean' ? Number(content) : content,
    t,
    f: null,
    si: null,
    p: null,
  };
}

export function workbenchEdits(
  grid: Grid,
  { onChangeOrSelection }: Pick<Changes, 'onChangeOrSelection'>,
  calculated: () => Promise<void>,
): SheetEdits {
  const injector = grid.univer.__getInjector();

  const sheetNamed = (name: string): FWorksheet => {
    const sheet = grid.workbook.getSheetByName(name);
    if (sheet === null) throw new Error(`There is no sheet named ${name}.`);
    return sheet;
  };
  /** All that happens within is one step of undo. */
  const inOneStep = async (change: () => void): Promise<void> => {
    const end = beginUndoStep(grid);
    try {
      change();
    } finally {
      end();
    }
    await calculated();
  };

  return {
    async type(sheetName, cells) {
      const sheet = sheetNamed(sheetName);
      await inOneStep(() => {
        for (const { row, column, content } of cells) {
          sheet.getRange(row, column).setValue(typedCell(content));
        }
      });
    },
    async fillRows(sheetName, fills, columns) {
      const sheet = sheetNamed(sheetName);
      const value: Record<number, Record<number, ICellData>> = {};
      for (const { from, to, columns: computed } of fills) {
        const formulas = new Set(computed);
        const cells: Record<number, ICellData> = (value[to] = {});
        for (let column = 0; column < columns; column += 1) {
          const style = sheet.getSheet().getCellRaw(from, column)?.s;
          const formula = formulas.has(column) ? sheet.getRange(from, column).getFormula() : '';
          if (style === undefined && formula === '') continue;
          cells[column] = {
            ...(style === undefined ? {} : { s: style }),
            ...(formula === ''
              ? {}
              : { f: filledDown(formula)(to - from), v: null, si: null, p: null }),
          };
        }
      }
      await inOneStep(() => {
        // In one command: a hundred of them take a second.
        injector.get(ICommandService).syncExecuteCommand(SetRangeValuesCommand.id, {
          unitId: grid.workbook.getId(),
          subUnitId: sheet.getSheetId(),
          value,
        });
      });
    },
    hiddenColumns(sheetName, columns) {
      const sheet = sheetNamed(sheetName).getSheet();
      return Promise.resolve(
        Array.from({ length: columns }, (_, column) => column).filter(
          (column) => !sheet.getColVisible(column),
        ),
      );
    },
    async showColumns(sheetName, columns, isShown) {
      const sheet = sheetNamed(sheetName);
      const commands = injector.get(ICommandService);
      await inOneStep(() => {
        commands.syncExecuteCommand(
          isShown ? SetSpecificColsVisibleCommand.id : SetColHiddenCommand.id,
          {
            unitId: grid.workbook.getId(),
            subUnitId: sheet.getSheetId(),
            ranges: columns.map((column) => ({
              startRow: 0,
              endRow: sheet.getMaxRows() - 1,
              startColumn: column,
              endColumn: column,
            })),
          },
        );
      });
    },
    selected() {
      const range = grid.workbook.getActiveRange();
      return Promise.resolve(
        range === null
          ? null
          : { sheetName: range.getSheetName(), row: range.getRow(), column: range.getColumn() },
      );
    },
    onSelection: onChangeOrSelection,
  };
}
