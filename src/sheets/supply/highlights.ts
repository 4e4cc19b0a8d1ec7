/** Conditional formats of the Supply sheet. */
import { area, areaAddress } from '../plan/area';
import { text } from '../plan/formula';
import { HIGHLIGHT_STYLES } from '../plan/highlight-styles';
import type { HighlightPlan } from '../plan/plan';
import { PALETTE } from '../plan/palette';
import { SOURCE_KINDS } from '../station/source-kinds';
import { SUPPLY_KEYS, type SupplyKey } from '../station/supply-keys';
import { WORD } from '../station/verdicts';
import { SUPPLY_CELLS } from './cells';
import { DUTY, DUTY_PLACE, ROWS, supplyArea, supplyRow } from './layout';

/** A cell is marked where it is beyond 0 on its bad side, and where it is no number at all. */
const MARKED: readonly (readonly [SupplyKey, '>' | '<', string])[] = [
  ['fullShort', '>', 'loads with too few volts'],
  ['lowShort', '>', 'loads with too few volts'],
  ['dailyBalance', '<', 'the battery runs down day by day'],
];

/** Cells that say nothing of a source of this kind look like paper; what is typed there is struck out by its colour. */
function notAsked(key: SupplyKey): HighlightPlan[] {
  const { kind, kinds } = SUPPLY_CELLS[key];
  if (kind === 'computed' || kinds.length === SOURCE_KINDS.length) return [];
  const kindCell = areaAddress(supplyArea('kind'), 'row');
  const asked = kinds.map((of) => `${kindCell}=${text(of)}`).join(',');
  return [
    {
      area: supplyRow(key),
      formula: `AND(${kindCell}<>"",NOT(OR(${asked})))`,
      style: { fill: PALETTE.notAsked, fontColour: PALETTE.quietText },
      meaning: 'not asked of a source of this kind',
    },
  ];
}

/** A load of the duty table whose source is none of the sheet. */
function unknownSource(dutyRows: number): HighlightPlan {
  const place = areaAddress(area(ROWS.dutyFirst, DUTY_PLACE), 'column');
  return {
    area: area(ROWS.dutyFirst, DUTY.source, dutyRows, 1),
    formula: `IF(ISNUMBER(${place}),${place}=0,FALSE)`,
    style: HIGHLIGHT_STYLES.unclear,
    meaning: 'no source of that name',
  };
}

/** What is wrong with a source; what is only to be confirmed looks like that. */
function saidWords(key: 'says' | 'mainState'): HighlightPlan[] {
  const cell = areaAddress(supplyArea(key));
  const confirm = text(WORD.bankFuse);
  return [
    {
      area: supplyRow(key),
      formula: `AND(LEN(${cell})>0,${cell}<>${confirm})`,
      style: HIGHLIGHT_STYLES.fails,
      meaning: 'something is wrong with the source',
    },
    {
      area: supplyRow(key),
      formula: `${cell}=${confirm}`,
      style: HIGHLIGHT_STYLES.check,
      meaning: 'to be confirmed',
    },
  ];
}

/** Warnings over the sheet. */
export function supplyHighlights(dutyRows: number): HighlightPlan[] {
  const marked = MARKED.map(([key, beyond, meaning]) => {
    const cell = areaAddress(supplyArea(key));
    return {
      area: supplyRow(key),
      formula: `IF(ISNUMBER(${cell}),${cell}${beyond}0,LEN(${cell})>0)`,
      style: HIGHLIGHT_STYLES.fails,
      meaning,
    };
  });
  return [
    ...marked,
    ...(['says', 'mainState'] as const).flatMap(saidWords),
    ...SUPPLY_KEYS.flatMap(notAsked),
    unknownSource(dutyRows),
  ];
}
