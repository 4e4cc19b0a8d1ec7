/**
 * Which of Excel's marks (green triangles) say nothing of these sheets: numbers in cells that are text on purpose, and
 * formulas that differ from their neighbours in a bracket. The library does not write this part of a sheet.
 */
import { area, areaAddress, type Area } from '../../sheets/plan/area';
import { placesTogether } from '../../sheets/plan/stretches';

export interface Place {
  readonly row: number;
  readonly column: number;
}

export interface UnmarkedCells {
  /** Text cells, where a figure is text on purpose. */
  readonly texts: readonly Place[];
  /** Formulas unlike those above and below them. */
  readonly unlike: readonly Place[];
}

/** The cells as few areas: stretches of a column, side by side where they are alike. */
export function areasOf(places: readonly Place[]): readonly Area[] {
  const rowsOf = new Map<number, number[]>();
  for (const { row, column } of places) {
    const rows = rowsOf.get(column);
    if (rows === undefined) rowsOf.set(column, [row]);
    else rows.push(row);
  }
  const columnsOf = new Map<string, number[]>();
  for (const [column, rows] of rowsOf) {
    for (const { first, count } of placesTogether(rows)) {
      const key = `${first} ${count}`;
      const columns = columnsOf.get(key);
      if (columns === undefined) columnsOf.set(key, [column]);
      else columns.push(column);
    }
  }
  return [...columnsOf].flatMap(([key, columns]) => {
    const [first = 0, count = 0] = key.split(' ').map(Number);
    return placesTogether(columns).map((side) => area(first, side.first, count, side.count));
  });
}

/** ECMA-376 part 1, 18.3.1.51 and 18.3.1.52 (ignoredErrors, ignoredError). */
export function ignoredErrors({ texts, unlike }: UnmarkedCells): string {
  const parts = (
    [
      ['numberStoredAsText', texts],
      ['formula', unlike],
    ] as const
  ).flatMap(([mark, places]) =>
    places.length === 0
      ? []
      : [
          `<ignoredError sqref="${areasOf(places)
            .map((one) => areaAddress(one))
            .join(' ')}" ${mark}="1"/>`,
        ],
  );
  return parts.length === 0 ? '' : `<ignoredErrors>${parts.join('')}</ignoredErrors>`;
}
