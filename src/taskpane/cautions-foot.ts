/** The cautions, in view whatever the pane shows: the first in a line, the others under it when they are wanted. */
import { CAUTIONS } from '../sheets/plan/cautions';
import { make } from './make';
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
      ),
    ),
    stop() {
      // Nothing is listened to.
    },
  };
}
