import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { writeWorkbook } from '../../src/hosts/xlsx/write';
import { DEMO } from '../../src/sheets/station/demo';
import { runDebianTool } from '../published/debian-tool';
import { generatedStations } from '../sheets/generated-stations';
import { printed } from './libreoffice';
import { sharedFile } from '../../src/hosts/xlsx/shared-file';
import { calculate } from '../../src/sheets/calculate/calculate';
import { layBlocks } from '../../src/sheets/plan/lay-blocks';
import { scheduleNames } from '../../src/sheets/station/naming';
import { sharedCopy } from '../../src/sheets/shared-copy';

const A4_ACROSS_PT = { width: 841.89, height: 595.28 };

interface Parameter {
  readonly text: string;
  readonly right: number;
  /** From the top of its line to the foot, in points: the size of its type times what its font takes of it. */
  readonly heightPt: number;
}

interface Page {
  readonly width: number;
  readonly height: number;
  readonly words: readonly Parameter[];
}

/** Words of a PDF with their places, page by page. */
function pagesOf(pdf: Uint8Array): readonly Page[] {
  const room = mkdtempSync(join(tmpdir(), 'loomsheet-print-'));
  try {
    const path = join(room, 'print.pdf');
    writeFileSync(path, pdf);
    const tool = { command: 'pdftotext', debianPackage: 'poppler-utils' };
    const places = join(room, 'places.html');
    runDebianTool(tool, ['-bbox', path, places]);
    const html = readFileSync(places, 'utf8');
    return html
      .split('<page ')
      .slice(1)
      .map((page) => ({
        width: Number(/width="([\d.]+)"/.exec(page)?.[1]),
        height: Number(/height="([\d.]+)"/.exec(page)?.[1]),
        words: [...page.matchAll(/yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">([^<]*)</g)].map(
          ([, top, right, foot, text]) => ({
            right: Number(right),
            heightPt: Number(foot) - Number(top),
            text: text!,
          }),
        ),
      }));
  } finally {
    rmSync(room, { recursive: true, force: true });
  }
}

/** The crew's pages stand first and upright; all others lie across. */
const isAcross = ({ width, height }: Page) => width > height;

/** Words of headings that stand nowhere else on a page. */
const HEADING_WORDS = ['Joints', 'Verdict', 'Fix', 'Fuse'];

describe('the schedule on paper', { timeout: 120_000 }, () => {
  const stations = {
    demo: DEMO,
    long: generatedStations({ stations: 1, rows: 120, watts: false })[0]!,
  };
  const roomy = sharedCopy(DEMO, { rows: 200 });
  const pages: Record<string, readonly Page[]> = {};

  beforeAll(async () => {
    // The schedule alone: the other sheets print pages of their own.
    const files: Record<string, Uint8Array> = {};
    for (const [name, content] of Object.entries(stations)) {
      const rows = content.runs.length + 4;
      files[name] = await sharedFile(content, { rows });
    }
    files['roomy'] = await writeWorkbook(roomy.plans, roomy.values);
    for (const [name, pdf] of Object.entries(printed(files))) pages[name] = pagesOf(pdf);
  }, 120_000);

  /** Pages of the schedule: up to that of the House rules. */
  const schedulePages = (name: string) => {
    const all = pages[name]!;
    return all.slice(
      all.findIndex(isAcross),
      all.findIndex(({ words }) => words[0]?.text === 'House'),
    );
  };

  it('is A4 across', () => {
    for (const { width, height } of [...pages['demo']!, ...pages['long']!].filter(isAcross)) {
      expect(width).toBeCloseTo(A4_ACROSS_PT.width, 0);
      expect(height).toBeCloseTo(A4_ACROSS_PT.height, 0);
    }
  });

  it('takes one page for the demonstration', () => {
    expect(schedulePages('demo')).toHaveLength(1);
  });

  it('has every heading on every page, and nothing beyond the edge', () => {
    expect(schedulePages('long').length).toBeGreaterThan(1);
    for (const page of [...schedulePages('demo'), ...schedulePages('long')]) {
      const texts = page.words.map(({ text }) => text);
      for (const word of HEADING_WORDS) expect(texts, word).toContain(word);
      for (const { right } of page.words) expect(right).toBeLessThan(page.width);
    }
  });

  it('names every run, says every verdict, and ends with the caution on each page', () => {
    for (const name of ['demo', 'long'] as const) {
      const texts = schedulePages(name).flatMap(({ words }) => words.map(({ text }) => text));
      for (const { run } of stations[name].runs) {
        for (const word of run?.split(' ') ?? []) expect(texts).toContain(word);
      }
      expect(texts.filter((text) => text === 'approval.').length).toBeGreaterThanOrEqual(
        schedulePages(name).length,
      );
    }
  });

  it('prints the rows that are used and a few more, and says so where runs stand below them', () => {
    expect(schedulePages('roomy')).toHaveLength(1);
    const schedule = roomy.plans.find(({ name }) => name === scheduleNames().sheet);
    const warning = layBlocks(schedule!.blocks).find(
      ({ content }) =>
        typeof content === 'object' && content?.formula.includes('Widen the print area') === true,
    )!;
    const copied = calculate(roomy.plans).at(schedule!.name, warning.row, warning.column);
    expect(copied).toBe('');
  });
});

describe('the page for the crew on paper', { timeout: 120_000 }, () => {
  /** Of its size: 1854 + 434 of 2048 units, ascent and descent of Liberation Sans, which stands in for the file's font. */
  const LINE_OF_TYPE = 1.117;
  const LEAST_TYPE_PT = 9;
  const [generated] = generatedStations({ stations: 1, rows: 120, watts: false });
  /** The demonstration, half of whose runs are deliberately bad, and four lamps more: 30 runs. */
  const thirty = {
    ...DEMO,
    runs: [
      ...DEMO.runs,
      ...Array.from({ length: 30 - DEMO.runs.length }, (_, index) => ({
        run: `Lamp ${index + 1}`,
        load: 'Lamp',
        peak: 2,
        length: 5,
      })),
    ],
  };
  const stations = { thirty, long: generated!, empty: { title: 'Nothing yet', runs: [] } };
  const pages: Record<string, readonly Page[]> = {};

  beforeAll(async () => {
    const files: Record<string, Uint8Array> = {};
    for (const [name, content] of Object.entries(stations)) files[name] = await sharedFile(content);
    for (const [name, pdf] of Object.entries(printed(files))) pages[name] = pagesOf(pdf);
  }, 120_000);

  const crewPages = (name: string) => {
    const all = pages[name]!;
    return all.slice(0, all.findIndex(isAcross));
  };
  const wordsOf = (name: string) =>
    crewPages(name).flatMap(({ words }) => words.map(({ text }) => text));

  it('is one upright A4 page for 30 runs, with a box for each, the fixes and the cautions', () => {
    const [page, ...others] = crewPages('thirty');
    expect(others).toEqual([]);
    expect(page!.width).toBeCloseTo(A4_ACROSS_PT.height, 0);
    expect(page!.height).toBeCloseTo(A4_ACROSS_PT.width, 0);
    const texts = wordsOf('thirty');
    expect(texts.filter((text) => text === '☐')).toHaveLength(30);
    for (const { run } of thirty.runs) {
      for (const word of run?.split(' ') ?? []) expect(texts).toContain(word);
    }
    for (const word of ['DANGER', 'FAILS', 'check', 'Fix:', 'approval:', 'connected.']) {
      expect(texts).toContain(word);
    }
    for (const { right } of page!.words) expect(right).toBeLessThan(page!.width);
  });

  it('can be read at arm’s length', () => {
    for (const name of ['thirty', 'long']) {
      const sizes = crewPages(name).flatMap(({ words }) =>
        words
          .filter(({ text }) => /^(?:DANGER|FAILS|UNCLEAR|check|AWG|mm2|Fix:|blade)$/.test(text))
          .map(({ heightPt }) => heightPt / LINE_OF_TYPE),
      );
      expect(sizes.length).toBeGreaterThan(30);
      console.info(`The crew's page, ${name}: least type ${Math.min(...sizes).toFixed(2)} pt`);
      expect(Math.min(...sizes)).toBeGreaterThanOrEqual(LEAST_TYPE_PT - 0.05);
    }
  });

  it('has every run of a long list, a heading on each page and no page without a run', () => {
    expect(wordsOf('long').filter((text) => text === '☐')).toHaveLength(generated!.runs.length);
    for (const { words } of crewPages('long')) {
      const texts = words.map(({ text }) => text);
      expect(texts).toContain('Done');
      expect(texts).toContain('☐');
    }
  });

  it('prints no line where there is no run', () => {
    expect(crewPages('empty').length).toBeLessThanOrEqual(1);
    expect(wordsOf('empty')).not.toContain('☐');
  });

  it('leaves workings and data out of the print', () => {
    const heads = pages['thirty']!.map(({ words }) => words[0]?.text);
    for (const word of ['Workings', 'Conductors', 'Fuses,']) expect(heads).not.toContain(word);
  });
});
