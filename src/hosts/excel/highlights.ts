/** Conditional formats. Their rules compare cells: Excel runs no add-in's functions inside them. */
import type { CellStyle, HighlightPlan } from '../../sheets/plan/plan';

/** The parts of a style that a conditional format can carry. */
const CARRIED: ReadonlySet<keyof CellStyle> = new Set([
  'bold',
  'italic',
  'fontColour',
  'fill',
  'numberFormat',
]);

/** Adds a highlight on top of those its range already has. Throws where the style asks for more than Excel carries. */
export function applyHighlight(range: Excel.Range, highlight: HighlightPlan): void {
  const { style } = highlight;
  for (const part of Object.keys(style) as (keyof CellStyle)[]) {
    if (!CARRIED.has(part)) throw new Error(`a highlight cannot set ${part}: ${highlight.meaning}`);
  }
  const { rule, format } = range.conditionalFormats.add('Custom').custom;
  rule.formula = `=${highlight.formula}`;
  if (style.bold !== undefined) format.font.bold = style.bold;
  if (style.italic !== undefined) format.font.italic = style.italic;
  if (style.fontColour !== undefined) format.font.color = style.fontColour;
  if (style.fill !== undefined) format.fill.color = style.fill;
  if (style.numberFormat !== undefined) format.numberFormat = style.numberFormat;
}
