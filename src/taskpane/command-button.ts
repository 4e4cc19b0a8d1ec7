/** A button that starts something that takes a while. */
import '@fluentui/web-components/button.js';
import { make } from './make';

export type Appearance = 'primary' | 'outline';

export interface CommandButton {
  readonly element: HTMLElement;
  setBusy(busy: boolean): void;
}

/** Busy buttons do nothing but keep the keyboard's focus, which a disabled one would throw away. */
export function commandButton(
  text: string,
  appearance: Appearance,
  command: () => void,
): CommandButton {
  // The component keeps its role to itself; said in the page too, checkers and older readers know it.
  const element = make(
    'fluent-button',
    { role: 'button', appearance, class: 'loom-command' },
    text,
  );
  let isBusy = false;
  element.addEventListener('click', () => {
    if (!isBusy) command();
  });
  return {
    element,
    setBusy(busy) {
      isBusy = busy;
      element.toggleAttribute('disabled-focusable', busy);
      if (busy) element.setAttribute('aria-disabled', 'true');
      else element.removeAttribute('aria-disabled');
    },
  };
}
