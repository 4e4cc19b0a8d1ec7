/** What the terminal calls a run's figures, and which of the schedule's columns each is. */
import { CellError, type ResultCell } from '../functions/cell';
import type { RunValues, StationValues } from '../sheets/station-values';
import { LEVELS, levelOf, type Level } from '../sheets/station/verdicts';

/** By figure, the schedule's column; null for one that no column holds. */
export const FIGURES = {
  amps: 'runAmps',
  size: 'size',
  limitedBy: 'setBy',
  dropShare: 'dropShare',
  pathDropShare: null,
  loadVolts: 'loadVolts',
  lowVolts: 'lowVolts',
  ampacity: 'ampacity',
  fuse: 'fuse',
  verdict: 'verdict',
  fix: 'mend',
} as const satisfies Readonly<Record<string, keyof RunValues | null>>;

export type Figure = keyof typeof FIGURES;
export const FIGURE_NAMES = Object.keys(FIGURES) as Figure[];

/** A figure of a run; blank where no column holds it. */
export function figureOf(values: RunValues, figure: Figure): ResultCell {
  const column = FIGURES[figure];
  return column === null ? '' : values[column];
}

/** How grave a run's verdict is. */
export function runLevel(values: RunValues): Level {
  const verdict = figureOf(values, 'verdict');
  return levelOf(verdict instanceof CellError ? '' : String(verdict));
}

/** "17 runs: 2 danger, 1 fails, 0 unclear, 3 check, 11 ok". */
export function countedByLevel(runs: StationValues['runs']): string {
  const levels = runs.map(runLevel);
  const counts = LEVELS.map((level) => `${levels.filter((one) => one === level).length} ${level}`);
  return `${runs.length === 1 ? '1 run' : `${runs.length} runs`}: ${counts.join(', ')}`;
}
