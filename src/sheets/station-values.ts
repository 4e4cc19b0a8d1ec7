/**
 * What every computed cell of a station's sheets comes to outside any spreadsheet: the figures that a written workbook
 * shows before anything calculates, and the verdicts a terminal prints. The formulas themselves are evaluated.
 */
import type { Cell, ResultCell } from '../functions/cell';
import { addInSheets } from './book';
import { calculate, type Calculated } from './calculate/calculate';
import type { Area } from './plan/area';
import { protectionArea, protectionCell } from './protection/layout';
import { SCHEDULE_FORMULAS, type FormulaKey } from './schedule/formulas';
import { ruleAreas } from './rules/layout';
import { columnArea } from './schedule/layout';
import type { StationContent } from './station/content';
import type { RuleKey } from './station/house-rules';
import type { Layout } from './station/layout';
import { scheduleNames, type ScheduleNames } from './station/naming';
import {
  PROTECTION_CELL_KEYS,
  PROTECTION_KEYS,
  type ProtectionCellKey,
  type ProtectionKey,
} from './station/protection-keys';
import { SOURCE_COLUMNS } from './station/sources';
import { PANEL_KEYS, SUPPLY_KEYS, type SupplyKey } from './station/supply-keys';
import { DUTY, ROWS as SUPPLY_ROWS, supplyArea } from './supply/layout';

export type RunValues = Readonly<Record<FormulaKey, ResultCell>>;
export type DutyValues = Readonly<Record<'mean' | 'heating' | 'daily', ResultCell>>;

export type SourceValues = Readonly<Record<SupplyKey, ResultCell>>;

export interface StationValues {
  readonly rules: Readonly<Record<RuleKey, Cell>>;
  readonly runs: readonly RunValues[];
  readonly supply: {
    /** Of the first source, and of the first panel what is said of panels alone. */
    readonly cells: SourceValues;
    readonly sources: readonly SourceValues[];
    readonly duty: readonly DutyValues[];
  };
  readonly protection: {
    readonly cells: Readonly<Record<ProtectionCellKey, ResultCell>>;
    readonly rows: readonly Readonly<Record<ProtectionKey, ResultCell>>[];
  };
  /** Every cell of the sheets, by the sheet's name. */
  readonly sheets: Calculated;
}

const FORMULA_KEYS = Object.keys(SCHEDULE_FORMULAS) as FormulaKey[];

function keyed<Key extends string, Value>(keys: readonly Key[], value: (key: Key) => Value) {
  return Object.fromEntries(keys.map((key) => [key, value(key)])) as Record<Key, Value>;
}

/** Made when it is first asked for. */
function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | undefined;
  return () => (made ??= { value: make() }).value;
}

/** Reads the values of a station out of its calculated sheets, whichever form their formulas have. */
export function readStationValues(
  sheets: Calculated,
  content: StationContent,
  names: ScheduleNames,
): StationValues {
  const at = (sheet: string, { row, column }: Area, down = 0): Cell =>
    sheets.at(sheet, row + down, column);
  const result = (sheet: string, area: Area, down = 0): ResultCell => at(sheet, area, down) ?? '';
  const ofSource = (key: SupplyKey, source: number) =>
    result(names.supplySheet, supplyArea(key, source));
  const columns = Array.from({ length: SOURCE_COLUMNS }, (_, source) => source);
  const supply = (): StationValues['supply'] => {
    const panel = columns.find((source) => ofSource('kind', source) === 'panel') ?? 0;
    const sources = once(() =>
      columns.map((source) => keyed(SUPPLY_KEYS, (key) => ofSource(key, source))),
    );
    return {
      get sources() {
        return sources();
      },
      cells: {
        ...keyed(SUPPLY_KEYS, (key) => ofSource(key, 0)),
        ...keyed(PANEL_KEYS, (key) => ofSource(key, panel)),
      },
      duty: (content.duty ?? []).map((_, row) =>
        keyed(
          ['mean', 'heating', 'daily'] as const,
          (key) => sheets.at(names.supplySheet, SUPPLY_ROWS.dutyFirst + row, DUTY[key]) ?? '',
        ),
      ),
    };
  };
  const parts = {
    rules: once(
      () =>
        Object.fromEntries(
          ruleAreas().map(([key, area]) => [key, at(names.rulesSheet, area)]),
        ) as Record<RuleKey, Cell>,
    ),
    runs: once(() =>
      content.runs.map((_, row) =>
        keyed(FORMULA_KEYS, (key) => result(names.sheet, columnArea(key, 1), row)),
      ),
    ),
    supply: once(supply),
    protection: once(() => ({
      cells: keyed(PROTECTION_CELL_KEYS, (key) =>
        result(names.protectionSheet, protectionCell(key)),
      ),
      rows: content.runs.map((_, row) =>
        keyed(PROTECTION_KEYS, (key) => result(names.protectionSheet, protectionArea(key, 1), row)),
      ),
    })),
  };
  // Few ask for all: what nobody reads is not calculated.
  return {
    sheets,
    get rules() {
      return parts.rules();
    },
    get runs() {
      return parts.runs();
    },
    get supply() {
      return parts.supply();
    },
    get protection() {
      return parts.protection();
    },
  };
}

/** Values of a station, by the formulas that call our functions. */
export function stationValues(
  content: StationContent,
  names: ScheduleNames = scheduleNames(),
): StationValues {
  const layout: Layout = { names, references: 'cells', rows: Math.max(1, content.runs.length) };
  return readStationValues(calculate(addInSheets(layout, content)), content, names);
}
