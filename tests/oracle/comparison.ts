/** A station's sheets held to the oracle, cell by cell. */
import { formatSize, type ConductorSize } from '../../src/core/size';
import { CellError, type Cell } from '../../src/functions/cell';
import type { StationValues } from '../../src/sheets/station-values';
import { LEVELS, VERDICTS, verdictsIn } from '../../src/sheets/station/verdicts';
import { distance, RELATIVE, told } from '../closeness';
import type { Days } from './days';
import type { End } from './faults';
import { NO_ANSWER, type Figure } from './figures';
import type { OracleRun, OracleStation } from './oracle';
import { reasonOf, type SetAside } from './set-aside';

export interface Tally {
  cells: number;
  /** Of those, the cells for which the oracle has no answer. */
  withoutAnswer: number;
  readonly verdicts: Map<string, number>;
  /** Volts that loads in watts are sized for, as a share of the most that would do. */
  readonly assumed: number[];
  readonly differences: string[];
  /** Differences that are put down to a fault of the sheets that is known. */
  readonly setAside: Map<SetAside, number>;
}

export function newTally(): Tally {
  return {
    cells: 0,
    withoutAnswer: 0,
    verdicts: new Map(),
    assumed: [],
    differences: [],
    setAside: new Map(),
  };
}

type Expected = number | string | typeof NO_ANSWER;

function sizeText(size: ConductorSize | typeof NO_ANSWER): Expected {
  return size === NO_ANSWER ? NO_ANSWER : formatSize(size);
}

/** What each column of the schedule is expected to hold. */
function scheduleCells(run: OracleRun) {
  return {
    runAmps: run.amps,
    suggested: sizeText(run.suggested),
    setBy: run.setBy,
    size: sizeText(run.size),
    dropVolts: run.dropVolts,
    dropShare: run.dropShare,
    pathDrop: run.pathDrop,
    fuseAmps: run.leastFuseA,
    loadVolts: run.loadVolts,
    lowVolts: run.lowVolts,
    ampacity: run.ampacityA,
    ...(run.fuseA === undefined ? {} : { fuse: run.fuseA }),
    heat: run.heatW,
  } satisfies Partial<Record<keyof StationValues['runs'][number], Expected>>;
}

const END_COLUMNS = {
  near: { faultA: 'nearFault', opensS: 'nearOpens', bearsS: 'nearBears' },
  far: { faultA: 'farFault', opensS: 'farOpens', bearsS: 'farBears' },
} as const;

/**
 * Numbers alike to 1e-9: both sides do the same arithmetic on doubles in another order, and the volts of a tree are settled
 * to 1e-9 V. Where the oracle has no answer the schedule must show an error; the Protection sheet words or a blank.
 */
function hold(
  tally: Tally,
  where: string,
  expected: Expected,
  cell: Cell | undefined,
  ask: 'error' | 'no number',
) {
  tally.cells += 1;
  if (expected === NO_ANSWER) {
    tally.withoutAnswer += 1;
    const agrees = ask === 'error' ? cell instanceof CellError : typeof cell !== 'number';
    if (!agrees) tally.differences.push(`${where}: no answer expected, not ${told(cell)}`);
  } else if (distance(expected, cell) > RELATIVE) {
    tally.differences.push(`${where}: ${expected} expected, not ${told(cell)}`);
  }
}

/** Counts what was found in a row since `before` under the faults that it is put down to, as far as it is. */
function sort(tally: Tally, before: number, reason: SetAside | undefined) {
  if (reason === undefined || tally.differences.length === before) return;
  tally.differences.length = before;
  tally.setAside.set(reason, (tally.setAside.get(reason) ?? 0) + 1);
}

export function compare(tally: Tally, title: string, ours: OracleStation, sheets: StationValues) {
  for (const [key, expected] of Object.entries(ours.days) as [keyof Days, Figure | undefined][]) {
    hold(tally, `${title}, ${key}`, expected ?? '', sheets.supply.cells[key], 'error');
  }
  for (const [row, figures] of ours.duty.entries()) {
    for (const key of ['mean', 'heating', 'daily'] as const) {
      hold(
        tally,
        `${title}, duty ${row + 1}, ${key}`,
        figures[key],
        sheets.supply.duty[row]?.[key],
        'error',
      );
    }
  }
  for (const key of [
    'cells',
    'milliohms',
    'fullRest',
    'lowRest',
    'peakAmps',
    'fullTerminal',
    'lowTerminal',
    'chargingVolts',
    'breakAmps',
  ] as const) {
    hold(tally, `${title}, ${key}`, ours.battery[key], sheets.supply.cells[key], 'error');
  }
  for (const [row, run] of ours.runs.entries()) {
    const where = (key: string) => `${title}, row ${row + 1}, ${key}`;
    const shown = sheets.runs[row]!;
    const protection = sheets.protection.rows[row]!;
    const held = (key: string, check: () => void) => {
      const before = tally.differences.length;
      check();
      sort(tally, before, reasonOf(run, sheets, row, key));
    };
    for (const [key, figure] of Object.entries(scheduleCells(run))) {
      const expected = run.isBlank ? '' : figure;
      held(key, () => hold(tally, where(key), expected, shown[key as keyof typeof shown], 'error'));
    }
    for (const end of ['near', 'far'] as const) {
      const figures: End | undefined = run.faults?.[end];
      if (figures === undefined || run.isFuseMisread) continue;
      for (const key of ['faultA', 'opensS', 'bearsS'] as const) {
        const column = END_COLUMNS[end][key];
        held(column, () =>
          hold(tally, where(column), figures[key] ?? NO_ANSWER, protection[column], 'no number'),
        );
      }
    }
    if (run.protector !== undefined && run.size !== NO_ANSWER && !run.isFuseMisread) {
      const { ratingA } = run.protector;
      held('fuse', () => hold(tally, where('its fuse'), ratingA, protection.fuse, 'no number'));
    }
    held('steady', () => hold(tally, where('steady'), run.steadyC, protection.steady, 'no number'));
    const isSteady = ours.battery.lowTerminal > STEADY * ours.battery.lowRest;
    if (sheets.supply.cells.fits === 1 && isSteady) {
      held('assumed', () => holdAssumed(tally, where('assumed'), run, shown.assumedVolts));
    }
    held('level', () => hold(tally, where('level'), levelOf(run), shown.level, 'error'));
    held('verdict', () => holdVerdict(tally, where('verdict'), run, shown.verdict));
  }
}

function holdVerdict(tally: Tally, where: string, run: OracleRun, cell: Cell) {
  tally.cells += 1;
  const text = typeof cell === 'string' ? cell : told(cell);
  const theirs = [...verdictsIn(text)].sort().join(', ');
  const ours = [...run.verdict].sort().join(', ');
  for (const key of run.verdict) tally.verdicts.set(key, (tally.verdicts.get(key) ?? 0) + 1);
  if (ours !== theirs)
    tally.differences.push(`${where}: ${ours} expected, not ${theirs} ("${text}")`);
}

/** The level of the gravest word, as the number that the sheet has for it. */
function levelOf(run: OracleRun): number {
  return 1 + Math.min(...[...run.verdict].map((key) => LEVELS.indexOf(VERDICTS[key].level)));
}

/**
 * What a load in watts without minimum volts is sized for: not more volts than its source has when low, all that counts
 * at once drawn, less its target. The sheet estimates it before sizes are known, so it may lie below: by as much as
 * LEAST_ASSUMED says, or at half the source volts, under which nothing is estimated.
 */
const LEAST_ASSUMED = 0.8;
/** Share of its resting volts above which a battery is not yet collapsing under its loads. */
const STEADY = 0.9;

function holdAssumed(tally: Tally, where: string, run: OracleRun, cell: Cell) {
  const { mostAssumableVolts: most, floorVolts } = run;
  if (most === undefined) return;
  tally.cells += 1;
  const isHeld =
    typeof cell === 'number' &&
    cell <= Math.max(most, floorVolts) &&
    cell >= Math.min(most, floorVolts / LEAST_ASSUMED) * LEAST_ASSUMED;
  if (typeof cell === 'number') tally.assumed.push(cell / most);
  if (!isHeld) tally.differences.push(`${where}: at most ${most} expected, not ${told(cell)}`);
}
