/** Parts of a sheet's XML that are ours: its cells, which of them carry no mark of a fault, and what lies over them. */
import type { Workbook } from 'exceljs';
import type { CellStyle } from '../../sheets/plan/plan';
import type { SheetCells, Shares } from './cells';
import { ignoredErrors } from './ignored-errors';
import { cellStyle, DEFAULT_FONT } from './styles';
import { bytesOf, type Bytes } from './xml';

/** The library's writer, whose types do not tell of its steps. */
interface SheetWriter {
  prepareModel(model: Book, options: object): void;
  addWorksheets(zip: Zip, model: Book): Promise<void>;
}
interface Zip {
  append(content: string, options: { readonly name: string }): void;
}
interface Book {
  readonly styles: {
    addStyleModel(style: ReturnType<typeof cellStyle>): number;
    /** Its fonts as XML, that of cells without a style first. */
    readonly model: { readonly fonts: string[] };
  };
  readonly sharedStrings: { add(text: string): number };
  definedNames: readonly DefinedName[];
}
/** A name of the workbook, and the areas that it stands for. */
export interface DefinedName {
  readonly name: string;
  readonly ranges: readonly string[];
}

/** What the library writes of a sheet that it knows no cells of. */
const CELLS = /<sheetData>.*?<\/sheetData>|<sheetData\/>/s;
const DIMENSION = /<dimension ref="[^"]*"\/>/;
/** What follows the marks in a sheet, as far as the library writes it (18.3.1.99, the order of CT_Worksheet). */
const WHAT_FOLLOWS = /<(?:drawing|legacyDrawing|picture|tableParts|extLst)[ />]|<\/worksheet>/;

/** The sheet's XML with our parts in their places, piece by piece. */
function withParts(
  xml: string,
  { data, dimension, unmarked }: SheetCells,
  drawing: string,
): readonly Bytes[] {
  const cells = CELLS.exec(xml);
  if (cells === null) throw new Error('the library wrote a sheet without a place for cells');
  const head = xml
    .slice(0, cells.index)
    .replace(DIMENSION, () => `<dimension ref="${dimension}"/>`);
  const tail = xml.slice(cells.index + cells[0].length);
  const at = tail.search(WHAT_FOLLOWS);
  return [
    bytesOf(head),
    ...data,
    bytesOf(tail.slice(0, at) + ignoredErrors(unmarked) + drawing + tail.slice(at)),
  ];
}

function sharesOf({ styles, sharedStrings }: Book): Shares {
  // Thousands of cells share one look, most of them as one object.
  const numbers = new Map<CellStyle, number>();
  const alike = new Map<string, number>();
  return {
    text: (text) => sharedStrings.add(text),
    style(style) {
      let number = numbers.get(style);
      if (number === undefined) {
        const key = JSON.stringify(style);
        number = alike.get(key) ?? styles.addStyleModel(cellStyle(style));
        alike.set(key, number);
        numbers.set(style, number);
      }
      return number;
    },
  };
}

/**
 * Has the library write its workbook with these names, and gives the XML of those sheets that have cells of ours, by the
 * file's name: it goes into the file in place of what the library puts there.
 */
export function takeSheets(
  workbook: Workbook,
  cellsOf: ReadonlyMap<number, (shares: Shares) => SheetCells>,
  drawingOf: (id: number) => string,
  names: readonly DefinedName[],
): Map<string, readonly Bytes[]> {
  const writer = workbook.xlsx as unknown as SheetWriter;
  const prepareModel = writer.prepareModel.bind(writer);
  const addWorksheets = writer.addWorksheets.bind(writer);
  const drawn = new Map<string, SheetCells>();
  const drawings = new Map<string, string>();
  const taken = new Map<string, readonly Bytes[]>();
  // What the library writes first depends on whether there are any texts.
  writer.prepareModel = (model, options) => {
    // The library keeps an object for each cell of a name.
    model.definedNames = names;
    prepareModel(model, options);
    model.styles.model.fonts[0] = DEFAULT_FONT;
    const shares = sharesOf(model);
    for (const [id, cells] of cellsOf) {
      const name = `xl/worksheets/sheet${id}.xml`;
      drawn.set(name, cells(shares));
      drawings.set(name, drawingOf(id));
    }
  };
  writer.addWorksheets = (zip, model) =>
    addWorksheets(
      {
        append(content, options) {
          const cells = drawn.get(options.name);
          drawn.delete(options.name);
          if (cells !== undefined) {
            taken.set(options.name, withParts(content, cells, drawings.get(options.name) ?? ''));
          }
          zip.append(cells === undefined ? content : '', options);
        },
      },
      model,
    );
  return taken;
}
