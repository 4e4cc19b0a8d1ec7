/**
 * What the grid asks of each text, in each calculation and each time it draws: is it a date, a time, a number? The build
 * puts this module in the place of the library that answers; the answers to the last texts are remembered (a date without a
 * year keeps the year in which it was first read).
 */
import * as answers from 'numfmt';

export * from 'numfmt';

type Answer = ReturnType<typeof answers.parseDate>;

/** More texts than a large workbook has; all are forgotten when there are more. */
const MOST_TEXTS = 50_000;

/** The function with what it answered remembered, where it is asked with nothing but a text. */
function memoised(ask: (text: string) => Answer): (text: string, ...more: unknown[]) => Answer {
  const known = new Map<string, Answer>();
  return (text, ...more) => {
    if (more.length > 0 || typeof text !== 'string') {
      return (ask as (...all: unknown[]) => Answer)(text, ...more);
    }
    let answer = known.get(text);
    if (answer === undefined) {
      if (known.size >= MOST_TEXTS) known.clear();
      known.set(text, (answer = ask(text)));
    }
    // Whoever asks may write into what he is given.
    return answer && { ...answer };
  };
}

export const parseDate = memoised(answers.parseDate);
export const parseTime = memoised(answers.parseTime);
export const parseNumber = memoised(answers.parseNumber);
