/** What the terminal calls a run's figures, and which of the schedule's columns each is. */
import type { ResultCell } from '../functions/cell';
import type { RunValues, StationValues } from '../sheets/station-values';
import { LEVELS, type Level } from '../sheets/station/verdicts';

/** By figure, the schedule's column. */
export const FIGURES = {
  amps: 'runAmps',
  size: 'size',
  limitedBy: 'setBy',
  dropShare: 'dropShare',
  pathDropShare: 'pathDrop',
  loadVolts: 'loadVolts',
  lowVolts: 'lowVolts',
  ampacity: 'ampacity',
  fuse: 'fuse',
  verdict: 'verdict',
  fix: 'mend',
} as const satisfies Readonly<Record<string, keyof RunValues>>;

export type Figure = keyof typeof FIGURES;
export const FIGURE_NAMES = Object.keys(FIGURES) as Figure[];

/** A figure of a run. */
export function figureOf(values: RunValues, figure: Figure): ResultCell {
  return values[FIGURES[figure]];
}

/** How grave a run's verdict is, by the sheet's own column; a row that has none is unclear. */
export function runLevel(values: RunValues): Level {
  return LEVELS[Number(values.level) - 1] ?? 'unclear';
}

/** "17 runs: 2 danger, 1 fails, 0 unclear, 3 check, 11 ok". */
export function countedByLevel(runs: StationValues['runs']): string {
  const levels = runs.map(runLevel);
  const counts = LEVELS.map((level) => `${levels.filter((one) => one === level).length} ${level}`);
  return `${runs.length === 1 ? '1 run' : `${runs.length} runs`}: ${counts.join(', ')}`;
}
