/** The grid's texts in English: its own, with those that its language files (0.25.1) lack, and some in plainer words. */
import type { ILanguagePack } from '@univerjs/core';
import conditionalFormattingEnglish from '@univerjs/preset-sheets-conditional-formatting/locales/en-US';
import coreEnglish from '@univerjs/preset-sheets-core/locales/en-US';
import dataValidationEnglish from '@univerjs/preset-sheets-data-validation/locales/en-US';

/** Asked for by the grid, and in none of its files: without them it shows the bare key. */
const LACKING = {
  'sheets-formula': {
    progress: {
      analyzing: 'Looking what to calculate',
      calculating: 'Calculating',
      'array-analysis': 'Looking which lists to calculate',
      'array-calculation': 'Calculating lists',
      done: 'Calculated',
    },
  },
  'sheets-ui': {
    merge: {
      confirm: {
        warning: 'Merging keeps only the value of the first cell. Go on?',
        dismantleMergeCellWarning: 'This takes some merged cells apart. Go on?',
      },
    },
    filter: {
      confirm: {
        error: 'That does not go here',
        notAllowedToInsertRange: 'Cells cannot be moved here while a filter is on.',
      },
    },
    info: {
      error: 'Please note',
      forceStringInfo: 'This number is kept as text.',
    },
    borderLine: {
      borderTlbr: 'Diagonal down',
      borderTlbcTlmr: 'Diagonals down to the middle of two sides',
      borderTlbrTlbcTlmr: 'Three diagonals down',
      borderBlTr: 'Diagonal up',
      borderMltrBctr: 'Diagonals up from the middle of two sides',
    },
  },
  sheet: {
    cf: {
      iconSet: { direction: 'Directions', shape: 'Shapes', mark: 'Marks', rank: 'Ranks' },
    },
  },
  formula: { operation: { pasteFormula: 'Paste formula' } },
  ui: { ribbon: { menu: 'Menu' } },
};

/** "Error" over the help to a cell says nothing of what is wrong. */
const PLAINER = {
  'sheets-data-validation-ui': { error: { title: 'Not what this cell asks for' } },
};

const isGroup = (texts: unknown): texts is ILanguagePack =>
  typeof texts === 'object' && texts !== null && !Array.isArray(texts);

/** All texts of both, the second's where both have one. The grid's own merging would drop the rest of a group. */
function together(texts: ILanguagePack, more: ILanguagePack): ILanguagePack {
  const all: ILanguagePack = { ...texts };
  for (const [key, text] of Object.entries(more)) {
    const before = all[key];
    all[key] = isGroup(before) && isGroup(text) ? together(before, text) : text;
  }
  return all;
}

export const ENGLISH: ILanguagePack = [
  dataValidationEnglish,
  conditionalFormattingEnglish,
  LACKING,
  PLAINER,
].reduce<ILanguagePack>(together, coreEnglish);
