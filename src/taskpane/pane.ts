/** The pane beside a workbook, in Excel and in the workbench alike. */
import './pane.css';
import type { SheetHost } from '../hosts/sheet-host';
import { cautionsFoot } from './cautions-foot';
import { checkSection } from './check-section';
import { drawingSection } from './drawing-section';
import { functionsSection } from './functions-section';
import { make } from './make';
import { runSection } from './run-section';
import { newScheduleSection } from './new-schedule-section';
import { shareSection } from './share-section';
import { sizesSection } from './sizes-section';
import { standingSection } from './standing-section';
import { takeInSection } from './take-in-section';
import { followTheme } from './theme';

export interface Pane {
  /** Takes in a file as if it were chosen in the pane; one that is understood wholly is inserted without asking. */
  takeIn(file: File): void;
  /** Takes the pane down again. */
  remove(): void;
}

/** Fills an element with the pane over a spreadsheet. The element needs a height of its own, within which the pane scrolls. */
export function mountPane(root: HTMLElement, host: SheetHost): Pane {
  const stopTheme = followTheme();
  const lists = takeInSection(host);
  const sections = [
    runSection(host),
    standingSection(host),
    sizesSection(host),
    newScheduleSection(host),
    lists,
    drawingSection(host),
    shareSection(host),
    functionsSection(),
    checkSection(host),
  ];
  const foot = cautionsFoot();
  const pane = make(
    'div',
    { class: 'loom-pane' },
    make('div', { class: 'loom-body' }, ...sections.map(({ element }) => element)),
    foot.element,
  );
  const frame = make('div', { class: 'loom-frame' }, pane);
  root.append(frame);
  return {
    takeIn: (file) => {
      lists.take(file);
    },
    remove() {
      for (const section of [...sections, foot]) section.stop();
      stopTheme();
      frame.remove();
    },
  };
}
