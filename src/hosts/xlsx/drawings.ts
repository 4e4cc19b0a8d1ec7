/** What lies over the cells of sheets: parts of the file that the library does not write. */
import { bytesOf, type Bytes } from './xml';

const DECLARATION = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const RELATIONSHIPS = 'http://schemas.openxmlformats.org/package/2006/relationships';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006';
const CHART_TYPE = 'application/vnd.openxmlformats-officedocument.drawingml.chart+xml';
const DRAWING_TYPE = 'application/vnd.openxmlformats-officedocument.drawing+xml';

/** How a sheet's XML names its drawing. */
export const DRAWING_ID = 'rIdLoomDrawing';
export const drawingElement = `<drawing r:id="${DRAWING_ID}"/>`;

/** How a drawing names its chart. */
export const CHART_ID = 'rIdLoomChart';

/** What lies over the cells of a sheet. */
export interface SheetDrawing {
  readonly anchor: string;
  /** The chart that the anchor names. */
  readonly chart?: string;
}
/** By the number of the sheet in the file. */
export type SheetDrawings = ReadonlyMap<number, SheetDrawing>;

const relationship = (id: string, type: string, target: string) =>
  `<Relationship Id="${id}" Type="${OFFICE}/relationships/${type}" Target="${target}"/>`;

const NO_RELATIONS = `${DECLARATION}<Relationships xmlns="${RELATIONSHIPS}"></Relationships>`;

function drawingXml(anchors: string): string {
  return `${DECLARATION}<xdr:wsDr xmlns:xdr="http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing" xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main" xmlns:r="${OFFICE}/relationships">${anchors}</xdr:wsDr>`;
}

const decoder = new TextDecoder();

/** The text of a file with more before one of its ends. */
function before(end: string, more: string, content: Uint8Array | undefined, otherwise: string) {
  const text = content === undefined ? otherwise : decoder.decode(content);
  const at = text.lastIndexOf(end);
  if (at < 0) throw new Error(`the library wrote a file without ${end}`);
  return bytesOf(text.slice(0, at) + more + text.slice(at));
}

/** The files of a workbook with the drawings of its sheets among them, by their names. */
export function withDrawings(
  files: Readonly<Record<string, Uint8Array>>,
  drawings: SheetDrawings,
): Readonly<Record<string, Uint8Array>> {
  if (drawings.size === 0) return files;
  const made: Record<string, Bytes> = {};
  const types: string[] = [];
  for (const [sheet, { anchor, chart }] of drawings) {
    const name = `loomDrawing${sheet}.xml`;
    const relations = `xl/worksheets/_rels/sheet${sheet}.xml.rels`;
    const chartName = `loomChart${sheet}.xml`;
    made[`xl/drawings/${name}`] = bytesOf(drawingXml(anchor));
    made[relations] = before(
      '</Relationships>',
      relationship(DRAWING_ID, 'drawing', `../drawings/${name}`),
      files[relations],
      NO_RELATIONS,
    );
    if (chart !== undefined) {
      made[`xl/charts/${chartName}`] = bytesOf(chart);
      made[`xl/drawings/_rels/${name}.rels`] = before(
        '</Relationships>',
        relationship(CHART_ID, 'chart', `../charts/${chartName}`),
        undefined,
        NO_RELATIONS,
      );
      types.push(`<Override PartName="/xl/charts/${chartName}" ContentType="${CHART_TYPE}"/>`);
    }
    types.push(`<Override PartName="/xl/drawings/${name}" ContentType="${DRAWING_TYPE}"/>`);
  }
  const contentTypes = '[Content_Types].xml';
  made[contentTypes] = before('</Types>', types.join(''), files[contentTypes], '');
  return { ...files, ...made };
}
