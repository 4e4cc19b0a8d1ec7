/** Whether a schedule has a Drawing sheet; nothing is typed on it. */
import { DRAWING_HEADINGS } from '../sheets/drawing/columns';
import { companion } from './labelled';
import type { RawTable } from './raw';

const DRAWING_SIGNS: readonly string[] = [DRAWING_HEADINGS.now, DRAWING_HEADINGS.drawn];

export function hasDrawing(tables: readonly RawTable[], schedule: string): boolean {
  return companion(tables, schedule, DRAWING_SIGNS) !== undefined;
}
