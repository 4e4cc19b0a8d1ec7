/** The columns of a list that were not understood, each with some of its values and what it may be. */
import type { ColumnQuestion } from '../lists/read-runs';
import { SCHEDULE_COLUMNS } from '../sheets/schedule/columns';
import { firstAnswers, type Answers } from './answered-list';
import { make, say } from './make';

const LACKS_FEEDERS = `No column is “${SCHEDULE_COLUMNS.fedFrom.heading}”: every run will start at the source, none at another run. If a column says what feeds each run, choose it here.`;

export interface ColumnQuestions {
  readonly element: HTMLElement;
  answers(): Answers;
  /** Goes to the first question. */
  focus(): void;
  /** Says whether the list has lost what feeds its runs. */
  tellFeeders(areLacking: boolean): void;
  setBusy(busy: boolean): void;
}

/** The questions, answered as their suggestions have it; `onChange` hears of every other answer. */
export function columnQuestions(
  questions: readonly ColumnQuestion[],
  onChange: () => void,
): ColumnQuestions {
  const lacking = make('p', { class: 'loom-lacking', 'aria-live': 'polite' });
  const first = new Map(firstAnswers(questions));
  const asked = questions.map(({ heading, values, choices }, index) => {
    const id = `loom-column-${index}`;
    const select = make(
      'select',
      { id, class: 'loom-line' },
      make('option', { value: '' }, 'Leave out'),
      ...choices.map((choice) => make('option', { value: choice }, choice)),
    );
    select.value = first.get(heading) ?? '';
    select.addEventListener('change', onChange);
    const label = make(
      'label',
      { for: id },
      make('strong', {}, `“${heading}”`),
      ` holds ${values.join(', ')}`,
    );
    return { heading, select, element: make('div', {}, label, select) };
  });
  return {
    element: make(
      'fieldset',
      { class: 'loom-columns' },
      make('legend', {}, 'Columns that were not understood'),
      lacking,
      ...asked.map(({ element }) => element),
    ),
    answers: () => asked.map(({ heading, select }) => [heading, select.value]),
    focus() {
      asked[0]?.select.focus();
    },
    tellFeeders(areLacking) {
      say(lacking, areLacking ? LACKS_FEEDERS : '');
      lacking.hidden = !areLacking;
    },
    setBusy(busy) {
      for (const { select } of asked) select.disabled = busy;
    },
  };
}
