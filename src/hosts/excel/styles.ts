/** How cells look, written into a range's format. Number formats go ahead of the values and are not here. */
import type { Area } from '../../sheets/plan/area';
import type { CellStyle } from '../../sheets/plan/plan';

const ALIGNMENTS = { left: 'Left', centre: 'Center', right: 'Right' } as const;

/** A line that stays visible on a grey print without shouting. */
const LINE_COLOUR = '#808080';

type Edge =
  'EdgeTop' | 'EdgeBottom' | 'EdgeLeft' | 'EdgeRight' | 'InsideHorizontal' | 'InsideVertical';

/** The lines of a border over an area. Excel refuses inner lines where there is nothing between cells. */
export function edgesOf(border: NonNullable<CellStyle['border']>, of: Area): readonly Edge[] {
  const between: Edge[] = of.rows > 1 ? ['InsideHorizontal'] : [];
  if (border === 'below') return ['EdgeBottom', ...between];
  const beside: Edge[] = of.columns > 1 ? ['InsideVertical'] : [];
  return ['EdgeTop', 'EdgeBottom', 'EdgeLeft', 'EdgeRight', ...between, ...beside];
}

/** Writes a style into the format of an area's range. */
export function applyStyle(format: Excel.RangeFormat, of: Area, style: CellStyle): void {
  const { font } = format;
  if (style.bold !== undefined) font.bold = style.bold;
  if (style.italic !== undefined) font.italic = style.italic;
  if (style.fontColour !== undefined) font.color = style.fontColour;
  if (style.fontSizePt !== undefined) font.size = style.fontSizePt;
  if (style.fill !== undefined) format.fill.color = style.fill;
  if (style.align !== undefined) format.horizontalAlignment = ALIGNMENTS[style.align];
  if (style.wrap !== undefined) format.wrapText = style.wrap;
  if (style.shrink !== undefined) format.shrinkToFit = style.shrink;
  if (style.border !== undefined) {
    // Cells of a table keep one line of sight where a neighbour wraps.
    format.verticalAlignment = 'Center';
    for (const edge of edgesOf(style.border, of)) {
      const line = format.borders.getItem(edge);
      line.style = 'Continuous';
      line.color = LINE_COLOUR;
    }
  }
  if (style.atTop === true) format.verticalAlignment = 'Top';
}
