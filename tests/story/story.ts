/**
 * The whole of a person's evening in the workbench, by keyboard and mouse, with a picture of each step: `npm run story`.
 * What must hold on the way is held; how it looks is for eyes.
 */
import { mkdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { cellAddress } from '../../src/sheets/plan/area';
import { readSchedule } from '../../src/sheets/schedule/reading';
import { typeLines } from '../browser/hands';
import { withBuiltPages } from './with-built-pages';

const PICTURES = path.resolve(process.argv[2] ?? path.join(tmpdir(), 'loomsheet-story'));
const SHEET = 'Run schedule 2';
/** As fast as fast hands. */
const KEY_MS = 80;

/** Name, feeder, load, peak and length, as a hurried person writes them. */
const RUNS = [
  ['Tower trunk', '', '', '', '6 ft'],
  ['Siren', 'tower trunk', 'Siren', '10 A', '12'],
  ['Tower radio', 'Tower trunk ', 'Radio', '22', '2.5 m'],
  ['Gauge', 'Tower trunk', 'Level gauge', '800 mA', '40 ft'],
  ['Lamp 1', 'Tower trunk', 'Lamp', '12 W', `8' 6"`],
  ['Lamp 2', 'Tower trunk', 'Lamp', '12 w', '18 in'],
  ['Van main', '', '', '', '4 ft'],
  ['Van radio', 'Van main', 'Radio', '20 A', '10 ft'],
  ['Van fridge', 'Van main', 'Fridge', '60 W', '3 yd'],
  ['Van USB', 'Van main', 'Charger', '2,5', '120 cm'],
  ['Mistake', 'Van main', 'Heater', '1,500 W', '10 ft'],
  ['Case', '', 'Carry-out case', '12 A', '6'],
] as const;

const problems: string[] = [];
function hold(what: string, holds: boolean, found: unknown = ''): void {
  console.log(
    `${holds ? 'held    ' : 'NOT HELD'} ${what}${holds ? '' : `: ${JSON.stringify(found)}`}`,
  );
  if (!holds) problems.push(what);
}

async function main(): Promise<void> {
  mkdirSync(PICTURES, { recursive: true });
  await withBuiltPages(async (browser, origin) => {
    const context = await browser.newContext({
      viewport: { width: 1400, height: 900 },
      permissions: ['clipboard-read', 'clipboard-write'],
      acceptDownloads: true,
    });
    const page = await context.newPage();
    page.setDefaultTimeout(120_000);
    page.on('pageerror', (error) => {
      hold('no error in the page', false, error.message);
    });
    await tell(page, origin);
  });
  if (problems.length > 0) process.exitCode = 1;
}

const settled = (page: Page) => page.evaluate(() => window.loomWorkbench!.calculated());
const select = (page: Page, address: string) =>
  page.evaluate(([sheet, cell]) => window.loomWorkbench!.select(sheet, cell), [
    SHEET,
    address,
  ] as const);

async function read(page: Page) {
  await settled(page);
  const grid = await page.evaluate(() => window.loomWorkbench!.host.activeGrid());
  const reading = readSchedule(grid!.values)!;
  return { reading, values: grid!.values, columnOf: reading.columnOf, head: reading.headerRow };
}

const named = async (page: Page) =>
  (await read(page)).reading.rows.map(({ values }) => String(values.run));
const answers = async (page: Page) =>
  new Map(
    (await read(page)).reading.rows.map(({ values: { run, verdict, size, fuse } }) => [
      String(run),
      [verdict, size, fuse].join(' | '),
    ]),
  );

async function tell(page: Page, origin: string): Promise<void> {
  let picture = 0;
  const shot = async (what: string) => {
    await settled(page);
    await page.waitForTimeout(700);
    picture += 1;
    await page.screenshot({
      path: path.join(PICTURES, `${String(picture).padStart(2, '0')}-${what}.png`),
    });
  };
  const key = (name: string) => page.keyboard.press(name);
  const type = (text: string) => page.keyboard.type(text, { delay: KEY_MS });
  const ready = () =>
    page.waitForFunction(() => document.documentElement.dataset['ready'] === 'true');

  await page.goto(`${origin}/workbench.html`);
  await ready();
  await shot('open');

  // The first run of one's own, counted: a click, a click, one typed line, Enter.
  let inputs = 0;
  await page.getByRole('button', { name: 'Insert an empty schedule' }).click();
  inputs += 1;
  await page.getByText(`Inserted “${SHEET}”`).waitFor();
  await page.locator('#loom-run-line').click();
  inputs += 1;
  await type('Porch radio, 5 A, 10 ft, at least 11.5 V');
  await key('Enter');
  inputs += 1;
  await page
    .getByText(/Porch radio.*AWG/)
    .first()
    .waitFor();
  hold('the first run is answered after at most 6 keys or clicks and a line', inputs <= 6, inputs);
  await shot('first-run');

  // Twelve runs typed into the cells, with units.
  const { head, columnOf } = await read(page);
  const column = (name: 'run' | 'verdict' | 'length') => columnOf[name];
  const at = (row: number, name: 'run' | 'verdict' | 'length') =>
    cellAddress(row, column(name)).replaceAll('$', '');
  const first = head + 2;
  await select(page, at(first, 'run'));
  await page.evaluate(() => {
    window.loomWorkbench!.host.takeKeys?.();
  });
  await typeLines(page, RUNS, KEY_MS);
  await shot('typed');
  const { values: shown } = await read(page);
  const lost = RUNS.flatMap((cells, index) =>
    cells.flatMap((text, offset) => {
      const found = String(shown[first + index]?.[columnOf.run + offset] ?? '');
      return found === text ? [] : [[text, found]];
    }),
  );
  hold('every cell holds what was typed into it', lost.length === 0, lost);
  const typed = await answers(page);
  hold(
    'every typed run is there',
    RUNS.every(([name]) => typed.has(name)),
    [...typed.keys()],
  );
  hold(
    'a mark for thousands is refused in words',
    (typed.get('Mistake') ?? '').includes('check'),
    typed.get('Mistake'),
  );
  hold(
    'every run that does not hang on the mistake has a wire',
    [...typed].every(([name, said]) => /^(?:Van|Mistake)/.test(name) || said.includes('AWG')),
    [...typed].filter(([, said]) => !said.includes('AWG')),
  );
  await select(page, at(first + 10, 'verdict'));
  await shot('why');

  // The mistake is typed over.
  await select(page, cellAddress(first + 10, columnOf.peak).replaceAll('$', ''));
  await page.evaluate(() => {
    window.loomWorkbench!.host.takeKeys?.();
  });
  await type('150 W');
  await key('Enter');
  hold(
    'it is answered once it is mended',
    ((await answers(page)).get('Mistake') ?? '').includes('AWG'),
  );

  // A row put in above the first run, and one in the middle; undone in turn.
  const before = await answers(page);
  for (const row of [head + 1, first + 3]) {
    await page.evaluate(
      ([sheet, place]) => {
        window.loomWorkbench!.insertRow(sheet, place);
      },
      [SHEET, row] as const,
    );
    const after = await answers(page);
    hold(
      `a row put in at ${row} changes no answer`,
      JSON.stringify([...after]) === JSON.stringify([...before]),
      [...after].filter(([name, said]) => before.get(name) !== said),
    );
    await key('Control+z');
    hold(
      'undo takes it back',
      JSON.stringify([...(await answers(page))]) === JSON.stringify([...before]),
    );
  }

  // A block pasted below the last run.
  await page.evaluate(() =>
    navigator.clipboard.writeText(
      'Gate\tVan main\tMotor\t8 A\t20 ft\nBell\tVan main\tBell\t300 mA\t9 m',
    ),
  );
  await select(page, at(first + RUNS.length, 'run'));
  await page.evaluate(() => {
    window.loomWorkbench!.host.takeKeys?.();
  });
  await key('Control+v');
  await page.waitForTimeout(1500);
  const pasted = await answers(page);
  hold(
    'pasted runs are answered',
    ['Gate', 'Bell'].every((name) => (pasted.get(name) ?? '').includes('AWG')),
    [pasted.get('Gate'), pasted.get('Bell')],
  );
  await shot('pasted');

  // A rename that the pane carries on.
  await select(page, at(first + 6, 'run'));
  await page.evaluate(() => {
    window.loomWorkbench!.host.takeKeys?.();
  });
  await type('Van trunk');
  await key('Enter');
  await settled(page);
  const offer = page.getByRole('button', { name: 'Rename it there too' });
  await offer.waitFor({ timeout: 20_000 }).catch(() => undefined);
  hold('a rename is offered for the rows fed from it', await offer.isVisible());
  await shot('rename');
  if (await offer.isVisible()) {
    await offer.click();
    await page.getByText('is “Van trunk” in').waitFor();
    const renamed = await answers(page);
    hold(
      'its branches are fed from it again',
      ['Van radio', 'Gate'].every((name) => !(renamed.get(name) ?? 'feeder').includes('feeder')),
      renamed.get('Gate'),
    );
  }

  // In order, and back by undo.
  const unsorted = await named(page);
  const level = await answers(page);
  await page.getByText('Order, columns, repair').click();
  await page.locator('#loom-order').selectOption('names');
  await page.getByRole('button', { name: 'Put the runs in order' }).click();
  await page.getByText('The runs stand by name').waitFor();
  const sorted = await answers(page);
  hold(
    'order changes no answer',
    [...level].every(([name, said]) => sorted.get(name) === said),
    [...level].filter(([name, said]) => sorted.get(name) !== said),
  );
  await shot('by-name');
  await select(page, 'A1');
  await page.evaluate(() => {
    window.loomWorkbench!.host.takeKeys?.();
  });
  await key('Control+z');
  hold('undo puts them back', (await named(page)).join() === unsorted.join(), await named(page));

  // Reload, and what was typed is there.
  await page.waitForTimeout(3000);
  await page.reload();
  await ready();
  await select(page, 'A1');
  const again = await answers(page);
  hold(
    'everything is there after a reload',
    [...level].every(([name, said]) => again.get(name) === said),
    [...level].filter(([name, said]) => again.get(name) !== said),
  );
  await shot('reloaded');

  // A saved copy.
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save a copy' }).click();
  await (await download).saveAs(path.join(PICTURES, 'copy.xlsx'));
  hold('a copy is saved', true);

  for (const [name, size] of [
    ['1920', { width: 1920, height: 1080 }],
    ['400', { width: 400, height: 800 }],
    ['zoom-200', { width: 700, height: 450 }],
  ] as const) {
    await page.setViewportSize(size);
    await page.waitForTimeout(1500);
    await shot(name);
  }
  await page.setViewportSize({ width: 1400, height: 900 });
  await page.emulateMedia({ colorScheme: 'dark' });
  await page.waitForTimeout(1500);
  await shot('dark');
}

main().catch((fault: unknown) => {
  console.error(fault);
  process.exitCode = 1;
});
