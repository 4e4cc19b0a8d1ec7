/**
 * When the grid has calculated everything that was changed. Its own answer (0.25.1) is that of the calculation that runs,
 * and a change made meanwhile is taken up only a tenth of a second later.
 */
import { ICommandService } from '@univerjs/core';
import {
  IActiveDirtyManagerService,
  SetFormulaCalculationStartMutation,
  SetFormulaCalculationStopMutation,
} from '@univerjs/engine-formula';
import type { Grid } from './grid';

/** After so long without a calculation, a change needs none. */
const TAKEN_UP_MS = 500;
/** A calculation that was stopped for a change starts anew; when, is up to what it is doing. */
const STARTED_ANEW_MS = 2000;
const LOOK_MS = 10;
/** Longer than any calculation of a workbook that a person would still wait for. */
const CALCULATION_LIMIT_MS = 60_000;

const pause = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));

/** Watches the grid from now on; the function that it gives resolves when no cell waits to be calculated. */
export function watchCalculation({ univer, api }: Grid): () => Promise<void> {
  const injector = univer.__getInjector();
  const changes = injector.get(IActiveDirtyManagerService);
  /** Until when a change may still have to be taken up, on the clock of the page. */
  let waitsUntil = 0;
  injector.get(ICommandService).onCommandExecuted(({ id }, options) => {
    const now = performance.now();
    if (id === SetFormulaCalculationStartMutation.id) waitsUntil = 0;
    else if (id === SetFormulaCalculationStopMutation.id) waitsUntil = now + STARTED_ANEW_MS;
    else if (options?.onlyLocal !== true && Boolean(changes.get(id))) {
      waitsUntil = Math.max(waitsUntil, now + TAKEN_UP_MS);
    }
  });
  const isWaiting = () => performance.now() < waitsUntil;
  return async () => {
    do {
      while (isWaiting()) await pause(LOOK_MS);
      await api.getFormula().onCalculationResultApplied(CALCULATION_LIMIT_MS);
    } while (isWaiting());
  };
}
