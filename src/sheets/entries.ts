/** What typed cells accept, and what is said of them when they are selected. */
import type { Word } from '../functions/word';
import type { Area } from './area';
import type { EntryPlan } from './plan';

/** Excel's limits for the two texts. */
const PROMPT_TITLE_MOST = 32;
const PROMPT_MOST = 255;

/** How a word's own limits become what a cell accepts. */
function limitsOf(word: Word): Pick<EntryPlan, 'choices' | 'number'> {
  if (word.choices !== undefined) return { choices: word.choices };
  if (word.bounds === undefined) return {};
  const least = word.bounds.least ?? word.bounds.above;
  const most = word.bounds.most ?? word.bounds.below;
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

/** An entry over cells whose word, if they have one, bounds them. */
export function entry(
  of: Area,
  { title, sentences }: EntryText,
  limits: { readonly word?: Word | undefined; readonly choices?: readonly string[] | undefined },
): EntryPlan {
  const { word, choices } = limits;
  return {
    area: of,
    ...(choices !== undefined ? { choices } : word !== undefined ? limitsOf(word) : {}),
    promptTitle: title.slice(0, PROMPT_TITLE_MOST),
    prompt: sentences.join(' ').slice(0, PROMPT_MOST),
  };
}
