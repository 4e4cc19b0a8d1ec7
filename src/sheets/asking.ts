/** Sheets that nobody sees, which ask our functions of a run what the schedule has no column for. */
import { area, cellAddress, quotedSheetName } from './plan/area';
import type { SheetPlan } from './plan/plan';
import { columnOf, columnReferences, rowReferences } from './schedule/layout';
import type { Layout } from './station/layout';
import type { RowReferences } from './station/references';
import { COLUMN_KEYS, type ColumnKey } from './station/schedule-keys';

/** References of a zero-based row of the schedule, from another sheet. */
export function rowFromElsewhere(layout: Layout, row: number): RowReferences {
  const sheet = quotedSheetName(layout.names.sheet);
  const cell = Object.fromEntries(
    COLUMN_KEYS.map((key) => [key, `${sheet}!${cellAddress(row, columnOf(key), 'column')}`]),
  ) as Record<ColumnKey, string>;
  return { ...rowReferences(layout, row), cell, column: columnReferences(layout, true) };
}

/** A sheet of nothing but these blocks. */
export function askingSheet(name: string, blocks: SheetPlan['blocks']): SheetPlan {
  return {
    name,
    columnWidths: [],
    blocks,
    names: [],
    entries: [],
    highlights: [],
    notes: [],
    frozenRows: 0,
    frozenColumns: 0,
    print: { landscape: false, area: area(0, 0), footer: '' },
  };
}
