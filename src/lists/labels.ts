/** What is typed on a Labels sheet: the stock. */
import { LABEL_CELLS } from '../sheets/labels/cells';
import { CELL_PLACES } from '../sheets/labels/layout';
import { LABEL_CELL_KEYS, type LabelsTyped } from '../sheets/station/labels';
import { companion, typedBeside } from './labelled';
import type { RawTable } from './raw';

const SIGNS = LABEL_CELL_KEYS.map((key) => LABEL_CELLS[key].label);

/** The stock of the Labels sheet that belongs to the schedule on a sheet; undefined where there is none. */
export function readLabels(tables: readonly RawTable[], schedule: string): LabelsTyped | undefined {
  const table = companion(tables, schedule, SIGNS);
  if (table === undefined) return undefined;
  const right = CELL_PLACES.value - CELL_PLACES.label;
  const cells = typedBeside(
    table.rows,
    LABEL_CELL_KEYS.map((key) => ({ key, label: LABEL_CELLS[key].label, right })),
  );
  return { cells };
}
