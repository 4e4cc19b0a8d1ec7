/** The way to the pages of the reference; a pane is no place to read them in. */
import { make } from './make';
import { REFERENCE_PAGES } from './reference-pages';

export function referenceLinks(): HTMLElement {
  return make(
    'p',
    { class: 'loom-pages' },
    ...Object.entries(REFERENCE_PAGES).map(([href, title]) =>
      make('a', { href, target: '_blank', rel: 'noopener' }, title),
    ),
  );
}
