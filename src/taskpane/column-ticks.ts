/** "More about a run": which of the columns that most runs leave blank are in sight. */
import type { SheetHost } from '../hosts/sheet-host';
import { SCHEDULE_COLUMNS } from '../sheets/schedule/columns';
import { readSchedule } from '../sheets/schedule/reading';
import { RARE_KEYS } from '../sheets/station/schedule-keys';
import { make } from './make';

type RareKey = (typeof RARE_KEYS)[number];

export interface ColumnTicks {
  readonly element: HTMLElement;
  /** Reads anew which columns are in sight. */
  refresh(): Promise<void>;
}

/** `fail` hears why a column could not be shown or hidden. */
export function columnTicks(host: SheetHost, fail: (fault: unknown) => void): ColumnTicks {
  let shown: { readonly sheetName: string; readonly columnOf: Partial<Record<RareKey, number>> };
  const boxes = new Map<RareKey, HTMLInputElement>();
  const rows = RARE_KEYS.map((key) => {
    const { heading, note } = SCHEDULE_COLUMNS[key];
    const box = make('input', { type: 'checkbox', id: `loom-column-${key}` });
    boxes.set(key, box);
    box.addEventListener('change', () => {
      const column = shown.columnOf[key];
      if (column === undefined) return;
      host.edits.showColumns(shown.sheetName, [column], box.checked).catch((fault: unknown) => {
        box.checked = !box.checked;
        fail(fault);
      });
    });
    return make(
      'div',
      { class: 'loom-tick', title: note },
      box,
      make('label', { for: box.id }, heading),
    );
  });
  const element = make(
    'fieldset',
    { class: 'loom-ticks' },
    make('legend', {}, 'More about a run: columns to show'),
    ...rows,
  );

  return {
    element,
    async refresh() {
      const { grid } = await host.view();
      const reading = grid === null ? undefined : readSchedule(grid.values);
      element.hidden = grid === null || reading === undefined;
      if (grid === null || reading === undefined) return;
      const { columnOf } = reading;
      shown = { sheetName: grid.sheetName, columnOf };
      const last = Math.max(...RARE_KEYS.map((key) => columnOf[key] ?? -1));
      const hidden = new Set(await host.edits.hiddenColumns(grid.sheetName, last + 1));
      for (const [key, box] of boxes) {
        const column = columnOf[key];
        box.disabled = column === undefined;
        box.checked = column !== undefined && !hidden.has(column);
      }
    },
  };
}
