/** The figure of a diagram: whatever the station, nothing lies over anything, nothing is cut, all is drawn. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  textBox,
  type Box,
  type BoxMark,
  type Mark,
  type TextMark,
} from '../../src/drawing/figure';
import { LEAST_TYPE_PT, oneLine, RUN_LINES, type OneLine } from '../../src/drawing/one-line';
import { pageEnd } from '../../src/drawing/paper';
import type { Diagram } from '../../src/sheets/plan/diagram';
import { stationDiagram } from '../../src/sheets/station-diagram';
import { DEMO } from '../../src/sheets/station/demo';
import { diagramOf } from './arbitrary-diagrams';

const SAMPLES = 60;
/** Boxes may touch. */
const TRACE_PT = 0.01;

const textsOf = ({ figure }: OneLine) =>
  figure.marks.filter((mark): mark is TextMark => mark.kind === 'text' && mark.text !== '');
const boxesOf = ({ figure }: OneLine) =>
  figure.marks.filter((mark): mark is BoxMark => mark.kind === 'box');

const overlap = (a: Box, b: Box) =>
  a.xPt + a.widthPt > b.xPt + TRACE_PT &&
  b.xPt + b.widthPt > a.xPt + TRACE_PT &&
  a.yPt + a.heightPt > b.yPt + TRACE_PT &&
  b.yPt + b.heightPt > a.yPt + TRACE_PT;

const within = (inner: Box, outer: Box) =>
  inner.xPt >= outer.xPt - TRACE_PT &&
  inner.yPt >= outer.yPt - 1 &&
  inner.xPt + inner.widthPt <= outer.xPt + outer.widthPt + TRACE_PT &&
  inner.yPt + inner.heightPt <= outer.yPt + outer.heightPt + 1;

/** Pairs of texts that share paper, and texts that lie half on a box. */
function clashes(one: OneLine): readonly string[] {
  const texts = textsOf(one).map((mark) => [mark, textBox(mark)] as const);
  const boxes = boxesOf(one);
  const found: string[] = [];
  for (const [index, [mark, box]] of texts.entries()) {
    for (const [other, otherBox] of texts.slice(index + 1)) {
      if (overlap(box, otherBox)) found.push(`“${mark.text}” and “${other.text}”`);
    }
    for (const of of boxes) {
      if (overlap(box, of) && !within(box, of)) found.push(`“${mark.text}” on a box`);
    }
  }
  return found;
}

const isNoWay = ({ kind }: Mark) => kind !== 'line' && kind !== 'round';

/** Where an upright piece of a line passes through a level one. */
function crossed(ways: readonly Mark[]): readonly string[] {
  const pieces = ways.flatMap((mark) =>
    mark.kind !== 'line'
      ? []
      : mark.points.slice(1).map((to, index) => [mark.points[index]!, to] as const),
  );
  const between = (one: number, other: number, at: number) =>
    Math.min(one, other) + 0.5 < at && at < Math.max(one, other) - 0.5;
  const uprights = pieces.filter(([from, to]) => from[0] === to[0]);
  const levels = pieces.filter(([from, to]) => from[1] === to[1]);
  return uprights.flatMap(([[x, top], [, bottom]]) =>
    levels.flatMap(([[left, y], [right]]) =>
      between(left, right, x) && between(top, bottom, y) ? [`${x}, ${y}`] : [],
    ),
  );
}

/** Laid out once for all that is asked of them. */
const FIGURES = fc
  .sample(diagramOf(3, 60), { seed: 6_060, numRuns: SAMPLES })
  .map((diagram) => [diagram, oneLine(diagram)] as const);

describe('a figure of 3 to 60 runs', () => {
  it('has no text over another or over a symbol', () => {
    for (const [, one] of FIGURES) expect(clashes(one)).toEqual([]);
  });

  it('would be caught with a text over another', () => {
    const [, one] = FIGURES[0]!;
    const [first, second] = textsOf(one);
    const moved = { ...second!, xPt: first!.xPt + 2, yPt: first!.yPt + 2 };
    const marks = [...one.figure.marks, moved];
    expect(clashes({ ...one, figure: { ...one.figure, marks } })).not.toEqual([]);
  });

  it('stays on its paper, and no page ends in a text', () => {
    for (const [, one] of FIGURES) {
      const { figure, paper } = one;
      const end = pageEnd(paper);
      for (const mark of textsOf(one)) {
        const box = textBox(mark);
        expect(box.xPt).toBeGreaterThanOrEqual(-TRACE_PT);
        expect(box.xPt + box.widthPt).toBeLessThanOrEqual(figure.widthPt + TRACE_PT);
        expect(box.yPt + box.heightPt).toBeLessThanOrEqual(figure.heightPt + 3);
        // The top of its letters and its base line lie on the same page.
        expect(end(mark.yPt - TRACE_PT)).toBe(end(Math.max(0, mark.yPt - 0.7 * mark.sizePt)));
      }
    }
  });

  it('has no line across another where no two runs end at one place', () => {
    let trees = 0;
    for (const [{ runs }, { figure }] of FIGURES) {
      if (new Set(runs.map(({ to }) => to)).size < runs.length) continue;
      trees += 1;
      // The ways of the runs come first, below the two texts of the head.
      const ways = figure.marks.slice(2, 2 + figure.marks.slice(2).findIndex(isNoWay));
      expect(ways.length).toBeGreaterThan(0);
      expect(crossed(ways)).toEqual([]);
    }
    expect(trees).toBeGreaterThan(SAMPLES / 4);
  });

  it('says how large its type is printed', () => {
    for (const [, one] of FIGURES) {
      const smallest = Math.min(...textsOf(one).map(({ sizePt }) => sizePt));
      expect(smallest).toBe(LEAST_TYPE_PT);
      const shrunk = Math.min(1, one.paper.widthPt / one.figure.widthPt);
      expect(one.typePt).toBeCloseTo(smallest * shrunk, 6);
    }
    const sizes = FIGURES.map(([, { typePt }]) => typePt);
    expect(sizes.some((typePt) => typePt === LEAST_TYPE_PT)).toBe(true);
    expect(sizes.some((typePt) => typePt < LEAST_TYPE_PT)).toBe(true);
  });

  it('tags every run that is not ok with its level and its note, and draws it with the line of its level', () => {
    for (const [{ runs }, one] of FIGURES) {
      const texts = textsOf(one).map(({ text }) => text);
      const notes = [...new Set(runs.flatMap(({ note }) => (note === '' ? [] : [note])))];
      for (const level of ['danger', 'fails', 'unclear', 'check', 'ok'] as const) {
        const drawn = one.figure.marks.filter(
          (mark) =>
            mark.kind === 'line' &&
            mark.dash === RUN_LINES[level].dash &&
            mark.widthPt === RUN_LINES[level].widthPt,
        );
        const listed = runs.filter((run) => run.level === level);
        // One for each run, and one in the legend; leads of an "ok" run look like no level.
        expect(drawn).toHaveLength(listed.length === 0 ? 0 : listed.length + 1);
        for (const { note } of level === 'ok' ? [] : listed) {
          expect(texts).toContain(`${level.toUpperCase()} ${notes.indexOf(note) + 1}`);
        }
      }
    }
  });
});

describe('a tree that goes on to another page', () => {
  const lamps = (from: number, count: number): Pick<Diagram, 'nodes' | 'runs'> => ({
    nodes: Array.from({ length: count }, (_, lamp) => ({
      kind: 'load',
      name: `Lamp ${lamp + 1}`,
      details: ['11.9 V'],
    })),
    runs: Array.from({ length: count }, (_, lamp) => ({
      from,
      to: from + 1 + lamp,
      name: `To lamp ${lamp + 1}`,
      level: 'ok',
      fuse: '2 A',
      details: ['18 AWG', '3 ft'],
      note: '',
    })),
  });
  const BANK: Diagram['nodes'][number] = { kind: 'battery', name: 'Hut bank', details: ['12.6 V'] };
  const head = { title: 'Hut', summary: '30 runs: 30 ok' };
  /** What is said within so much of the end of the first page. */
  const aroundEnd = ({ figure, paper }: OneLine, within = 14) => {
    const end = pageEnd(paper)(0);
    return textsOf({ figure } as OneLine)
      .filter(({ yPt }) => Math.abs(yPt - end) < within)
      .map(({ text, yPt }) => [yPt < end ? 'above' : 'below', text]);
  };

  it('is named again there, with the page that it comes from', () => {
    const { nodes, runs } = lamps(0, 30);
    const one = oneLine({ ...head, nodes: [BANK, ...nodes], runs });
    expect(one.pages).toBe(2);
    expect(aroundEnd(one)).toEqual([
      ['above', 'to page 2'],
      ['below', 'from Hut bank, page 1'],
      ['below', 'page 2 of 2'],
    ]);
    expect(textsOf(one).map(({ text }) => text)).toContain('page 1 of 2');
  });

  it('is named by its trunk where it hangs on one', () => {
    const { nodes, runs } = lamps(1, 30);
    const trunk = { ...runs[0]!, from: 0, to: 1, name: 'Hut trunk' };
    const block: Diagram['nodes'][number] = { kind: 'joint', name: 'Block', details: ['12.1 V'] };
    const one = oneLine({ ...head, nodes: [BANK, block, ...nodes], runs: [trunk, ...runs] });
    expect(aroundEnd(one).map(([, text]) => text)).toContain('from Hut trunk, page 1');
  });

  it('is not spoken of on one page', () => {
    const { nodes, runs } = lamps(0, 5);
    const one = oneLine({ ...head, nodes: [BANK, ...nodes], runs });
    expect(one.pages).toBe(1);
    for (const { text } of textsOf(one)) expect(text).not.toMatch(/page/);
  });
});

it('draws the demonstration on two pages, none of its trees on both, in type of full size', () => {
  const one = oneLine(stationDiagram(DEMO));
  expect([one.pages, one.typePt]).toEqual([2, LEAST_TYPE_PT]);
  for (const { text } of textsOf(one)) expect(text).not.toMatch(/^(from .*, |to )page/);
});

it('goes on to another page with a note that fills more than one', () => {
  // So many runs with one and the same fault between them.
  const names = Array.from({ length: 500 }, (_, at) => `Level gauge of the lower bank ${at + 1}`);
  const diagram = stationDiagram({ ...DEMO, runs: [{ run: 'Lamp', peak: 1, length: 2 }] });
  const [run] = diagram.runs;
  const note = 'a fault';
  const runs = names.map((name) => ({ ...run!, name, level: 'danger' as const, note }));
  const one = oneLine({ ...diagram, runs });
  const told = textsOf(one)
    .map(({ text }) => text)
    .join(' ');
  expect(names.filter((name) => !told.includes(`${name},`))).toEqual([]);
  const end = pageEnd(one.paper);
  for (const mark of textsOf(one)) {
    expect(end(mark.yPt - TRACE_PT)).toBe(end(Math.max(0, mark.yPt - 0.7 * mark.sizePt)));
  }
});
