/** Named cells in the head of a sheet: each with its label, what is typed or computed, and what is said of it. */
import type { Parameter } from '../../functions/parameter';
import { area, type Area } from '../plan/area';
import { entry } from '../plan/entries';
import { PALETTE, QUIET_STYLE } from '../plan/palette';
import type { Block, CellContent, CellStyle, EntryPlan } from '../plan/plan';

export interface NamedCell {
  readonly label: string;
  /** Said beside the cell, with its source. */
  readonly note: string;
  readonly style?: CellStyle;
  /** What may be typed; any text without one. */
  readonly parameter?: Parameter;
  /** What stands in the cell of a new sheet. */
  readonly initial: CellContent;
}

export type TypedCells<Key extends string> = Readonly<Partial<Record<Key, string | number>>>;

/** Where the cells stand: one below the other, labels, values and notes each in a column; notes may be left out. */
export interface CellPlaces {
  readonly first: number;
  readonly label: number;
  readonly value: number;
  readonly note?: number;
}

export function namedCellArea<Key extends string>(
  keys: readonly Key[],
  { first, value }: CellPlaces,
  key: Key,
): Area {
  return area(first + keys.indexOf(key), value);
}

/** The cells with labels and notes. */
export function namedCellBlocks<Key extends string>(
  cells: Readonly<Record<Key, NamedCell>>,
  keys: readonly Key[],
  places: CellPlaces,
  typed: TypedCells<Key>,
): Block[] {
  return keys.flatMap((key): Block[] => {
    const { label, note, style, initial } = cells[key];
    const at = namedCellArea(keys, places, key);
    return [
      { area: area(at.row, places.label), cells: [[label]] },
      {
        area: at,
        cells: [[typed[key] ?? initial]],
        style: { border: 'all', fill: PALETTE.input, ...style, align: 'left' },
      },
      ...(places.note === undefined
        ? []
        : [{ area: area(at.row, places.note), cells: [[note]], style: QUIET_STYLE }]),
    ];
  });
}

export function namedCellEntries<Key extends string>(
  cells: Readonly<Record<Key, NamedCell>>,
  keys: readonly Key[],
  places: CellPlaces,
): EntryPlan[] {
  return keys.map((key) => {
    const { label, note, parameter } = cells[key];
    return entry(
      namedCellArea(keys, places, key),
      { title: label, sentences: [note] },
      { parameter },
    );
  });
}
