/**
 * Why the schedule says of a run what it says: each word of its verdict, each limit with its margin, and the worked
 * calculation. Every figure is one of the sheets' own, or what SHOW_WORKING answers for the entries of the row.
 */
import { fuseShare } from '../core/fuse';
import { fuseLimitA } from '../core/fuse-limit';
import { atMost } from '../core/limits';
import { isRefusal } from '../core/outcome';
import { amount } from '../core/sentence';
import { formatSize, parseSize, SERIES_SIZES } from '../core/size';
import { margin, unjudgedLines } from '../core/working';
import type { Cell, ResultCell } from '../functions/cell';
import * as parameter from '../functions/parameters/run';
import { askingSheet, rowFromElsewhere } from './asking';
import { addInSheets } from './book';
import { calculate } from './calculate/calculate';
import { area } from './plan/area';
import { text } from './plan/formula';
import { ROW } from './schedule/layout';
import { heatArguments, isContinuous, wireArguments } from './schedule/row';
import { ruled, seriesOf } from './size-options';
import { calledRun } from './sizing-branches';
import type { StationContent } from './station/content';
import { fuseLimitInForce } from './station/house-rules';
import type { Layout } from './station/layout';
import { scheduleNames } from './station/naming';
import { COUNTS } from './station/parameters';
import { PROTECTION_FIGURES, PROTECTION_WORDS } from './station/protection-words';
import { VERDICTS, verdictsIn, type VerdictKey } from './station/verdicts';
import { readStationValues, type StationValues } from './station-values';

/** A word of the verdict, why it is said, and what to do; nothing to do where it is ok. */
export interface Said {
  readonly word: string;
  readonly why: string;
  readonly remedy: string;
}

export interface RunWhy {
  readonly called: string;
  readonly said: readonly Said[];
  /** What the schedule names to be mended; empty where it names nothing. */
  readonly fix: string;
  /** Each limit with its margin, a sentence or two each; none where the row cannot be read. */
  readonly limits: readonly string[];
  /** The worked calculation, line by line; none where there is none. */
  readonly working: readonly string[];
}

const ASKING = 'Working of a run';

/** What the working is asked for, and beside it what of the rules the row's own sentences name. */
const ASKED = { working: 0, isContinuous: 1, fuseLimit: 2 } as const;

/** A run that no size of the series fits is worked for the thickest, which shows by how much none does. */
function workingSheet(layout: Layout, run: number, thickest: string) {
  const row = rowFromElsewhere(layout, ROW.first + run);
  const { cell, rule } = row;
  const working = row.call(
    'SHOW_WORKING',
    cell.runAmps,
    cell.oneWay,
    rule.unit,
    cell.volts,
    cell.target,
    `IF(ISNA(${cell.size}),${text(thickest)},${cell.size})`,
    ...wireArguments(row),
    cell.joints,
    ...heatArguments(row),
    isContinuous(row),
    fuseLimitInForce(rule),
    cell.back,
  );
  const fill = [working, isContinuous(row), fuseLimitInForce(rule)].map((formula) => `=${formula}`);
  return askingSheet(ASKING, [{ area: area(ROW.first + run, 0, 1, fill.length), fill }]);
}

/** Words beside which every figure of the row is still a figure of this run. */
const READ_ALL_THE_SAME: ReadonlySet<VerdictKey> = new Set(['notJudged', 'heatUnknown']);

/** Words that only a copy without the add-in has: it stands as it was written, and solves by rounds. */
const OF_COPIES: ReadonlySet<VerdictKey> = new Set(['notSettled', 'heatUnknown']);

const number = (cell: ResultCell | undefined): number | undefined =>
  typeof cell === 'number' ? cell : undefined;

const volts = (value: number) => amount(value, 'V', 4);
const amps = (value: number) => amount(value, 'A', 4);
const percent = (share: number) => amount(100 * share, '%');

/** How a figure stands to the least that is asked. */
function aboveLeast(value: number, least: number, keeps: boolean): string {
  if (!keeps) return `${amount(least - value, 'V')} too few`;
  return value - least > 1e-6 * least ? `${amount(value - least, 'V')} to spare` : 'just enough';
}

type RunRow = StationValues['runs'][number];

function loadLine({ runAmps, ownAmps }: RunRow): readonly string[] {
  const [all, own] = [number(runAmps), number(ownAmps)];
  if (all === undefined) return [];
  if (own === undefined || atMost(all, own)) return [`Load: it carries ${amps(all)} at most.`];
  return own === 0
    ? [`Load: it carries ${amps(all)} at most, all of it for the runs that it feeds.`]
    : [`Load: it carries ${amps(all)} at most: ${amps(own)} of its own, and what it feeds.`];
}

function wireLine({ size }: RunRow, thickest: string): readonly string[] {
  return typeof size === 'string'
    ? []
    : [`Wire: no size of the series fits; the working is for ${thickest}, the thickest.`];
}

function targetLine({ rules }: StationValues, row: RunRow): readonly string[] {
  const isEach = rules.counts === COUNTS[1];
  const lost = number(isEach ? row.dropVolts : row.pathVolts);
  const [source, target, over] = [number(row.volts), number(row.target), number(row.overDrop)];
  if (source === undefined || target === undefined) return [];
  const where = isEach ? 'in this run' : 'between the source and its end';
  const allows = `the target of ${percent(target)} allows ${volts(source * target)}`;
  if (lost === undefined) return [`Drop: ${allows} ${where}.`];
  const share = `${volts(lost)} is lost ${where}, ${percent(lost / source)} of ${volts(source)}`;
  if (over === undefined) return [`Drop: ${share}.`];
  if (!isEach && !(Number(row.ownAmps) > 0)) {
    return [
      `Drop: ${share}. It only feeds other runs; the target of ${percent(target)} counts from the source to each load.`,
    ];
  }
  const [once, alone, all] = [number(row.once), number(row.alone), number(row.runAmps)];
  const counted =
    isEach || once === undefined || all === undefined || atMost(all, once + (alone ?? 0))
      ? ''
      : ` Of the ${amps(all)}, ${amps(once + (alone ?? 0))} count at once.`;
  return [
    `Drop: ${share}; ${allows}: ${margin(lost, source * target, over === 0, 'V')}.${counted}`,
  ];
}

function voltsLines(row: RunRow, leastGiven: number | undefined): readonly string[] {
  const low = number(row.lowVolts);
  if (low === undefined) return [];
  const isLoad = Number(row.ownAmps) > 0;
  const state = Number(row.battery) > 0 ? ' with the battery low' : '';
  const arrives = `Volts: ${volts(low)} at ${isLoad ? 'the load' : 'its end'}${state}`;
  const assumed = number(row.assumedVolts);
  const held =
    leastGiven !== undefined
      ? `; the load works with ${volts(leastGiven)}: ${aboveLeast(low, leastGiven, row.shortLow === 0)}.`
      : assumed !== undefined && isLoad
        ? `; its watts were sized for ${volts(assumed)}: ${aboveLeast(low, assumed, row.fewer === 0)}.`
        : isLoad
          ? '; no minimum volts are given to hold that against.'
          : '.';
  const start = number(row.surgeVolts);
  return [
    `${arrives}${held}`,
    ...(start === undefined || leastGiven === undefined
      ? []
      : [
          `While a load starts: ${volts(start)}; the load works with ${volts(leastGiven)}: ${aboveLeast(start, leastGiven, start >= leastGiven)}.`,
        ]),
  ];
}

function heatLine({ runAmps, ampacity }: RunRow): readonly string[] {
  const [all, may] = [number(runAmps), number(ampacity)];
  if (all === undefined || may === undefined) return [];
  return [
    `Heat: the wire as installed may carry ${amps(may)}; ${amps(all)} is ${margin(all, may, atMost(all, may), 'A')}.`,
  ];
}

/** The greatest fuse of the wire in use by the rule for small wires, in words and amps; undefined where it sets none. */
function smallWireLimit({ rules }: StationValues, { size: inUse }: RunRow, limit: Cell) {
  const rule = ruled(parameter.fuseLimit, limit);
  const material = ruled(parameter.material, rules.material);
  const size = typeof inUse === 'string' ? parseSize(inUse) : undefined;
  if (size === undefined || isRefusal(size) || isRefusal(rule) || isRefusal(material)) {
    return undefined;
  }
  const limitA = fuseLimitA(rule, size, material);
  return limitA === undefined ? undefined : { rule, limitA };
}

interface FuseFacts {
  readonly isForHours: boolean;
  readonly smallWire: ReturnType<typeof smallWireLimit>;
  readonly isFusedAtEnd: boolean;
  readonly words: readonly VerdictKey[];
}

function fuseLine(
  row: RunRow,
  { isForHours, smallWire, isFusedAtEnd, words }: FuseFacts,
): readonly string[] {
  const [least, may, upstream] = [row.fuseAmps, row.ampacity, row.feederFuse].map(number);
  if (least === undefined || may === undefined) return [];
  const allowed =
    smallWire === undefined
      ? ''
      : `, and ${smallWire.rule} allows so small a wire ${amps(smallWire.limitA)}`;
  const wire = `the wire may carry ${amps(may)}${allowed}`;
  const most = Math.min(may, smallWire?.limitA ?? may);
  if (row.fuse === 'none') {
    const whose =
      upstream === undefined
        ? 'none of its own, and none above it'
        : `none of its own; the nearest above it has ${amps(upstream)}`;
    const end = isFusedAtEnd ? ', and one stands at its other end' : '';
    const judged = words.includes('needsFuse')
      ? ': that does not protect it'
      : upstream === undefined
        ? ''
        : `: ${margin(upstream, most, atMost(upstream, most), 'A')}`;
    return [`Fuse: ${whose}${end}; ${wire}${judged}.`];
  }
  const asked = isForHours
    ? `${percent(fuseShare(true))} of what its loads take for hours (NFPA 70 210.20), or all that they ever take where that is more, is ${amps(least)}`
    : `all that its loads ever take is ${amps(least)}`;
  const rating = number(row.fuse);
  if (rating === undefined) {
    return [`Fuse: ${asked}; no standard rating carries that and suits the wire: ${wire}.`];
  }
  const spare = atMost(rating, least) ? 'just that' : `${amount(rating - least, 'A')} above that`;
  return [
    `Fuse: ${asked}. Its rating is ${amps(rating)}, ${spare}; ${wire}: ${margin(rating, most, atMost(rating, most), 'A')}.`,
  ];
}

/** Whether a fuse opens before the wire is hurt, and by how much. */
function faultLine(
  end: string,
  fault: ResultCell,
  opens: ResultCell,
  bears: ResultCell,
): readonly string[] {
  const [flows, within, bearsS] = [fault, opens, bears].map(number);
  if (flows === undefined) return [];
  const short = `A short at the ${end} end draws ${amount(flows, 'A')}`;
  if (opens === PROTECTION_FIGURES.needNotOpen)
    return [`${short}; the fuse need not open at that.`];
  if (within === undefined || bearsS === undefined) return [];
  const spare = atMost(within, bearsS)
    ? `${amount(bearsS - within, 's')} to spare`
    : `${amount(within - bearsS, 's')} too late`;
  return [
    `${short}; the fuse opens within ${amount(within, 's')} and the wire bears it ${amount(bearsS, 's')}: ${spare}.`,
  ];
}

function protectionLines({ protection }: StationValues, run: number): readonly string[] {
  const row = protection.rows[run];
  const said = row?.words;
  if (
    row === undefined ||
    typeof said !== 'string' ||
    said === '' ||
    said === PROTECTION_WORDS.rowFirst
  )
    return [];
  const [steady, rated] = [number(row.steady), number(row.insulation)];
  return [
    `Protection: ${said}.`,
    ...faultLine('far', row.farFault, row.farOpens, row.farBears),
    ...faultLine('source', row.nearFault, row.nearOpens, row.nearBears),
    ...(steady === undefined || rated === undefined
      ? []
      : [
          `Steady heat: one conductor alone in still air settles at ${amount(steady, 'degC')}; its insulation is rated ${amount(rated, 'degC')}: ${margin(steady, rated, row.hot !== 1, 'degC')}.`,
        ]),
  ];
}

const keysOf = (verdict: string) =>
  verdictsIn(verdict)
    .filter((key) => !OF_COPIES.has(key))
    .join(',');

/**
 * Why the sheet says what it says of a run, from 0. Undefined where its verdict is not the one that the entries come to:
 * it has not been calculated yet, or lacks formulas.
 */
export function whyOfRun(content: StationContent, run: number, shown: string): RunWhy | undefined {
  const names = scheduleNames();
  const layout: Layout = { names, references: 'cells', rows: Math.max(1, content.runs.length) };
  const thickest = formatSize(SERIES_SIZES[seriesOf(content)].at(-1)!);
  const sheets = calculate([
    ...addInSheets(layout, { ...content, extras: [] }),
    workingSheet(layout, run, thickest),
  ]);
  const values = readStationValues(sheets, content, names);
  const row = values.runs[run];
  const words = verdictsIn(shown);
  if (row === undefined || words.length === 0 || keysOf(String(row.verdict)) !== keysOf(shown)) {
    return undefined;
  }
  const asked = (column: number) => sheets.at(ASKING, ROW.first + run, column);
  const isRead = words.every(
    (key) => VERDICTS[key].level !== 'unclear' || READ_ALL_THE_SAME.has(key),
  );
  const working = asked(ASKED.working);
  const given = content.runs[run]!;
  const fuse: FuseFacts = {
    isForHours: asked(ASKED.isContinuous) === true,
    smallWire: smallWireLimit(values, row, asked(ASKED.fuseLimit)),
    isFusedAtEnd: given.endFused === 'yes',
    words,
  };
  return {
    called: calledRun(content, run),
    said: words.map((key) => VERDICTS[key]),
    fix: typeof row.mend === 'string' ? row.mend : '',
    limits: isRead
      ? [
          ...loadLine(row),
          ...wireLine(row, thickest),
          ...targetLine(values, row),
          ...voltsLines(row, typeof given.leastVolts === 'number' ? given.leastVolts : undefined),
          ...heatLine(row),
          ...fuseLine(row, fuse),
          ...protectionLines(values, run),
        ]
      : [],
    working: isRead && typeof working === 'string' ? unjudgedLines(working) : [],
  };
}
