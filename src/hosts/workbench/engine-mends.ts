/** All that is put right, or made quicker, in the grid's formula engine before the first formula is in it. */
import type { Univer } from '@univerjs/core';
import { calculateTakenBranches } from './branches';
import { compareAfresh, compareTextAsItStands } from './comparisons';
import { fillNoCellsByRules, noteAreasOnce, searchTreesOnce } from './dependencies';
import { readEmptyTextAsText } from './empty-text';
import { keepByWholeText } from './whole-keys';

/** Mends the engine of this grid. To be called when its plugins are registered and its facade is made, before any workbook. */
export function mendEngine(univer: Univer): void {
  compareAfresh();
  compareTextAsItStands(univer);
  keepByWholeText();
  fillNoCellsByRules();
  readEmptyTextAsText();
  calculateTakenBranches(univer);
  noteAreasOnce(univer);
  searchTreesOnce(univer);
}
