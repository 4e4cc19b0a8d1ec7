/**
 * What every computed cell of a station's sheets comes to, outside any spreadsheet: the figures that a written workbook
 * shows before anything calculates, the verdicts a terminal prints, and what tests hold spreadsheets to. It follows the
 * columns of `schedule-formulas`; the steps stand in `values`.
 */
import type { ResultCell } from '../functions/cell';
import type { StationContent } from './book';
import { protectionValues, type ProtectionResult } from './protection-values';
import type { FormulaKey } from './schedule/formulas';
import { supplyInputs, supplyResults, type SupplyResult } from './supply-values';
import { entryColumns } from './values/entries';
import { mendColumns } from './values/mend';
import { readyRows, ruleValues, type Column, type RuleValues } from './values/rows';
import { sizingColumns } from './values/sizing';
import { onBattery, pathColumns, treeColumns } from './values/tree';
import { verdictColumns } from './values/verdicts';

export type RunValues = Readonly<Record<FormulaKey, ResultCell>>;

export interface StationValues {
  readonly rules: RuleValues;
  readonly runs: readonly RunValues[];
  readonly supply: SupplyResult;
  readonly protection: ProtectionResult;
}

/** Values of every computed column, row by row. */
export function stationValues(content: StationContent): StationValues {
  const { runs } = content;
  const rules = ruleValues(content.rules);
  const inputs = supplyInputs(content.supply);

  const entries = entryColumns(runs, rules, inputs);
  const ready = readyRows(runs, entries);
  const { columns: sizing, gauge } = sizingColumns(runs, rules, entries, ready);
  const { columns: tree, above } = treeColumns(runs, entries, sizing, ready);

  const hangsOnBattery = onBattery(rules, entries.volts);
  const batteryAmps = ready.each((run, row) => {
    const amps = sizing.runAmps[row];
    return hangsOnBattery(run, row) && typeof amps === 'number' ? Math.max(0, amps) : 0;
  });
  const supply = supplyResults(inputs, batteryAmps, content.duty ?? []);
  const path = pathColumns(runs, rules, supply.cells, entries, sizing, tree, ready);
  const guard = protectionValues({
    runs,
    rules,
    supply: supply.cells,
    columns: { ...entries, ...sizing, ...tree },
    typed: content.protection,
  });
  const protection = ready.each((_, row) => guard.rows[row]!.wrong);

  const columns = {
    ...entries,
    ...sizing,
    ...tree,
    batteryAmps,
    ...path,
    protection,
    ...mendColumns(runs, above, sizing, path, guard, gauge),
    ...verdictColumns(runs, entries, sizing, tree, path, protection, ready),
  } satisfies Readonly<Record<FormulaKey, Column>>;
  const keys = Object.keys(columns) as FormulaKey[];
  return {
    rules,
    supply: supply.withShortages(path.shortFull, path.shortLow),
    protection: guard,
    runs: runs.map(
      (_, row) =>
        Object.fromEntries(keys.map((key) => [key, columns[key][row]!])) as unknown as RunValues,
    ),
  };
}
