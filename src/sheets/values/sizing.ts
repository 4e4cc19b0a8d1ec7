/** What each run carries, the size it gets, and what that size does. */
import { isBlank, type Cell, type ResultCell } from '../../functions/cell';
import { callCell, callList, fail, numberIn } from '../evaluate';
import type { ScheduleRun } from '../station/run';
import type { EntryColumns } from './entries';
import { isSame, trimmed, typed, type Column, type ReadyRows, type RuleValues } from './rows';

export interface SizingColumns {
  readonly runAmps: Column;
  readonly suggested: Column;
  readonly setBy: Column;
  readonly size: Column;
  readonly ohms: Column;
  readonly dropVolts: Column;
  readonly dropShare: Column;
  readonly ampacity: Column;
  readonly fuse: Column;
  readonly heat: Column;
  readonly judged: Column;
}

/** MINGAUGE or GAUGE_LIMIT of a row, for its own target or another. */
export type Gauge = (id: 'MINGAUGE' | 'GAUGE_LIMIT', row: number, target?: Cell) => ResultCell;

export const isFused = (run: ScheduleRun) => !isSame(run.fused ?? '', 'no');

/** A division as a spreadsheet does it. */
function quotient(dividend: number, divisor: number): number {
  return divisor === 0 ? fail('#DIV/0!', 'a division by 0') : dividend / divisor;
}

export function sizingColumns(
  runs: readonly ScheduleRun[],
  rules: RuleValues,
  entries: EntryColumns,
  { each }: ReadyRows,
): { readonly columns: SizingColumns; readonly gauge: Gauge } {
  const { volts, target, feeder, ownAmps } = entries;
  const continuous = !isSame(rules.duty, 'bursts');
  const wire = (run: ScheduleRun): Cell[] => [rules.material, rules.tempC, typed(run, 'joints')];
  const heatRules = [rules.insulationC, rules.ambientC, rules.conductors, rules.installed];

  const names = runs.map((run) => typed(run, 'run'));
  const feedAmps = callList('FEED_AMPS', runs.length, names, feeder, ownAmps);
  const runAmps = each((run, row) => (trimmed(run.run) === '' ? ownAmps[row]! : feedAmps[row]!));
  const gauge: Gauge = (id, row, wanted = target[row]!) =>
    callCell(
      id,
      runAmps[row]!,
      typed(runs[row]!, 'length'),
      rules.unit,
      volts[row]!,
      wanted,
      ...wire(runs[row]!),
      ...heatRules,
      continuous,
      rules.series,
    );
  const suggested = each((_, row) => gauge('MINGAUGE', row));
  const size = each((run, row) =>
    isBlank(typed(run, 'ownSize')) ? suggested[row]! : run.ownSize!,
  );
  const ohms = each((run, row) =>
    callCell('RUN_OHMS', typed(run, 'length'), rules.unit, size[row]!, ...wire(run)),
  );
  const dropVolts = each((_, row) => numberIn(runAmps[row]!) * numberIn(ohms[row]!));
  return {
    gauge,
    columns: {
      runAmps,
      suggested,
      setBy: each((_, row) => gauge('GAUGE_LIMIT', row)),
      size,
      ohms,
      dropVolts,
      dropShare: each((_, row) => quotient(numberIn(dropVolts[row]!), numberIn(volts[row]!))),
      ampacity: each((_, row) => callCell('AMPACITY', size[row]!, ...heatRules, rules.material)),
      fuse: each((run, row) =>
        isFused(run)
          ? callCell(
              'FUSE_FOR',
              runAmps[row]!,
              size[row]!,
              ...heatRules,
              rules.material,
              continuous,
            )
          : 'none',
      ),
      heat: each((_, row) => numberIn(runAmps[row]!) * numberIn(dropVolts[row]!)),
      judged: each((run, row) =>
        callCell(
          'RUN_VERDICT',
          runAmps[row]!,
          typed(run, 'length'),
          rules.unit,
          volts[row]!,
          target[row]!,
          size[row]!,
          ...wire(run),
          ...heatRules,
          continuous,
        ),
      ),
    },
  };
}
