/** Changes of the grid that can be taken back. */
import { ICommandService, type IMutationInfo } from '@univerjs/core';
import {
  SetRangeValuesMutation,
  SetRangeValuesUndoMutationFactory,
  type ISetRangeValuesMutationParams,
} from '@univerjs/sheets';
import type { FWorksheet } from '@univerjs/sheets/facade';
import type { Grid } from './grid';
import type { ChangedCells } from './relay';
import { addToUndoStep } from './undo-step';

/** Something to be done to the grid, and what takes it back. */
export interface Step {
  readonly does: IMutationInfo;
  readonly undoes: IMutationInfo;
}

/** Cells of a sheet written, all at once. */
export function cellSteps(
  { univer, workbook }: Grid,
  sheet: FWorksheet,
  cellValue: ChangedCells,
): Step[] {
  if (Object.keys(cellValue).length === 0) return [];
  const params: ISetRangeValuesMutationParams = {
    unitId: workbook.getId(),
    subUnitId: sheet.getSheetId(),
    cellValue,
  };
  const { id } = SetRangeValuesMutation;
  const back = SetRangeValuesUndoMutationFactory(univer.__getInjector(), params);
  return [{ does: { id, params }, undoes: { id, params: back } }];
}

/** Does the steps, as a part of the step of undo that began with `includes` where that is the last. */
export function takeSteps(grid: Grid, steps: readonly Step[], includes?: object): void {
  const commands = grid.univer.__getInjector().get(ICommandService);
  for (const { does } of steps) commands.syncExecuteCommand(does.id, does.params);
  addToUndoStep(
    grid,
    {
      redoMutations: steps.map(({ does }) => does),
      undoMutations: steps.map(({ undoes }) => undoes).reverse(),
    },
    includes,
  );
}
