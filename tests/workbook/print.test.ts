import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { writeWorkbook } from '../../src/hosts/xlsx/write';
import { DEMO } from '../../src/sheets/station/demo';
import { SCHEDULE_COLUMNS } from '../../src/sheets/schedule/columns';
import { SHOWN_KEYS } from '../../src/sheets/station/schedule-keys';
import { runDebianTool } from '../published/debian-tool';
import { generatedStations } from '../sheets/generated-stations';
import { printed } from './libreoffice';
import { sharedFile } from '../../src/hosts/xlsx/shared-file';
import { calculate } from '../../src/sheets/calculate/calculate';
import { layBlocks } from '../../src/sheets/plan/lay-blocks';
import { sharedCopy } from '../../src/sheets/shared-copy';

const A4_ACROSS_PT = { width: 841.89, height: 595.28 };

interface Parameter {
  readonly text: string;
  readonly right: number;
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
        words: [...page.matchAll(/xMax="([\d.]+)"[^>]*>([^<]*)</g)].map(([, right, text]) => ({
          right: Number(right),
          text: text!,
        })),
      }));
  } finally {
    rmSync(room, { recursive: true, force: true });
  }
}

/** Words of headings that stand nowhere else on a page. */
const HEADING_WORDS = ['Thinnest', 'Ampacity', 'Verdict', 'Fix'];

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

  /** Pages of the schedule: up to the Supply sheet's first. */
  const schedulePages = (name: string) => {
    const all = pages[name]!;
    return all.slice(
      0,
      all.findIndex(({ words }) => words[0]?.text === 'Supply'),
    );
  };

  it('is A4 across', () => {
    for (const { width, height } of [...pages['demo']!, ...pages['long']!]) {
      expect(width).toBeCloseTo(A4_ACROSS_PT.width, 0);
      expect(height).toBeCloseTo(A4_ACROSS_PT.height, 0);
    }
  });

  it('takes one page for the demonstration', () => {
    expect(schedulePages('demo')).toHaveLength(1);
  });

  it('has every heading on every page, the last column too, and nothing beyond the edge', () => {
    expect(schedulePages('long').length).toBeGreaterThan(1);
    for (const page of [...schedulePages('demo'), ...schedulePages('long')]) {
      const texts = page.words.map(({ text }) => text);
      for (const word of HEADING_WORDS) expect(texts, word).toContain(word);
      for (const { right } of page.words) expect(right).toBeLessThan(page.width);
    }
    expect(SCHEDULE_COLUMNS[SHOWN_KEYS.at(-1)!].heading).toBe('Fix');
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
    const [schedule] = roomy.plans;
    const warning = layBlocks(schedule!.blocks).find(
      ({ content }) =>
        typeof content === 'object' && content?.formula.includes('Widen the print area') === true,
    )!;
    const copied = calculate(roomy.plans).at(schedule!.name, warning.row, warning.column);
    expect(copied).toBe('');
  });
});
