/**
 * When the grid has calculated everything that was changed. Its own answer (0.25.1) is that of the calculation that runs,
 * and a change made meanwhile is taken up only a tenth of a second later.
 */
import { ICommandService } from '@univerjs/core';
import {
  FormulaExecutedStateType,
  IActiveDirtyManagerService,
  SetFormulaCalculationNotificationMutation,
  SetFormulaCalculationStartMutation,
  SetFormulaCalculationStopMutation,
  type ISetFormulaCalculationNotificationMutation,
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

export interface CalculationWatch {
  /** Resolves when no cell waits to be calculated. */
  readonly settled: () => Promise<void>;
  /** Whether the grid calculates at this moment, or may be about to: until then its cells are not to be judged. */
  readonly isUnderWay: () => boolean;
  /** Calls back where a change was waited for that needed no calculation. */
  readonly onNothingToDo: (listener: () => void) => () => void;
}

/** Watches the grid from now on. */
export function watchCalculation({ univer, api }: Grid): CalculationWatch {
  const injector = univer.__getInjector();
  const changes = injector.get(IActiveDirtyManagerService);
  /** Until when a change may still have to be taken up, on the clock of the page. */
  let waitsUntil = 0;
  let isRunning = false;
  const listeners = new Set<() => void>();
  let looking: ReturnType<typeof setTimeout> | undefined;
  const isWaiting = () => performance.now() < waitsUntil;
  const lookAgain = () => {
    looking = undefined;
    if (isWaiting()) looking = setTimeout(lookAgain, waitsUntil - performance.now() + LOOK_MS);
    else if (!isRunning) for (const listener of listeners) listener();
  };
  const waitUntil = (until: number) => {
    waitsUntil = Math.max(waitsUntil, until);
    looking ??= setTimeout(lookAgain, waitsUntil - performance.now() + LOOK_MS);
  };
  injector.get(ICommandService).onCommandExecuted(({ id, params }, options) => {
    const now = performance.now();
    if (id === SetFormulaCalculationStartMutation.id) {
      waitsUntil = 0;
      isRunning = true;
    } else if (id === SetFormulaCalculationStopMutation.id) waitUntil(now + STARTED_ANEW_MS);
    else if (id === SetFormulaCalculationNotificationMutation.id) {
      const { functionsExecutedState: end } = params as ISetFormulaCalculationNotificationMutation;
      if (end !== undefined && end !== FormulaExecutedStateType.INITIAL) isRunning = false;
    } else if (options?.onlyLocal !== true && Boolean(changes.get(id))) {
      waitUntil(now + TAKEN_UP_MS);
    }
  });
  return {
    isUnderWay: () => isRunning || isWaiting(),
    onNothingToDo(listener) {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
    async settled() {
      do {
        while (isWaiting()) await pause(LOOK_MS);
        await api.getFormula().onCalculationResultApplied(CALCULATION_LIMIT_MS);
      } while (isWaiting());
    },
  };
}
