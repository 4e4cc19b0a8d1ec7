/**
 * The workbench without a network, and the change from one build to the next. The workbench that ships goes the whole way once.
 * The turns of the change are tried on a page of a few lines that asks for the same worker by the same code: each page of
 * the workbench itself takes seconds to open, and there are a dozen.
 */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { buildSync } from 'esbuild';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { builtFolder, projectFolder } from '../../src/build/build-folders';
import { writeOffline } from '../../src/build/offline/write-offline';
import { DEMO } from '../../src/sheets/station/demo';
import { launchBrowser } from './browser';
import { shippedFolder } from './shipped-pages';
import { hostFolder, type StaticHost } from './static-host';
import { openWorkbench } from './workbench-page';

const SMALL_PAGE =
  '<!doctype html>\n<html lang="en"><head><title>small</title><link rel="icon" href="assets/icon-32.png" /><script src="workbench.js" defer></script></head><body></body></html>';

/** The order in which the workbench asks: whether to give way before anything else, to be kept once it is ready. */
const SMALL_SCRIPT = `
  import { keepOffline, reloadsAsNewer } from './src/workbench/offline.ts';
  const start = async () => {
    if (await reloadsAsNewer()) return;
    document.documentElement.dataset.ready = 'true';
    await keepOffline(() => document.body.append('A newer version is here.'));
  };
  start();
`;

let folder: string;
let browser: Browser;
let context: BrowserContext;
let host: StaticHost;

const at = (name: string) => path.join(folder, name);

/** Makes another build of what stands in the folder, known by the title of its page and by its script. */
function buildAs(title: string): string {
  const page = readFileSync(at('workbench.html'), 'utf8');
  writeFileSync(at('workbench.html'), page.replace(/<title>[^<]*</, `<title>${title}<`));
  const script = readFileSync(at('workbench.js'), 'utf8').replace(/\nwindow\.madeAs = .*$/, '');
  writeFileSync(at('workbench.js'), `${script}\nwindow.madeAs = ${JSON.stringify(title)};`);
  return writeOffline(folder).name;
}

/** Of which builds page and script are. */
const madeAs = (page: Page) =>
  page.evaluate(() => [document.title, (window as unknown as { madeAs: string }).madeAs]);
const cacheNames = (page: Page) =>
  page.evaluate(async () => (await caches.keys()).map((name) => name.split(' ').at(-1)));
/** What becomes of the build that is on the host now, once the browser was asked to look. */
const update = (page: Page) =>
  page.evaluate(async () => {
    const registration = (await navigator.serviceWorker.getRegistration())!;
    const became = new Promise<string>((resolve) => {
      registration.addEventListener('updatefound', () => {
        const coming = registration.installing!;
        coming.addEventListener('statechange', () => {
          resolve(coming.state);
        });
      });
    });
    await registration.update();
    return became;
  });

async function ready(page: Page): Promise<void> {
  await page.waitForFunction(() => document.documentElement.dataset['ready'] === 'true');
}

async function reload(page: Page): Promise<void> {
  await page.reload();
  await ready(page);
}

/** A page of a few lines in the folder, and its first build. */
function buildSmall(): string {
  rmSync(folder, { recursive: true });
  mkdirSync(folder);
  writeFileSync(at('workbench.html'), SMALL_PAGE);
  writeFileSync(at('numbers.html'), 'Of the numbers.');
  const { outputFiles } = buildSync({
    stdin: { contents: SMALL_SCRIPT, resolveDir: projectFolder },
    bundle: true,
    write: false,
    format: 'iife',
  });
  writeFileSync(at('workbench.js'), outputFiles[0]!.text);
  return buildAs('first');
}

/** The small page, opened, kept, and opened again from what was kept. */
async function openSmall(): Promise<Page> {
  const page = await context.newPage();
  await page.goto(`${host.origin}/workbench.html`);
  await page.evaluate(() => navigator.serviceWorker.ready);
  await reload(page);
  return page;
}

/** What a browser wants of a page that it installs: a description without faults, and pictures that are there. */
async function expectInstallable(page: Page): Promise<void> {
  const session = await context.newCDPSession(page);
  const { errors, data } = await session.send('Page.getAppManifest');
  expect(errors).toEqual([]);
  const { icons, start_url: start } = JSON.parse(data!) as {
    icons: { src: string }[];
    start_url: string;
  };
  for (const address of [start, ...icons.map(({ src }) => src)]) {
    expect((await fetch(`${host.origin}/${address}`)).status, address).toBe(200);
  }
  const { installabilityErrors } = await session.send('Page.getInstallabilityErrors');
  // The tests' own windows leave no trace, in which browsers install nothing.
  expect(installabilityErrors.map(({ errorId }) => errorId)).toEqual(['in-incognito']);
}

async function goOffline(): Promise<void> {
  await context.setOffline(true);
  await host.close();
}

async function goOnline(): Promise<void> {
  host = await hostFolder(folder, Number(new URL(host.origin).port));
  await context.setOffline(false);
}

beforeAll(async () => {
  browser = await launchBrowser();
  folder = mkdtempSync(path.join(tmpdir(), 'loomsheet-offline-'));
  cpSync(await shippedFolder(), folder, { recursive: true });
});

beforeEach(async () => {
  host = await hostFolder(folder);
  context = await browser.newContext({ viewport: { width: 1400, height: 800 } });
});

afterEach(async () => {
  await context.close();
  await host.close();
});

afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

test('the workbench that ships opens again, calculated, with every part that it loads later, until a newer one is there', async () => {
  const { page, read, trouble } = await openWorkbench(context, undefined, host.origin);
  await page.evaluate(() => navigator.serviceWorker.ready);
  await expectInstallable(page);
  // The grid keeps fifteen digits of what it computes; a new sheet holds all of them.
  const verdicts = async () =>
    (await page.evaluate(async () => (await window.loomWorkbench!.host.activeGrid())!.values)).map(
      (row) => row.map((cell) => (typeof cell === 'number' ? Number(cell.toPrecision(12)) : cell)),
    );
  const before = await verdicts();
  expect(before.length).toBeGreaterThan(DEMO.runs.length);
  await goOffline();
  await reload(page);
  expect(await verdicts()).toEqual(before);
  expect(await read('Run schedule', 'A6')).not.toBe('');
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save a copy' }).click();
  expect((await saved).suggestedFilename()).toMatch(/\.xlsx$/);
  const numbers = await context.newPage();
  await numbers.goto(`${host.origin}/numbers.html`);
  expect(await numbers.getByRole('heading', { level: 1 }).textContent()).toBe(
    'How the numbers are made',
  );
  // Excel's pane is never answered from what was kept.
  for (const name of ['taskpane.html', 'functions.js', 'functions.json', 'taskpane.js']) {
    const outcome = await page.evaluate(
      (address) =>
        fetch(address).then(
          ({ status }) => status,
          () => 'failed',
        ),
      name,
    );
    expect(outcome, name).toBe('failed');
  }
  expect(trouble.violations).toEqual([]);
  expect(trouble.strayRequests).toEqual([]);

  await goOnline();
  const second = buildAs('second');
  expect(await update(page)).toBe('installed');
  await page.getByText('A newer version is here.').waitFor();
  const reloaded = async () => {
    await reload(page);
    return page.title();
  };
  await expect.poll(reloaded, { timeout: 200_000 }).toBe('second');
  expect(await madeAs(page)).toEqual(['second', 'second']);
  expect(await verdicts()).toEqual(before);
  await expect.poll(() => cacheNames(page)).toEqual([second]);
});

test('a newer build comes whole or not at all, and only where no page of the older is open', async () => {
  const first = buildSmall();
  const page = await openSmall();
  expect(await madeAs(page)).toEqual(['first', 'first']);
  expect(await cacheNames(page)).toEqual([first]);

  // Half of it is on the host: nothing of it is kept.
  const second = buildAs('second');
  const whole = readFileSync(at('numbers.html'), 'utf8');
  writeFileSync(at('numbers.html'), whole.replace('the', 'teh'));
  expect(await update(page)).toBe('redundant');
  expect(await cacheNames(page)).toEqual([first]);

  // All of it: it is kept beside the older, whose pages go on as they are.
  writeFileSync(at('numbers.html'), whole);
  const other = await context.newPage();
  await other.goto(`${host.origin}/workbench.html`);
  await ready(other);
  await page.getByText('A newer version is here.').waitFor();
  await reload(page);
  expect(await madeAs(page)).toEqual(['first', 'first']);
  expect((await cacheNames(page)).sort()).toEqual([first, second].sort());

  await other.close();
  // How long the browser goes on counting a closed tab is its own affair: until then a reload shows the older once more.
  const reloaded = async () => {
    await reload(page);
    return page.title();
  };
  await expect.poll(reloaded, { timeout: 200_000 }).toBe('second');
  expect(await madeAs(page)).toEqual(['second', 'second']);
  await expect.poll(() => cacheNames(page)).toEqual([second]);
});

test('a development server has no worker, and takes away that of a build at its address', async () => {
  buildSmall();
  const page = await openSmall();
  // As the development server has them: a page that names no worker, and the worker that leaves.
  writeFileSync(at('workbench.html'), SMALL_PAGE);
  cpSync(path.join(builtFolder, 'offline-worker.js'), at('offline-worker.js'));
  const own = readFileSync(path.join(builtFolder, 'workbench.html'), 'utf8');
  expect(own).not.toContain('data-worker');
  await page.reload();
  await page.waitForFunction(() => document.title === 'small');
  await ready(page);
  expect(await page.evaluate(() => navigator.serviceWorker.getRegistration())).toBeUndefined();
  expect(await cacheNames(page)).toEqual([]);
});
