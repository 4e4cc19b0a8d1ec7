/** How texts and numbers stand in the sentences of refusals. */

const SHOWN_CHARACTERS = 40;

/** Text that came, short enough for a sentence. */
export function shortened(text: string): string {
  if (text.length <= SHOWN_CHARACTERS) return text;
  // A character outside the basic plane is two units long; half of one is no text at all.
  const shown = text.slice(0, SHOWN_CHARACTERS).replace(/[\uD800-\uDBFF]$/, '');
  return `${shown}…`;
}

/** A computed amount to so many figures, with its unit; one past all counting is told in words. */
export function amount(value: number, unit: string, figures = 3): string {
  const rounded = Number(value.toPrecision(figures)); // the greatest numbers round up past all counting
  return Number.isFinite(rounded) ? `${rounded} ${unit}` : `countless ${unit}`;
}
