/**
 * How long the functions take, as ratios within one process: a call of many rows against the bare loop of the same formula
 * and against that of DCDROP; sizes as text against sizes as numbers; one call of single cells, as a filled-down formula
 * makes it; and the memory of a call beyond its result. run.ts builds and runs it, as `npm run bench` does; a name or a
 * part of one picks functions.
 */
import { spawnSync } from 'node:child_process';
import { GCProfiler } from 'node:v8';
import { CATALOGUE } from '../../src/functions/catalogue';
import type { Cell, Matrix } from '../../src/functions/cell';
import type { WorksheetFunction } from '../../src/functions/worksheet-function';
import { benchCalls, withTextSizes } from './bare-loops';

const ROWS = 100_000;
const TIMES = 9;
const SINGLE_CALLS = 2000;
const MEMORY_FLAG = '--memory';

const [picked = ''] = process.argv.slice(2).filter((given) => given !== MEMORY_FLAG);
const functions = CATALOGUE.filter(({ id }) => id.includes(picked.toUpperCase()));

function median(numbers: readonly number[]): number {
  return [...numbers].sort((one, other) => one - other)[numbers.length >> 1]!;
}

/** Nanoseconds of one of `calls` calls. */
function timed(calls: number, call: () => unknown): number {
  const start = process.hrtime.bigint();
  for (let done = 0; done < calls; done += 1) call();
  return Number(process.hrtime.bigint() - start) / calls;
}

/**
 * Median nanoseconds of each of some calls, done in turns so that a busy machine is busy for all of them alike. What takes
 * seconds is timed once.
 */
function medians(calls: number, each: readonly (() => unknown)[]): readonly number[] {
  const first = each.map((call) => timed(calls, call));
  const times = Math.max(...first) * calls > 1e9 ? 1 : TIMES;
  const all = Array.from({ length: times }, () => each.map((call) => timed(calls, call)));
  return each.map((_, at) => median(all.map((one) => one[at]!)));
}

/** Every argument of a single-cell call as text where it can be one, as in a sheet that was typed by hand. */
function singleCells(entry: WorksheetFunction, asText: boolean): readonly (Matrix | undefined)[] {
  return entry.example.given.map((given, at): Matrix | undefined => {
    if (given === null) return undefined;
    if (Array.isArray(given)) return given as Matrix;
    const { bounds } = entry.takes[at]!;
    const cell = given as Cell;
    return [[asText && bounds !== undefined && typeof cell === 'number' ? String(cell) : cell]];
  });
}

/** Bytes a row that live during a call beyond its result, and those of the result. */
function memoryOf(
  call: () => unknown,
  rows: number,
): { readonly beyond: number; readonly result: number } {
  const { gc } = globalThis as { gc?: () => void };
  if (gc === undefined) throw new Error('run with --expose-gc');
  const bytes = ({ heapUsed, external }: NodeJS.MemoryUsage) => heapUsed + external;
  call();
  gc();
  const before = bytes(process.memoryUsage());
  const profiler = new GCProfiler();
  profiler.start();
  const result = call();
  const { statistics } = profiler.stop();
  gc();
  const held = bytes(process.memoryUsage()) - before;
  const most = Math.max(
    ...statistics.map(
      ({ afterGC }) => afterGC.heapStatistics.usedHeapSize + afterGC.heapStatistics.externalMemory,
    ),
    before + held,
  );
  if (result === undefined) throw new Error('no result');
  return { beyond: (most - before - held) / rows, result: held / rows };
}

/** Measured where every few rows are collected, so that what is seen after a collection is what lives. */
function tellMemory(): void {
  const calls = benchCalls(ROWS);
  for (const entry of functions) {
    const call = calls[entry.id]!;
    const rows = call.given.reduce((most, { length }) => Math.max(most, length), 1);
    const { beyond, result } = memoryOf(() => entry.evaluate(call.given), rows);
    console.log(`${entry.id} ${Math.round(beyond)} ${Math.round(result)}`);
  }
}

function readMemory(): ReadonlyMap<string, readonly string[]> {
  const flags = ['--expose-gc', '--max-semi-space-size=1', ...process.execArgv];
  const { stdout, stderr } = spawnSync(
    process.execPath,
    [...flags, process.argv[1]!, MEMORY_FLAG, picked],
    { encoding: 'utf8', maxBuffer: 2 ** 24 },
  );
  if (stderr.includes('Error')) throw new Error(stderr);
  return new Map(
    stdout
      .trim()
      .split('\n')
      .map((line) => {
        const [id = '', ...numbers] = line.split(' ');
        return [id, numbers] as const;
      }),
  );
}

function tellTimes(): void {
  const calls = benchCalls(ROWS);
  const memory = readMemory();
  const ofDcdrop = calls['DCDROP']!.bare;
  const dcdrop = medians(1, [ofDcdrop])[0]! / ROWS;
  console.log(`${ROWS} rows a call; the bare loop of DCDROP takes ${dcdrop.toFixed(0)} ns a row\n`);
  console.log(
    [
      'x its own bare loop',
      'x that of DCDROP',
      'sizes as text x as numbers',
      'ns a row',
      'µs a single call',
      'µs all as text',
      'bytes a row beyond the result',
      'of the result',
    ]
      .map((head, at) => `${at + 1} ${head}`)
      .join('; '),
  );
  const heads = ['own', 'drop', 'text', 'ns', 'single', 'texts', 'beyond', 'result'];
  console.log(`\n${heads.map((head) => head.padStart(8)).join('')}`);
  for (const entry of functions) {
    const call = calls[entry.id]!;
    const rows = call.given.reduce((most, { length }) => Math.max(most, length), 1);
    const texts = withTextSizes(call);
    const [drop, bare, ours, text] = medians(1, [
      ofDcdrop,
      call.bare,
      () => entry.evaluate(call.given),
      () => entry.evaluate(texts),
    ]) as [number, number, number, number];
    const cells = singleCells(entry, false);
    const textCells = singleCells(entry, true);
    const [single, textSingle] = medians(SINGLE_CALLS, [
      () => entry.evaluate(cells),
      () => entry.evaluate(textCells),
    ]) as [number, number];
    const figures = [
      (ours / bare).toFixed(1),
      (ours / rows / (drop / ROWS)).toFixed(1),
      call.sizeAt === undefined ? '-' : (text / ours).toFixed(2),
      (ours / rows).toFixed(0),
      (single / 1000).toFixed(2),
      (textSingle / 1000).toFixed(2),
      ...(memory.get(entry.id) ?? ['?', '?']),
    ];
    console.log(`${figures.map((figure) => figure.padStart(8)).join('')}  ${entry.id}`);
  }
}

if (process.argv.includes(MEMORY_FLAG)) tellMemory();
else tellTimes();
