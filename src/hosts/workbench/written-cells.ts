/** Cells that were written into a sheet by anything but a calculation, told once the command that did it has ended. */
import { ICommandService } from '@univerjs/core';
import { SetRangeValuesMutation, type ISetRangeValuesMutationParams } from '@univerjs/sheets';
import type { FWorksheet } from '@univerjs/sheets/facade';
import type { Grid } from './grid';

type Of<Result> = (sheet: FWorksheet, change: ISetRangeValuesMutationParams) => Result;

/** Calls `then` after each change that `concerns` it, which is asked at once. */
export function afterCellsWritten(grid: Grid, concerns: Of<boolean>, then: Of<void>): void {
  grid.univer
    .__getInjector()
    .get(ICommandService)
    .onCommandExecuted(({ id, params }, options) => {
      const isCalculated =
        options?.onlyLocal === true || options?.['applyFormulaCalculationResult'] === true;
      if (id !== SetRangeValuesMutation.id || isCalculated) return;
      const change = params as ISetRangeValuesMutationParams;
      const sheet = grid.workbook.getSheetBySheetId(change.subUnitId);
      if (sheet === null || !concerns(sheet, change)) return;
      // The command that this is a part of ends first.
      setTimeout(() => {
        then(sheet, change);
      });
    });
}
