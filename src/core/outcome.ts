/**
 * A result, or the reason why there is none. Core functions return reasons as values and throw nothing,
 * so that one bad row of a long list is one bad cell.
 */
export interface Refusal {
  /** "invalid": the input is of the wrong kind or outside what physics or a table allows. "none": no answer exists. */
  readonly refused: 'invalid' | 'none';
  /** A sentence that says what came and how to fix it. */
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
