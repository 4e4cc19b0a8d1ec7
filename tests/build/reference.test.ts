/** The pages of the reference: whole, and safe to be opened by anyone. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { licencesPage } from '../../src/build/licences/licences-page';
import { frontPage } from '../../src/build/reference/front-page';
import { functionsPage } from '../../src/build/reference/functions-page';
import { headOf } from '../../src/build/reference/heads';
import { hostPage } from '../../src/build/reference/host-page';
import { numbersPage, tableHeads } from '../../src/build/reference/numbers-page';
import { escaped } from '../../src/build/reference/page';
import { tryPage } from '../../src/build/reference/try-page';
import { CATALOGUE } from '../../src/functions/catalogue';
import { describeParameter } from '../../src/functions/parameter';
import { REFERENCE_PAGES, type ReferencePage } from '../../src/taskpane/reference-pages';

const functions = functionsPage();
const numbers = numbersPage();

const textOf = (page: string) =>
  page
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&amp;', '&')
    .replace(/\s+/g, ' ');

test.each(CATALOGUE.map((entry) => [entry.id, entry] as const))('%s has its part', (id, entry) => {
  const [, part] = new RegExp(`<h3 id="[a-z0-9-]+">${id}</h3>([\\s\\S]*?)</section>`).exec(
    functions,
  )!;
  const text = textOf(part!);
  for (const told of [entry.summary, entry.gives, entry.source]) expect(text).toContain(told);
  for (const parameter of entry.takes) {
    expect(text).toContain(parameter.name);
    expect(text).toContain(describeParameter(parameter));
  }
  expect(textOf(numbers)).toContain(`${id} ${entry.summary} ${entry.source}`);
});

test('every table file stands on the page of numbers with its source', () => {
  const files = readdirSync(new URL('../../src/core/tables', import.meta.url));
  // The one that is the shape of tables has no figures.
  expect(tableHeads().map(({ name }) => `${name}.ts`)).toEqual(
    files.filter((file) => file !== 'ampacity-table.ts').sort(),
  );
  const text = textOf(numbers);
  for (const { name, paragraphs } of tableHeads()) {
    expect(numbers).toContain(`<h3>${name}</h3>`);
    expect(paragraphs.length, name).toBeGreaterThan(0);
    for (const paragraph of paragraphs) expect(text).toContain(paragraph);
  }
  // Sources that stand beside the figures, not in the head.
  expect(text).toContain('annealed copper, IEC 60028');
  expect(text).toContain('2011 edition and later, four cells from memory');
});

test('the page of numbers gathers what is from memory, and what it was checked against', () => {
  const [before, remembered] = numbers.split('<h2>From memory, and common practice</h2>');
  expect(textOf(remembered!)).toContain('iso-8820-ratings: ISO 8820 series, 35 A, 100 A and all');
  expect(textOf(remembered!)).toContain('battery-milliohms: ');
  for (const file of readdirSync(new URL('../published', import.meta.url))) {
    if (file.endsWith('.test.ts')) expect(before).toContain(`<h3>${file.slice(0, -8)}</h3>`);
  }
});

const PAGES: Readonly<Record<ReferencePage | 'index.html', string>> = {
  'index.html': frontPage(),
  'reference.html': functions,
  'numbers.html': numbers,
  'try.html': tryPage(),
  'host.html': hostPage(),
  'licences.html': licencesPage([], 'own'),
};

describe.each(Object.entries(PAGES))('%s', (_, page) => {
  test('has no script, no style of its own, no other host', () => {
    expect(page).toContain("default-src 'none'; style-src 'self'");
    expect(page).not.toMatch(/<script|<style|\sstyle=|\son[a-z]+="|="(https?:)?\/\//i);
  });

  test('leads only to what is there, and names each place once', () => {
    const ids = [...page.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const known = Object.values(PAGES).flatMap((one) =>
      [...one.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id),
    );
    for (const [, address, place] of page.matchAll(/href="([^"#]*)#?([^"]*)"/g)) {
      if (place !== '') expect(known).toContain(place);
      else
        expect([
          ...Object.keys(REFERENCE_PAGES),
          ...[
            'reference.css',
            'assets/icon-32.png',
            'manifest.xml',
            'workbench.html',
            'index.html',
          ],
        ]).toContain(address);
    }
  });
});

test('the page of hosting says what the manifest asks for, in its own words', () => {
  const text = textOf(PAGES['host.html']);
  expect(text).toMatch(/What it asks for .*SharedRuntime.*ReadWriteDocument, since/);
});

test('the check list names buttons and groups as they are called', () => {
  const text = textOf(PAGES['try.html']);
  const sources = ['../../manifest.xml', '../../src/sheets/schedule/columns.ts']
    .concat(
      readdirSync(new URL('../../src/taskpane', import.meta.url))
        .filter((file) => file.endsWith('.ts'))
        .map((file) => `../../src/taskpane/${file}`),
    )
    .map((file) => readFileSync(new URL(file, import.meta.url), 'utf8'))
    .join('\n');
  const named = [...PAGES['try.html'].matchAll(/<strong>([^<]+)<\/strong>/g)]
    .map(([, label]) => label!)
    .filter((label) => label !== 'You must see' && label !== 'Camera');
  expect(named.length).toBeGreaterThan(12);
  const isCalledSo = (label: string) =>
    [`'${label}'`, `"${label}"`].some((quoted) => sources.includes(quoted));
  expect(named.filter((label) => !isCalledSo(label))).toEqual([]);
  expect(text).toContain('0.3812');
});

test('texts turn into no markup, and heads lose their stars', () => {
  expect(escaped('a < b & "c" > d')).toBe('a &lt; b &amp; &quot;c&quot; &gt; d');
  expect(headOf('/**\n * One\n * two.\n *\n * Three.\n */\nconst a = 1;')).toEqual([
    'One two.',
    'Three.',
  ]);
  expect(headOf('const a = 1;')).toEqual([]);
});
