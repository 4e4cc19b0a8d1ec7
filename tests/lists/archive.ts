/** Archives made part by part, with parts that no honest program would write. */
import { constants, crc32, deflateRawSync } from 'node:zlib';
import { strToU8, zipSync } from 'fflate';

const RELATIONS = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006/relationships';
export const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';

const related = (...parts: readonly (readonly [kind: string, target: string])[]) =>
  `<Relationships xmlns="${PACKAGE}">${parts
    .map(
      ([kind, target], at) =>
        `<Relationship Id="r${at}" Type="${RELATIONS}/${kind}" Target="${target}"/>`,
    )
    .join('')}</Relationships>`;

/** The parts around the sheet of a small workbook. */
export const AROUND: Readonly<Record<string, string>> = {
  '_rels/.rels': related(['officeDocument', 'xl/workbook.xml']),
  'xl/workbook.xml': `<workbook xmlns="${MAIN}" xmlns:r="${RELATIONS}"><sheets><sheet name="Runs" sheetId="1" r:id="r0"/></sheets></workbook>`,
  'xl/_rels/workbook.xml.rels': related(
    ['worksheet', 'worksheets/sheet1.xml'],
    ['sharedStrings', 'sharedStrings.xml'],
    ['styles', 'styles.xml'],
  ),
};

/** A workbook with this sheet, and with other parts where they are given. */
export function archiveOf(
  sheet: string,
  others: Readonly<Record<string, string>> = {},
): Uint8Array {
  const parts = { ...AROUND, 'xl/worksheets/sheet1.xml': sheet, ...others };
  return zipSync(
    Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(text)])),
  );
}

/** A sheet with rows of cells as they stand in XML. */
export const sheetOf = (rows: string, behind = '') =>
  `<worksheet xmlns="${MAIN}"><sheetData>${rows}</sheetData>${behind}</worksheet>`;

const number = (bytes: 2 | 4, value: number) => {
  const buffer = Buffer.alloc(bytes);
  if (bytes === 2) buffer.writeUInt16LE(value);
  else buffer.writeUInt32LE(value);
  return buffer;
};

/** A workbook whose sheet unpacks to a text, the same piece times over, and an end; its directory says that it is small. */
export function growingArchive(start: string, piece: string, times: number): Uint8Array {
  const part = (text: string, finishFlush: number) => deflateRawSync(text, { finishFlush });
  const repeated = part(piece, constants.Z_FULL_FLUSH);
  const packed = Buffer.concat([
    part(start, constants.Z_FULL_FLUSH),
    ...Array.from({ length: times }, () => repeated),
    part('', constants.Z_FINISH),
  ]);
  const entries = [
    ...Object.entries(AROUND).map(
      ([name, text]) => [name, deflateRawSync(text), crc32(text)] as const,
    ),
    ['xl/worksheets/sheet1.xml', packed, 0] as const,
  ];
  const files: Buffer[] = [];
  const listed: Buffer[] = [];
  let at = 0;
  for (const [name, bytes, sum] of entries) {
    const common = Buffer.concat([
      number(2, 20),
      number(2, 0),
      number(2, 8),
      number(4, 0),
      number(4, sum),
      number(4, bytes.length),
      number(4, 1000),
      number(2, name.length),
      number(2, 0),
    ]);
    const file = Buffer.concat([number(4, 0x04034b50), common, Buffer.from(name), bytes]);
    files.push(file);
    listed.push(
      Buffer.concat([
        number(4, 0x02014b50),
        number(2, 20),
        common,
        number(2, 0),
        number(2, 0),
        number(2, 0),
        number(4, 0),
        number(4, at),
        Buffer.from(name),
      ]),
    );
    at += file.length;
  }
  const directory = Buffer.concat(listed);
  return new Uint8Array(
    Buffer.concat([
      ...files,
      directory,
      number(4, 0x06054b50),
      number(4, 0),
      number(2, entries.length),
      number(2, entries.length),
      number(4, directory.length),
      number(4, at),
      number(2, 0),
    ]),
  );
}
