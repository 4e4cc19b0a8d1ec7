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
  SetTriggerFormulaCalculationStartMutation,
  type ISetFormulaCalculationNotificationMutation,
} from '@univerjs/engine-formula';
import { FormulaCalculationSessionService } from '@univerjs/sheets-formula';
import type { Grid } from './grid';

/**
 * After so long without a calculation, a change needs none. Held by a timer rather than a clock: where the page was busy
 * for longer, the grid's own timer comes first all the same.
 */
const TAKEN_UP_MS = 500;
const LOOK_MS = 10;
/** Longer than any calculation of a workbook that a person would still wait for. */
const CALCULATION_LIMIT_MS = 60_000;

/** A calculation that is stopped for a change starts anew at once, and so has not ended. */
const ENDED: readonly FormulaExecutedStateType[] = [
  FormulaExecutedStateType.NOT_EXECUTED,
  FormulaExecutedStateType.SUCCESS,
];

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
export function watchCalculation({ univer }: Grid): CalculationWatch {
  const injector = univer.__getInjector();
  const calculations = injector.get(FormulaCalculationSessionService);
  const changes = injector.get(IActiveDirtyManagerService);
  /** Runs while a change may still have to be taken up. */
  let waiting: ReturnType<typeof setTimeout> | undefined;
  let isRunning = false;
  const listeners = new Set<() => void>();
  const stopWaiting = () => {
    clearTimeout(waiting);
    waiting = undefined;
  };
  const wait = () => {
    clearTimeout(waiting);
    waiting = setTimeout(() => {
      waiting = undefined;
      if (!isRunning) for (const listener of listeners) listener();
    }, TAKEN_UP_MS);
  };
  const isUnderWay = () => isRunning || waiting !== undefined;
  injector.get(ICommandService).onCommandExecuted(({ id, params }, options) => {
    if (id === SetFormulaCalculationStartMutation.id) {
      stopWaiting();
      isRunning = true;
    } else if (id === SetFormulaCalculationNotificationMutation.id) {
      const { functionsExecutedState: end } = params as ISetFormulaCalculationNotificationMutation;
      if (end !== undefined && ENDED.includes(end)) isRunning = false;
    } else if (id === SetTriggerFormulaCalculationStartMutation.id) wait();
    else if (options?.onlyLocal !== true && Boolean(changes.get(id))) wait();
  });
  return {
    isUnderWay,
    onNothingToDo(listener) {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
    async settled() {
      const until = performance.now() + CALCULATION_LIMIT_MS;
      do {
        while (isUnderWay() && performance.now() < until) await pause(LOOK_MS);
        // Whether a change is still to be taken up is known here: the grid's own half second for that is not waited.
        await calculations.waitForLatestApplied(CALCULATION_LIMIT_MS, 0);
      } while (isUnderWay() && performance.now() < until);
    },
  };
}
