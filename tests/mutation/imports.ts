/** Which files of ours a file stands on. */
import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';
import { absolute, sourceOf } from './areas';

const direct = new Map<string, readonly string[]>();

function importsOf(file: string): readonly string[] {
  const known = direct.get(file);
  if (known !== undefined) return known;
  const found = ts
    .preProcessFile(sourceOf(file), true, true)
    .importedFiles.filter(({ fileName }) => fileName.startsWith('.'))
    .flatMap(({ fileName }) => {
      const near = path.posix.join(path.posix.dirname(file), fileName);
      return [`${near}.ts`, `${near}/index.ts`, near].filter(
        (candidate) => path.extname(candidate) !== '' && existsSync(absolute(candidate)),
      );
    });
  direct.set(file, found);
  return found;
}

/** The file itself, and all that it imports by any number of steps. */
export function standsOn(file: string): ReadonlySet<string> {
  const all = new Set([file]);
  for (const one of all) {
    if (one.endsWith('.ts')) for (const imported of importsOf(one)) all.add(imported);
  }
  return all;
}

/** Another text once any of what a file stands on has changed. */
export function stateOf(file: string): string {
  const hash = createHash('sha256');
  for (const one of [...standsOn(file)].sort()) hash.update(one).update(sourceOf(one));
  return hash.digest('hex').slice(0, 16);
}
