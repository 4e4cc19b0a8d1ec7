/** Several changes as one step of undo. Steps may lie within one another; the grid itself knows one at a time. */
import { IUndoRedoService, type IDisposable } from '@univerjs/core';
import type { Grid } from './grid';

const open = new WeakMap<object, { depth: number; batch: IDisposable }>();

/** Begins a step; what it returns ends it. */
export function beginUndoStep({ univer, workbook }: Grid): () => void {
  const undo = univer.__getInjector().get(IUndoRedoService);
  const step = open.get(undo) ?? { depth: 0, batch: undo.__tempBatchingUndoRedo(workbook.getId()) };
  open.set(undo, step);
  step.depth += 1;
  let isEnded = false;
  return () => {
    if (isEnded) return;
    isEnded = true;
    step.depth -= 1;
    if (step.depth > 0) return;
    open.delete(undo);
    step.batch.dispose();
  };
}
