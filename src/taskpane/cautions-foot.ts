/** The cautions, in view whatever the pane shows. */
import { CAUTIONS } from '../sheets/plan/cautions';
import { make } from './make';
import { sectionElement, type Section } from './section';

export function cautionsFoot(): Section {
  const items = CAUTIONS.map((caution) => make('li', {}, caution));
  return {
    element: sectionElement('cautions', 'Cautions', make('ul', {}, ...items)),
    stop() {
      // Nothing is listened to.
    },
  };
}
