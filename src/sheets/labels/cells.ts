/** What is typed into the head of the Labels sheet: the stock, in millimetres. */
import { numberParameter } from '../../functions/parameter';
import type { LabelCellKey } from '../station/labels';
import type { NamedCell } from '../station/named-cells';
import { PAPERS, USUAL_STOCK } from './stock';

const count = numberParameter('count', 'How many.', { least: 1, whole: true });
const mm = numberParameter('mm', 'Millimetres.', { least: 0 });
const used = numberParameter('used', 'Labels.', { least: 0, whole: true });
const share = numberParameter('share', 'Share of the width.', { least: 0.5, most: 1.5 });

const MM = { numberFormat: '0.0# "mm"' } as const;
const COUNT = { numberFormat: '0' } as const;

function measure(
  key: Exclude<LabelCellKey, 'used' | 'paper'>,
  label: string,
  note: string,
): NamedCell {
  return { label, note, style: MM, parameter: mm, initial: USUAL_STOCK[key] };
}

export const LABEL_CELLS: Readonly<Record<LabelCellKey, NamedCell>> = {
  paper: {
    label: 'Paper of the labels',
    note: 'A4 (210 by 297 mm) or Letter (215.9 by 279.4 mm).',
    parameter: {
      name: 'paper',
      meaning: 'A4 or Letter.',
      choices: Object.keys(PAPERS),
      read: (given) => given,
    },
    initial: USUAL_STOCK.paper,
  },
  columns: {
    label: 'Labels side by side',
    note: 'On a sheet of the stock. The usual figures, 24 labels of 70 by 35 mm, are common practice, from memory.',
    style: COUNT,
    parameter: count,
    initial: USUAL_STOCK.columns,
  },
  rows: {
    label: 'Labels one below the other',
    note: 'On a sheet of the stock.',
    style: COUNT,
    parameter: count,
    initial: USUAL_STOCK.rows,
  },
  top: measure('top', 'Margin above the labels', 'From the edge of the paper to the first label.'),
  bottom: measure(
    'bottom',
    'Margin below the labels',
    'From the last label to the edge of the paper.',
  ),
  left: measure(
    'left',
    'Margin left of the labels',
    'From the edge of the paper to the first label.',
  ),
  right: measure(
    'right',
    'Margin right of the labels',
    'From the last label to the edge of the paper.',
  ),
  across: measure(
    'across',
    'Gap between columns',
    'Between labels side by side; 0 where they touch.',
  ),
  down: measure(
    'down',
    'Gap between rows',
    'Between labels one below the other; 0 where they touch.',
  ),
  used: {
    label: 'Labels already used',
    note: 'Of the first sheet of the stock, counted as one reads: so many places stay empty.',
    style: COUNT,
    parameter: used,
    initial: 0,
  },
  widths: {
    label: 'Width of columns',
    note: 'Print on plain paper first and hold it against the stock. Where columns come out too wide or too narrow, change this until they fit, in a new copy.',
    style: { numberFormat: '0 %' },
    parameter: share,
    initial: USUAL_STOCK.widths,
  },
};
