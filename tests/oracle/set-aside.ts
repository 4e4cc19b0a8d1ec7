/**
 * Faults of the sheets that the oracle found and that are not fixed yet, each by name. What they touch, and nothing else,
 * is left out of the comparison and counted; the test fails when one of them no longer occurs, so that it is taken out here.
 */
import { CellError } from '../../src/functions/cell';
import type { StationValues } from '../../src/sheets/station-values';
import { verdictsIn, type VerdictKey } from '../../src/sheets/station/verdicts';
import type { OracleRun } from './oracle';

export const SET_ASIDE = {
  blankWatts:
    'a load in watts whose volts are blank makes errors of the figures of its row, which are blank for a load in amps',
  unknownLoads:
    'a run below one that has a wire of its own and amps that are not known is sized as though the unknown load drew nothing',
  untoldDrop:
    'the drop to the load is told where amps on its path are not known, or its tree is too deep',
  unknownSag:
    'volts of loads in watts are assumed lower for amps of runs whose tree is not known, which the terminal volts leave out',
  longLoops:
    'a run in a loop of five or more, or more than one run below a loop, is told that more than four runs are above it',
} as const;

export type SetAside = keyof typeof SET_ASIDE;

/** The fault that a difference in one cell of a row is put down to; nothing where it is none of these. */
export function reasonOf(
  run: OracleRun,
  sheets: StationValues,
  row: number,
  key: string,
): SetAside | undefined {
  const shown = sheets.runs[row]!;
  const theirs = verdictsIn(String(shown.verdict));
  const isOfVerdict = ['finding', 'verdict', 'level'].includes(key);
  const isTied = run.verdict.has('tiedToAnother');

  if (run.isBlank && run.isWatts && !isOfVerdict && shown.runAmps instanceof CellError) {
    return 'blankWatts';
  }
  if (key === 'assumed') {
    const isLower = Number(shown.assumedVolts) < (run.mostAssumableVolts ?? 0);
    return run.isBesideUnknown && isLower ? 'unknownSag' : undefined;
  }
  if (run.isOfLoop) return isOfVerdict && theirs.includes('tooDeep') ? 'longLoops' : undefined;
  if (key === 'pathDrop' && run.isOnUnknown && typeof shown.pathDrop === 'number') {
    return 'untoldDrop';
  }
  const isTiedToo = theirs.includes('tiedToAnother');
  // Never may such a run pass for one that is well.
  const isWary = ['voltsUnknown', 'noRoom'].some((word) => theirs.includes(word as VerdictKey));
  const isSaid = (isTied && !isTiedToo && isWary) || run.isFuseMisread;
  return isSaid && run.isBelowUnknown ? 'unknownLoads' : undefined;
}
