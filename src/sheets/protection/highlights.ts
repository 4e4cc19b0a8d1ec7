/** Conditional formats of the Protection sheet. */
import { RELATIVE_SLACK } from '../../core/limits';
import { cellAddress } from '../plan/area';
import { HIGHLIGHT_STYLES } from '../plan/highlight-styles';
import type { HighlightPlan } from '../plan/plan';
import type { ProtectionKey } from '../station/protection-keys';
import { WORD, type VerdictKey } from '../station/verdicts';
import { PROTECTION_ROW as ROW, protectionArea, protectionColumn } from './layout';

/** Warnings over so many rows. */
export function protectionHighlights(rows: number): HighlightPlan[] {
  const at = (key: ProtectionKey) => cellAddress(ROW.first, protectionColumn(key), 'column');
  const slower = (opens: ProtectionKey, bears: ProtectionKey) =>
    `IF(AND(ISNUMBER(${at(opens)}),ISNUMBER(${at(bears)})),${at(opens)}>${at(bears)}*(1+${RELATIVE_SLACK}),FALSE)`;
  const say = (key: VerdictKey) => WORD[key];
  const told: readonly (readonly [readonly ProtectionKey[], string, string])[] = [
    [['farFault', 'farOpens'], `${at('weak')}=1`, say('faultTooWeak')],
    [['farOpens', 'farBears'], slower('farOpens', 'farBears'), `${say('fuseTooSlow')}, far end`],
    [
      ['nearOpens', 'nearBears'],
      slower('nearOpens', 'nearBears'),
      `${say('fuseTooSlow')}, source end`,
    ],
    [['nearFault', 'breaks'], `AND(${at('unbroken')}=1,${at('covered')}=0)`, say('mayNotBreak')],
    [['ratedVolts'], `${at('lowRated')}=1`, say('fuseVolts')],
    [['steady', 'insulation'], `${at('hot')}=1`, say('tooHot')],
    [['words'], `LEN(${at('wrong')})>0`, 'not protected, or not judged'],
  ];
  return told.flatMap(([keys, formula, meaning]) =>
    keys.map((key) => ({
      area: protectionArea(key, rows),
      formula,
      style: HIGHLIGHT_STYLES.danger,
      meaning,
    })),
  );
}
