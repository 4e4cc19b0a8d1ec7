/** What the pane says of lightest sizes. */
import type { Lightened, Totals } from '../sheets/lighten';
import { kilograms, money, percent } from './figures';

const LIST = new Intl.ListFormat('en-GB');
/** Runs that are named; the others are counted. */
const MOST_NAMED = 4;

function named(names: readonly string[]): string {
  const shown = names.slice(0, MOST_NAMED);
  const more = names.length - shown.length;
  return LIST.format(more > 0 ? [...shown, `${more} more`] : shown);
}

const of = (aim: Lightened['aim']) => (aim === 'metal' ? 'metal' : 'money');
const amountOf = (aim: Lightened['aim'], totals: Totals) =>
  aim === 'metal' ? kilograms(totals.kg) : money(totals.cost ?? 0);

/** How sure it is that nothing lighter exists. */
function surenessOf({ aim, mostAboveBest, ruledOut }: Lightened, keptTyped: number): string {
  const least = aim === 'metal' ? 'lighter' : 'cheaper';
  return mostAboveBest === 0
    ? `No ${least} sizes of the series keep drop, volts, heat and fuses${keptTyped > 0 ? ' beside those that you chose' : ''}.`
    : `Drop, volts, heat and fuses alone might allow up to ${percent(mostAboveBest / (1 + mostAboveBest))} less ${of(aim)}${ruledOut.length > 0 ? '; sizes that a verdict ruled out are listed below' : ''}.`;
}

function comparedTotals(now: number, then: number, say: (value: number) => string): string {
  const saved = now - then;
  const change = saved >= 0 ? 'less' : 'more';
  const share = now > 0 ? ` (${percent(Math.abs(saved) / now)})` : '';
  return `${say(now)} now, ${say(then)} then: ${say(Math.abs(saved))}${share} ${change}`;
}

/** Runs for which the schedule has no wire, and what else is wrong with them: it could not be seen before. */
function servedSentences({ served }: Lightened): readonly string[] {
  if (served.length === 0) return [];
  const called = named(served.map((run) => run.called));
  const words = [...new Set(served.flatMap((run) => run.words))];
  const [has, it] = served.length === 1 ? ['has', 'it'] : ['have', 'them'];
  return [
    `${called} ${has} no wire now: shared out run by run, the volts do not reach. These sizes together serve ${it}; their metal is not among that of now.`,
    ...(words.length > 0 ? [`Then said of ${it}: ${words.join('; ')}.`] : []),
  ];
}

/** The outcome in sentences, the first the most important. */
export function lightenedSentences(found: Lightened, keptTyped: number): readonly string[] {
  const { aim, whyMetal, changes, typed, now, then, left } = found;
  const least = aim === 'metal' ? 'lighter' : 'cheaper';
  const first =
    changes.length === 0
      ? `The sizes in use stay: ${amountOf(aim, now)} of ${of(aim)}, and nothing ${least} was found.`
      : `Metal: ${comparedTotals(now.kg, then.kg, kilograms)}.`;
  const cost =
    changes.length > 0 && now.cost !== undefined && then.cost !== undefined
      ? [`Cost of the wire: ${comparedTotals(now.cost, then.cost, money)}.`]
      : [];
  const unpriced = Math.max(now.unpriced, then.unpriced);
  return [
    ...servedSentences(found),
    first,
    ...cost,
    surenessOf(found, keptTyped),
    ...(aim === 'money' ? ['The least money counts, by the prices of the Wire list.'] : []),
    ...(whyMetal === '' ? [] : [`Metal counts, not money: ${whyMetal}.`]),
    ...(cost.length > 0 && unpriced > 0
      ? [`The cost leaves out ${unpriced === 1 ? '1 run' : `${unpriced} runs`} without a price.`]
      : []),
    ...(keptTyped > 0
      ? [`Sizes that you chose were kept in ${keptTyped === 1 ? '1 run' : `${keptTyped} runs`}.`]
      : []),
    ...(changes.length > 0 && typed.length > changes.length
      ? [
          `“My wire” is written in ${typed.length} runs, since the sizes of a path hold together: in the others as suggested now.`,
        ]
      : []),
    ...(left.length > 0
      ? [
          `Left as they are: ${named(left.map(({ runs, why }) => `${why}${runs.length > 1 ? `, with ${runs.length - 1} more on its branch` : ''}`))}.`,
        ]
      : []),
  ];
}

/** Sizes that a verdict ruled out, each once. */
export function ruledOutLines({ ruledOut }: Lightened): readonly string[] {
  return [...new Set(ruledOut.map(({ called, size, words }) => `${called} in ${size}: ${words}`))];
}
