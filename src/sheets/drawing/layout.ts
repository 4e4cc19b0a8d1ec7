/**
 * Where the parts of the Drawing sheet stand: the head, the picture below it, and workings out of sight left of both. Right
 * of them they would be printed as empty pages, since all of the sheet is printed.
 */
import { area, areaAddress, cellAddress, type Area } from '../plan/area';
import { runsFollowed } from '../schedule/layout';
import { EXTRAS } from '../station/extras';
import type { Layout } from '../station/layout';
import type { ScheduleNames } from '../station/naming';

/** Zero-based rows of the sheet's parts; the picture lies over empty cells from its row on. */
export const DRAWING_ROW = { title: 0, about: 1, warning: 2, picture: 4 } as const;

/**
 * Columns under the picture: narrow ones, of which a page cuts off none that the picture reaches, and as many as the widest
 * paper needs. A column's width differs from one spreadsheet to the next by a third, a picture's does not.
 */
export const PICTURE_COLUMNS = 130;
export const PICTURE_COLUMN_CHARS = 1.3;

/** By the run's place in the schedule: what the picture says of it, and a text by which it is told whether that changed. */
export const DRAWING_KEYS = ['there', 'name', 'far', 'wire', 'length', 'now', 'drawn'] as const;
export type DrawingKey = (typeof DRAWING_KEYS)[number];

/** The first column in sight. */
export const PICTURE_COLUMN = DRAWING_KEYS.length;
export const DRAWING_WORKING_COLUMNS: readonly number[] = DRAWING_KEYS.map((_, index) => index);

export function drawingName(names: ScheduleNames): string {
  return names.sheetNamed(EXTRAS.drawing.sheetName);
}

export function drawingArea(key: DrawingKey, layout: Layout): Area {
  return area(DRAWING_ROW.picture, DRAWING_KEYS.indexOf(key), runsFollowed(layout), 1);
}

export interface DrawingReferences {
  readonly cell: Readonly<Record<DrawingKey, string>>;
  readonly column: Readonly<Record<DrawingKey, string>>;
  /** The row's number from 1. */
  readonly number: string;
}

function keyed(point: (key: DrawingKey) => string) {
  return Object.fromEntries(DRAWING_KEYS.map((key) => [key, point(key)])) as Record<
    DrawingKey,
    string
  >;
}

export function drawingReferences(layout: Layout): DrawingReferences {
  const of = (key: DrawingKey) => drawingArea(key, layout);
  return {
    cell: keyed((key) => cellAddress(of(key).row, of(key).column, 'column')),
    column: keyed((key) => areaAddress(of(key), 'both')),
    number: `(ROW()-ROW(${cellAddress(DRAWING_ROW.picture - 1, 0, 'both')}))`,
  };
}
