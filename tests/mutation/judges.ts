/** Which test files are asked about a mutant, and in which order: those first that are likely to catch it soon. */
import path from 'node:path';
import { sourceOf } from './areas';
import { standsOn } from './imports';
import type { Mutant } from './mutant';
import { functionAt } from './probes';
import type { Survey } from './survey';

/** What a test file has caught so far. */
export interface Caught {
  readonly count: (file: string, test: string) => number;
  readonly add: (file: string, test: string) => void;
}

export function caughtSoFar(): Caught {
  const counts = new Map<string, number>();
  const key = (file: string, test: string) => `${file} ${test}`;
  return {
    count: (file, test) => counts.get(key(file, test)) ?? 0,
    add: (file, test) => {
      for (const where of [file, '']) {
        counts.set(key(where, test), (counts.get(key(where, test)) ?? 0) + 1);
      }
    },
  };
}

/** Catches in the same file tell more than catches elsewhere. */
const ELSEWHERE = 0.02;
/** A test file that has caught nothing yet gets its chance: the fewer functions it runs, the more it asks of each. */
const chance = (functions: number) => 10 / (functions + 10);
/** Tests that judge whole stations, and so every formula. */
const OF_STATIONS = new Set([
  'tests/sheets/stated-rows.test.ts',
  'tests/stations/stations.test.ts',
  'tests/oracle/oracle.test.ts',
  'tests/sheets/without-add-in/native-forms.test.ts',
]);

/** Files whose tests have a name of their own. */
const TESTED_BY = new Map([
  ['src/sheets/schedule/fix.ts', 'remedy'],
  ['src/sheets/without-add-in/tree.ts', 'watts-rounds'],
  ['src/sheets/without-add-in/workings-sheet.ts', 'watts-rounds'],
]);

/** The tests mirror the source: those of the same folder, and of the same name, come to mind first. */
function nearness(file: string, test: string): number {
  const folder = path.posix.dirname(file);
  const name = TESTED_BY.get(file) ?? path.posix.basename(file, '.ts');
  const isBeside = path.posix.dirname(test).replace(/^tests/, 'src') === folder;
  const isOfStations = file.startsWith('src/sheets/') && OF_STATIONS.has(test);
  return (
    (isOfStations ? 0.3 : 0) +
    (isBeside ? 0.1 : 0) +
    (path.posix.basename(test).startsWith(`${name}.`) ? 1 : 0)
  );
}

/** What starting a process takes, whichever file it is. */
const START_S = 1;

export function judgesOf(mutant: Mutant, survey: Survey, caught: Caught): string[] {
  const { file, start } = mutant;
  const where = functionAt(file, sourceOf(file), start);
  const worth = (test: string) =>
    (caught.count(file, test) +
      nearness(file, test) +
      ELSEWHERE * caught.count('', test) +
      chance(survey[test]!.reached.length)) /
    (survey[test]!.seconds + START_S);
  return Object.entries(survey)
    .filter(([test, { reached }]) =>
      // What runs as its file is loaded is run by every test that loads the file.
      where === undefined ? standsOn(test).has(file) : reached.includes(where),
    )
    .map(([test]) => test)
    .sort((a, b) => worth(b) - worth(a));
}
