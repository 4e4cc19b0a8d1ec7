/** Labels on paper, as LibreOffice prints them: where they stand, measured, against the stock that was described. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { writeWorkbook } from '../../src/hosts/xlsx/write';
import { labelsName } from '../../src/sheets/labels/layout';
import { sharedCopy } from '../../src/sheets/shared-copy';
import type { StationContent } from '../../src/sheets/station/content';
import type { LabelsTyped } from '../../src/sheets/station/labels';
import { scheduleNames } from '../../src/sheets/station/naming';
import { runDebianTool } from '../published/debian-tool';
import { printed } from './libreoffice';

const MM_PER_POINT = 25.4 / 72;
const RUNS = 13;

/** Names alike in width, so that the middles of alike words are the middles of their labels. */
const STATION: StationContent = {
  title: 'Van',
  rules: { unit: 'm' },
  runs: Array.from({ length: RUNS }, (_, at) => ({
    run: `W${10 + at}`,
    load: 'Lamp',
    peak: 1,
    length: 1,
    ownSize: '4 mm2',
  })),
};

interface Name {
  readonly page: number;
  readonly word: string;
  /** The middle of the name, in millimetres from the paper's edges. */
  readonly acrossMm: number;
  readonly downMm: number;
}

/** The labels' names on the pages of the Labels sheet alone. */
async function namesFor(cells: LabelsTyped['cells']): Promise<readonly Name[]> {
  const content: StationContent = {
    ...STATION,
    extras: ['labels'],
    labels: { cells: cells ?? {} },
  };
  const { plans, values } = sharedCopy(content, { rows: RUNS });
  // The others are kept for the formulas and not for the printer.
  const sheet = labelsName(scheduleNames());
  const alone = plans.map((plan) => (plan.name === sheet ? plan : { ...plan, hidden: true }));
  const inView = [
    ...alone.filter(({ name }) => name === sheet),
    ...alone.filter(({ name }) => name !== sheet),
  ];
  const pdf = printed({ labels: await writeWorkbook(inView, values) })['labels']!;
  const room = mkdtempSync(join(tmpdir(), 'loomsheet-labels-'));
  try {
    writeFileSync(join(room, 'labels.pdf'), pdf);
    const tool = { command: 'pdftotext', debianPackage: 'poppler-utils' };
    runDebianTool(tool, ['-bbox', join(room, 'labels.pdf'), join(room, 'labels.html')]);
    const pages = readFileSync(join(room, 'labels.html'), 'utf8').split('<page ').slice(1);
    return pages.flatMap((page, index) =>
      [
        ...page.matchAll(
          /xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(W\d\d)</g,
        ),
      ].map(([, left, top, right, foot, word]): Name => ({
        page: index,
        word: word!,
        acrossMm: ((Number(left) + Number(right)) / 2) * MM_PER_POINT,
        downMm: ((Number(top) + Number(foot)) / 2) * MM_PER_POINT,
      })),
    );
  } finally {
    rmSync(room, { recursive: true, force: true });
  }
}

it(
  'stand on the stock once its widths were set right by a first print',
  { timeout: 600_000 },
  async () => {
    const cells = {
      columns: 2,
      rows: 5,
      left: 6,
      right: 10,
      across: 4,
      top: 12,
      bottom: 20,
      down: 5,
    };
    // 210 - 6 - 10 - 4 = 190 mm for two, 297 - 12 - 20 - 4 * 5 = 245 mm for five.
    const [widthMm, heightMm] = [95, 49];
    const [pitchMm, stepMm] = [widthMm + cells.across, heightMm + cells.down];

    // As a person does: one print, and the width of its first label held against the stock's.
    const first = await namesFor({ ...cells, widths: 0.7 });
    const middleMm = first[0]!.acrossMm - cells.left;
    const widths = Number(((0.7 * (widthMm / 2)) / middleMm).toFixed(3));
    console.info(
      `Columns print ${(middleMm / (widthMm / 2) / 0.7).toFixed(3)} as wide as Arial has them`,
    );
    const names = await namesFor({ ...cells, widths });

    // Two labels of each run, ten to a page, in the order in which one reads.
    expect(names.map(({ word }) => word).sort()).toEqual(
      STATION.runs.flatMap(({ run }) => [run!, run!]).sort(),
    );
    const placed = [...names].sort(
      (a, b) => a.page - b.page || Math.round(a.downMm - b.downMm) || a.acrossMm - b.acrossMm,
    );
    const top = placed[0]!.downMm;
    // The middle of a name lies in the upper third of its label.
    expect(top - cells.top).toBeGreaterThan(0);
    expect(top - cells.top).toBeLessThan(heightMm / 3);
    for (const [index, { page, word, acrossMm, downMm }] of placed.entries()) {
      const place = index % 10;
      expect(word).toBe(`W${10 + Math.floor(index / 2)}`);
      expect(page).toBe(Math.floor(index / 10));
      // Rows are drawn in pixels of a quarter of a millimetre, and each edge stands on the nearest.
      expect(Math.abs(downMm - top - stepMm * Math.floor(place / 2)), word).toBeLessThan(0.3);
      // The correction stretches all of a column but its fixed edges, which a narrow gap feels more than a label does.
      expect(
        Math.abs(acrossMm - cells.left - widthMm / 2 - pitchMm * (place % 2)),
        word,
      ).toBeLessThan(1.5);
    }
  },
);
