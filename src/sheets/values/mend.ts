/** What would mend a run: a thicker one on its path, a size that its fuse guards. */
import { VERDICT_JOINT } from '../../core/verdict';
import type { ResultCell } from '../../functions/cell';
import { attempt, numberIn } from '../evaluate';
import type { ProtectionResult } from '../protection-values';
import { PROTECTION_FIGURES } from '../protection/words';
import type { ScheduleRun } from '../station/run';
import { MEND_WORDS } from '../station/verdicts';
import { isError, type Column } from './rows';
import type { Gauge, SizingColumns } from './sizing';
import type { PathColumns } from './tree';

export interface MendColumns {
  readonly mendPlace: Column;
  readonly guardedFrom: Column;
  readonly mend: Column;
}

export function mendColumns(
  runs: readonly ScheduleRun[],
  above: readonly (readonly number[])[],
  { dropShare }: SizingColumns,
  { lowVolts, lowDrop, shortLow }: PathColumns,
  guard: ProtectionResult,
  gauge: Gauge,
): MendColumns {
  const lost = (row: number): number => {
    const volts = lowDrop[row];
    return typeof volts === 'number' ? volts : 0;
  };
  const mendPlace = runs.map((_, row): ResultCell => {
    if (shortLow[row] !== 1 || typeof lowVolts[row] !== 'number') return '';
    const path = [row, ...above[row]!];
    const most = Math.max(...path.map(lost));
    return path.find((at) => lost(at) === most)! + 1;
  });
  const guardedFrom = guard.rows.map(({ guardedFrom: found }): ResultCell => {
    if (found === '') return '';
    return found === PROTECTION_FIGURES.none
      ? MEND_WORDS.unguarded
      : `${MEND_WORDS.guarded}${String(found)}`;
  });
  const thicker = (run: ScheduleRun, row: number): ResultCell => {
    const place = mendPlace[row];
    if (typeof place !== 'number') return '';
    const at = place - 1;
    const none: ResultCell = MEND_WORDS.none;
    const answer = attempt(() => {
      const missing = (numberIn(run.leastVolts!) - numberIn(lowVolts[row]!)) / lost(at);
      if (!(missing < 1)) return none;
      const size = gauge('MINGAUGE', at, numberIn(dropShare[at]!) * (1 - missing));
      return isError(size)
        ? none
        : `${MEND_WORDS.mends}${runs[at]!.run ?? ''}${MEND_WORDS.inSize}${size}`;
    });
    return isError(answer) ? none : answer;
  };
  return {
    mendPlace,
    guardedFrom,
    mend: runs.map((run, row) =>
      [guardedFrom[row]!, thicker(run, row)].filter((said) => said !== '').join(VERDICT_JOINT),
    ),
  };
}
