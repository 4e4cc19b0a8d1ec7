/** The pictures of the README's tour, taken of the workbench as it ships: `npm run tour` writes them into assets. */
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { projectFolder } from '../../src/build/build-folders';
import { sharedFile } from '../../src/hosts/xlsx/shared-file';
import { DEMO } from '../../src/sheets/station/demo';
import { runDebianTool } from '../published/debian-tool';
import { printed } from '../workbook/libreoffice';
import { withBuiltPages } from './with-built-pages';

/** A README is shown some 830 pixels wide: wider pictures are drawn smaller there. */
const WIDTH = 1010;
const WINDOW = { width: WIDTH, height: 640 };
/** Wide enough for the column of verdicts beside the pane. */
const OPENING_WINDOW = { width: 1150, height: 660 };
/** More, and a README is slow to read. */
const MOST_BYTES = 150_000;
const SHEET = 'Run schedule';

/** Writes a picture in 256 colours: of letters and plain areas the eye misses none, and it takes a third of the bytes. */
function keep(name: string, picture: Uint8Array): void {
  const file = path.join(projectFolder, 'assets', `tour-${name}.png`);
  writeFileSync(file, picture);
  runDebianTool({ command: 'pngquant', debianPackage: 'pngquant' }, [
    ...['--force', '--strip', '--speed', '1', '--nofs', '--output', file, file],
  ]);
  const { size } = statSync(file);
  if (size > MOST_BYTES) throw new Error(`${file} has ${size} bytes, more than ${MOST_BYTES}`);
  console.log(`tour-${name}.png: ${Math.round(size / 1000)} kB`);
}

async function shot(page: Page, name: string): Promise<void> {
  await page.evaluate(() => window.loomWorkbench!.calculated());
  // What moves or fades has come to rest.
  await page.waitForTimeout(1000);
  keep(name, await page.screenshot());
}

/** Selects the first cell of a run. */
async function selectRun(page: Page, run: string): Promise<void> {
  const { values } = (await page.evaluate(() => window.loomWorkbench!.host.activeGrid()))!;
  const row = values.findIndex(([name]) => name === run) + 1;
  if (row === 0) throw new Error(`the demonstration has no run ${run}`);
  await page.evaluate(([sheet, cell]) => window.loomWorkbench!.select(sheet, cell), [
    SHEET,
    `A${row}`,
  ] as const);
}

/** Scrolls the pane until a part of it stands on top. */
async function toTop(page: Page, part: string): Promise<void> {
  await page
    .locator(part)
    .first()
    .evaluate((element) => {
      element.scrollIntoView({ block: 'start' });
    });
}

async function inWorkbench(page: Page, origin: string): Promise<void> {
  await page.setViewportSize(OPENING_WINDOW);
  await page.goto(`${origin}/workbench.html`);
  await page.waitForFunction(() => document.documentElement.dataset['ready'] === 'true');
  await shot(page, '1-opens');

  await page.setViewportSize(WINDOW);
  await selectRun(page, 'Hut lights');
  await page.getByRole('button', { name: 'Why?' }).click();
  await page.getByText('Why: Hut lights').waitFor();
  await toTop(page, '.loom-why');
  await shot(page, '2-why');
  await toTop(page, '.loom-body');

  await selectRun(page, 'Relay set');
  const sizes = page.locator('.loom-sizes-section');
  await sizes.locator('summary').last().click();
  await sizes.getByRole('button', { name: 'Compare sizes of the selected run' }).click();
  await sizes.getByText('“Relay set”').first().waitFor();
  await toTop(page, '.loom-sizes-section details:last-of-type');
  await shot(page, '3-sizes');
  await toTop(page, '.loom-body');

  await page.locator('#loom-run-line').fill('Siren, 10 A, 40 ft, from Hut trunk');
  await page.keyboard.press('Enter');
  await page.getByText('Run: Siren').waitFor();
  await shot(page, '4-one-line');
}

/** The diagram as the pane saves it, on white. */
async function drawing(browser: Browser, page: Page): Promise<void> {
  const section = page.locator('.loom-drawing-section');
  await section.getByRole('button', { name: 'Draw the schedule in view' }).click();
  await section.locator('svg').waitFor();
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    section.getByRole('button', { name: 'Save as SVG' }).click(),
  ]);
  const svg = readFileSync(await file.path(), 'utf8');
  const sheet = await browser.newPage({ viewport: WINDOW });
  await sheet.setContent(
    `<style>body{margin:0;background:#fff}svg{width:${WIDTH}px;height:auto;display:block}</style>${svg}`,
  );
  // Its first page.
  keep('5-drawing', await sheet.screenshot({ clip: { x: 0, y: 0, width: WIDTH, height: 585 } }));
  await sheet.close();
}

/** The saved copy as LibreOffice prints it, calculated there without add-in or script. */
async function inLibreOffice(): Promise<void> {
  const room = mkdtempSync(path.join(tmpdir(), 'loomsheet-tour-'));
  try {
    const pdf = printed({ copy: await sharedFile(DEMO) })['copy']!;
    writeFileSync(path.join(room, 'copy.pdf'), pdf);
    runDebianTool({ command: 'pdftoppm', debianPackage: 'poppler-utils' }, [
      ...['-png', '-singlefile', '-scale-to-x', String(WIDTH), '-scale-to-y', '-1'],
      ...['-H', '640', '-x', '0', '-y', '0', '-W', String(WIDTH)],
      path.join(room, 'copy.pdf'),
      path.join(room, 'page'),
    ]);
    keep('6-copy', readFileSync(path.join(room, 'page.png')));
  } finally {
    rmSync(room, { recursive: true, force: true });
  }
}

async function main(): Promise<void> {
  await withBuiltPages(async (browser, origin) => {
    const page = await browser.newPage({ viewport: WINDOW });
    page.setDefaultTimeout(120_000);
    await inWorkbench(page, origin);
    await drawing(browser, page);
  });
  await inLibreOffice();
}

main().catch((fault: unknown) => {
  console.error(fault);
  process.exitCode = 1;
});
