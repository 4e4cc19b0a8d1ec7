/**
 * A result, or the reason why there is none. Core functions return reasons as values and throw nothing,
 * so that one bad row of a long list is one bad cell.
 */
export interface Refusal {
  /** "invalid": the input is of the wrong kind or outside what physics or a table allows. "none": no answer exists. */
  readonly refused: 'invalid' | 'none';
  /** A sentence that says what came and how to mend it. */
  readonly why: string;
}

export type Outcome<T> = T | Refusal;

/** An input that cannot be used. */
export function invalid(why: string): Refusal {
  return { refused: 'invalid', why };
}

/** Sound inputs for which no answer exists. */
export function noAnswer(why: string): Refusal {
  return { refused: 'none', why };
}

export function isRefusal(outcome: unknown): outcome is Refusal {
  return typeof outcome === 'object' && outcome !== null && 'refused' in outcome;
}

const SHOWN_CHARACTERS = 40;

/** Text that came, short enough for a sentence. */
export function shortened(text: string): string {
  if (text.length <= SHOWN_CHARACTERS) return text;
  // A character outside the basic plane is two units long; half of one is no text at all.
  const shown = text.slice(0, SHOWN_CHARACTERS).replace(/[\uD800-\uDBFF]$/, '');
  return `${shown}…`;
}
