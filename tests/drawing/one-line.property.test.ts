/** The figure of a diagram: whatever the station, nothing lies over anything, nothing is cut, all is drawn. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { textBox, type Box, type BoxMark, type TextMark } from '../../src/drawing/figure';
import { LEAST_TYPE_PT, oneLine, RUN_LINES, type OneLine } from '../../src/drawing/one-line';
import { pageEnd } from '../../src/drawing/paper';
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
