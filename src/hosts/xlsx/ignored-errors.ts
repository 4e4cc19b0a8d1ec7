/**
 * Which of Excel's marks (green triangles) say nothing of these sheets: numbers in cells that are text on purpose, and
 * formulas that differ from their neighbours in a bracket. The library does not write this part of a sheet.
 */
import type { Workbook } from 'exceljs';
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
function ignoredErrors({ texts, unlike }: UnmarkedCells): string {
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

/** What follows it in a sheet, as far as the library writes it (18.3.1.99, the order of CT_Worksheet). */
const WHAT_FOLLOWS = /<(?:drawing|legacyDrawing|picture|tableParts|extLst)[ />]|<\/worksheet>/;

/** The sheet's XML with the part in its place. */
function withPart(xml: string, part: string): string {
  const at = xml.search(WHAT_FOLLOWS);
  return xml.slice(0, at) + part + xml.slice(at);
}

/** The library's writer, whose types do not tell of its steps. */
interface SheetWriter {
  addWorksheets(zip: Zip, model: unknown): Promise<void>;
}
interface Zip {
  append(content: string, options: { readonly name: string }): void;
}

/** Has the workbook written with its sheets' unmarked cells, by the sheet's number. */
export function unmark(workbook: Workbook, cellsOf: ReadonlyMap<number, UnmarkedCells>): void {
  const writer = workbook.xlsx as unknown as SheetWriter;
  const addWorksheets = writer.addWorksheets.bind(writer);
  const parts = new Map(
    [...cellsOf].map(([id, cells]) => [`xl/worksheets/sheet${id}.xml`, ignoredErrors(cells)]),
  );
  writer.addWorksheets = (zip, model) =>
    addWorksheets(
      {
        append(content, options) {
          const part = parts.get(options.name);
          zip.append(part === undefined ? content : withPart(content, part), options);
        },
      },
      model,
    );
}
