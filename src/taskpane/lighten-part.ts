/** "Lighten": the lightest sizes of the schedule in view, shown run by run, and written when they are accepted. */
import type { SheetHost } from '../hosts/sheet-host';
import type { Lightened } from '../sheets/lighten';
import { commandButton } from './command-button';
import { kilograms, money } from './figures';
import { lightenedSentences, ruledOutLines } from './lighten-words';
import { make } from './make';
import { makeNotice } from './notice';
import { findLightest, takeLightest, type Offer } from './size-actions';
import { toldWork } from './told-work';

function changeTable({ changes, now }: Lightened): HTMLElement {
  const isPriced = now.cost !== undefined;
  const heads = ['Run', 'Now', 'Then', 'Saved'];
  const savedOf = (kg: number, cost: number | undefined) =>
    [kilograms(kg), ...(isPriced && cost !== undefined ? [money(cost)] : [])].join(', ');
  return make(
    'table',
    { class: 'loom-findings loom-sizes', 'aria-label': 'Runs that get another wire' },
    make('thead', {}, make('tr', {}, ...heads.map((head) => make('th', { scope: 'col' }, head)))),
    make(
      'tbody',
      {},
      ...changes.map(({ called, now: was, then }) =>
        make(
          'tr',
          {},
          make('th', { scope: 'row' }, called),
          make('td', {}, was?.name ?? 'none fits'),
          make('td', {}, then.name),
          make(
            'td',
            {},
            savedOf(
              (was?.kg ?? 0) - then.kg,
              was?.cost === undefined || then.cost === undefined ? undefined : was.cost - then.cost,
            ),
          ),
        ),
      ),
    ),
  );
}

export function lightenPart(host: SheetHost): HTMLElement {
  const notice = makeNotice();
  const mayChange = make('input', { type: 'checkbox', id: 'loom-lighten-typed' });
  const shown = make('div', { class: 'loom-offer' });
  let offer: Offer | undefined;

  const work = toldWork(notice, (busy) => {
    for (const button of [find, take]) button.setBusy(busy);
  });
  const show = (found: Offer | undefined) => {
    offer = found;
    take.element.hidden = found === undefined || found.found.typed.length === 0;
    shown.replaceChildren();
    if (found === undefined) return;
    const { found: lightened } = found;
    if (lightened.changes.length > 0) shown.append(changeTable(lightened));
    const lines = ruledOutLines(lightened);
    if (lines.length > 0) {
      shown.append(
        make('h4', {}, 'Lighter, but some run would be judged worse'),
        make('ul', { class: 'loom-reasons' }, ...lines.map((line) => make('li', {}, line))),
      );
    }
  };

  const find = commandButton('Find the lightest sizes', 'outline', () => {
    show(undefined);
    work('Looking for lighter sizes…', async () => {
      const mayChangeTyped = mayChange.checked;
      const found = await findLightest(host, mayChangeTyped, (round) => {
        if (round > 1) notice.tell(`Looking for lighter sizes, round ${round}…`);
      });
      show(found);
      const { runs } = found.judged.station.content;
      const typed = runs.filter(({ ownSize = '' }) => ownSize.trim() !== '').length;
      return lightenedSentences(found.found, mayChangeTyped ? 0 : typed).join(' ');
    });
  });
  const take = commandButton('Write these sizes into “My wire”', 'primary', () => {
    const taken = offer;
    if (taken === undefined) return;
    work('Writing the sizes…', async () => {
      const told = await takeLightest(host, taken);
      show(undefined);
      return told;
    });
  });
  mayChange.addEventListener('change', () => {
    // What was found holds for the other choice.
    show(undefined);
    notice.clear();
  });
  show(undefined);

  return make(
    'details',
    { class: 'loom-more' },
    make('summary', {}, 'Lighten: the lightest sizes of all runs'),
    make(
      'p',
      {},
      'Sizes that together hold the least metal, or cost least where the Wire list has prices, with no run judged worse than now. A run for which the schedule has no wire gets one where sizes chosen together serve it. Lengths as listed, both conductors, without slack, tails and whole spools.',
    ),
    make(
      'div',
      { class: 'loom-tick' },
      mayChange,
      make('label', { for: mayChange.id }, 'Sizes I chose may change too'),
    ),
    make('div', { class: 'loom-commands' }, find.element),
    notice.element,
    shown,
    make('div', { class: 'loom-commands' }, take.element),
  );
}
