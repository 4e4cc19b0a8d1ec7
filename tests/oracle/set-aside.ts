/**
 * Faults of the sheets that the oracle found and that are not fixed yet, each by name. What they touch, and nothing else,
 * is left out of the comparison and counted; the test fails when one of them no longer occurs, so that it is taken out here.
 */
import { CellError } from '../../src/functions/cell';
import type { StationValues } from '../../src/sheets/station-values';
import { verdictsIn, type VerdictKey } from '../../src/sheets/station/verdicts';
import { NO_ANSWER } from './figures';
import type { OracleRun } from './oracle';

export const SET_ASIDE = {
  blankWatts:
    'a load in watts whose volts are blank makes errors of the figures of its row, which are blank for a load in amps',
  wireNamed:
    'My wire is named as one that cannot be used where the load of the row cannot, or its watts have no volts',
  otherTargets:
    'where the target counts in each run, a load in watts is sized as though all runs above it had its own target',
  fuseOfUnknownWire:
    'a branch without a fuse below a run without a size is told to need one, whose own wire is not known',
  unknownLoads:
    'a run below one whose amps are not known is sized, and its drop told, as though the unknown load drew nothing',
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
  const isOfVerdict = key === 'verdict' || key === 'level';
  const differ = (ours: VerdictKey, their: VerdictKey) =>
    isOfVerdict && run.verdict.has(ours) && theirs.includes(their);

  if (run.isBlank && run.isWatts) {
    if (isOfVerdict && run.hasOwnSize && differ('panelMissing', 'checkEntries')) return 'wireNamed';
    if (!isOfVerdict && shown.runAmps instanceof CellError) return 'blankWatts';
  }
  if (key === 'assumed') return run.hasOtherTargetAbove ? 'otherTargets' : undefined;
  if (run.isOfLoop && theirs.includes('tooDeep') && isOfVerdict) return 'longLoops';
  if (run.size === NO_ANSWER && !run.hasOwnSize && differ('tiedToAnother', 'needsFuse')) {
    return run.isOnUnknown && !theirs.includes('tiedToAnother')
      ? 'unknownLoads'
      : 'fuseOfUnknownWire';
  }
  return run.isOnUnknown ? 'unknownLoads' : undefined;
}
