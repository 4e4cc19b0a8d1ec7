/** Where each run stands among the others, and the volts that arrive through the whole path. */
import { CellError, isBlank, type Cell, type ResultCell } from '../../functions/cell';
import { callList, numberIn } from '../evaluate';
import type { ScheduleRun } from '../station/run';
import { SCHEDULE_WORDS } from '../station/verdicts';
import type { SupplyResult } from '../supply-values';
import type { EntryColumns } from './entries';
import {
  isError,
  isNA,
  textKey,
  trimmed,
  typed,
  type Column,
  type ReadyRows,
  type RuleValues,
} from './rows';
import { isFused, type SizingColumns } from './sizing';

/** Feeders that the sheet looks up above a run. */
const LEVELS_UP = 4;

export interface TreeColumns {
  readonly place1: Column;
  readonly place2: Column;
  readonly place3: Column;
  readonly place4: Column;
  readonly feederFuse: Column;
  readonly treeWord: Column;
}

export interface PathColumns {
  readonly fullSource: Column;
  readonly lowSource: Column;
  readonly loadVolts: Column;
  readonly lowVolts: Column;
  readonly shortFull: Column;
  readonly shortLow: Column;
  readonly lowDrop: Column;
}

/** First row of each name, and how many rows have it. */
function indexNames(names: readonly string[]) {
  const rowOf = new Map<string, number>();
  const count = new Map<string, number>();
  for (const [row, name] of names.entries()) {
    const key = textKey(name);
    if (!rowOf.has(key)) rowOf.set(key, row);
    count.set(key, (count.get(key) ?? 0) + 1);
  }
  return { rowOf, count };
}

/** Rows of the feeders above each run, nearest first; it ends where one is not listed. */
function feedersAbove(feederRow: readonly (number | undefined)[]): readonly (readonly number[])[] {
  return feederRow.map((first) => {
    const above: number[] = [];
    for (let at = first; at !== undefined && above.length < LEVELS_UP; at = feederRow[at]) {
      above.push(at);
    }
    return above;
  });
}

export function treeColumns(
  runs: readonly ScheduleRun[],
  { feeder, ownAmps }: EntryColumns,
  { runAmps, fuse }: SizingColumns,
  { each }: ReadyRows,
): { readonly columns: TreeColumns; readonly above: readonly (readonly number[])[] } {
  const names = runs.map((run) => trimmed(run.run));
  const { rowOf, count } = indexNames(names);
  const above = feedersAbove(
    feeder.map((name) => (name === '' ? undefined : rowOf.get(textKey(name)))),
  );
  const place = (level: number): Column =>
    above.map((rows) => {
      const row = rows[level];
      return row === undefined ? new CellError('#N/A', 'no feeder so far up') : row + 1;
    });
  const place1 = place(0);
  return {
    above,
    columns: {
      place1,
      place2: place(1),
      place3: place(2),
      place4: place(3),
      feederFuse: runs.map((run, row): ResultCell => {
        if (isFused(run)) return '';
        const fusedAt = above[row]!.find((at) => isFused(runs[at]!));
        return fusedAt === undefined ? new CellError('#N/A', 'no fuse upstream') : fuse[fusedAt]!;
      }),
      treeWord: each((_, row) => {
        const name = names[row]!;
        if (name === '') return feeder[row] === '' ? '' : SCHEDULE_WORDS.nameMissing;
        if (count.get(textKey(name))! > 1) return SCHEDULE_WORDS.nameTwice;
        if (feeder[row] !== '' && isNA(place1[row]!)) return SCHEDULE_WORDS.feederNotListed;
        // A load that cannot be read is the row's own fault, not its place's.
        if (!isError(runAmps[row]!) || typeof ownAmps[row] !== 'number') return '';
        return above[row]!.includes(row) ? SCHEDULE_WORDS.inLoop : SCHEDULE_WORDS.tiedToAnother;
      }),
    },
  };
}

/** Whether a run hangs on the battery: fed from no other, at the volts of the house rule. */
export function onBattery(rules: RuleValues, volts: Column) {
  return (run: ScheduleRun, row: number) =>
    trimmed(run.fedFrom) === '' && volts[row] === rules.volts;
}

/** 1 where a load is under its least volts or cannot be served. */
function shortOf(least: Cell, reached: ResultCell): number {
  if (isBlank(least) || isBlank(reached)) return 0;
  if (isError(reached)) return 1;
  // Any text is more than any number to a spreadsheet.
  return typeof least !== 'number' || Number(reached) < least ? 1 : 0;
}

export function pathColumns(
  runs: readonly ScheduleRun[],
  rules: RuleValues,
  supply: SupplyResult['cells'],
  { volts, feeder, ownLoad }: EntryColumns,
  { ohms, dropVolts }: SizingColumns,
  { place1 }: TreeColumns,
  { each }: ReadyRows,
): PathColumns {
  const hangsOnBattery = onBattery(rules, volts);
  const source = (terminal: 'fullTerminal' | 'lowTerminal') =>
    each((run, row) => (hangsOnBattery(run, row) ? supply[terminal] : volts[row]!));
  const solved = (from: Column) => {
    const answers = callList(
      'FEED_VOLTS',
      runs.length,
      from,
      runs.map((run) => typed(run, 'run')),
      feeder,
      ownLoad,
      runs.map((run) => typed(run, 'kind')),
      ohms,
    );
    return each((run, row) =>
      trimmed(run.run) === '' ? numberIn(from[row]!) - numberIn(dropVolts[row]!) : answers[row]!,
    );
  };
  const fullSource = source('fullTerminal');
  const lowSource = source('lowTerminal');
  const loadVolts = solved(fullSource);
  const lowVolts = solved(lowSource);
  const short = (reached: Column) =>
    runs.map((run, row) => shortOf(typed(run, 'leastVolts'), reached[row]!));
  return {
    fullSource,
    lowSource,
    loadVolts,
    lowVolts,
    shortFull: short(loadVolts),
    shortLow: short(lowVolts),
    lowDrop: each((_, row) => {
      const place = place1[row];
      const from = typeof place === 'number' ? lowVolts[place - 1]! : lowSource[row]!;
      return numberIn(from) - numberIn(lowVolts[row]!);
    }),
  };
}
