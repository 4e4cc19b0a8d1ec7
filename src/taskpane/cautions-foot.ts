/** The cautions, in view whatever the pane shows: the first in a line, the others under it, and the reference's pages. */
import { CAUTIONS } from '../sheets/plan/cautions';
import { make } from './make';
import { REFERENCE_PAGES } from './reference-pages';
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
      make(
        'p',
        { class: 'loom-pages' },
        // A pane is no place to read them in.
        ...Object.entries(REFERENCE_PAGES).map(([href, title]) =>
          make('a', { href, target: '_blank', rel: 'noopener' }, title),
        ),
      ),
    ),
    stop() {
      // Nothing is listened to.
    },
  };
}
