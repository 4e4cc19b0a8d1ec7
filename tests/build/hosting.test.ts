/** What a hosted build is made of, beside its bundles. */
import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { runInThisContext } from 'node:vm';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import noHyphenation from '../../src/build/grid/no-hyphenation';
import { hostingAsked } from '../../src/build/hosting';
import { writeOffline } from '../../src/build/offline/write-offline';
import { stampPages } from '../../src/build/stamp-pages';

let folder: string;
const put = (name: string, text: string) => {
  mkdirSync(path.dirname(path.join(folder, name)), { recursive: true });
  writeFileSync(path.join(folder, name), text);
};
const read = (name: string) => readFileSync(path.join(folder, name), 'utf8');

beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'loomsheet-hosting-'));
});
afterEach(() => {
  rmSync(folder, { recursive: true });
});

describe('the environment of a build', () => {
  test.each([
    [{}, { address: undefined, officeJs: 'own' }],
    [
      { LOOM_ORIGIN: 'https://club.example' },
      { address: 'https://club.example', officeJs: 'delivered' },
    ],
    [
      { LOOM_ORIGIN: 'https://club.example', LOOM_OFFICE_JS: 'own' },
      { address: 'https://club.example', officeJs: 'own' },
    ],
    [{ LOOM_OFFICE_JS: 'delivered' }, { address: undefined, officeJs: 'delivered' }],
  ])('%j', (environment, asked) => {
    expect(hostingAsked(environment)).toEqual(asked);
  });

  test('with an address that Office would not take is refused', () => {
    expect(() => hostingAsked({ LOOM_ORIGIN: 'http://club.example' })).toThrow('no address');
    expect(() => hostingAsked({ LOOM_ORIGIN: '' })).toThrow('no address');
  });

  test('with a word that means nothing is refused', () => {
    expect(() => hostingAsked({ LOOM_OFFICE_JS: 'mine' })).toThrow('LOOM_OFFICE_JS is "mine"');
  });
});

test('pages ask for scripts and styles by what is in them, and for Office.js by its name', () => {
  const page =
    '<link rel="stylesheet" href="taskpane.css" /><script src="office-js/office.js"></script><script src="functions.js" defer></script><script src="https://a.example/x.js"></script>';
  put('taskpane.html', page);
  put('workbench.html', '<script src="workbench.js" defer></script>');
  for (const name of ['taskpane.css', 'functions.js', 'workbench.js']) put(name, name);
  stampPages(folder);
  const stamped = read('taskpane.html');
  const mark = createHash('sha256').update('functions.js').digest('hex').slice(0, 12);
  expect(stamped).toContain(`src="functions.js?${mark}"`);
  expect(stamped.replace(/\?[0-9a-f]{12}"/g, '"')).toBe(page);
  put('workbench.js', 'another');
  const before = read('workbench.html');
  put('workbench.html', '<script src="workbench.js" defer></script>');
  stampPages(folder);
  expect(read('workbench.html')).not.toBe(before);
});

describe('the build that works without a network', () => {
  const PAGE = '<html lang="en"><head><link rel="icon" href="assets/icon-32.png" /></head></html>';
  const FILES = {
    'workbench.html': PAGE,
    'workbench.js': 'grid',
    'parts/workbench.12.abc.js': 'part',
    'numbers.html': 'numbers',
    'assets/icon-32.png': 'icon',
  };
  const FOR_EXCEL = {
    'taskpane.html': 'pane',
    'taskpane.js': 'pane',
    'functions.js': 'functions',
    'functions.json': '{}',
    'parts/taskpane.12.abc.js': 'part',
    'office-js/office.js': 'office',
    'manifest.xml': 'manifest',
  };
  beforeEach(() => {
    for (const [name, text] of Object.entries({ ...FILES, ...FOR_EXCEL })) put(name, text);
  });

  test('keeps every file of the workbench with its digest, and nothing that Excel loads', () => {
    const { files } = writeOffline(folder);
    expect(Object.keys(files).sort()).toEqual(
      [...Object.keys(FILES), 'workbench.webmanifest'].sort(),
    );
    const digest = createHash('sha256').update('part').digest('base64');
    expect(files['parts/workbench.12.abc.js']).toBe(`sha256-${digest}`);
    expect(read('offline-worker.js')).toContain(digest);
    for (const name of Object.keys(FOR_EXCEL))
      expect(read('offline-worker.js')).not.toContain(name);
  });

  test('has a name that changes with any of its files, and with none else', () => {
    const { name } = writeOffline(folder);
    expect(writeOffline(folder).name).toBe(name);
    put('taskpane.js', 'another pane');
    expect(writeOffline(folder).name).toBe(name);
    put('parts/workbench.12.abc.js', 'another part');
    expect(writeOffline(folder).name).not.toBe(name);
  });

  test('names its worker and its description on the workbench page alone', () => {
    writeOffline(folder);
    expect(read('workbench.html')).toContain('data-worker="offline-worker.js"');
    expect(read('workbench.html')).toContain(
      '<link rel="manifest" href="workbench.webmanifest" />',
    );
    expect(read('taskpane.html')).toBe('pane');
    put('workbench.html', '<html></html>');
    expect(() => writeOffline(folder)).toThrow('the page has no');
  });
});

test('the grid loads no table of hyphenation', async () => {
  const script =
    'const LOADERS = {\n\t["af"]: () => import("./af-DK_CjRn6.js"),\n\t["la-x-classic"]: () => import("./la-x-classic-yTyAOQEt.js")\n};\nconst other = () => import("./other.js");';
  const without = noHyphenation(script);
  expect(without.match(/import\(/g)).toEqual(['import(']);
  expect(without).toContain('import("./other.js")');
  const loaders = runInThisContext(
    `(() => {${without.split('const other')[0]} return LOADERS;})()`,
  ) as Record<string, () => Promise<unknown>>;
  expect(await loaders['la-x-classic']!()).toBeNull();
});
