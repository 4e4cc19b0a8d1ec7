/** Conditional formats of the Protection sheet. */
import { RELATIVE_SLACK } from '../../core/limits';
import { cellAddress } from '../plan/area';
import { HIGHLIGHT_STYLES } from '../plan/highlight-styles';
import type { HighlightPlan } from '../plan/plan';
import type { ProtectionKey } from '../station/protection-keys';
import { PROTECTION_ROW as ROW, protectionArea, protectionColumn } from './layout';

/** Warnings over so many rows. */
export function protectionHighlights(rows: number): HighlightPlan[] {
  const at = (key: ProtectionKey) => cellAddress(ROW.first, protectionColumn(key), 'column');
  const slower = (opens: ProtectionKey, bears: ProtectionKey) =>
    `IF(AND(ISNUMBER(${at(opens)}),ISNUMBER(${at(bears)})),${at(opens)}>${at(bears)}*(1+${RELATIVE_SLACK}),FALSE)`;
  const told: readonly (readonly [readonly ProtectionKey[], string, string])[] = [
    [['farFault', 'farOpens'], `${at('weak')}=1`, 'fault too weak to open the fuse'],
    [['farOpens', 'farBears'], slower('farOpens', 'farBears'), 'fuse too slow at the far end'],
    [
      ['nearOpens', 'nearBears'],
      slower('nearOpens', 'nearBears'),
      'fuse too slow at the source end',
    ],
    [['nearFault', 'fuseType'], `${at('unbroken')}=1`, 'fuse may not break this fault'],
    [['steady', 'insulation'], `${at('hot')}=1`, 'hotter than its insulation'],
    [['words'], `LEN(${at('wrong')})>0`, 'not guarded, or not judged'],
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
