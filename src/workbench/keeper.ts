/** Puts the workbook on the shelf shortly after each change, and once more when the page is left. */
import { CommandType, ICommandService } from '@univerjs/core';
import type { Grid } from '../hosts/workbench/grid';
import { keptText } from '../hosts/workbench/kept';
import { calmly } from '../taskpane/calm';
import type { Shelf } from './shelf';

/** Long enough for a keystroke's many changes, short enough that little is lost with the power. */
const SETTLE_MS = 800;

/** What there is to say of the keeping. */
export type KeepingState = 'kept' | 'waiting' | { readonly failed: string };

export interface Keeper {
  /** From now on nothing is kept any more. */
  stop(): void;
}

/** Notes of the engine to itself, such as how far it is: no change of the workbook. Names are its own too. */
const ENGINE_NOTES = /^formula\.mutation\.(?!(set|remove)-defined-name)/;

/** Keeps the workbook from now on, and says how that stands. */
export function keepWorkbook(
  grid: Grid,
  shelf: Shelf,
  tell: (state: KeepingState) => void,
): Keeper {
  let isChanged = false;

  const put = async () => {
    if (!isChanged) return;
    isChanged = false;
    try {
      await shelf.put(keptText(grid));
      if (!isChanged) tell('kept');
    } catch (fault) {
      tell({ failed: fault instanceof Error ? fault.message : String(fault) });
    }
  };
  const calm = calmly(put, SETTLE_MS);
  const change = () => {
    if (!isChanged) tell('waiting');
    isChanged = true;
    calm.poke();
  };
  const go = () => void put();
  const leave = () => {
    if (document.visibilityState === 'hidden') go();
  };

  const listening = grid.univer
    .__getInjector()
    .get(ICommandService)
    .onCommandExecuted(({ id, type }) => {
      if (type === CommandType.MUTATION && !ENGINE_NOTES.test(id)) change();
    });
  document.addEventListener('visibilitychange', leave);
  window.addEventListener('pagehide', go);
  change();
  return {
    stop() {
      calm.stop();
      isChanged = false;
      listening.dispose();
      document.removeEventListener('visibilitychange', leave);
      window.removeEventListener('pagehide', go);
    },
  };
}
