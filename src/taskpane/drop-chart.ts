/**
 * The drop of a run over its length, as a picture: straight lines for the wire in use and its neighbours, the target, and
 * where the run stands. Three lines and a point need no plotting library, the smallest of which outweighs all of this pane's
 * own scripts of the section; colours come from the theme, and each line is told by its dashes and its name as well.
 */
import type { DropByLength } from '../sheets/compare-sizes';
import { digits, percent } from './figures';
import { make } from './make';

const SVG = 'http://www.w3.org/2000/svg';
const WIDTH = 288;
const HEIGHT = 176;
/** Room for the figures of the axes, and for the names of the lines at their ends. */
const INNER = { left: 40, right: 56, top: 10, bottom: 34 } as const;
/** How far past the run and past the target the picture reaches. */
const BEYOND = 1.5;
const TICKS = 5;

type Attributes = Readonly<Record<string, string | number>>;

function draw(tag: string, attributes: Attributes, ...children: readonly (Node | string)[]) {
  const made = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, String(value));
  made.append(...children);
  return made;
}

/** Round figures from 0 to a greatest one. */
export function ticksTo(most: number, count = TICKS): readonly number[] {
  const rough = most / count;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((part) => part * power).find((size) => size >= rough)!;
  const ticks: number[] = [];
  for (let nth = 0; nth * step <= most * (1 + 1e-9); nth += 1) {
    ticks.push(Number((nth * step).toPrecision(6)));
  }
  return ticks;
}

/** The picture in a sentence: where the run stands, and how long it might be. */
export function chartSentence(chart: DropByLength, inUse: string): string {
  const { oneWay, unit, at0, target, lines } = chart;
  const own = lines.find(({ name }) => name === inUse);
  if (own === undefined) return '';
  const drop = at0 + own.perLength * oneWay;
  const reach = own.perLength > 0 ? (target - at0) / own.perLength : Infinity;
  const where =
    reach <= 0
      ? `the target of ${percent(target)} is lost before it begins`
      : reach < Infinity
        ? `the target of ${percent(target)} is reached at ${digits(reach, 3)} ${unit}`
        : 'it carries no current';
  return `${inUse}: ${percent(drop)} at ${digits(oneWay, 3)} ${unit}; ${where}.`;
}

/** The picture with its sentence below it. */
export function dropChart(chart: DropByLength, inUse: string): HTMLElement {
  const { oneWay, unit, at0, target, lines } = chart;
  const own = lines.find(({ name }) => name === inUse);
  const drop = at0 + (own?.perLength ?? 0) * oneWay;
  const mostLength = oneWay * BEYOND;
  const mostShare = Math.max(target, drop) * BEYOND;
  const x = (length: number) =>
    INNER.left + (length / mostLength) * (WIDTH - INNER.left - INNER.right);
  const y = (share: number) =>
    HEIGHT - INNER.bottom - (share / mostShare) * (HEIGHT - INNER.top - INNER.bottom);
  const [left, right] = [x(0), x(mostLength)];
  const bottom = y(0);

  /** Lines end at the top where they would leave the picture. */
  const ends = lines.map(({ name, perLength }) => {
    const length = perLength > 0 ? Math.min(mostLength, (mostShare - at0) / perLength) : mostLength;
    return { name, length, share: at0 + perLength * length };
  });
  // Names lie below one another where their lines end near by.
  const sides = ends
    .filter(({ length }) => length === mostLength)
    .map(({ name, share }) => ({ name, at: y(share) }))
    .concat([{ name: 'target', at: y(target) }])
    .sort((a, b) => a.at - b.at);
  for (const [index, side] of sides.entries()) {
    if (index > 0) side.at = Math.max(side.at, sides[index - 1]!.at + 12);
  }
  const tops = ends.filter(({ length }) => length < mostLength);

  const grid = [
    ...ticksTo(mostShare).flatMap((share) => [
      draw('line', { class: 'loom-chart-grid', x1: left, x2: right, y1: y(share), y2: y(share) }),
      draw('text', { x: left - 5, y: y(share) + 4, 'text-anchor': 'end' }, percent(share, 2)),
    ]),
    ...ticksTo(mostLength).map((length) =>
      draw('text', { x: x(length), y: bottom + 14, 'text-anchor': 'middle' }, digits(length, 3)),
    ),
    draw(
      'text',
      { x: (left + right) / 2, y: HEIGHT - 5, 'text-anchor': 'middle' },
      `one-way length, ${unit}`,
    ),
  ];
  const picture = draw(
    'svg',
    { viewBox: `0 0 ${WIDTH} ${HEIGHT}`, 'aria-hidden': 'true', class: 'loom-chart' },
    ...grid,
    draw('line', {
      class: 'loom-chart-target',
      x1: left,
      x2: right,
      y1: y(target),
      y2: y(target),
    }),
    ...ends.map(({ name, length, share }) =>
      draw('line', {
        class: name === inUse ? 'loom-chart-own' : 'loom-chart-other',
        x1: left,
        y1: y(at0),
        x2: x(length),
        y2: y(share),
      }),
    ),
    ...sides.map(({ name, at }) =>
      draw('text', { x: right + 4, y: at + 4 }, name === 'target' ? 'target' : name),
    ),
    ...tops.map(({ name, length }) => draw('text', { x: x(length) + 3, y: INNER.top + 9 }, name)),
    draw('circle', { class: 'loom-chart-point', cx: x(oneWay), cy: y(drop), r: 5 }),
  );
  return make(
    'figure',
    { class: 'loom-figure' },
    picture,
    make(
      'figcaption',
      {},
      `Drop to the end of the run over its length; the point is the run. ${chartSentence(chart, inUse)}`,
    ),
  );
}
