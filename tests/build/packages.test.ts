/** package.json says what is true: each package is used, each used package is named, and all run on the promised Node. */
import { readdirSync, readFileSync } from 'node:fs';
import { isBuiltin } from 'node:module';
import path from 'node:path';
import { subset } from 'semver';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { projectFolder } from '../../src/build/build-folders';

interface Description {
  readonly engines: { readonly node: string };
  readonly scripts: Readonly<Record<string, string>>;
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
}

interface Lock {
  readonly packages: Readonly<
    Record<string, { readonly engines?: { readonly node?: string }; readonly resolved?: string }>
  >;
}

/** Packages that nothing imports or runs by name, each with the reason why it is there all the same. */
const KEPT: Readonly<Record<string, string>> = {};

const BUNDLER = 'webpack.config.js';

const text = (...parts: string[]) => readFileSync(path.join(projectFolder, ...parts), 'utf8');
const json = (...parts: string[]): unknown => JSON.parse(text(...parts));

const description = json('package.json') as Description;
const direct = Object.keys({ ...description.dependencies, ...description.devDependencies });

/** "@univerjs/core" of "@univerjs/core/facade". */
function packageOf(specifier: string): string {
  return specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/');
}

/** The packages that a file imports or requires, for their types alone too. */
function importedBy(content: string): string[] {
  return ts
    .preProcessFile(content, true, true)
    .importedFiles.map(({ fileName }) => fileName)
    .filter((specifier) => !specifier.startsWith('.') && !isBuiltin(specifier))
    .map(packageOf);
}

function codeFiles(): string[] {
  const inside = ['src', 'tests'].flatMap((folder) =>
    readdirSync(path.join(projectFolder, folder), { recursive: true, encoding: 'utf8' })
      .filter((file) => /\.(ts|mts|mjs|js)$/.test(file))
      .map((file) => path.join(folder, file)),
  );
  return [...inside, BUNDLER];
}

const imported = new Set(codeFiles().flatMap((file) => importedBy(text(file))));

/** The bundler's settings name loaders, and folders to copy from, by text. */
function namedToBundler(name: string): boolean {
  const settings = text(BUNDLER);
  return settings.includes(`'${name}'`) || settings.includes(`node_modules/${name}/`);
}

/** The commands that package.json's scripts begin with, or go on with after "&&". */
const commands = new Set(
  Object.values(description.scripts).flatMap((script) =>
    script.split('&&').map((step) => step.trim().split(' ')[0]!),
  ),
);

function isRun(name: string): boolean {
  const { bin } = json('node_modules', name, 'package.json') as {
    readonly bin?: string | Readonly<Record<string, string>>;
  };
  const own =
    typeof bin === 'string' ? [packageOf(name).replace(/^@.*\//, '')] : Object.keys(bin ?? {});
  return own.some((command) => commands.has(command));
}

/** A package of types serves the package that it describes, or the whole project by tsconfig.json. */
function isTypesInUse(name: string): boolean {
  const described = /^@types\/(.+)$/.exec(name)?.[1];
  if (described === undefined) return false;
  const { compilerOptions } = json('tsconfig.json') as {
    readonly compilerOptions: { readonly types: readonly string[] };
  };
  return imported.has(described) || compilerOptions.types.includes(described);
}

function isUsed(name: string): boolean {
  return imported.has(name) || namedToBundler(name) || isRun(name) || isTypesInUse(name);
}

describe('the packages of package.json', () => {
  test('are each imported or run, or kept for a stated reason', () => {
    const idle = direct.filter((name) => !isUsed(name));
    expect(idle.sort()).toEqual(Object.keys(KEPT).sort());
  });

  test('are all that is imported: nothing comes by way of another package', () => {
    const strangers = [...imported].filter(
      (name) => !direct.includes(name) && !direct.includes(`@types/${name}`),
    );
    expect(strangers).toEqual([]);
  });

  test('are told apart from a package that nothing uses', () => {
    // Among the installed ones, since they come with others; no code of ours knows them.
    for (const name of ['@univerjs/engine-render', '@microsoft/fast-element', 'acorn']) {
      expect(isUsed(name), name).toBe(false);
    }
  });
});

describe('package-lock.json', () => {
  const { packages } = json('package-lock.json') as Lock;
  const others = Object.entries(packages).filter(([place]) => place !== '');

  test('holds only packages that run on the Node that is promised', () => {
    const promise = description.engines.node;
    const unfit = others
      .filter(([, { engines }]) => !subset(promise, engines?.node ?? '*'))
      .map(([place, { engines }]) => `${place} wants Node ${engines?.node ?? ''}`);
    expect(unfit).toEqual([]);
    expect(others.length).toBeGreaterThan(direct.length);
  });

  test('holds no addresses of a registry', () => {
    expect(others.filter(([, { resolved }]) => resolved !== undefined)).toEqual([]);
  });
});

test('the README promises the same Node', () => {
  const [oldest] = /\d+\.\d+/.exec(description.engines.node)!;
  expect(text('README.md')).toContain(`Node ${oldest}`);
});
