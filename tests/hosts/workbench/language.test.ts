import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { projectFolder } from '../../../src/build/build-folders';
import { ENGLISH } from '../../../src/hosts/workbench/language';

const GRID = path.join(projectFolder, 'node_modules/@univerjs');

/** The keys of texts that the grid's scripts ask for by name. */
function keysAskedFor(): string[] {
  const scripts = readdirSync(GRID)
    .filter((name) => !name.startsWith('preset-'))
    .flatMap((name) => {
      try {
        return [readFileSync(path.join(GRID, name, 'lib/es/index.js'), 'utf8')];
      } catch {
        // Packages of pictures and the like have no such script.
        return [];
      }
    });
  return scripts.flatMap((script) => [
    ...[...script.matchAll(/\.t\(\s*"([\w-]+(?:\.[\w-]+)+)"/g)].map(([, key]) => key!),
    ...[...script.matchAll(/\blabel: "(ui\.[\w.-]+)"/g)].map(([, key]) => key!),
  ]);
}

const textOf = (key: string) =>
  key
    .split('.')
    .reduce<unknown>(
      (group, part) => (group as Record<string, unknown> | undefined)?.[part],
      ENGLISH,
    );

test('every text that the grid asks for is there, so that no bare key is shown', () => {
  const keys = keysAskedFor();
  expect(keys.length).toBeGreaterThan(300);
  expect(keys).toContain('sheets-formula.progress.done');
  expect(keys.filter((key) => typeof textOf(key) !== 'string')).toEqual([]);
});
