/** Test files run again and again in one vitest, each time in a fresh process, with one source file read differently. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import type { createVitest, TestSpecification } from 'vitest/node';
import { projectFolder } from '../../src/build/build-folders';
import { absolute, TEST_FOLDERS } from './areas';

export type Outcome =
  | { readonly is: 'passed' }
  | { readonly is: 'failed'; readonly by: string; readonly test: string }
  | { readonly is: 'endless'; readonly by: string };

/** Of a test file that was surveyed: seconds of a processor, and the numbers of the marks that were set. */
export interface Measured {
  readonly seconds: number;
  readonly numbers: readonly number[];
}

export interface Ran {
  readonly outcome: Outcome;
  readonly measured?: Measured;
}

export interface WarmTests {
  /** Runs test files in this order until one fails; `read` gives the text of a source file, or nothing to leave it. */
  readonly run: (files: readonly string[], reading: Reading) => Promise<Ran>;
  readonly close: () => Promise<void>;
}

export interface Reading {
  /** The files that are read otherwise than they stand. */
  readonly changed: readonly string[];
  readonly read: (file: string, source: string) => string;
  /** How long each test file may take of a processor, in seconds. */
  readonly mostSeconds: (testFile: string) => number;
}

const LOOK_EVERY_MS = 1000;
const MEMORY_MB = 2048;

const relative = (file: string) => path.relative(projectFolder, file).split(path.sep).join('/');

/** Ends a process of ours that may have ended by itself. */
function endProcess(pid: number): void {
  try {
    process.kill(pid, 'SIGKILL');
  } catch {
    // It has.
  }
}

/** Seconds that a process has had of a processor: a busy machine makes no test late. */
function processorSeconds(pid: number): number {
  const { stdout } = spawnSync('ps', ['-o', 'time=', '-p', String(pid)], { encoding: 'utf8' });
  const [days, clock] = stdout.includes('-') ? stdout.trim().split('-') : ['0', stdout.trim()];
  if (clock === undefined || clock === '') return 0;
  return clock.split(':').reduce((sum, part) => sum * 60 + Number(part), 0) + Number(days) * 86_400;
}

export async function warmTests(isSurvey: boolean): Promise<WarmTests> {
  // It is a module of the new kind alone, and a script run by itself here is of the old.
  const { BaseSequencer, createVitest } = await import('vitest/node');
  const folder = path.join(projectFolder, '.cache/mutation', String(process.pid));
  const begun = path.join(folder, 'begun');
  process.env['LOOM_MUTATION_FOLDER'] = folder;
  process.env['LOOM_MUTATION_SURVEY'] = isSurvey ? '1' : '0';
  let order: readonly string[] = [];
  let reading: Reading | undefined;

  class InOurOrder extends BaseSequencer {
    override sort(specifications: TestSpecification[]) {
      const place = ({ moduleId }: TestSpecification) => order.indexOf(relative(moduleId));
      return Promise.resolve([...specifications].sort((a, b) => place(a) - place(b)));
    }
  }

  const vitest = await createVitest(
    'test',
    {
      root: projectFolder,
      config: false,
      include: TEST_FOLDERS.map((one) => `tests/${one}/**/*.test.ts`),
      watch: false,
      isolate: false,
      pool: 'forks',
      maxWorkers: 1,
      execArgv: [`--max-old-space-size=${MEMORY_MB}`],
      setupFiles: ['tests/mutation/in-worker.ts'],
      sequence: { sequencer: InOurOrder },
      bail: 1,
      reporters: [{}],
      silent: true,
      testTimeout: 600_000,
      hookTimeout: 600_000,
    },
    {
      plugins: [
        {
          name: 'loom-mutation',
          enforce: 'pre',
          transform(source: string, id: string) {
            const file = relative(id.split('?')[0]!);
            return reading?.changed.includes(file) === true
              ? reading.read(file, source)
              : undefined;
          },
        },
      ],
    },
  );
  const specifications = new Map(
    (await vitest.globTestSpecifications()).map((one) => [relative(one.moduleId), one]),
  );

  /** The test file that began last, and the process that runs it. */
  function lastBegun(): { readonly pid: number; readonly file: string } | undefined {
    if (!existsSync(begun)) return undefined;
    const line = readFileSync(begun, 'utf8').trimEnd().split('\n').at(-1)!;
    const space = line.indexOf(' ');
    return space < 0
      ? undefined
      : { pid: Number(line.slice(0, space)), file: relative(line.slice(space + 1)) };
  }

  /** Ends what takes too long; says which test file did. */
  function watch(): { readonly stop: () => void; readonly ended: () => string | undefined } {
    let current = '';
    let from = 0;
    let seconds = 0;
    let ended: string | undefined;
    const look = () => {
      const last = lastBegun();
      if (last === undefined) return;
      const { pid, file } = last;
      seconds = Math.max(seconds, processorSeconds(pid));
      if (file !== current) [current, from] = [file, seconds];
      if (seconds - from > reading!.mostSeconds(file)) {
        ended = file;
        endProcess(pid);
      }
    };
    const timer = setInterval(look, LOOK_EVERY_MS);
    return {
      stop: () => {
        clearInterval(timer);
      },
      ended: () => ended,
    };
  }

  // A worker in an endless loop does not notice that nobody waits for it any more.
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.once(signal, () => {
      const pid = lastBegun()?.pid;
      if (pid !== undefined) endProcess(pid);
      rmSync(folder, { recursive: true, force: true });
      process.exit(1);
    });
  }

  let before: readonly string[] = [];
  return {
    run: async (files, next) => {
      rmSync(folder, { recursive: true, force: true });
      mkdirSync(folder, { recursive: true });
      for (const file of new Set([...before, ...next.changed]))
        vitest.invalidateFile(absolute(file));
      before = next.changed;
      // What failed before would be told again.
      for (const kept of [vitest.state.filesMap, vitest.state.idMap, vitest.state.errorsSet]) {
        kept.clear();
      }
      reading = next;
      order = files;
      const watching = watch();
      const { testModules, unhandledErrors } = await vitest.runTestSpecifications(
        files.map((file) => specifications.get(file)!),
        false,
      );
      watching.stop();
      const outcome = outcomeOf(testModules, unhandledErrors, watching.ended());
      if (!isSurvey || outcome.is !== 'passed') return { outcome };
      const measured = JSON.parse(readFileSync(path.join(folder, 'surveyed'), 'utf8')) as Measured;
      return { outcome, measured };
    },
    close: async () => {
      rmSync(folder, { recursive: true, force: true });
      await vitest.close();
    },
  };
}

type Modules = Awaited<
  ReturnType<Awaited<ReturnType<typeof createVitest>>['runTestSpecifications']>
>['testModules'];

function outcomeOf(
  modules: Modules,
  unhandled: readonly unknown[],
  ended: string | undefined,
): Outcome {
  if (ended !== undefined) return { is: 'endless', by: ended };
  for (const module of modules) {
    if (module.state() !== 'failed') continue;
    const failed = [...module.children.allTests('failed')][0];
    return {
      is: 'failed',
      by: relative(module.moduleId),
      test: failed?.fullName ?? 'does not load',
    };
  }
  return unhandled.length > 0
    ? { is: 'failed', by: 'the process', test: 'ended before its tests did' }
    : { is: 'passed' };
}
