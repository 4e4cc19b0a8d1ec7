/** What ships is permissive, and its notices are told. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { licencesPage } from '../../src/build/licences/licences-page';
import { noticeOf } from '../../src/build/licences/package-notice';
import { isPermissive } from '../../src/build/licences/permissive';

describe('a licence', () => {
  test.each(['MIT', 'ISC', '0BSD', '(MIT OR GPL-3.0-or-later)', '(MIT AND Zlib)', 'Apache-2.0'])(
    '%s may ship',
    (expression) => {
      expect(isPermissive(expression)).toBe(true);
    },
  );

  test.each([
    ...['GPL-3.0-only', 'AGPL-3.0', 'LGPL-2.1', 'MPL-2.0', 'UNLICENSED', 'SEE LICENSE IN LICENSE'],
    ...['MIT AND GPL-3.0-only', '(MIT OR Apache-2.0) AND GPL-2.0', '', 'LICENSE', 'mit-ish'],
  ])('%s may not', (expression) => {
    expect(isPermissive(expression)).toBe(false);
  });
});

describe('the page', () => {
  const fine = { name: 'fine', version: '1.2.3', licence: 'MIT', text: 'Copyright (c) <Somebody>' };

  test('names each package with its version, licence and text', () => {
    const page = licencesPage([fine, { name: 'inner', licence: 'ISC', text: 'ISC text' }], 'none');
    for (const told of ['fine 1.2.3: MIT', 'Copyright (c) &lt;Somebody&gt;', 'inner: ISC']) {
      expect(page).toContain(told);
    }
    expect(page).toContain('The Loomsheet founders');
  });

  test('is not written where a package may not ship, and says which', () => {
    const strict = { name: 'strict', version: '4.5.6', licence: 'GPL-3.0-only', text: 'GPL' };
    expect(() => licencesPage([fine, strict], 'none')).toThrow(/strict 4\.5\.6: GPL-3\.0-only/);
  });

  test('shows the platform’s terms where its script stands beside the pane, and only there', () => {
    expect(licencesPage([], 'own')).toContain('MICROSOFT SOFTWARE LICENSE TERMS');
    expect(licencesPage([], 'delivered')).not.toContain('LICENSE TERMS');
    expect(licencesPage([], 'delivered')).toContain('the platform’s delivery address');
  });
});

describe('the notice of a package', () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(path.join(tmpdir(), 'loomsheet-notice-'));
  });
  afterEach(() => {
    rmSync(folder, { recursive: true });
  });
  const describePackage = (more: object) => {
    const description = { name: 'one', version: '1.0.0', license: 'MIT', ...more };
    writeFileSync(path.join(folder, 'package.json'), JSON.stringify(description));
  };

  test('is its licence files', () => {
    describePackage({});
    writeFileSync(path.join(folder, 'LICENCE.md'), 'the text\n');
    writeFileSync(path.join(folder, 'NOTICE'), 'and a notice\n');
    expect(noticeOf(folder)).toEqual({
      name: 'one',
      version: '1.0.0',
      licence: 'MIT',
      text: 'the text\n\nand a notice',
    });
  });

  test('is what its readme says, where it has no file', () => {
    describePackage({});
    const terms = 'Permission is hereby granted. '.repeat(20);
    writeFileSync(
      path.join(folder, 'README.md'),
      `# One\n\n## License\n\n${terms}\n\n## More\n\nno`,
    );
    expect(noticeOf(folder).text).toBe(terms.trim());
  });

  test('is the standard text with its holders, where it has neither', () => {
    describePackage({ author: 'Ann Example <ann@one.example>', contributors: [{ name: 'Bo' }] });
    writeFileSync(path.join(folder, 'README.md'), '# One\n\n## License\n\nMIT\n');
    expect(noticeOf(folder).text).toMatch(
      /^Copyright \(c\) Ann Example, Bo\n\nPermission is hereby/,
    );
  });

  test('cannot be made without a licence, or without a text of it', () => {
    describePackage({ license: undefined });
    expect(() => noticeOf(folder)).toThrow('names no licence');
    describePackage({ license: 'BSD-3-Clause' });
    mkdirSync(path.join(folder, 'lib'));
    expect(() => noticeOf(folder)).toThrow('carries no text');
  });
});
