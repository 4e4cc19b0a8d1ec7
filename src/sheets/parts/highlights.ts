/** Where the Parts sheet draws the eye: darkest for contacts that may grow hot. */
import { text } from '../plan/formula';
import { HIGHLIGHT_STYLES } from '../plan/highlight-styles';
import type { HighlightPlan } from '../plan/plan';
import { HOT_WORDS, NO_MILLIOHMS, PARTS_WRONG } from './formulas';
import { contactArea, partRunArea, type PartsReferences } from './layout';

export function partsHighlights(
  { cell, run, contact }: PartsReferences,
  rows: number,
): HighlightPlan[] {
  const says = partRunArea('says', rows);
  const isHot = HOT_WORDS.map((word) => `ISNUMBER(SEARCH(${text(word)},${run.says}))`).join(',');
  return [
    {
      area: says,
      formula: `OR(${isHot})`,
      style: HIGHLIGHT_STYLES.danger,
      meaning: 'a contact smaller than its wire, or rated under the amps of its run',
    },
    {
      area: says,
      formula: `AND(LEN(${cell.wrong})>0,${run.says}<>${text(PARTS_WRONG.noneYet)})`,
      style: HIGHLIGHT_STYLES.fails,
      meaning: 'a run without a contact that may be used',
    },
    {
      area: says,
      formula: `LEN(${run.says})>0`,
      style: HIGHLIGHT_STYLES.check,
      meaning: 'other joints in the schedule, or a verdict to be read first',
    },
    {
      area: contactArea('says'),
      formula: `LEN(${contact.says})>0`,
      style: HIGHLIGHT_STYLES.check,
      meaning: `a contact that is not taken, or ${NO_MILLIOHMS}`,
    },
  ];
}
