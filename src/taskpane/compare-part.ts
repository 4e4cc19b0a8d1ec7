/** "Compare sizes": the selected run with every size of the series, and one click to take another. */
import type { SheetHost } from '../hosts/sheet-host';
import type { ComparedSize } from '../sheets/compare-sizes';
import { commandButton } from './command-button';
import { dropChart } from './drop-chart';
import { digits, kilograms, money, percent } from './figures';
import { make } from './make';
import { makeNotice } from './notice';
import { compareSelected, takeSize, type Compared } from './size-actions';
import { toldWork } from './told-work';

const orNone = <Value>(value: Value | undefined, say: (value: Value) => string) =>
  value === undefined ? 'none' : say(value);

/** What speaks against a size; empty where nothing does. */
export function againstSize({ why, worse }: ComparedSize): string {
  return [
    ...why,
    ...(worse.length > 0 ? [`others would be judged worse: ${worse.join('; ')}`] : []),
  ].join('; ');
}

function markOf({ isInUse, isSuggested }: ComparedSize): string {
  return [...(isInUse ? ['in use'] : []), ...(isSuggested ? ['suggested'] : [])].join(', ');
}

function sizeRows(size: ComparedSize, take: HTMLElement | undefined): readonly HTMLElement[] {
  const { name, share, volts, ampacityA, fuseA, kg, cost, level, isInUse } = size;
  const line = (...texts: readonly string[]) => texts.map((text) => make('div', {}, text));
  const mark = markOf(size);
  const against = againstSize(size);
  const told = `${level === 'ok' ? 'ok' : against}${level === 'ok' && against !== '' ? `; ${against}` : ''}`;
  return [
    make(
      'tr',
      isInUse ? { 'aria-current': 'true', class: 'loom-in-use' } : {},
      make('th', { scope: 'row' }, ...line(name, ...(mark === '' ? [] : [mark]))),
      make(
        'td',
        {},
        ...line(
          orNone(share, (value) => percent(value)),
          orNone(volts, (value) => `${digits(value, 3)} V`),
        ),
      ),
      make(
        'td',
        {},
        ...line(
          orNone(ampacityA, (value) => `${digits(value, 3)} A`),
          fuseA === undefined ? 'no fuse' : `fuse ${fuseA} A`,
        ),
      ),
      make('td', {}, ...line(orNone(kg, kilograms), ...(cost === undefined ? [] : [money(cost)]))),
    ),
    make(
      'tr',
      { class: 'loom-size-verdict', 'data-level': level },
      make('td', { colspan: '4' }, make('span', {}, told), ...(take === undefined ? [] : [take])),
    ),
  ];
}

export function comparePart(host: SheetHost): HTMLElement {
  const notice = makeNotice();
  const shown = make('div', { class: 'loom-offer' });
  let buttons: readonly ReturnType<typeof commandButton>[] = [];

  const work = toldWork(notice, (busy) => {
    for (const button of [compare, ...buttons]) button.setBusy(busy);
  });

  const show = (compared: Compared) => {
    const { found } = compared;
    const takes = found.sizes.map((size) =>
      size.isOffered && !size.isInUse
        ? commandButton(`Take ${size.name}`, 'outline', () => {
            work('Writing the size…', async () => {
              const told = await takeSize(host, compared, size.name);
              await anew();
              return told;
            });
          })
        : undefined,
    );
    buttons = takes.flatMap((button) => button ?? []);
    const inUse = found.sizes.find(({ isInUse }) => isInUse)?.name ?? '';
    shown.replaceChildren(
      ...(found.chart === undefined ? [] : [dropChart(found.chart, inUse)]),
      make(
        'table',
        { class: 'loom-findings loom-compared' },
        make('caption', {}, `Sizes for “${found.called}”`),
        make(
          'thead',
          {},
          make(
            'tr',
            {},
            ...['Size', 'Drop to load', 'Carries', 'Metal, price'].map((head) =>
              make('th', { scope: 'col' }, head),
            ),
          ),
        ),
        make(
          'tbody',
          {},
          ...found.sizes.flatMap((size, index) => sizeRows(size, takes[index]?.element)),
        ),
      ),
    );
  };
  const anew = async () => {
    const compared = await compareSelected(host, (tried) => {
      if (tried > 0) notice.tell(`Judging the schedule with each size: ${tried} tried…`);
    });
    show(compared);
    return compared;
  };
  const compare = commandButton('Compare sizes of the selected run', 'outline', () => {
    shown.replaceChildren();
    buttons = [];
    work('Judging the schedule with each size…', async () => {
      const { found } = await anew();
      const offered = found.sizes.filter(({ isOffered }) => isOffered).length;
      return `“${found.called}”: ${found.sizes.length} sizes compared, ${offered} of them fit.`;
    });
  });

  return make(
    'details',
    { class: 'loom-more' },
    make('summary', {}, 'Compare sizes of the selected run'),
    make(
      'p',
      {},
      'Every size of the series as if it were typed: drop from the source, ampacity, fuse, metal and price, and what the schedule would say.',
    ),
    make('div', { class: 'loom-commands' }, compare.element),
    notice.element,
    shown,
  );
}
