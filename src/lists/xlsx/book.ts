/** An .xlsx opened: its sheets as rows, and its names. */
import type { RawTable } from '../raw';
import { MOST, TooMuch } from '../bounds';
import { readFormats } from './formats';
import { prefixed, readPart } from './part';
import { readSheet, type Shared } from './sheet';
import { readTexts } from './texts';
import { openArchive, partName, type Archive } from './zip';

/** A name of the workbook and what it stands for, such as "'Run schedule'!$A$3". */
export interface BookName {
  readonly name: string;
  readonly refersTo: string;
}

export interface Book {
  /** Every sheet of cells, in order; rows without anything in them are left out. */
  readonly tables: readonly RawTable[];
  readonly names: readonly BookName[];
}

/** What a part points at, by the id of each arrow: the kind, without its address, and the part. */
type Relations = ReadonlyMap<string, { readonly kind: string; readonly part: string }>;

/** A part's path from the part that names it. */
function resolved(from: string, target: string): string {
  if (target.startsWith('/')) return partName(target);
  const path = from.split('/').slice(0, -1);
  for (const step of target.replaceAll('\\', '/').split('/')) {
    if (step === '..') path.pop();
    else if (step !== '.') path.push(step);
  }
  return partName(path.join('/'));
}

function relationsOf(archive: Archive, part: string): Relations {
  const name = part.replace(/[^/]*$/, '_rels/$&.rels');
  const relations = new Map<string, { kind: string; part: string }>();
  if (!archive.has(name)) return relations;
  readPart(archive, name, {
    opened(element, { Id = '', Type = '', Target = '' }) {
      if (element !== 'Relationship') return;
      relations.set(Id, { kind: Type.replace(/^.*\//, ''), part: resolved(part, Target) });
    },
  });
  return relations;
}

const partOf = (relations: Relations, kind: string) =>
  [...relations.values()].find((one) => one.kind === kind)?.part;

interface Contents {
  readonly sheets: readonly { readonly name: string; readonly id: string }[];
  readonly names: readonly BookName[];
  readonly from1904: boolean;
}

function contentsOf(archive: Archive, part: string): Contents {
  const sheets: { name: string; id: string }[] = [];
  const names: { name: string; refersTo: string }[] = [];
  let from1904 = false;
  let isName = false;
  readPart(archive, part, {
    opened(element, attributes) {
      isName = element === 'definedName';
      if (isName) names.push({ name: attributes['name'] ?? '', refersTo: '' });
      else if (element === 'sheet') {
        if (sheets.length >= MOST.sheets) throw new TooMuch('sheets');
        sheets.push({ name: attributes['name'] ?? '', id: prefixed(attributes, 'id') ?? '' });
      } else if (element === 'workbookPr') {
        from1904 = /^(?:1|true)$/i.test(attributes['date1904'] ?? '');
      }
    },
    closed() {
      isName = false;
    },
    text(piece) {
      const last = names.at(-1);
      if (isName && last !== undefined) last.refersTo += piece;
    },
  });
  return { sheets, names, from1904 };
}

/** The bytes of an .xlsx; undefined where the archive holds no workbook. Throws BadArchive, BadPart, TooMuch. */
export async function openBook(bytes: Uint8Array): Promise<Book | undefined> {
  const archive = openArchive(bytes);
  const main = partOf(relationsOf(archive, ''), 'officeDocument') ?? 'xl/workbook.xml';
  if (!archive.has(main)) return undefined;
  const { sheets, names, from1904 } = contentsOf(archive, main);
  const relations = relationsOf(archive, main);
  const [texts, styles] = [partOf(relations, 'sharedStrings'), partOf(relations, 'styles')];
  const shared: Shared = {
    texts: texts !== undefined && archive.has(texts) ? readTexts(archive, texts) : [],
    formats: styles !== undefined && archive.has(styles) ? readFormats(archive, styles) : [],
    from1904,
    cellsLeft: MOST.cells,
  };
  const tables: RawTable[] = [];
  for (const { name, id } of sheets) {
    const target = relations.get(id);
    if (target?.kind !== 'worksheet') continue;
    tables.push({ sheetName: name, rows: readSheet(archive, target.part, shared), broken: [] });
    // A page can draw, and be left, between two large sheets.
    await new Promise((resolve) => setTimeout(resolve));
  }
  return { tables, names };
}
