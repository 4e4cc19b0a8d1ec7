/** The House rules sheet: what holds for every run unless its row says otherwise, what the colours mean, the cautions. */
import { area } from '../plan/area';
import { CAUTIONS, PRINT_FOOTER } from '../plan/cautions';
import { entry } from '../plan/entries';
import { HIGHLIGHT_STYLES } from '../plan/highlight-styles';
import { HEADING_STYLE, PALETTE, QUIET_STYLE } from '../plan/palette';
import type { Block, SheetPlan } from '../plan/plan';
import type { ScheduleContent } from '../station/content';
import { HOUSE_RULES, RULE_KEYS, type RuleKey } from '../station/house-rules';
import type { Layout } from '../station/layout';
import { ruleArea, ruleAreas, RULES_COLUMN, RULES_ROW } from './layout';

const HEADINGS = ['House rule', 'Here', 'What it is'] as const;
const WIDTHS = [24, 20, 92] as const;
const LEGEND_TITLE = RULES_ROW.first + RULE_KEYS.length + 1;
const LEGEND_FIRST = LEGEND_TITLE + 1;

/** What the colours of a schedule say; the verdict says it in words. */
export const LEGEND = [
  { text: 'danger: heat or fuse, fire risk', style: HIGHLIGHT_STYLES.danger },
  { text: 'fails: over target, few volts', style: HIGHLIGHT_STYLES.fails },
  { text: 'close to the target', style: HIGHLIGHT_STYLES.close },
  { text: 'unclear: an entry is missing', style: HIGHLIGHT_STYLES.unclear },
  { text: 'check: one thing to confirm', style: HIGHLIGHT_STYLES.check },
] as const;

function meaningOf(key: RuleKey): string {
  const { parameter, hint } = HOUSE_RULES[key];
  return [parameter.meaning, ...(hint === undefined ? [] : [hint])].join(' ');
}

/** Names the schedule that a sheet belongs to, by which a reader finds it again. */
export const ofSchedule = (sheet: string) => `House rules of the runs on the sheet "${sheet}".`;

function ruleBlocks({ names }: Layout, { rules }: ScheduleContent): Block[] {
  return RULE_KEYS.flatMap((key): Block[] => {
    const { row } = ruleArea(key);
    const rule = HOUSE_RULES[key];
    return [
      {
        area: area(row, RULES_COLUMN.label),
        cells: [[rule.label]],
        style: { border: 'all', bold: true },
      },
      {
        area: ruleArea(key),
        cells: [[rules?.[key] ?? rule.initial(names.rule)]],
        style: { fill: PALETTE.input, border: 'all', ...rule.style, align: 'left' },
      },
      {
        area: area(row, RULES_COLUMN.meaning),
        cells: [[meaningOf(key)]],
        style: { border: 'all', wrap: true, fontColour: PALETTE.quietText },
      },
    ];
  });
}

/** The plan of the House rules sheet. */
export function rulesSheet(layout: Layout, content: ScheduleContent): SheetPlan {
  const { names } = layout;
  const cautions = LEGEND_FIRST + LEGEND.length + 1;
  return {
    name: names.rulesSheet,
    columnWidths: WIDTHS,
    blocks: [
      {
        area: area(RULES_ROW.title, 0),
        cells: [['House rules']],
        style: { bold: true, fontSizePt: 14, fontColour: PALETTE.title },
      },
      { area: area(RULES_ROW.of, 0), cells: [[ofSchedule(names.sheet)]], style: QUIET_STYLE },
      {
        area: area(RULES_ROW.header, 0, 1, HEADINGS.length),
        cells: [HEADINGS],
        style: HEADING_STYLE,
      },
      ...ruleBlocks(layout, content),
      {
        area: area(LEGEND_TITLE, 0),
        cells: [['Colours']],
        style: { bold: true, fontColour: PALETTE.title },
      },
      ...LEGEND.map(({ text, style }, index) => ({
        area: area(LEGEND_FIRST + index, 0, 1, 2),
        cells: [[text, null]],
        style,
      })),
      {
        area: area(cautions, 0, CAUTIONS.length, 1),
        cells: CAUTIONS.map((caution) => [caution]),
        style: QUIET_STYLE,
      },
    ],
    names: ruleAreas().map(([key, of]) => ({ name: names.rule[key], area: of })),
    entries: ruleAreas().map(([key, of]) =>
      entry(
        of,
        { title: HOUSE_RULES[key].label, sentences: [meaningOf(key)] },
        { parameter: HOUSE_RULES[key].parameter },
      ),
    ),
    highlights: [],
    notes: [],
    frozenRows: RULES_ROW.first,
    frozenColumns: 0,
    rowHeightsPt: Object.fromEntries(
      ruleAreas().flatMap(([key, of]) => (meaningOf(key).length > WIDTHS[2] ? [[of.row, 30]] : [])),
    ),
    print: {
      landscape: true,
      area: area(0, 0, cautions + CAUTIONS.length, HEADINGS.length),
      footer: PRINT_FOOTER,
      pagesHigh: 1,
    },
  };
}
