/** A figure as SVG: no script, no style sheet, generic fonts, every text escaped. */
import type { RunLevel } from '../sheets/plan/diagram';
import { LEVEL_STYLES } from '../sheets/plan/highlight-styles';
import { PALETTE } from '../sheets/plan/palette';
import { xmlText } from '../sheets/plan/xml-text';
import type { Dash, Figure, Ink, LineMark, Mark, TextMark } from './figure';

/** Colours of a page, light or dark; tags keep theirs, which carry their own text colour. */
export interface Colours {
  readonly line: string;
  readonly quiet: string;
  readonly paper: string;
}
export const ON_PAPER: Colours = {
  line: PALETTE.darkText,
  quiet: PALETTE.quietText,
  paper: '#ffffff',
};
export const ON_DARK: Colours = { line: '#f2f2f2', quiet: '#c0c6c9', paper: '#1f1f1f' };

/** Lengths of strokes and gaps over the width of the line. */
export const DASHES: Readonly<Record<Dash, readonly number[]>> = {
  solid: [],
  dash: [3.5, 2],
  dot: [1, 2],
  dashDot: [4, 1.2, 1, 1.2],
  longDash: [8, 3],
};

const rounded = (value: number) => String(Number(value.toFixed(2)));

export const fillOf = (level: RunLevel, { paper }: Colours) => LEVEL_STYLES[level].fill ?? paper;
export const textOn = (level: RunLevel, { line }: Colours) =>
  LEVEL_STYLES[level].fontColour ?? line;

export function colourOf(ink: Ink | TextMark['ink'], colours: Colours): string {
  if (typeof ink === 'object') return textOn(ink.on, colours);
  return ink === 'line' || ink === 'quiet' || ink === 'paper' ? colours[ink] : fillOf(ink, colours);
}

function attributes(given: Readonly<Record<string, string | number>>): string {
  return Object.entries(given)
    .map(
      ([name, value]) =>
        ` ${name}="${xmlText(typeof value === 'number' ? rounded(value) : value)}"`,
    )
    .join('');
}

const ARROW_PT = { length: 5, half: 2.5 } as const;

/** The head of an arrow at the end of a line. */
function arrowHead({ points }: LineMark, colour: string): string {
  const [[fromX, fromY], [toX, toY]] = [points.at(-2)!, points.at(-1)!];
  const length = Math.hypot(toX - fromX, toY - fromY) || 1;
  const [x, y] = [(toX - fromX) / length, (toY - fromY) / length];
  const { length: back, half } = ARROW_PT;
  const corner = (side: number) =>
    `${rounded(toX - back * x - side * half * y)},${rounded(toY - back * y + side * half * x)}`;
  return `<polygon${attributes({ points: `${rounded(toX)},${rounded(toY)} ${corner(1)} ${corner(-1)}`, fill: colour })}/>`;
}

function lineElement(mark: LineMark, colours: Colours): string {
  const stroke = colourOf(mark.ink, colours);
  const dashes = DASHES[mark.dash].map((length) => rounded(length * mark.widthPt)).join(' ');
  const line = `<polyline${attributes({
    points: mark.points.map(([x, y]) => `${rounded(x)},${rounded(y)}`).join(' '),
    fill: 'none',
    stroke,
    'stroke-width': mark.widthPt,
    ...(dashes !== '' && { 'stroke-dasharray': dashes }),
  })}/>`;
  return mark.arrow === true ? line + arrowHead(mark, stroke) : line;
}

function element(mark: Mark, colours: Colours): string {
  switch (mark.kind) {
    case 'line':
      return lineElement(mark, colours);
    case 'text':
      return `<text${attributes({
        x: mark.xPt,
        y: mark.yPt,
        'font-size': mark.sizePt,
        ...(mark.bold && { 'font-weight': 'bold' }),
        fill: colourOf(mark.ink, colours),
      })}>${xmlText(mark.text)}</text>`;
    case 'box':
    case 'round': {
      const edge =
        mark.edgePt === undefined ? {} : { stroke: colours.line, 'stroke-width': mark.edgePt };
      const fill = colourOf(mark.fill, colours);
      return mark.kind === 'box'
        ? `<rect${attributes({ x: mark.xPt, y: mark.yPt, width: mark.widthPt, height: mark.heightPt, fill, ...edge })}/>`
        : `<ellipse${attributes({ cx: mark.xPt + mark.widthPt / 2, cy: mark.yPt + mark.heightPt / 2, rx: mark.widthPt / 2, ry: mark.heightPt / 2, fill, ...edge })}/>`;
    }
  }
}

const EDGE_PT = 6;

/** The figure as a document of its own, with title and description for whoever cannot see it. */
export function svgOf(
  { title, description, widthPt, heightPt, marks }: Figure,
  colours: Colours = ON_PAPER,
): string {
  const [width, height] = [widthPt + 2 * EDGE_PT, heightPt + 2 * EDGE_PT];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="loom-drawing-title loom-drawing-text" width="${width}pt" height="${height}pt" viewBox="${-EDGE_PT} ${-EDGE_PT} ${width} ${height}" font-family="sans-serif">`,
    `<title id="loom-drawing-title">${xmlText(title)}</title>`,
    `<desc id="loom-drawing-text">${xmlText(description)}</desc>`,
    `<rect x="${-EDGE_PT}" y="${-EDGE_PT}" width="${width}" height="${height}" fill="${colours.paper}"/>`,
    ...marks.map((mark) => element(mark, colours)),
    '</svg>',
    '',
  ].join('\n');
}
