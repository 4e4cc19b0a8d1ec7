/** The pages of the reference: whole, and safe to be opened by anyone. */
import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { functionsPage } from '../../src/build/reference/functions-page';
import { headOf } from '../../src/build/reference/heads';
import { numbersPage, tableHeads } from '../../src/build/reference/numbers-page';
import { escaped } from '../../src/build/reference/page';
import { CATALOGUE } from '../../src/functions/catalogue';
import { describeParameter } from '../../src/functions/parameter';
import { REFERENCE_PAGES } from '../../src/taskpane/reference-pages';

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

describe.each([
  ['reference.html', functions],
  ['numbers.html', numbers],
])('%s', (_, page) => {
  test('has no script, no style of its own, no other host', () => {
    expect(page).toContain("default-src 'none'; style-src 'self'");
    expect(page).not.toMatch(/<script|<style|\sstyle=|\son[a-z]+=|https?:/i);
  });

  test('leads only to what is there, and names each place once', () => {
    const ids = [...page.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const known = [...functions.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id);
    for (const [, address, place] of page.matchAll(/href="([^"#]*)#?([^"]*)"/g)) {
      if (place !== '') expect(known).toContain(place);
      else
        expect([...Object.keys(REFERENCE_PAGES), 'reference.css', 'assets/icon-32.png']).toContain(
          address,
        );
    }
  });
});

test('texts turn into no markup, and heads lose their stars', () => {
  expect(escaped('a < b & "c" > d')).toBe('a &lt; b &amp; &quot;c&quot; &gt; d');
  expect(headOf('/**\n * One\n * two.\n *\n * Three.\n */\nconst a = 1;')).toEqual([
    'One two.',
    'Three.',
  ]);
  expect(headOf('const a = 1;')).toEqual([]);
});
