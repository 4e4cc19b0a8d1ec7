/**
 * One run with each size that it could have: what the whole station is then judged, as if the size were typed, and what
 * the schedule says of the run.
 */
import { isRefusal } from '../core/outcome';
import { formatSize, parseSize, SERIES_SIZES, sizeAreaMm2, type ConductorSize } from '../core/size';
import { VERDICT_JOINT } from '../core/verdict';
import type { ResultCell } from '../functions/cell';
import { worsened } from './no-worse';
import { boughtOf, pricesOf, seriesOf } from './size-options';
import { calledRun } from './sizing-branches';
import { stationValues, type RunValues, type StationValues } from './station-values';
import type { StationContent } from './station/content';
import { COUNTS } from './station/parameters';
import { LEVELS, levelOf, type Level } from './station/verdicts';

export interface ComparedSize {
  readonly name: string;
  /** The wire of the run now. */
  readonly isInUse: boolean;
  readonly isSuggested: boolean;
  /** Lost from the source to the end of the run; undefined where that cannot be told. */
  readonly share: number | undefined;
  readonly volts: number | undefined;
  readonly ampacityA: number | undefined;
  /** Amps of the fuse that fits. */
  readonly fuseA: number | undefined;
  readonly kg: number | undefined;
  readonly cost: number | undefined;
  readonly level: Level;
  /** Why it is not ok, in words; none where it is. */
  readonly why: readonly string[];
  /** Other runs that would be worse judged, each with what would be said. */
  readonly worse: readonly string[];
  /** Fit to be taken: but for what is said of the run in every size ok or to be confirmed, and no other run is worse. */
  readonly isOffered: boolean;
}

/** The drop of the run over its length, for a chart: straight lines from what is lost without the run's own wire. */
export interface DropByLength {
  readonly oneWay: number;
  readonly unit: string;
  /** Share of the source volts that is lost at no length of the run. */
  readonly at0: number;
  readonly target: number;
  /** By size, share for a unit of length: the wire in use, and its neighbours where there are. */
  readonly lines: readonly { readonly name: string; readonly perLength: number }[];
}

export interface SizeComparison {
  readonly called: string;
  readonly sizes: readonly ComparedSize[];
  /** Undefined where the run has no length, or its drop cannot be told. */
  readonly chart: DropByLength | undefined;
}

const number = (cell: ResultCell): number | undefined =>
  typeof cell === 'number' ? cell : undefined;

/** The sizes of the series and the one in use, thinnest first. */
function sizesToCompare(content: StationContent, inUse: string): readonly ConductorSize[] {
  const used = parseSize(inUse);
  const series = SERIES_SIZES[seriesOf(content)];
  const names = new Set(series.map(formatSize));
  const all = isRefusal(used) || names.has(formatSize(used)) ? series : [...series, used];
  return [...all].sort((a, b) => sizeAreaMm2(a) - sizeAreaMm2(b));
}

function canonical(size: ResultCell): string {
  const read = typeof size === 'string' || typeof size === 'number' ? parseSize(size) : undefined;
  return read === undefined || isRefusal(read) ? '' : formatSize(read);
}

/** The words of a verdict that is not ok. */
const wordsOf = ({ verdict, level }: RunValues): readonly string[] =>
  level === LEVELS.length ? [] : String(verdict).split(VERDICT_JOINT);

const levelAt = ({ level, verdict }: RunValues): Level =>
  (typeof level === 'number' ? LEVELS[level - 1] : undefined) ?? levelOf(String(verdict));

function withSize(content: StationContent, run: number, ownSize: string): StationContent {
  return {
    ...content,
    extras: [],
    runs: content.runs.map((one, at) => (at === run ? { ...one, ownSize } : one)),
  };
}

/** What is lost for a unit of the run's own length in a size, as a share of the source volts. */
function perLength({ rules, runs }: StationValues, run: number): number | undefined {
  const row = runs[run]!;
  const [ohms, joints, oneWay, volts] = [row.ohms, row.jointOhms, row.oneWay, row.volts].map(
    number,
  );
  const amps = number(rules.counts === COUNTS[1] ? row.runAmps : row.once);
  const alone = rules.counts === COUNTS[1] ? 0 : (number(row.alone) ?? 0);
  if (ohms === undefined || joints === undefined || amps === undefined) return undefined;
  if (oneWay === undefined || volts === undefined || !(oneWay > 0)) return undefined;
  return ((amps + alone) * (ohms - joints)) / oneWay / volts;
}

const lostOf = ({ rules, runs }: StationValues, run: number) => {
  const { dropVolts, pathVolts } = runs[run]!;
  return number(rules.counts === COUNTS[1] ? dropVolts : pathVolts);
};

function chartOf(
  now: StationValues,
  run: number,
  compared: readonly { readonly name: string; readonly values: StationValues }[],
  inUse: string,
): DropByLength | undefined {
  const { oneWay, target, volts } = now.runs[run]!;
  const lost = lostOf(now, run);
  const own = perLength(now, run);
  if (typeof oneWay !== 'number' || typeof target !== 'number' || typeof volts !== 'number') {
    return undefined;
  }
  if (lost === undefined || own === undefined) return undefined;
  const at = compared.findIndex(({ name }) => name === inUse);
  const lines = compared.slice(Math.max(0, at - 1), at + 2).flatMap(({ name, values }) => {
    const slope = perLength(values, run);
    return slope === undefined ? [] : [{ name, perLength: slope }];
  });
  return {
    oneWay,
    unit: String(now.rules.unit ?? ''),
    at0: lost / volts - own * oneWay,
    target,
    lines,
  };
}

/** Sizes are tried one after another, so that others can work in between. */
export function* comparing(
  content: StationContent,
  run: number,
): Generator<number, SizeComparison | undefined> {
  const now = stationValues({ ...content, extras: [] });
  const row = now.runs[run];
  if (row === undefined || typeof row.oneWay !== 'number' || typeof row.runAmps !== 'number') {
    return undefined;
  }
  const inUse = canonical(row.size);
  const suggested = canonical(row.suggested);
  const prices = pricesOf(content);
  const compared: { name: string; values: StationValues }[] = [];
  const sizes: Omit<ComparedSize, 'isOffered'>[] = [];
  for (const size of sizesToCompare(content, inUse)) {
    const name = formatSize(size);
    yield sizes.length;
    const values = name === inUse ? now : stationValues(withSize(content, run, name));
    const its = values.runs[run]!;
    compared.push({ name, values });
    const others = worsened(now, values).filter((one) => one.run !== run);
    const bought = boughtOf(values, prices, run, size);
    const volts = lostOf(values, run);
    const source = number(its.volts);
    sizes.push({
      name,
      isInUse: name === inUse,
      isSuggested: name === suggested,
      volts,
      share: volts === undefined || source === undefined ? undefined : volts / source,
      ampacityA: number(its.ampacity),
      fuseA: number(its.fitting),
      kg: bought?.kg,
      cost: bought?.cost,
      level: levelAt(its),
      why: wordsOf(its),
      worse: others.map(
        (one) => `${calledRun(content, one.run)}: ${one.words.join('; ') || 'graver than now'}`,
      ),
    });
  }
  // What is said of the run in every size, no size cures: what else is said speaks against the size.
  const [first, ...others] = sizes.map(({ why }) => why);
  const always = new Set(first?.filter((word) => others.every((why) => why.includes(word))));
  const isFit = (why: readonly string[]) =>
    why.every((word) => always.has(word) || levelOf(word) === 'check');
  return {
    called: calledRun(content, run),
    sizes: sizes.map((size) => ({
      ...size,
      isOffered: size.worse.length === 0 && isFit(size.why),
    })),
    chart: chartOf(now, run, compared, inUse),
  };
}
