/** The schedule of an open workbook, read from its sheets as a person typed them. */
import { HOUSE_RULES, RULE_KEYS, type RuleKey } from '../sheets/station/house-rules';
import { PROTECTION_CELLS } from '../sheets/protection/cells';
import { HEAD } from '../sheets/protection/layout';
import { RULES_COLUMN } from '../sheets/rules/layout';
import { SUPPLY_CELLS } from '../sheets/supply/cells';
import type { ComputedGrid } from '../sheets/plan/grid';
import { extrasIn, withExtrasOf } from './extras';
import { fusesIn, withFuses } from './fuses';
import { gridTable } from './raw-grid';
import { companion, labelPlace, typedBeside, type Labelled } from './labelled';
import { ruleUnit, usualUnit } from './length-unit';
import { cellText, isEmpty, type RawRow, type RawTable } from './raw';
import { PROTECTION_SIGNS } from './run-entries';
import { dutyIn, PROTECTION_TYPED } from './rules';
import { readRows } from './runs';
import { findList } from './table';
import {
  FORMER_LABELS,
  FORMER_RULE_COLUMNS,
  LASTING_RULES,
  OLDEST_RULE_COLUMNS,
  LASTING_SUPPLY,
} from '../sheets/station/former';
import type { StationContent } from '../sheets/station/content';
import { SOURCE_COLUMNS, supplyContent } from '../sheets/station/sources';
import { SUPPLY_KEYS, type SupplyKey } from '../sheets/station/supply-keys';

/** Labels as they are, and behind them as they were in old workbooks. */
const RULE_LABELS = RULE_KEYS.map((key): Labelled<RuleKey> => ({
  key,
  label: HOUSE_RULES[key].label,
  right: RULES_COLUMN.value - RULES_COLUMN.label,
}));
/** The rules as they stood over the runs. */
const FORMER_RULE_LABELS = RULE_KEYS.flatMap((key): Labelled<RuleKey>[] =>
  [HOUSE_RULES[key].label, FORMER_LABELS[key] ?? []]
    .flat()
    .map((label) => ({ key, label, right: FORMER_RULE_COLUMNS[key] })),
);
const SUPPLY_LABELS = SUPPLY_KEYS.flatMap((key): Labelled<SupplyKey>[] =>
  [SUPPLY_CELLS[key].label, FORMER_LABELS[key] ?? []]
    .flat()
    .map((label) => ({ key, label, right: 1 })),
);
const PROTECTION_LABELS = PROTECTION_TYPED.map((key) => ({
  key,
  label: PROTECTION_CELLS[key].label,
  right: HEAD.value - HEAD.label,
}));

/** The house rules on their sheet, or in the head of a schedule, where an old one has them. */
function rulesIn(tables: readonly RawTable[], schedule: string, head: readonly RawRow[]) {
  if (labelPlace(head, HOUSE_RULES.unit.label) === undefined) {
    const labels = LASTING_RULES.map((key) => HOUSE_RULES[key].label);
    return typedBeside(companion(tables, schedule, labels)?.rows ?? [], RULE_LABELS);
  }
  const isOldest = labelPlace(head, HOUSE_RULES.counts.label) === undefined;
  return typedBeside(head, FORMER_RULE_LABELS, ({ key, right }) =>
    isOldest ? (OLDEST_RULE_COLUMNS[key] ?? right) : right,
  );
}

/** The sources of a Supply sheet; an old one has a column for all. */
function sourcesIn(rows: readonly RawRow[]): Pick<StationContent, 'supply' | 'sources'> {
  if (labelPlace(rows, SUPPLY_CELLS.kind.label) === undefined) {
    return { supply: typedBeside(rows, SUPPLY_LABELS) };
  }
  return supplyContent(
    Array.from({ length: SOURCE_COLUMNS }, (_, source) =>
      typedBeside(rows, SUPPLY_LABELS, ({ right }) => right + source),
    ),
  );
}

/** A schedule with its supply and protection, and where its runs stand. */
export interface OpenStation {
  readonly content: StationContent;
  /** For each run its row on the sheet, from 0. */
  readonly rows: readonly number[];
}

/** The schedule on a sheet with its supply and protection; undefined where the sheet holds none of ours. */
export function stationOf(
  grids: readonly ComputedGrid[],
  sheetName: string,
): StationContent | undefined {
  return openStation(grids, sheetName)?.content;
}

/** The same with the places of its runs. */
export function openStation(
  grids: readonly ComputedGrid[],
  sheetName: string,
): OpenStation | undefined {
  const tables = grids.map(gridTable);
  const table = tables.find((one) => one.sheetName === sheetName);
  const list = table === undefined ? undefined : findList([table]);
  if (table === undefined || list?.ours !== true) return undefined;
  const head = table.rows.slice(0, list.headerIndex);
  const rules = rulesIn(tables, sheetName, head);
  const unit = ruleUnit(rules.unit) ?? usualUnit();
  const supply = companion(
    tables,
    sheetName,
    LASTING_SUPPLY.map((key) => SUPPLY_CELLS[key].label),
  );
  const sources = sourcesIn(supply?.rows ?? []);
  const { runs, places } = readRows(list, { given: unit, wanted: unit }, sources.sources);
  const protection = companion(tables, sheetName, PROTECTION_SIGNS);
  const title = head[0]?.cells.find((cell) => !isEmpty(cell));
  const content: StationContent = {
    runs,
    rules,
    ...sources,
    protection: withFuses(
      typedBeside(protection?.rows ?? [], PROTECTION_LABELS),
      fusesIn(protection),
      places,
      runs,
    ),
    duty: dutyIn(supply),
    ...withExtrasOf(extrasIn(tables, sheetName), places, runs),
    title: title === undefined ? sheetName : cellText(title),
  };
  // Lines count from 1.
  const { line } = table.rows[list.headerIndex]!;
  return { content, rows: places.map((place) => line + place) };
}
