/** "Wire sizes": the lightest of all runs, and those of one beside each other. */
import type { SheetHost } from '../hosts/sheet-host';
import { comparePart } from './compare-part';
import { lightenPart } from './lighten-part';
import { sectionElement, type Section } from './section';

export function sizesSection(host: SheetHost): Section {
  return {
    element: sectionElement('sizes', 'Wire sizes', lightenPart(host), comparePart(host)),
    stop() {
      // Nothing is listened to.
    },
  };
}
