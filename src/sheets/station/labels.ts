/** What a person says of the label stock. */
import type { TypedCells } from './named-cells';

export const LABEL_CELL_KEYS = [
  'paper',
  'columns',
  'rows',
  'top',
  'bottom',
  'left',
  'right',
  'across',
  'down',
  'used',
  'widths',
] as const;
export type LabelCellKey = (typeof LABEL_CELL_KEYS)[number];

export interface LabelsTyped {
  readonly cells?: TypedCells<LabelCellKey>;
}
