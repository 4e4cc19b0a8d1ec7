/** Tick boxes for the sheets that follow a schedule where they are wanted. */
import { EXTRAS, type ExtraKey } from '../sheets/station/extras';
import { make } from './make';

export interface ExtraTicks {
  readonly element: HTMLElement;
  /** What is ticked. */
  wanted(): readonly ExtraKey[];
}

/** Folded, named by the sheets that are offered. `place` tells the boxes of one section of the pane from those of another. */
export function extraTicks(
  place: string,
  legend: string,
  offered: readonly ExtraKey[],
  ...further: readonly HTMLElement[]
): ExtraTicks {
  const boxes = offered.map(
    (key) => [key, make('input', { type: 'checkbox', id: `loom-${place}-${key}` })] as const,
  );
  return {
    element: make(
      'details',
      { class: 'loom-more' },
      make('summary', {}, offered.map((key) => EXTRAS[key].sheetName).join(', ')),
      make(
        'fieldset',
        { class: 'loom-ticks' },
        make('legend', {}, legend),
        ...boxes.map(([key, box]) =>
          make(
            'div',
            { class: 'loom-tick', title: EXTRAS[key].purpose },
            box,
            make('label', { for: box.id }, EXTRAS[key].sheetName),
          ),
        ),
      ),
      ...further,
    ),
    wanted: () => boxes.flatMap(([key, box]) => (box.checked ? [key] : [])),
  };
}
