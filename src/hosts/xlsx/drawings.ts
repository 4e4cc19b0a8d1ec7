/** What lies over the cells of sheets: parts of the file that the library does not write. */
import { bytesOf, type Bytes } from './xml';

const DECLARATION = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const RELATIONSHIPS = 'http://schemas.openxmlformats.org/package/2006/relationships';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006';
const DRAWING_TYPE = 'application/vnd.openxmlformats-officedocument.drawing+xml';

/** How a sheet's XML names its drawing. */
export const DRAWING_ID = 'rIdLoomDrawing';
export const drawingElement = `<drawing r:id="${DRAWING_ID}"/>`;

/** The anchors of a sheet's drawing, by the number of the sheet in the file. */
export type Anchors = ReadonlyMap<number, string>;

const relationship = (id: string, type: string, target: string) =>
  `<Relationship Id="${id}" Type="${OFFICE}/relationships/${type}" Target="${target}"/>`;

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
  anchors: Anchors,
): Readonly<Record<string, Uint8Array>> {
  if (anchors.size === 0) return files;
  const made: Record<string, Bytes> = {};
  const types: string[] = [];
  for (const [sheet, anchor] of anchors) {
    const name = `loomDrawing${sheet}.xml`;
    const relations = `xl/worksheets/_rels/sheet${sheet}.xml.rels`;
    made[`xl/drawings/${name}`] = bytesOf(drawingXml(anchor));
    made[relations] = before(
      '</Relationships>',
      relationship(DRAWING_ID, 'drawing', `../drawings/${name}`),
      files[relations],
      `${DECLARATION}<Relationships xmlns="${RELATIONSHIPS}"></Relationships>`,
    );
    types.push(`<Override PartName="/xl/drawings/${name}" ContentType="${DRAWING_TYPE}"/>`);
  }
  const contentTypes = '[Content_Types].xml';
  made[contentTypes] = before('</Types>', types.join(''), files[contentTypes], '');
  return { ...files, ...made };
}
