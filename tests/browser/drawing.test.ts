/** The drawing in a real browser: drawn from the schedule in view, saved, told when it is old, and no text too wide. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import ts from 'typescript';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TextMark } from '../../src/drawing/figure';
import { oneLine } from '../../src/drawing/one-line';
import { svgOf } from '../../src/drawing/svg';
import { textWidthPt } from '../../src/drawing/text-width';
import { areaAddress } from '../../src/sheets/plan/area';
import { columnArea } from '../../src/sheets/schedule/layout';
import { stationDiagram } from '../../src/sheets/station-diagram';
import { DEMO } from '../../src/sheets/station/demo';
import { pngSizePx } from '../png-size';
import { violations } from './accessibility';
import { launchBrowser, openPage } from './browser';
import { openWorkbench, type WorkbenchPage } from './workbench-page';

const PATIENCE_MS = 180_000;

let browser: Browser;
let workbench: WorkbenchPage;
let room: string;

beforeAll(async () => {
  room = mkdtempSync(join(tmpdir(), 'loomsheet-drawing-'));
  browser = await launchBrowser();
  workbench = await openWorkbench(browser);
}, PATIENCE_MS);

afterAll(async () => {
  await browser?.close();
  rmSync(room, { recursive: true, force: true });
});

const texts = (page: Page) => page.locator('.loom-drawing svg text').allTextContents();

test(
  'is drawn from the schedule in view, saved, and said to be old',
  { timeout: PATIENCE_MS },
  async () => {
    const { page, trouble } = workbench;
    const section = page.locator('.loom-drawing-section');
    const draw = section.getByRole('button', { name: 'Draw the schedule in view' });
    expect(await section.getByRole('button', { name: 'Save as SVG' }).isVisible()).toBe(false);
    // The grid holds no pictures.
    expect(await section.getByRole('button', { name: 'Put the picture' }).count()).toBe(0);
    await draw.click();
    await section.locator('svg').waitFor({ timeout: PATIENCE_MS });
    await section.getByText('It prints on 2 A4 pages, lying.').waitFor();
    expect(await texts(page)).toEqual(
      expect.arrayContaining(['Hut trunk', '2 AWG, 7 ft, −0.09 V']),
    );
    expect(await violations(page, '#pane')).toEqual([]);
    // The picture scrolls in its box; the pane does not.
    expect(
      await page.locator('.loom-body').evaluate((body) => body.scrollWidth - body.clientWidth),
    ).toBe(0);

    const [file] = await Promise.all([
      page.waitForEvent('download', { timeout: PATIENCE_MS }),
      section.getByRole('button', { name: 'Save as SVG' }).click(),
    ]);
    expect(file.suggestedFilename()).toBe('River flood watch runs.svg');
    const path = join(room, 'saved.svg');
    await file.saveAs(path);
    expect(readFileSync(path, 'utf8')).toContain('Hut trunk');

    await workbench.write('Run schedule', areaAddress(columnArea('length', 1)), '12');
    await section.getByText('The schedule has changed since: draw it again.').waitFor();
    await draw.click();
    await expect
      .poll(() => texts(page), { timeout: 60_000 })
      .toEqual(expect.arrayContaining([expect.stringContaining(', 12 ft, ')]));
    await expect.poll(() => section.getByText('draw it again').count()).toBe(0);
    expect(trouble.violations).toEqual([]);
    expect(trouble.pageErrors).toEqual([]);
  },
);

test('says so where no schedule is in view', { timeout: PATIENCE_MS }, async () => {
  await workbench.select('House rules', 'A1');
  const section = workbench.page.locator('.loom-drawing-section');
  await section.getByRole('button', { name: 'Draw the schedule in view' }).click();
  await section.getByText('The sheet in view is no run schedule.').waitFor();
});

test(
  'is a raster picture at print resolution, as Excel is given it',
  { timeout: PATIENCE_MS },
  async () => {
    const source = readFileSync(new URL('../../src/taskpane/png.ts', import.meta.url), 'utf8');
    const { outputText } = ts.transpileModule(source, {
      compilerOptions: { target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.ES2022 },
    });
    const { figure } = oneLine(stationDiagram(DEMO));
    const { page } = await openPage(browser, 'assets/icon-16.png');
    await page.addScriptTag({ content: outputText.replace(/^export /gm, '') });
    const { widthPt, heightPt } = figure;
    const base64 = await page.evaluate(
      ([svg, width, height]) =>
        (window as unknown as { pngOf(svg: string, of: object): Promise<string> }).pngOf(svg, {
          widthPt: width,
          heightPt: height,
        }),
      [svgOf(figure), widthPt, heightPt] as const,
    );
    const path = join(room, 'drawing.png');
    writeFileSync(path, Buffer.from(base64, 'base64'));
    const size = pngSizePx(path);
    // 300 dots to the inch, of 72 points.
    expect(size.width).toBe(Math.ceil((widthPt * 300) / 72));
    expect(size.height).toBe(Math.ceil((heightPt * 300) / 72));
    expect(base64.length).toBeLessThan(3_500_000);
    // A white page alone would be packed to next to nothing.
    expect(base64.length).toBeGreaterThan(100_000);
  },
);

test(
  'has no text wider than its place, in the fonts that are here',
  { timeout: PATIENCE_MS },
  async () => {
    const marks = oneLine(stationDiagram(DEMO)).figure.marks.filter(
      (mark): mark is TextMark => mark.kind === 'text',
    );
    const said = marks.map(({ text, sizePt, bold }) => ({ text, bold, sizePt }));
    const { page } = await openPage(browser, 'assets/icon-16.png');
    for (const font of ['sans-serif', 'DejaVu Sans', 'Liberation Sans']) {
      const widths = await page.evaluate(
        ([list, family]) => {
          const context = document.createElement('canvas').getContext('2d')!;
          return list.map(({ text, bold, sizePt }) => {
            context.font = `${bold ? 'bold ' : ''}${sizePt * 10}px ${family}`;
            return context.measureText(text).width / 10;
          });
        },
        [said, font === 'sans-serif' ? font : `"${font}"`] as const,
      );
      const wider = said.filter(
        ({ text, bold, sizePt }, index) =>
          widths[index]! > textWidthPt(text, { sizePt, bold }) * 1.001,
      );
      expect(wider).toEqual([]);
      expect(widths.some((width) => width > 0)).toBe(true);
    }
  },
);
