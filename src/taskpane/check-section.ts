/** "Check this Excel": a minute's check of the spreadsheet, with a table of what held, to be copied out as text. */
import type { SheetHost } from '../hosts/sheet-host';
import { commandButton } from './command-button';
import { make } from './make';
import { makeNotice, sentenceOf } from './notice';
import { restRemover } from './rest-remover';
import { sectionElement, type Section } from './section';
import { checkedText, checkSpreadsheet, type Checked } from './self-test';

const ANSWER: Readonly<Record<string, string>> = {
  true: 'yes',
  false: 'NO',
  'not tried': 'not tried',
};

function table({ findings }: Checked): HTMLElement {
  const cells = (tag: 'th' | 'td', ...texts: readonly string[]) =>
    make('tr', {}, ...texts.map((text) => make(tag, tag === 'th' ? { scope: 'col' } : {}, text)));
  return make(
    'table',
    { class: 'loom-findings' },
    make('thead', {}, cells('th', 'Tried', 'Held', 'Found')),
    make(
      'tbody',
      {},
      ...findings.map(({ what, held, found }) =>
        cells('td', what, ANSWER[String(held)] ?? '', found),
      ),
    ),
  );
}

export function checkSection(host: SheetHost): Section {
  const notice = makeNotice();
  const shown = make('div', { hidden: true });
  const text = make('textarea', {
    readonly: true,
    rows: '6',
    class: 'loom-copied',
    'aria-label': 'What the check found, as text',
  });
  const copy = commandButton('Copy as text', 'outline', () => {
    // Where the clipboard is closed to the pane, the text stands selected for copying by hand.
    text.focus();
    text.select();
    const copied = navigator.clipboard?.writeText(text.value) ?? Promise.reject(new Error());
    copied.then(
      () => {
        notice.tell('Copied.');
      },
      () => {
        notice.tell('The text is selected: copy it with Ctrl+C, or Command+C.');
      },
    );
  });
  const rest = restRemover((removal) => {
    rest.button.setBusy(true);
    notice.tell('Removing what is left…');
    removal()
      .then(
        () => {
          notice.tell('Nothing of it is left.');
        },
        (fault: unknown) => {
          notice.warn(sentenceOf(fault));
        },
      )
      .finally(() => {
        rest.button.setBusy(false);
      });
  });
  const check = commandButton(
    `Check ${host.probe.called === 'Excel' ? 'this Excel' : host.probe.called}`,
    'outline',
    () => {
      check.setBusy(true);
      shown.hidden = true;
      notice.tell('Checking…');
      checkSpreadsheet(host, (what) => {
        notice.tell(`Checking: ${what}…`);
      })
        .then(
          (checked) => {
            const found = checkedText(checked);
            text.value = found;
            shown.replaceChildren(table(checked), text, copy.element);
            shown.hidden = false;
            rest.add(...checked.removals);
            notice.tell(found.split('\n')[0] ?? '');
          },
          (fault: unknown) => {
            notice.warn(sentenceOf(fault));
          },
        )
        .finally(() => {
          check.setBusy(false);
          notice.reveal();
        });
    },
  );

  return {
    element: sectionElement(
      'check',
      host.probe.called === 'Excel' ? 'Check this Excel' : `Check ${host.probe.called}`,
      make(
        'p',
        {},
        'Inserts the demonstration on sheets of its own, changes it, compares every cell with the values that come with Loomsheet, tries what must be refused, and removes it all again. It takes about a minute; best in a new workbook.',
      ),
      check.element,
      notice.element,
      rest.button.element,
      shown,
    ),
    stop() {
      // Nothing is listened to.
    },
  };
}
