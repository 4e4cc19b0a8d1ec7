/** The pane beside a workbook, in Excel and in the workbench alike. */
import './pane.css';
import type { SheetHost } from '../hosts/sheet-host';
import { cautionsFoot } from './cautions-foot';
import { checkSection } from './check-section';
import { functionsSection } from './functions-section';
import { make } from './make';
import { newScheduleSection } from './new-schedule-section';
import { shareSection } from './share-section';
import { standingSection } from './standing-section';
import { takeInSection } from './take-in-section';
import { followTheme } from './theme';

/**
 * Fills an element with the pane over a spreadsheet. The element needs a height of its own, within which the pane
 * scrolls. Returns the way to take the pane down again.
 */
export function mountPane(root: HTMLElement, host: SheetHost): () => void {
  const stopTheme = followTheme();
  const sections = [
    newScheduleSection(host),
    takeInSection(host),
    standingSection(host),
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
  return () => {
    for (const section of [...sections, foot]) section.stop();
    stopTheme();
    frame.remove();
  };
}
