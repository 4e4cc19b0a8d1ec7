/** A question that is asked before something cannot be taken back. */
import { commandButton } from '../taskpane/command-button';
import { make } from '../taskpane/make';

export interface Question {
  readonly title: string;
  readonly text: string;
  /** What the button says that does it. */
  readonly yes: string;
}

/** Asks; resolves to true where the person agreed. Esc is a no, and so is what the keyboard stands on at first. */
export function ask({ title, text, yes }: Question): Promise<boolean> {
  return new Promise((resolve) => {
    const close = (answer: boolean) => {
      dialog.close();
      dialog.remove();
      resolve(answer);
    };
    const no = commandButton('Cancel', 'outline', () => {
      close(false);
    });
    const agree = commandButton(yes, 'primary', () => {
      close(true);
    });
    const dialog = make(
      'dialog',
      { class: 'loom-question', 'aria-labelledby': 'loom-question' },
      make('h2', { id: 'loom-question' }, title),
      make('p', {}, text),
      make('div', { class: 'loom-answers' }, no.element, agree.element),
    );
    // The grid listens to the keyboard of the whole page.
    dialog.addEventListener('keydown', (event) => {
      event.stopPropagation();
    });
    dialog.addEventListener('cancel', () => {
      close(false);
    });
    document.body.append(dialog);
    dialog.showModal();
    no.element.focus();
  });
}
