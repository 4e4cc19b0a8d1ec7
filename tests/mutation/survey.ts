/** Which functions of the source each test file runs, and how long it takes; kept until what it stands on changes. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { absolute, testFiles } from './areas';
import { standsOn, stateOf } from './imports';
import { withProbes } from './probes';
import { warmTests } from './warm-tests';

export interface Surveyed {
  readonly state: string;
  readonly seconds: number;
  readonly reached: readonly string[];
}

export type Survey = Readonly<Record<string, Surveyed>>;

const KEPT = absolute('.cache/mutation/survey.json');

/** Source files whose functions are marked. */
const isOurs = (file: string) => /^src\/(core|functions|sheets)\/.*\.ts$/.test(file);

export async function survey(): Promise<Survey> {
  const kept = existsSync(KEPT) ? (JSON.parse(readFileSync(KEPT, 'utf8')) as Survey) : {};
  const found: Record<string, Surveyed> = {};
  const names: string[] = [];
  const numbers = new Map<string, number>();
  const numberOf = (name: string) => {
    const known = numbers.get(name);
    if (known !== undefined) return known;
    numbers.set(name, names.length);
    return names.push(name) - 1;
  };
  const asked = testFiles().map((file) => ({ file, state: stateOf(file) }));
  const stale = asked.filter(({ file, state }) => kept[file]?.state !== state);
  const save = () => {
    mkdirSync(path.dirname(KEPT), { recursive: true });
    writeFileSync(KEPT, JSON.stringify({ ...kept, ...found }));
  };
  const tests = stale.length > 0 ? await warmTests(true) : undefined;
  for (const { file, state } of asked) {
    const known = kept[file];
    if (known?.state === state) {
      found[file] = known;
      continue;
    }
    const { outcome, measured } = await tests!.run([file], {
      changed: [...standsOn(file)].filter(isOurs),
      read: (source, text) => withProbes(source, text, numberOf),
      mostSeconds: () => Infinity,
    });
    if (measured === undefined) {
      throw new Error(`${file} fails without any mutant: ${JSON.stringify(outcome)}`);
    }
    const { seconds, numbers: reached } = measured;
    found[file] = { state, seconds, reached: reached.map((number) => names[number]!) };
    console.log(`surveyed ${file}: ${seconds.toFixed(1)} s, ${reached.length} functions`);
    save();
  }
  await tests?.close();
  return found;
}
