/** Where a section tells what happened: a status that is read out in turn, and an alert that is read out at once. */
import { make, say } from './make';

export interface Notice {
  readonly element: HTMLElement;
  /** Says what happened. */
  readonly tell: (text: string) => void;
  /** Says what went wrong. */
  readonly warn: (text: string) => void;
  readonly clear: () => void;
  /** Scrolls it into view, where a command told something that may lie under the foot. */
  readonly reveal: () => void;
}

/** Both lines stand in the page from the start, since screen readers miss those that come along with their text. */
export function makeNotice(): Notice {
  const status = make('p', { role: 'status', class: 'loom-status' });
  const alert = make('p', { role: 'alert', class: 'loom-alert' });
  const element = make('div', { class: 'loom-notice' }, status, alert);
  const show = (told: string, warned: string) => {
    say(status, told);
    say(alert, warned);
  };
  return {
    element,
    tell: (text) => {
      show(text, '');
    },
    warn: (text) => {
      show('', text);
    },
    clear: () => {
      show('', '');
    },
    reveal: () => {
      element.scrollIntoView({ block: 'nearest' });
    },
  };
}

/** The sentence of whatever was thrown; hosts reject with an Error whose message is one. */
export function sentenceOf(fault: unknown): string {
  const text = fault instanceof Error ? fault.message.trim() : '';
  return text === '' ? 'It did not work, and the spreadsheet gave no reason.' : text;
}
