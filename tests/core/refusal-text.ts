import { isRefusal } from '../../src/core/outcome';

/** A refusal as one line, "none: sentence" or "invalid: sentence", for matching; an answer makes the test fail. */
export function refusalText(outcome: unknown): string {
  if (!isRefusal(outcome)) throw new Error(`answered ${JSON.stringify(outcome)}`);
  return `${outcome.refused}: ${outcome.why}`;
}
