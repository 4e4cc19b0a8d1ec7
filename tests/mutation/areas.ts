/** What can be mutated, each area by itself, and the tests that judge it. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { projectFolder } from '../../src/build/build-folders';
import { codeMutants } from './code-mutants';
import { formulaMutants } from './formula-mutants';
import type { Mutant } from './mutant';

/** Folders of tests that run without a browser, a spreadsheet program or a built page. */
export const TEST_FOLDERS = ['core', 'functions', 'published', 'sheets', 'oracle', 'stations'];

interface Area {
  readonly folder: string;
  readonly told: string;
  readonly isIn: (file: string) => boolean;
  readonly mutants: (file: string, source: string) => Mutant[];
}

const TABLES = 'src/core/tables/';

export const AREAS = {
  core: {
    folder: 'src/core',
    told: 'the core, but for its tables',
    isIn: (file) => !file.startsWith(TABLES),
    mutants: codeMutants,
  },
  tables: {
    folder: 'src/core/tables',
    told: 'published tables: figures for the most part',
    isIn: () => true,
    mutants: codeMutants,
  },
  functions: {
    folder: 'src/functions',
    told: 'the worksheet functions',
    isIn: () => true,
    mutants: codeMutants,
  },
  formulas: {
    folder: 'src/sheets',
    told: 'formula texts of the sheets',
    isIn: (file) => !file.startsWith('src/sheets/calculate/'),
    mutants: formulaMutants,
  },
  sheets: {
    folder: 'src/sheets',
    told: 'code of the sheets around their formulas',
    isIn: () => true,
    mutants: codeMutants,
  },
} as const satisfies Record<string, Area>;

export type AreaName = keyof typeof AREAS;

export const absolute = (file: string) => path.join(projectFolder, file);

const sources = new Map<string, string>();

/** The text of a file, as it was when it was first asked for. */
export function sourceOf(file: string): string {
  const known = sources.get(file);
  if (known !== undefined) return known;
  const source = readFileSync(absolute(file), 'utf8');
  sources.set(file, source);
  return source;
}

/** TypeScript files below a folder, from the top of the repository, in an order of their own. */
export function filesBelow(folder: string): string[] {
  return readdirSync(absolute(folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => `${folder}/${file.split(path.sep).join('/')}`)
    .sort();
}

/** Every mutant of an area, or of what of it stands below a folder or file. */
export function mutantsOfArea(name: AreaName, below = ''): Mutant[] {
  const { folder, isIn, mutants } = AREAS[name] as Area;
  return filesBelow(folder)
    .filter((file) => isIn(file) && file.startsWith(below))
    .flatMap((file) => mutants(file, sourceOf(file)));
}

export const testFiles = () =>
  TEST_FOLDERS.flatMap((folder) => filesBelow(`tests/${folder}`)).filter((file) =>
    file.endsWith('.test.ts'),
  );
