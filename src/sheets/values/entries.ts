/** What the entries of each row say: the volts and target in force, the feeder, the load of the row itself. */
import { isBlank, type Cell, type ResultCell } from '../../functions/cell';
import { attempt, fail, numberIn } from '../evaluate';
import type { ScheduleRun } from '../station/run';
import { PANEL } from '../station/verdicts';
import type { SupplyInputs } from '../supply-values';
import { isSame, textKey, trimmed, typed, type Column, type RuleValues } from './rows';

export interface EntryColumns {
  readonly volts: Column;
  readonly target: Column;
  readonly feeder: Column;
  readonly ownLoad: Column;
  readonly ownAmps: Column;
}

const isPanel = (run: ScheduleRun) => isSame(trimmed(run.fedFrom), PANEL);

/** What was typed, or else the panel's figure or the house rule. */
function usual(run: ScheduleRun, key: 'volts' | 'target', panel: Cell, rule: Cell): ResultCell {
  if (!isBlank(typed(run, key))) return run[key]!;
  if (isBlank(typed(run, 'length'))) return '';
  return (isPanel(run) ? panel : rule) ?? '';
}

/** Current of a load: as typed, or its watts at its least volts, or else at the drop target. */
function ownAmps(run: ScheduleRun, load: ResultCell, volts: Cell, target: Cell): ResultCell {
  if (load === '' || run.kind?.toUpperCase() !== 'W') return load;
  return attempt(() => {
    const least = typed(run, 'leastVolts');
    const atVolts = isBlank(least) ? numberIn(volts) * (1 - numberIn(target)) : numberIn(least);
    return atVolts === 0 ? fail('#VALUE!', 'no volts') : numberIn(load) / atVolts;
  });
}

export function entryColumns(
  runs: readonly ScheduleRun[],
  rules: RuleValues,
  inputs: SupplyInputs,
): EntryColumns {
  const volts = runs.map((run) => usual(run, 'volts', inputs.panelVolts, rules.volts));
  const target = runs.map((run) => usual(run, 'target', inputs.panelTarget, rules.target));
  const feeder = runs.map((run) => (isPanel(run) ? '' : trimmed(run.fedFrom)));
  const feeders = new Set(feeder.map(textKey));
  const ownLoad = runs.map((run): ResultCell => {
    if (!isBlank(typed(run, 'peak'))) return run.peak!;
    const name = trimmed(run.run);
    const feedsOthers = name !== '' && feeders.has(textKey(name));
    return !isBlank(typed(run, 'length')) && feedsOthers ? 0 : '';
  });
  return {
    volts,
    target,
    feeder,
    ownLoad,
    ownAmps: runs.map((run, row) => ownAmps(run, ownLoad[row]!, volts[row]!, target[row]!)),
  };
}
