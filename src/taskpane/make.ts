/** Making the pane's elements from parts. No HTML in strings: text from a workbook can never turn into markup. */

type Attributes = Readonly<Record<string, string | true>>;

/** An element with its attributes and children; `true` stands for an attribute without a value. */
export function make<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  attributes?: Attributes,
  ...children: readonly (Node | string)[]
): HTMLElementTagNameMap[Tag];
export function make(
  tag: string,
  attributes?: Attributes,
  ...children: readonly (Node | string)[]
): HTMLElement;
export function make(
  tag: string,
  attributes: Attributes = {},
  ...children: readonly (Node | string)[]
): HTMLElement {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    made.setAttribute(name, value === true ? '' : value);
  }
  made.append(...children);
  return made;
}

/** Sets an element's text; the same text is left alone, since a screen reader would read it out again. */
export function say(line: HTMLElement, text: string): void {
  if (line.textContent !== text) line.textContent = text;
}
