/** What the oracle says of a cell: a figure, a word, or that there is no answer. */
import { isRefusal, type Outcome } from '../../src/core/outcome';

/** No answer: the sheet's cell has to be an error. */
export const NO_ANSWER = Symbol('no answer');

export type Figure<Value extends number | string = number> = Value | typeof NO_ANSWER;

/** A computation of the core, its sentence left aside. */
export function figure<Value>(outcome: Outcome<Value>): Value | typeof NO_ANSWER {
  return isRefusal(outcome) ? NO_ANSWER : outcome;
}

/** One figure worked out from another; no answer passes through. */
export function from<Given, Value>(
  given: Given | typeof NO_ANSWER,
  compute: (value: Given) => Value,
): Value | typeof NO_ANSWER {
  return given === NO_ANSWER ? NO_ANSWER : compute(given);
}
