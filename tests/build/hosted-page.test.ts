import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { hostedPage } from '../../src/build/hosted-page';

const local = readFileSync(new URL('../../src/taskpane/taskpane.html', import.meta.url), 'utf8');

test('a hosted pane loads Office.js from the platform and nothing else from afar', () => {
  const hosted = hostedPage(local);
  const addresses = [...hosted.matchAll(/https:\/\/[^\s"';]+/g)].map(
    ([address]) => new URL(address),
  );
  expect(addresses.map(({ origin }) => origin)).toEqual(
    addresses.map(() => 'https://appsforoffice.microsoft.com'),
  );
  expect(addresses.length).toBe(2);
  expect(hosted).not.toContain('office-js/office.js');
  expect(local).not.toContain('https://');
});

test('a page without the parts to replace is refused', () => {
  expect(() => hostedPage('<html></html>')).toThrow('office-js');
});
