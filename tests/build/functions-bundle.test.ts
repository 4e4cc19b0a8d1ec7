/** The script that Excel loads for our functions: one small file that stands alone. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { runInNewContext } from 'node:vm';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { build } from '../../src/build/build';
import { CATALOGUE } from '../../src/functions/catalogue';

/** Every user of Excel waits for it before a cell answers. */
const MOST_GZIPPED_BYTES = 30_000;

/** A folder of its own: browser tests serve the usual one meanwhile. */
const folder = mkdtempSync(path.join(tmpdir(), 'loomsheet-bundle-'));
let script = '';

beforeAll(async () => {
  await build('production', ['functions'], folder);
  script = readFileSync(path.join(folder, 'functions.js'), 'utf8');
}, 120_000);

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

test('is small', () => {
  expect(gzipSync(script, { level: 9 }).length).toBeLessThan(MOST_GZIPPED_BYTES);
});

test('carries no help, which nobody reads there', () => {
  for (const { id, summary, source, gives } of CATALOGUE) {
    expect(script).toContain(id);
    for (const text of [summary, source, gives]) {
      expect(text.length <= 12 || !script.includes(JSON.stringify(text).slice(1, -1)), text).toBe(
        true,
      );
    }
  }
});

test('needs nothing but the platform, and associates every function', () => {
  const associated = new Map<string, (...given: unknown[]) => unknown>();
  const CustomFunctions = {
    associate: (id: string, compute: (...given: unknown[]) => unknown) => {
      associated.set(id, compute);
    },
    ErrorCode: {},
    Error: class {},
  };
  runInNewContext(script, { CustomFunctions });
  expect([...associated.keys()].sort()).toEqual(CATALOGUE.map(({ id }) => id).sort());
  const drop = associated.get('DCDROP')!([[20]], [[6]], [['ft']], [['12 AWG']], null, null, null);
  expect(JSON.stringify(drop)).toMatch(/^\[\[0\.381/);
});

test('is described beside it, every id once', () => {
  const described = JSON.parse(readFileSync(path.join(folder, 'functions.json'), 'utf8')) as {
    readonly allowErrorForDataTypeAny: boolean;
    readonly functions: readonly { readonly id: string }[];
  };
  expect(described.allowErrorForDataTypeAny).toBe(true);
  expect(described.functions.map(({ id }) => id)).toEqual(CATALOGUE.map(({ id }) => id));
});
