/**
 * How many small faults in the source the tests catch. `npm run mutate -- core --sample 100 --seed 1`; `--help` says the rest.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { constants, setPriority } from 'node:os';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { absolute, AREAS, mutantsOfArea, sourceOf, type AreaName } from './areas';
import { EXPLAINED } from './explained';
import { caughtSoFar, judgesOf, type Caught } from './judges';
import { lineOf, told, withMutant, type Mutant } from './mutant';
import { interval, sampleOf } from './sample';
import { survey, type Survey } from './survey';
import { warmTests, type WarmTests } from './warm-tests';

const HELP = `npm run mutate -- [AREA ...] [options]

Areas: ${Object.entries(AREAS)
  .map(([name, { told: words }]) => `${name} (${words})`)
  .join(', ')}.
Without an area: core, functions and formulas.

--sample N     so many mutants of each area, drawn at random (100); 0 takes all
--seed N       which ones (1)
--below PATH   only what stands below this folder, or in this file
--seconds N    how long the tests of one mutant may take in all, by their usual times (120); what is left out counts
               against them
--again        only those that survived when this sample was last tried; what was caught stays caught while the
               mutant's line is the same`;

type Verdict = 'caught' | 'endless' | 'survived' | 'not reached';

interface Judged {
  readonly key: string;
  readonly file: string;
  readonly line: number;
  readonly kind: string;
  readonly told: string;
  readonly verdict: Verdict;
  readonly by?: string;
  /** Test files that run the place, and those that were asked. */
  readonly judges: number;
  readonly asked: number;
}

/** A test that takes so many times as long as usual, and a while beside, does not end. */
const ENDLESS_TIMES = 4;
const ENDLESS_S = 20;

/** So many mutants are looked back at, to see that their judges pass without them. */
const LAST = 5;

const isCaught = ({ verdict }: Judged) => verdict === 'caught' || verdict === 'endless';

async function judge(
  mutant: Mutant,
  { tests, surveyed, caught, seconds }: Means,
): Promise<Omit<Judged, 'key'>> {
  const { file, kind } = mutant;
  const source = sourceOf(file);
  const all = judgesOf(mutant, surveyed, caught);
  let left = seconds;
  const files = all.filter((test) => {
    const fits = surveyed[test]!.seconds <= left;
    if (fits) left -= surveyed[test]!.seconds;
    return fits;
  });
  const base = {
    ...{ file, kind, line: lineOf(source, mutant), told: told(source, mutant) },
    ...{ judges: all.length, asked: files.length },
  };
  if (files.length === 0) return { ...base, verdict: 'not reached' };
  const { outcome } = await tests.run(files, {
    changed: [file],
    read: () => withMutant(source, mutant),
    mostSeconds: (test) => (surveyed[test]?.seconds ?? 0) * ENDLESS_TIMES + ENDLESS_S,
  });
  if (outcome.is === 'passed') return { ...base, verdict: 'survived' };
  caught.add(file, outcome.by);
  return outcome.is === 'endless'
    ? { ...base, verdict: 'endless', by: outcome.by }
    : { ...base, verdict: 'caught', by: `${outcome.by}: ${outcome.test}` };
}

interface Means {
  readonly tests: WarmTests;
  readonly surveyed: Survey;
  readonly caught: Caught;
  readonly seconds: number;
}

const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
const count = (judged: readonly Judged[], verdict: Verdict) =>
  judged.filter((one) => one.verdict === verdict).length;

function whyOf({ file, told: line }: Judged): string | undefined {
  return EXPLAINED.find((one) => one.file === file && one.told === line)?.why;
}

function report(name: AreaName, judged: readonly Judged[], all: number): void {
  const found = judged.filter(isCaught).length;
  const [low, high] = interval(found, judged.length, all);
  const survivors = judged.filter((one) => !isCaught(one));
  const explained = survivors.filter((one) => whyOf(one) !== undefined);
  console.log(
    `\n${name}: ${judged.length} of ${all} mutants tried, ${count(judged, 'caught')} caught, ` +
      `${count(judged, 'endless')} without end, ${count(judged, 'survived')} survived, ` +
      `${count(judged, 'not reached')} not reached: ${percent(found / judged.length)} found` +
      (judged.length < all ? ` (${percent(low)} to ${percent(high)})` : '') +
      `; ${explained.length} survivors are explained`,
  );
  const kinds = [...new Set(judged.map(({ kind }) => kind))].sort();
  for (const kind of kinds) {
    const of = judged.filter((one) => one.kind === kind);
    console.log(`  ${kind.padEnd(10)} ${of.filter(isCaught).length} of ${of.length}`);
  }
  for (const one of survivors) {
    console.log(
      `  ${one.verdict} (${one.asked} of ${one.judges} test files): ${one.file}:${one.line} ${one.kind}`,
    );
    console.log(`    ${one.told}`);
    const why = whyOf(one);
    if (why !== undefined) console.log(`    ${why}`);
  }
}

/** The same mutant as long as its line is the same; one that a line makes more than once has a number beside it. */
function keysOf(mutants: readonly Mutant[]): string[] {
  const seen = new Map<string, number>();
  return mutants.map((mutant) => {
    const plain = `${mutant.file}: ${told(sourceOf(mutant.file), mutant)}`;
    const times = seen.get(plain) ?? 0;
    seen.set(plain, times + 1);
    return times === 0 ? plain : `${plain} (${times + 1})`;
  });
}

async function tryArea(name: AreaName, asked: Asked, means: Means): Promise<void> {
  const { sample, seed, below, again } = asked;
  const mutants = mutantsOfArea(name, below);
  const keys = keysOf(mutants);
  const all = mutants.map((mutant, at) => ({ mutant, key: keys[at]! }));
  const drawn = sample === 0 ? all : sampleOf(all, sample, seed);
  const kept = absolute(`.cache/mutation/judged-${name}.json`);
  const before = new Map(
    existsSync(kept)
      ? (JSON.parse(readFileSync(kept, 'utf8')) as Judged[]).map((one) => [one.key, one])
      : [],
  );
  for (const { file, verdict, by } of before.values()) {
    if (verdict === 'caught' && by !== undefined) means.caught.add(file, by.split(': ')[0]!);
  }
  const judged: Judged[] = [];
  for (const { mutant, key } of drawn) {
    const known = before.get(key);
    const started = performance.now();
    const isKnown = again && known !== undefined && isCaught(known);
    const one = isKnown ? known : { key, ...(await judge(mutant, means)) };
    judged.push(one);
    if (isKnown) continue;
    before.set(key, one);
    mkdirSync(path.dirname(kept), { recursive: true });
    writeFileSync(kept, JSON.stringify([...before.values()]));
    const seconds = ((performance.now() - started) / 1000).toFixed(1);
    console.log(
      `${name} ${judged.length}/${drawn.length} ${one.verdict} ${seconds} s ${one.file}:${one.line} ${one.told} ${one.by ?? ''}`,
    );
  }
  await proveSoundWithout(judged, means);
  report(name, judged, all.length);
}

/** What caught the last mutants passes without any: nothing of a mutant stays in the warm process. */
async function proveSoundWithout(
  judged: readonly Judged[],
  { tests, surveyed }: Means,
): Promise<void> {
  const caught = judged.filter(({ verdict }) => verdict === 'caught').slice(-LAST);
  const files = new Set(caught.map(({ by }) => by!.split(': ')[0]!).filter((by) => by in surveyed));
  const { outcome } = await tests.run([...files], {
    changed: [],
    read: (_, source) => source,
    mostSeconds: () => Infinity,
  });
  if (outcome.is !== 'passed') {
    throw new Error(`fails without any mutant: ${JSON.stringify(outcome)}`);
  }
}

interface Asked {
  readonly sample: number;
  readonly seed: number;
  readonly below: string;
  readonly again: boolean;
}

async function main(): Promise<void> {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
      sample: { type: 'string', default: '100' },
      seed: { type: 'string', default: '1' },
      below: { type: 'string', default: '' },
      seconds: { type: 'string', default: '120' },
      again: { type: 'boolean', default: false },
      help: { type: 'boolean', default: false },
    },
  });
  const names = positionals.length === 0 ? ['core', 'functions', 'formulas'] : positionals;
  const unknown = names.find((name) => !(name in AREAS));
  if (values.help || unknown !== undefined) {
    console.log(unknown === undefined ? HELP : `There is no area "${unknown}".\n\n${HELP}`);
    process.exitCode = values.help ? 0 : 1;
    return;
  }
  setPriority(constants.priority.PRIORITY_LOW);
  const surveyed = await survey();
  const tests = await warmTests(false);
  const means = { tests, surveyed, caught: caughtSoFar(), seconds: Number(values.seconds) };
  const asked = {
    sample: Number(values.sample),
    seed: Number(values.seed),
    below: values.below,
    again: values.again,
  };
  for (const name of names as AreaName[]) await tryArea(name, asked, means);
  await tests.close();
}

void main();
