/**
 * Graphical symbols in a square of a side, its centre on the line. They follow IEC 60617, drawn from memory: battery
 * (long and short stroke), fuse (box with the line through it), photovoltaic generator (box with two arrows for light),
 * rotating machine (circle with a letter), converter from alternating to direct current (box with a stroke across),
 * load (arrow into a box is ours: the standard has no one load), connection of conductors (dot).
 */
import type { NodeKind } from '../sheets/plan/diagram';
import type { Mark, Point } from './figure';
import { textWidthPt } from './text-width';

export const SYMBOL_PT = 20;
const STROKE_PT = 1.2;

const line = (points: readonly Point[], widthPt = STROKE_PT, arrow = false): Mark => ({
  kind: 'line',
  points,
  widthPt,
  dash: 'solid',
  ink: 'line',
  ...(arrow && { arrow }),
});

const box = (kind: 'box' | 'round', x: number, y: number, width: number, height: number): Mark => ({
  kind,
  xPt: x - width / 2,
  yPt: y - height / 2,
  widthPt: width,
  heightPt: height,
  fill: 'paper',
  edgePt: STROKE_PT,
});

function letter(text: string, x: number, y: number, sizePt = 9): Mark {
  return {
    kind: 'text',
    text,
    xPt: x - textWidthPt(text, { sizePt }) / 2,
    yPt: y + sizePt * 0.36,
    sizePt,
    bold: false,
    ink: 'line',
  };
}

/** IEC 60617, from memory: two cells, the long stroke is plus. */
function battery(x: number, y: number): Mark[] {
  const strokes: readonly (readonly [number, number])[] = [
    [-6, 5],
    [-2, 9],
    [2, 5],
    [6, 9],
  ];
  return [
    line([
      [x - SYMBOL_PT / 2, y],
      [x - 6, y],
    ]),
    ...strokes.map(([at, half]) =>
      line(
        [
          [x + at, y - half],
          [x + at, y + half],
        ],
        half === 5 ? 2 : STROKE_PT,
      ),
    ),
    line([
      [x + 6, y],
      [x + SYMBOL_PT / 2, y],
    ]),
  ];
}

/** IEC 60617, from memory: a source of direct current in a box, and the light that falls on it. */
function photovoltaic(x: number, y: number): Mark[] {
  return [
    box('box', x, y, SYMBOL_PT, 14),
    line([
      [x - 10, y],
      [x - 2, y],
    ]),
    line(
      [
        [x - 2, y - 3],
        [x - 2, y + 3],
      ],
      1.8,
    ),
    line([
      [x + 2, y - 5],
      [x + 2, y + 5],
    ]),
    line([
      [x + 2, y],
      [x + 10, y],
    ]),
    line(
      [
        [x - 9, y - 15],
        [x - 4, y - 8],
      ],
      0.9,
      true,
    ),
    line(
      [
        [x - 3, y - 15],
        [x + 2, y - 8],
      ],
      0.9,
      true,
    ),
  ];
}

/** IEC 60617, from memory: alternating current above the stroke, direct current below it. */
function converter(x: number, y: number): Mark[] {
  const half = SYMBOL_PT / 2;
  return [
    box('box', x, y, SYMBOL_PT, SYMBOL_PT),
    line([
      [x - half, y + half],
      [x + half, y - half],
    ]),
    letter('~', x - 4.5, y - 3),
    line(
      [
        [x + 1, y + 4],
        [x + 8, y + 4],
      ],
      1,
    ),
    line(
      [
        [x + 1, y + 6.5],
        [x + 3, y + 6.5],
      ],
      1,
    ),
    line(
      [
        [x + 4, y + 6.5],
        [x + 5.5, y + 6.5],
      ],
      1,
    ),
    line(
      [
        [x + 6.5, y + 6.5],
        [x + 8, y + 6.5],
      ],
      1,
    ),
  ];
}

function machine(x: number, y: number): Mark[] {
  return [box('round', x, y, SYMBOL_PT, SYMBOL_PT), letter('G', x, y)];
}

/** A box that the arrow of what it takes points into; ours. */
function load(x: number, y: number): Mark[] {
  return [
    box('box', x + 3, y, 14, 14),
    line(
      [
        [x - SYMBOL_PT / 2, y],
        [x + 4, y],
      ],
      STROKE_PT,
      true,
    ),
  ];
}

function unknown(x: number, y: number): Mark[] {
  return [box('box', x, y, 16, 16), letter('?', x, y, 10)];
}

const joint = (x: number, y: number): Mark[] => [
  line([
    [x - SYMBOL_PT / 2, y],
    [x + SYMBOL_PT / 2, y],
  ]),
  { ...(box('round', x, y, 6, 6) as Extract<Mark, { kind: 'round' | 'box' }>), fill: 'line' },
];

const SYMBOLS: Readonly<Record<NodeKind, (x: number, y: number) => Mark[]>> = {
  battery,
  panel: photovoltaic,
  'power supply': converter,
  charger: converter,
  alternator: machine,
  load,
  joint,
  unknown,
};

/** How far up and down from its line a symbol reaches. */
export const SYMBOL_HALF_PT: Readonly<Record<NodeKind, number>> = {
  battery: 10,
  panel: 16,
  'power supply': 10,
  charger: 10,
  alternator: 10,
  load: 8,
  joint: 4,
  unknown: 9,
};

/** The symbol of a node around a point. */
export const symbolAt = (kind: NodeKind, [x, y]: Point): readonly Mark[] => SYMBOLS[kind](x, y);

export const FUSE_PT = { width: 20, height: 7 } as const;

/** IEC 60617, from memory: a box through which the line goes. `x` is its left edge. */
export function fuseAt(x: number, y: number): readonly Mark[] {
  const { width, height } = FUSE_PT;
  return [
    box('box', x + width / 2, y, width, height),
    line([
      [x, y],
      [x + width, y],
    ]),
  ];
}
