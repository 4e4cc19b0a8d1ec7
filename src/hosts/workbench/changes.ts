/** What happens in the grid, told to those who listen; and the upkeep of the error sentences that follows from it. */
import type { ICellData, ICommandInfo, IExecutionOptions } from '@univerjs/core';
import {
  SetFormulaCalculationNotificationMutation,
  SetFormulaCalculationResultMutation,
  SetFormulaCalculationStartMutation,
  type ISetFormulaCalculationNotificationMutation,
} from '@univerjs/engine-formula';
import {
  InsertColMutation,
  InsertRowMutation,
  InsertSheetMutation,
  MoveColsMutation,
  MoveRangeMutation,
  MoveRowsMutation,
  RemoveColMutation,
  RemoveRowMutation,
  RemoveSheetMutation,
  ReorderRangeMutation,
  SetRangeValuesMutation,
  SetSelectionsOperation,
  SetWorksheetActiveOperation,
  SetWorksheetNameMutation,
  type IInsertRowMutationParams,
  type ISetRangeValuesMutationParams,
} from '@univerjs/sheets';
import type { Grid } from './grid';

/** Rows and columns put in or taken out: which of the two, and which way. */
const LINES: ReadonlyMap<string, { readonly of: 'row' | 'column'; readonly by: 1 | -1 }> = new Map([
  [InsertRowMutation.id, { of: 'row', by: 1 }],
  [RemoveRowMutation.id, { of: 'row', by: -1 }],
  [InsertColMutation.id, { of: 'column', by: 1 }],
  [RemoveColMutation.id, { of: 'column', by: -1 }],
]);

/** After these a formula may stand anywhere else than where its sentence was left. */
const MOVES: ReadonlySet<string> = new Set([
  MoveColsMutation.id,
  MoveRangeMutation.id,
  MoveRowsMutation.id,
  ReorderRangeMutation.id,
]);

const CHANGES: ReadonlySet<string> = new Set([
  ...LINES.keys(),
  ...MOVES,
  InsertSheetMutation.id,
  RemoveSheetMutation.id,
  SetFormulaCalculationStartMutation.id,
  SetFormulaCalculationResultMutation.id,
  SetRangeValuesMutation.id,
  SetWorksheetActiveOperation.id,
  SetWorksheetNameMutation.id,
]);

const CONTENT_FIELDS: readonly (keyof ICellData)[] = ['v', 'f', 'si', 'p'];

export interface Changes {
  /** Calls back after cells were edited or calculated, or another sheet came into view. */
  onChange(listener: () => void): () => void;
  /** Calls back after that too, and after other cells were selected. */
  onChangeOrSelection(listener: () => void): () => void;
}

/** A calculation that comes to nothing new has no results, and ends all the same. */
function isEndOfCalculation(id: string, params: unknown): boolean {
  if (id !== SetFormulaCalculationNotificationMutation.id) return false;
  const { functionsExecutedState } = params as ISetFormulaCalculationNotificationMutation;
  return functionsExecutedState !== undefined;
}

/** The engine calculates what it has to by itself then. */
function moveWithLines(grid: Grid, { id, params }: ICommandInfo): void {
  const lines = LINES.get(id);
  if (lines === undefined) return;
  const { subUnitId, range } = params as IInsertRowMutationParams;
  const [from, to] =
    lines.of === 'row' ? [range.startRow, range.endRow] : [range.startColumn, range.endColumn];
  grid.sentences.moveLines(subUnitId, lines.of, from, lines.by * (to - from + 1));
}

function forgetEdited(grid: Grid, command: ICommandInfo): void {
  const { subUnitId, cellValue } = command.params as ISetRangeValuesMutationParams;
  const edited = (cellValue ?? {}) as Record<number, Record<number, ICellData | null> | null>;
  for (const [row, cells] of Object.entries(edited)) {
    for (const [column, cell] of Object.entries(cells ?? {})) {
      // A change of looks alone leaves the content, and its sentence, as they are.
      const contentChanged =
        cell === null || CONTENT_FIELDS.some((field) => Object.hasOwn(cell, field));
      if (contentChanged) {
        grid.sentences.forgetCell(subUnitId, Number(row), Number(column));
      }
    }
  }
}

/** Watches the grid from now on. */
export function watchChanges(grid: Grid): Changes {
  const changeListeners = new Set<() => void>();
  const selectionListeners = new Set<() => void>();
  let told = true;
  let changed = false;

  // Many commands follow one keystroke: listeners hear once, after the last of them.
  const tell = (isChange: boolean) => {
    changed ||= isChange;
    if (!told) return;
    told = false;
    queueMicrotask(() => {
      const listeners = changed ? [...changeListeners, ...selectionListeners] : selectionListeners;
      told = true;
      changed = false;
      for (const listener of listeners) listener();
    });
  };

  const upkeep = (command: ICommandInfo, options: IExecutionOptions | undefined) => {
    if (command.id === SetFormulaCalculationStartMutation.id) grid.sentences.newRound();
    const fromCalculation =
      options?.['applyFormulaCalculationResult'] === true || options?.onlyLocal === true;
    if (command.id === SetRangeValuesMutation.id && !fromCalculation) forgetEdited(grid, command);
    moveWithLines(grid, command);
    if (MOVES.has(command.id)) {
      grid.sentences.forgetAll();
      grid.api.getFormula().executeCalculation();
    }
  };

  grid.api.addEvent(grid.api.Event.CommandExecuted, ({ id, params, type, options }) => {
    upkeep({ id, params: params as object, type }, options);
    if (CHANGES.has(id) || isEndOfCalculation(id, params)) tell(true);
    else if (id === SetSelectionsOperation.id) tell(false);
  });

  const listen = (to: Set<() => void>, listener: () => void) => {
    to.add(listener);
    return () => {
      to.delete(listener);
    };
  };
  return {
    onChange: (listener) => listen(changeListeners, listener),
    onChangeOrSelection: (listener) => listen(selectionListeners, listener),
  };
}
