/** What typed cells accept, and what is said of them when they are selected. */
import type { Parameter } from '../../functions/parameter';
import type { Area } from './area';
import type { EntryPlan } from './plan';

/** Excel's limits for the two texts. */
const PROMPT_TITLE_MOST = 32;
const PROMPT_MOST = 255;

/** How a parameter's own limits become what a cell accepts. */
function limitsOf(parameter: Parameter): Pick<EntryPlan, 'choices' | 'othersAllowed' | 'number'> {
  if (parameter.choices !== undefined) {
    // Words that a number may stand for as well are only offered.
    const isEither = parameter.bounds !== undefined;
    return { choices: parameter.choices, ...(isEither && { othersAllowed: true }) };
  }
  if (parameter.bounds === undefined) return {};
  const least = parameter.bounds.least ?? parameter.bounds.above;
  const most = parameter.bounds.most ?? parameter.bounds.below;
  return {
    number: {
      ...(least === undefined ? {} : { least }),
      ...(most === undefined ? {} : { most }),
    },
  };
}

export interface EntryText {
  readonly title: string;
  readonly sentences: readonly string[];
}

/** An entry over cells whose parameter, if they have one, bounds them. */
export function entry(
  of: Area,
  { title, sentences }: EntryText,
  limits: {
    readonly parameter?: Parameter | undefined;
    readonly choices?: readonly string[] | undefined;
  },
): EntryPlan {
  const { parameter, choices } = limits;
  return {
    area: of,
    ...(choices !== undefined ? { choices } : parameter !== undefined ? limitsOf(parameter) : {}),
    promptTitle: title.slice(0, PROMPT_TITLE_MOST),
    prompt: sentences.join(' ').slice(0, PROMPT_MOST),
  };
}
