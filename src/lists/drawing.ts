/** The Drawing sheet of a schedule; nothing is typed on it. */
import { DRAWING_HEADINGS } from '../sheets/drawing/columns';
import type { ComputedGrid } from '../sheets/plan/grid';
import { companion } from './labelled';
import { cellText, type RawTable } from './raw';
import { gridTable } from './raw-grid';

const { now, drawn } = DRAWING_HEADINGS;

export function hasDrawing(tables: readonly RawTable[], schedule: string): boolean {
  return companion(tables, schedule, [now, drawn]) !== undefined;
}

/** A text that says what was drawn of a run, and its cell. */
export interface DrawnCell {
  readonly row: number;
  readonly column: number;
  readonly content: string;
}

export interface DrawingInView {
  readonly sheetName: string;
  /** What has to stand in the cells that say what was drawn, once it is drawn as it is now. */
  readonly drawn: readonly DrawnCell[];
}

/** The Drawing sheet of the schedule on a sheet; undefined where there is none. */
export function drawingIn(
  grids: readonly ComputedGrid[],
  schedule: string,
): DrawingInView | undefined {
  const sheetName = companion(grids.map(gridTable), schedule, [now, drawn])?.sheetName;
  const values = grids.find((grid) => grid.sheetName === sheetName)?.values;
  if (sheetName === undefined || values === undefined) return undefined;
  const header = values.findIndex((cells) => cells.includes(now) && cells.includes(drawn));
  const [from, to] = [now, drawn].map((heading) => values[header]?.indexOf(heading) ?? -1);
  return {
    sheetName,
    drawn: values.slice(header + 1).map((cells, below) => ({
      row: header + 1 + below,
      column: to!,
      content: cellText({ value: cells[from!] ?? null }),
    })),
  };
}
