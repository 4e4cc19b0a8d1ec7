/**
 * Makes a built folder one that works without a network once its workbench was opened: the worker with the list of this
 * build's files, the description by which browsers install a page, and the workbench page that names both.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { buildSync } from 'esbuild';
import type { KeptBuild } from '../../workbench/offline-worker';
import { projectFolder } from '../build-folders';

const PAGE = 'workbench.html';
const WORKER = 'offline-worker.js';
const DESCRIPTION = 'workbench.webmanifest';

/** What is kept: the workbench, the plain pages and the icons. Nothing that Excel loads. */
const KEPT =
  /^(workbench\.[\w.]+|parts\/workbench\.[^/]+\.js|[a-z]+\.html|reference\.css|assets\/icon[^/]*)$/;
const NEVER_KEPT = /^(taskpane|functions)\./;

const digest = (bytes: Uint8Array) =>
  `sha256-${createHash('sha256').update(bytes).digest('base64')}`;

function keptBuild(folder: string): KeptBuild {
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => name.replaceAll(path.sep, '/'))
    .filter((name) => KEPT.test(name) && !NEVER_KEPT.test(name))
    .sort();
  const files = Object.fromEntries(
    names.map((name) => [name, digest(readFileSync(path.join(folder, name)))]),
  );
  const hash = createHash('sha256').update(JSON.stringify(files)).digest('hex');
  return { name: hash.slice(0, 16), files };
}

/** The worker as one file; `doing` is what it does with its scope, as a call. */
function workerScript(doing: string): string {
  const { outputFiles } = buildSync({
    stdin: {
      contents: `import { keepBuild, leave } from './src/workbench/offline-worker.ts'; ${doing};`,
      resolveDir: projectFolder,
    },
    bundle: true,
    write: false,
    minify: true,
    format: 'iife',
    target: 'es2022',
    charset: 'utf8',
  });
  return outputFiles[0]!.text;
}

/** https://www.w3.org/TR/appmanifest: addresses are taken from where this file stands. */
const description = () => ({
  id: PAGE,
  name: 'Loomsheet workbench',
  short_name: 'Loomsheet',
  description: 'Sizes low-voltage DC cable runs in a sheet, without a network too.',
  lang: 'en-GB',
  start_url: PAGE,
  scope: './',
  display: 'standalone',
  background_color: '#ffffff',
  theme_color: '#154656',
  icons: [
    { src: 'assets/icon.svg', sizes: 'any', type: 'image/svg+xml' },
    ...[32, 64, 128].map((size) => ({
      src: `assets/icon-${size}.png`,
      sizes: `${size}x${size}`,
      type: 'image/png',
    })),
  ],
});

const OPENING = '<html lang="en">';
const ICON = '<link rel="icon" ';

/** The workbench page that names worker and description; throws where it no longer has the places for them. */
function installable(page: string): string {
  if (page.includes(WORKER)) return page;
  for (const place of [OPENING, ICON]) {
    if (!page.includes(place)) throw new Error(`the page has no ${place}`);
  }
  return page
    .replace(OPENING, `<html lang="en" data-worker="${WORKER}">`)
    .replace(
      ICON,
      `<link rel="manifest" href="${DESCRIPTION}" />\n    <link rel="apple-touch-icon" href="assets/icon-128.png" />\n    ${ICON}`,
    );
}

/** Writes what makes the folder work without a network, and answers what is kept. The last step of a build. */
export function writeOffline(folder: string): KeptBuild {
  const page = path.join(folder, PAGE);
  writeFileSync(page, installable(readFileSync(page, 'utf8')));
  writeFileSync(path.join(folder, DESCRIPTION), `${JSON.stringify(description(), null, 2)}\n`);
  const build = keptBuild(folder);
  writeFileSync(
    path.join(folder, WORKER),
    workerScript(`keepBuild(self, ${JSON.stringify(build)})`),
  );
  return build;
}

/** Writes a worker that takes away what an earlier build left in a browser: for folders that change under their pages. */
export function writeLeavingWorker(folder: string): void {
  writeFileSync(path.join(folder, WORKER), workerScript('leave(self)'));
}
