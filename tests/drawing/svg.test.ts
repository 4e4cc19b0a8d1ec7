/** The picture as SVG: well formed whatever the texts, no script, told in words as well. */
import { describe, expect, it } from 'vitest';
import { oneLine } from '../../src/drawing/one-line';
import { ON_DARK, ON_PAPER, svgOf } from '../../src/drawing/svg';
import { textWidthPt } from '../../src/drawing/text-width';
import { stationDiagram } from '../../src/sheets/station-diagram';
import { DEMO } from '../../src/sheets/station/demo';
import { everythingIn, parseXml } from '../xml-tree';

const HOSTILE = '<script>alert("x")</script> & \u0000\uD800 ]]> \' &amp;';
const named = stationDiagram(DEMO);
const hostile = {
  ...named,
  title: HOSTILE,
  runs: named.runs.map((run) => ({ ...run, name: HOSTILE, note: HOSTILE, details: [HOSTILE] })),
  nodes: named.nodes.map((node) => ({ ...node, name: HOSTILE, details: [HOSTILE] })),
};

const ALLOWED = ['svg', 'title', 'desc', 'rect', 'ellipse', 'polyline', 'polygon', 'text'];

describe('the SVG of a figure', () => {
  it.each([
    ['the demonstration', named],
    ['texts that look like markup', hostile],
  ])('is well formed, and nothing but shapes and texts: %s', async (_, diagram) => {
    const all = everythingIn(await parseXml(svgOf(oneLine(diagram).figure)));
    expect([...new Set(all.map((element) => element['#name']))].sort()).toEqual(
      [...ALLOWED].sort(),
    );
    for (const { $ = {} } of all) {
      for (const [attribute, value] of Object.entries($)) {
        expect(attribute).not.toMatch(/^(on|style|href|xlink)/);
        expect(value).not.toMatch(/NaN|undefined|Infinity|url\(|javascript:/);
      }
    }
  });

  it('says texts as they are, but for what XML cannot carry', async () => {
    const all = everythingIn(await parseXml(svgOf(oneLine(hostile).figure)));
    const title = all.find((element) => element['#name'] === 'title');
    expect(title?._).toBe('<script>alert("x")</script> &  ]]> \' &amp;: one-line diagram');
  });

  it('has a title, and a description of every run', async () => {
    const [root, title, description] = everythingIn(await parseXml(svgOf(oneLine(named).figure)));
    expect(root?.$?.['aria-labelledby']?.split(' ')).toEqual([
      title?.$?.['id'],
      description?.$?.['id'],
    ]);
    expect(root?.$?.['font-family']).toBe('sans-serif');
    for (const { name } of named.runs) expect(description?._).toContain(name);
    expect(description?._).toContain(
      'Hut lights from Distribution block to Three lamps: 30 A upstream, 18 AWG, 22 ft',
    );
  });

  it('differs on a dark page in its colours alone', () => {
    const { figure } = oneLine(named);
    const bare = (svg: string) => svg.replace(/#[0-9a-f]{6}/g, '#');
    expect(svgOf(figure, ON_DARK)).not.toBe(svgOf(figure, ON_PAPER));
    expect(bare(svgOf(figure, ON_DARK))).toBe(bare(svgOf(figure, ON_PAPER)));
  });
});

describe('the width of a text', () => {
  it('is that of its characters, bold ones wider, and of unknown ones no less than of known', () => {
    expect(textWidthPt('', { sizePt: 9 })).toBe(0);
    expect(textWidthPt('ii', { sizePt: 9 })).toBe(2 * textWidthPt('i', { sizePt: 9 }));
    expect(textWidthPt('Wire', { sizePt: 9, bold: true })).toBeGreaterThan(
      textWidthPt('Wire', { sizePt: 9 }),
    );
    expect(textWidthPt('線', { sizePt: 10 })).toBeGreaterThanOrEqual(10);
  });
});
