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
import type { SheetEdits, TypedCell } from '../edits';
import type { Changes } from './changes';
import type { Grid } from './grid';
import { takeInBelow } from './growth';
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

  type Cells = Record<number, Record<number, ICellData>>;
  /** In one command: a hundred of them take a second. */
  const setCells = (sheet: FWorksheet, value: Cells) => {
    injector.get(ICommandService).syncExecuteCommand(SetRangeValuesCommand.id, {
      unitId: grid.workbook.getId(),
      subUnitId: sheet.getSheetId(),
      value,
    });
  };
  const typedCells = (cells: readonly TypedCell[]): Cells => {
    const value: Cells = {};
    for (const { row, column, content } of cells) (value[row] ??= {})[column] = typedCell(content);
    return value;
  };
  const formulaCell = (sheet: FWorksheet, column: number, from: number, to: number): ICellData => {
    const formula = sheet.getRange(from, column).getFormula();
    return formula === '' ? {} : { f: filledDown(formula)(to - from), v: null, si: null, p: null };
  };

  return {
    async type(sheetName, cells) {
      const sheet = sheetNamed(sheetName);
      await inOneStep(() => {
        setCells(sheet, typedCells(cells));
      });
    },
    async fillRows(sheetName, fills, columns) {
      const sheet = sheetNamed(sheetName);
      const value: Cells = {};
      for (const { from, to, columns: computed } of fills) {
        const formulas = new Set(computed);
        const cells: Cells[number] = (value[to] = {});
        for (let column = 0; column < columns; column += 1) {
          const style = sheet.getSheet().getCellRaw(from, column)?.s;
          const formula = formulas.has(column) ? formulaCell(sheet, column, from, to) : {};
          if (style === undefined && formula.f === undefined) continue;
          cells[column] = { ...(style === undefined ? {} : { s: style }), ...formula };
        }
      }
      await inOneStep(() => {
        setCells(sheet, value);
      });
    },
    async rearrange(changes) {
      await inOneStep(() => {
        for (const { sheetName, cells, fills } of changes) {
          const sheet = sheetNamed(sheetName);
          const value = typedCells(cells);
          for (const { from, to, columns } of fills) {
            for (const column of columns) {
              (value[to] ??= {})[column] = formulaCell(sheet, column, from, to);
            }
          }
          setCells(sheet, value);
        }
      });
    },
    async takeInBelow(sheetName) {
      const isTaken = takeInBelow(grid, sheetNamed(sheetName));
      await calculated();
      return isTaken;
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
