/** "Functions": help for every function of the catalogue, by topic or by search. */
import '@fluentui/web-components/text-input.js';
import type { TextInput } from '@fluentui/web-components';
import { CATALOGUE } from '../functions/catalogue';
import type { Topic, WorksheetFunction } from '../functions/worksheet-function';
import { functionHelp } from './function-help';
import { searchFunctions } from './function-search';
import { make, say } from './make';
import { referenceLinks } from './reference-links';
import { sectionElement, type Section } from './section';

function helpElement(entry: WorksheetFunction): HTMLDetailsElement {
  const help = functionHelp(entry);
  const args = help.arguments.flatMap(({ name, mayBeLeftOut, text }) => [
    make('dt', {}, make('code', {}, name), mayBeLeftOut ? ' (may be left out)' : ''),
    make('dd', {}, text),
  ]);
  return make(
    'details',
    { class: 'loom-function' },
    make(
      'summary',
      {},
      make('h4', {}, entry.id),
      make('span', { class: 'loom-function-summary' }, entry.summary),
    ),
    make('p', { class: 'loom-call' }, make('code', {}, help.call)),
    make('dl', { class: 'loom-arguments' }, ...args),
    make(
      'dl',
      { class: 'loom-facts' },
      make('dt', {}, 'Returns'),
      make('dd', {}, entry.gives),
      make('dt', {}, 'Example'),
      make(
        'dd',
        {},
        make('code', {}, help.exampleCall),
        ' gives ',
        make('code', {}, help.exampleResult),
      ),
      make('dt', {}, 'Source'),
      make('dd', {}, entry.source),
    ),
  );
}

interface TopicGroup {
  readonly element: HTMLDetailsElement;
  readonly helps: ReadonlyMap<WorksheetFunction, HTMLDetailsElement>;
}

function topicGroup(topic: Topic, entries: readonly WorksheetFunction[]): TopicGroup {
  const helps = new Map(entries.map((entry) => [entry, helpElement(entry)]));
  const element = make(
    'details',
    { class: 'loom-topic' },
    make('summary', {}, make('h3', {}, topic)),
    ...helps.values(),
  );
  return { element, helps };
}

export function functionsSection(): Section {
  const topics = [...new Set(CATALOGUE.map(({ topic }) => topic))];
  const groups = topics.map((topic) =>
    topicGroup(
      topic,
      CATALOGUE.filter((entry) => entry.topic === topic),
    ),
  );
  const count = make('p', { role: 'status', class: 'loom-status' });
  const field = make(
    'fluent-text-input',
    { class: 'loom-search', autocomplete: 'off', spellcheck: 'false' },
    'Find a function by name or word',
  ) as TextInput;

  const search = () => {
    const isSearching = field.value.trim() !== '';
    const found = new Set(searchFunctions(CATALOGUE, field.value));
    for (const { element, helps } of groups) {
      for (const [entry, help] of helps) {
        help.hidden = !found.has(entry);
        help.open = isSearching && found.size === 1 && found.has(entry);
      }
      element.hidden = ![...helps.keys()].some((entry) => found.has(entry));
      element.open = isSearching && !element.hidden;
    }
    say(count, isSearching ? `${found.size} of ${CATALOGUE.length} functions` : '');
  };
  field.addEventListener('input', search);
  field.addEventListener('keydown', (event) => {
    if (event.key !== 'Escape' || field.value === '') return;
    field.value = '';
    search();
  });

  return {
    element: sectionElement(
      'functions',
      'Functions',
      make(
        'p',
        {},
        'Each argument takes one value or a range. Where your spreadsheet separates arguments by semicolons, write those.',
      ),
      field,
      count,
      ...groups.map(({ element }) => element),
      referenceLinks(),
    ),
    stop() {
      // Nothing outside the section is listened to.
    },
  };
}
