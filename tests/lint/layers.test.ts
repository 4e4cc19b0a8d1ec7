/** The lint rules that keep the layers apart do refuse what they are there to refuse. */
import { ESLint } from 'eslint';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import tseslint from 'typescript-eslint';
import { beforeAll, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../', import.meta.url));
/** Compiling the core takes a busy machine a while. */
const SLOW_MS = 240_000;

let eslint: ESLint;
beforeAll(() => {
  // The rules that need types are off: none of those tried here does, and the types of the project take long to load.
  eslint = new ESLint({
    cwd: root,
    overrideConfigFile: 'tests/config/eslint.config.mjs',
    overrideConfig: [{ ...tseslint.configs.disableTypeChecked, files: ['**/*.ts'] }],
  });
});

/** Rules that refuse a text, as though it stood in an existing file. */
async function refusing(filePath: string, text: string): Promise<readonly (string | null)[]> {
  const [result] = await eslint.lintText(text, { filePath: `${root}${filePath}` });
  const messages = result?.messages ?? [];
  expect(messages.filter((message) => message.fatal)).toEqual([]);
  return messages.filter((message) => message.severity === 2).map((message) => message.ruleId);
}

const IMPORT = 'no-restricted-imports';
const HIDDEN = 'no-restricted-syntax';
const GLOBAL = 'no-restricted-globals';

const REFUSED: readonly (readonly [file: string, text: string, rule: string])[] = [
  ['src/core/outcome.ts', "import '../functions/cell';", IMPORT],
  [
    'src/core/outcome.ts',
    "import type { Cell } from '../functions/cell';\nexport type C = Cell;",
    IMPORT,
  ],
  ['src/core/outcome.ts', "export * from './../sheets/plan';", IMPORT],
  ['src/core/outcome.ts', "import 'node:fs';", IMPORT],
  ['src/core/outcome.ts', "import 'exceljs';", IMPORT],
  ['src/core/outcome.ts', "export const later = () => import('../functions/cell');", HIDDEN],
  ['src/core/outcome.ts', "export type C = import('../functions/cell').Cell;", HIDDEN],
  ['src/core/outcome.ts', 'export const title = () => document.title;', GLOBAL],
  ['src/core/outcome.ts', "export const home = () => process.env['HOME'];", GLOBAL],
  ['src/core/outcome.ts', 'export const run = () => Excel.run(() => Promise.resolve());', GLOBAL],
  ['src/functions/cell.ts', "import '../sheets/area';", IMPORT],
  ['src/functions/cell.ts', "import 'node:fs';", IMPORT],
  ['src/sheets/plan/plan.ts', "import '../../hosts/sheet-host';", IMPORT],
  ['src/sheets/plan/plan.ts', "import '../../build/icon-sizes';", IMPORT],
  ['src/sheets/plan/plan.ts', "import type { Level } from '../station/verdicts';", IMPORT],
  ['src/sheets/schedule/formulas.ts', "import '../protection/layout';", IMPORT],
  ['src/sheets/schedule/formulas.ts', "import type { BookSheet } from '../book';", IMPORT],
  ['src/sheets/calculate/calculate.ts', "import '../station/naming';", IMPORT],
  ['src/lists/read-runs.ts', "import '../hosts/sheet-host';", IMPORT],
  ['src/hosts/excel/content.ts', "import '../../command/command';", IMPORT],
  ['src/hosts/excel/content.ts', "import '../../taskpane/index';", IMPORT],
  ['src/hosts/excel/content.ts', "import '../../workbench/index';", IMPORT],
  ['src/hosts/sheet-host.ts', "import '../taskpane';", IMPORT],
  [
    'src/functions/excel-boundary.ts',
    'export const wide = (given: any) => String(given);',
    '@typescript-eslint/no-explicit-any',
  ],
  [
    'src/hosts/excel/content.ts',
    'export async function draw(context: Excel.RequestContext) {\n  for (let n = 0; n < 3; n += 1) await context.sync();\n}',
    'office-addins/no-context-sync-in-loop',
  ],
  [
    'src/hosts/excel/content.ts',
    "export async function draw(context: Excel.RequestContext) {\n  const range = context.workbook.worksheets.getItem('x').getRange('A1');\n  await context.sync();\n  return range.values;\n}",
    'office-addins/load-object-before-read',
  ],
];

const ALLOWED: readonly (readonly [file: string, text: string])[] = [
  ['src/core/outcome.ts', "export * from './size';"],
  ['src/functions/cell.ts', "export * from '../core/outcome';"],
  ['src/sheets/plan/plan.ts', "export * from '../functions/cell';"],
  ['src/hosts/excel/content.ts', "export * from '../../sheets/plan';"],
  ['src/sheets/protection/layout.ts', "export * from '../schedule/layout';"],
  ['src/sheets/shared-copy.ts', "export * from './without-add-in/references';"],
  ['src/build/manifest-for.ts', "export * from '../functions/metadata';"],
];

describe('the layers', () => {
  it.each(REFUSED)('%s may not hold %s', async (file, text, rule) => {
    expect(await refusing(file, text)).toContain(rule);
  });

  it.each(ALLOWED)('%s may hold %s', async (file, text) => {
    expect(await refusing(file, text)).toEqual([]);
  });
});

describe('the imports of the source', () => {
  /** Files by path, each with those that it imports, types included. */
  const imported = new Map(
    ts.sys.readDirectory(`${root}src`, ['.ts']).map((file) => [
      file,
      ts.preProcessFile(ts.sys.readFile(file) ?? '').importedFiles.flatMap(({ fileName }) => {
        if (!fileName.startsWith('.')) return [];
        const path = ts.sys.resolvePath(`${file}/../${fileName}.ts`);
        return ts.sys.fileExists(path) ? [path] : [];
      }),
    ]),
  );

  it('are many', () => {
    expect([...imported.values()].flat().length).toBeGreaterThan(400);
  });

  it('never lead back to where they began', () => {
    const done = new Set<string>();
    const circles: string[] = [];
    const follow = (file: string, path: readonly string[]): void => {
      if (path.includes(file)) circles.push([...path.slice(path.indexOf(file)), file].join(' -> '));
      if (done.has(file) || path.includes(file)) return;
      for (const next of imported.get(file) ?? []) follow(next, [...path, file]);
      done.add(file);
    };
    for (const file of imported.keys()) follow(file, []);
    expect(circles).toEqual([]);
  });
});

describe('the core', () => {
  it(
    'compiles without the types of any platform',
    () => {
      const files = ts.sys.readDirectory(`${root}src/core`, ['.ts']);
      expect(files.length).toBeGreaterThan(0);
      const read = ts.readConfigFile(`${root}tsconfig.json`, (path) => ts.sys.readFile(path));
      const { options } = ts.parseJsonConfigFileContent(read.config, ts.sys, root);
      const program = ts.createProgram(files, { ...options, lib: ['lib.es2023.d.ts'], types: [] });
      const faults = ts
        .getPreEmitDiagnostics(program)
        .map((fault) => ts.flattenDiagnosticMessageText(fault.messageText, '\n'));
      expect(faults).toEqual([]);
    },
    SLOW_MS,
  );
});
