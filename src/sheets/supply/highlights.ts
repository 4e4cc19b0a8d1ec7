/** Conditional formats of the Supply sheet. */
import { areaAddress } from '../plan/area';
import { HIGHLIGHT_STYLES } from '../plan/highlight-styles';
import type { HighlightPlan } from '../plan/plan';
import type { SupplyKey } from '../station/supply-keys';
import { supplyArea, supplyRow } from './layout';

/** A cell is marked where it is beyond 0 on its bad side, and where it is no number at all. */
const MARKED: readonly (readonly [SupplyKey, '>' | '<', string])[] = [
  ['fullShort', '>', 'loads with too few volts'],
  ['lowShort', '>', 'loads with too few volts'],
  ['dailyBalance', '<', 'the battery runs down day by day'],
];

/** Warnings over the sheet. */
export function supplyHighlights(): HighlightPlan[] {
  return MARKED.map(([key, beyond, meaning]) => {
    const cell = areaAddress(supplyArea(key));
    return {
      area: supplyRow(key),
      formula: `IF(ISNUMBER(${cell}),${cell}${beyond}0,LEN(${cell})>0)`,
      style: HIGHLIGHT_STYLES.fails,
      meaning,
    };
  });
}
