/** The Verdicts sheet: every word that a verdict can say, why it is said and what to do. The schedule ranks by it. */
import { area } from '../plan/area';
import { PRINT_FOOTER } from '../plan/cautions';
import { LEVEL_STYLES } from '../plan/highlight-styles';
import { HEADING_STYLE, PALETTE, QUIET_STYLE } from '../plan/palette';
import type { Block, SheetPlan } from '../plan/plan';
import type { ScheduleNames } from '../station/naming';
import { LEVELS, VERDICT_KEYS, VERDICTS, type Verdict } from '../station/verdicts';

const HEADER = 3;
const FIRST = HEADER + 1;
const HEADINGS = ['Verdict', 'Level', 'Why', 'What to do', 'Gravity', 'In short'] as const;
/** The others are for formulas. */
const PRINTED = 4;
const LISTED = VERDICT_KEYS.filter((key) => VERDICTS[key].level !== 'ok');

/** What each level means, for the head. */
const MEANING =
  'danger: fire, or a fault that nothing clears. fails: the load will not work, or a target is missed. unclear: an entry is missing or not understood. check: right as far as it could be judged, one thing is left to confirm.';

/** The plan of the Verdicts sheet. */
export function verdictsSheet(names: ScheduleNames): SheetPlan {
  const rows = LISTED.length;
  const levels = LISTED.map((key, index): Block => ({
    area: area(FIRST + index, 1),
    style: LEVEL_STYLES[VERDICTS[key].level],
  }));
  return {
    name: names.verdictsSheet,
    columnWidths: [44, 9, 62, 62, 8, 44],
    blocks: [
      {
        area: area(0, 0),
        cells: [['What the verdicts mean']],
        style: { bold: true, fontSizePt: 14, fontColour: PALETTE.title },
      },
      { area: area(1, 0), cells: [[MEANING]], style: QUIET_STYLE },
      { area: area(HEADER, 0, 1, HEADINGS.length), cells: [HEADINGS], style: HEADING_STYLE },
      {
        area: area(FIRST, 0, rows, HEADINGS.length),
        cells: LISTED.map((key) => {
          const { word, level, why, remedy, fix = remedy }: Verdict = VERDICTS[key];
          return [word, level, why, remedy, LEVELS.length - 1 - LEVELS.indexOf(level), fix];
        }),
        style: { border: 'all', wrap: true, align: 'left' },
      },
      ...levels,
    ],
    names: [
      { name: names.verdicts.words, area: area(FIRST, 0, rows, 1) },
      {
        name: names.verdicts.fixes,
        area: area(FIRST, HEADINGS.indexOf('In short'), rows, 1),
      },
      { name: names.verdicts.gravity, area: area(FIRST, HEADINGS.indexOf('Gravity'), rows, 1) },
    ],
    entries: [],
    highlights: [],
    notes: [],
    frozenRows: FIRST,
    frozenColumns: 0,
    rowHeightsPt: Object.fromEntries(LISTED.map((_, index) => [FIRST + index, 30])),
    print: {
      landscape: true,
      area: area(0, 0, FIRST + rows, PRINTED),
      repeatRows: { first: HEADER, last: HEADER },
      footer: PRINT_FOOTER,
      pagesHigh: 2,
    },
  };
}
