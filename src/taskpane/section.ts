/** What the pane is made of: sections under a heading each. */
import { make } from './make';

export interface Section {
  readonly element: HTMLElement;
  /** Ends whatever the section listens to. */
  stop(): void;
}

/** The frame of a section, named by its heading. */
export function sectionElement(
  id: string,
  heading: string,
  ...children: readonly Node[]
): HTMLElement {
  const headingId = `loom-${id}`;
  return make(
    'section',
    { class: `loom-section loom-${id}-section`, 'aria-labelledby': headingId },
    make('h2', { id: headingId }, heading),
    ...children,
  );
}
