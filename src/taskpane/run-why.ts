/** "Why?" under the sentence of the selected run: its verdict word by word, its limits, its worked calculation. */
import type { SheetHost } from '../hosts/sheet-host';
import type { RunWhy, Said } from '../sheets/run-why';
import { commandButton } from './command-button';
import { make } from './make';
import { sentenceOf } from './notice';
import { whySelected } from './why-text';

const ID = 'loom-why';

export const NOT_READ =
  'The row cannot be judged yet, so that no figures are told. What is missing stands above.';

const listOf = (lines: readonly string[]) =>
  make('ul', {}, ...lines.map((line) => make('li', {}, line)));

function saidItem({ word, why, remedy }: Said): HTMLElement {
  const toDo = remedy === '' ? '' : ` What to do: ${remedy}.`;
  return make('li', {}, make('strong', {}, word), `: ${why}.${toDo}`);
}

/** The parts of the answer, in the order that they are read. */
function partsOf({ called, said, fix, limits, working }: RunWhy): readonly HTMLElement[] {
  return [
    make('h3', {}, `Why: ${called}`),
    make(
      'ul',
      {},
      ...said.map(saidItem),
      ...(fix === '' ? [] : [make('li', {}, `The schedule's Fix: ${fix}.`)]),
    ),
    ...(limits.length === 0
      ? [make('p', {}, NOT_READ)]
      : [make('h3', {}, 'Its limits'), listOf(limits)]),
    ...(working.length === 0
      ? []
      : [
          make('h3', {}, 'Its own wire, worked'),
          make(
            'pre',
            { class: 'loom-working' },
            ...working.map((line) => make('span', {}, `${line}\n`)),
          ),
        ]),
  ];
}

export interface RunWhyPart {
  readonly element: HTMLElement;
  /** Follows the selection and the sheet: nothing stays that is told of another run or of former figures. */
  follow(sentence: string): Promise<void>;
}

export function runWhyPart(host: SheetHost): RunWhyPart {
  const shown = make('div', { id: ID, class: 'loom-report loom-why' });
  let isOpen = false;
  let told = '';
  let asked = 0;

  async function answer(): Promise<void> {
    asked += 1;
    const mine = asked;
    let parts: readonly HTMLElement[];
    try {
      parts = partsOf(await whySelected(host));
    } catch (fault) {
      parts = [make('p', {}, sentenceOf(fault))];
    }
    if (mine !== asked || !isOpen) return;
    // The same text is left alone, so that what someone has marked in it stays marked.
    const text = (of: readonly Element[]) => of.map((part) => part.outerHTML).join('');
    if (text(parts) !== text([...shown.children])) shown.replaceChildren(...parts);
  }

  function open(isNow: boolean): void {
    isOpen = isNow;
    shown.hidden = !isNow;
    why.element.setAttribute('aria-expanded', String(isNow));
    if (!isNow) shown.replaceChildren();
  }

  const why = commandButton('Why?', 'outline', () => {
    open(!isOpen);
    if (isOpen) void answer();
  });
  why.element.setAttribute('aria-controls', ID);
  why.element.hidden = true;
  open(false);

  return {
    element: make('div', {}, why.element, shown),
    async follow(sentence) {
      const isNone = sentence === '';
      why.element.hidden = isNone;
      if (isNone) {
        open(false);
      } else if (isOpen) {
        if (sentence !== told) shown.replaceChildren();
        await answer();
      }
      told = sentence;
    },
  };
}
