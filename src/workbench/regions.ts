/** The keyboard's way between the parts of the page: F6 goes round them, and Esc then Tab leaves the grid. */
import type { WorkbenchHost } from '../hosts/workbench/host';

export interface Regions {
  readonly bar: HTMLElement;
  readonly grid: HTMLElement;
  readonly pane: HTMLElement;
}

const FOCUSABLE = 'fluent-button, button, input, a[href], summary, [tabindex="0"]';

function focusFirst(region: HTMLElement): void {
  const found = [...region.querySelectorAll<HTMLElement>(FOCUSABLE)].find(
    (each) => each.checkVisibility() && !each.matches(':disabled'),
  );
  found?.focus();
}

/** Follows the keyboard from now on; `tell` says once that Tab now leaves the grid, and takes it back with ''. */
export function followRegions(
  { bar, grid, pane }: Regions,
  host: WorkbenchHost,
  tell: (hint: string) => void,
): void {
  const around = [
    {
      region: bar,
      enter: () => {
        focusFirst(bar);
      },
    },
    {
      region: grid,
      enter: () => {
        host.takeKeys();
      },
    },
    {
      region: pane,
      enter: () => {
        focusFirst(pane);
      },
    },
  ] as const;
  /** The grid types into a field that stands outside its own element. */
  const placeOfKeys = () => {
    const focused = document.activeElement;
    const found = around.findIndex(({ region }) => region.contains(focused));
    return found >= 0 ? found : 1;
  };
  const go = (steps: number) => {
    around[(placeOfKeys() + steps + around.length) % around.length]!.enter();
  };

  let leavesByTab = false;
  const setLeaving = (leaves: boolean) => {
    if (leaves === leavesByTab) return;
    leavesByTab = leaves;
    tell(leaves ? 'Tab now leaves the grid, for the pane; Shift+Tab for the bar.' : '');
  };
  window.addEventListener(
    'keydown',
    (event) => {
      if (document.querySelector('dialog[open]') !== null) return;
      const step = event.shiftKey ? -1 : 1;
      const take = () => {
        event.preventDefault();
        event.stopImmediatePropagation();
        setLeaving(false);
        go(step);
      };
      const { key } = event;
      if (key === 'F6') take();
      else if (key === 'Tab' && leavesByTab) take();
      else if (key !== 'Shift') {
        const isInGrid = placeOfKeys() === 1;
        setLeaving(key === 'Escape' && isInGrid && !host.grid.workbook.isCellEditing());
      }
    },
    { capture: true },
  );
  window.addEventListener(
    'pointerdown',
    () => {
      setLeaving(false);
    },
    { capture: true },
  );
}
