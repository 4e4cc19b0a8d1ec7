/**
 * Several changes as one step of undo. Steps may lie within one another. The grid's own way (0.25.1) takes back the first
 * change first; what was done last is taken back first here.
 */
import { IUndoRedoService, type IUndoRedoItem } from '@univerjs/core';
import type { Grid } from './grid';

/** The grid's list of what can be undone, with the parts that it keeps to itself. */
interface InnerUndo {
  _getUndoStack(unitId: string, createAsNeeded: boolean): IUndoRedoItem[];
  _updateStatus(): void;
}

const open = new WeakMap<object, { depth: number; readonly last: IUndoRedoItem | undefined }>();

/** Begins a step; what it returns ends it. */
export function beginUndoStep({ univer, workbook }: Grid): () => void {
  const undo = univer.__getInjector().get(IUndoRedoService) as unknown as InnerUndo;
  const items = () => undo._getUndoStack(workbook.getId(), true);
  const step = open.get(undo) ?? { depth: 0, last: items().at(-1) };
  open.set(undo, step);
  step.depth += 1;
  let isEnded = false;
  return () => {
    if (isEnded) return;
    isEnded = true;
    step.depth -= 1;
    if (step.depth > 0) return;
    open.delete(undo);
    const stack = items();
    // Where the list is full, its oldest items are gone, the one before the step with them.
    const from = step.last === undefined ? 0 : stack.lastIndexOf(step.last) + 1;
    const done = stack.splice(from);
    if (done.length === 0) return;
    stack.push({
      ...done.at(-1)!,
      redoMutations: done.flatMap(({ redoMutations }) => redoMutations),
      undoMutations: [...done].reverse().flatMap(({ undoMutations }) => undoMutations),
    });
    undo._updateStatus();
  };
}

/** Whether the last step of undo does a change with these parameters: a person has just made it, and not taken it back. */
export function isLastStep({ univer, workbook }: Grid, change: object): boolean {
  const undo = univer.__getInjector().get(IUndoRedoService) as unknown as InnerUndo;
  const last = undo._getUndoStack(workbook.getId(), true).at(-1);
  return last?.redoMutations.some(({ params }) => params === change) === true;
}

/**
 * Adds mutations that have been done to the last step of undo, where that one began with these parameters; else they become
 * a step of their own.
 */
export function addToUndoStep(
  grid: Grid,
  mutations: Pick<IUndoRedoItem, 'redoMutations' | 'undoMutations'>,
  began?: object,
): void {
  const { univer, workbook } = grid;
  const service = univer.__getInjector().get(IUndoRedoService);
  const unitID = workbook.getId();
  const last = (service as unknown as InnerUndo)._getUndoStack(unitID, true).at(-1);
  if (last === undefined || began === undefined || !isLastStep(grid, began)) {
    service.pushUndoRedo({ unitID, ...mutations });
    return;
  }
  last.redoMutations.push(...mutations.redoMutations);
  last.undoMutations.unshift(...mutations.undoMutations);
}
