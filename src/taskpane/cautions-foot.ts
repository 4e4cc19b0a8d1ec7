/** The cautions, in view whatever the pane shows: the first in a line, the others under it, and the reference's pages. */
import { CAUTIONS } from '../sheets/plan/cautions';
import { make } from './make';
import { referenceLinks } from './reference-links';
import { sectionElement, type Section } from './section';

export function cautionsFoot(): Section {
  const [first = '', ...others] = CAUTIONS;
  const items = others.map((caution) => make('li', {}, caution));
  return {
    element: sectionElement(
      'cautions',
      'Cautions',
      make(
        'details',
        { class: 'loom-cautions' },
        make('summary', {}, first),
        make('ul', {}, ...items),
        referenceLinks(),
      ),
    ),
    stop() {
      // Nothing is listened to.
    },
  };
}
