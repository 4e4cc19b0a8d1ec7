/**
 * The parts of a written workbook held to ECMA-376: each part to the schema of its kind, and to the rules of the package that
 * no schema says (part 2): each part has a type, each relation leads to a part.
 */
import { posix } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import type { XmlElement } from 'libxml2-wasm';
import { schemaFiles, XmlSchema, type SchemaFiles } from '../xml-schema';
import { childrenOf, parseXml } from '../xml-tree';

const folder = new URL('../ecma-376/', import.meta.url);
/** Where the schema of core properties says that Dublin Core's are. */
const DUBLIN_CORE = 'http://dublincore.org/schemas/xmls/qdc/2003/04/02/';

const standIns = Object.entries(schemaFiles(new URL('stand-ins/', folder))).map(
  ([name, file]) => [DUBLIN_CORE + name, file] as const,
);
export const ECMA_376: SchemaFiles = { ...schemaFiles(folder), ...Object.fromEntries(standIns) };

const SPREADSHEET = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const DRAWING = 'http://schemas.openxmlformats.org/drawingml/2006';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006';

const OFFICE_TYPE = 'application/vnd.openxmlformats-officedocument.';
const PACKAGE_TYPE = 'application/vnd.openxmlformats-package.';
const sheetType = (kind: string) => `${OFFICE_TYPE}spreadsheetml.${kind}+xml`;

/** The root of a part by its type (part 1, 12.3, 14.2 and 15.2; part 2, 9.3 and 11.1). */
const ROOTS: Readonly<Record<string, string>> = {
  [sheetType('sheet.main')]: `{${SPREADSHEET}}workbook`,
  [sheetType('worksheet')]: `{${SPREADSHEET}}worksheet`,
  [sheetType('styles')]: `{${SPREADSHEET}}styleSheet`,
  [sheetType('sharedStrings')]: `{${SPREADSHEET}}sst`,
  [sheetType('comments')]: `{${SPREADSHEET}}comments`,
  [sheetType('table')]: `{${SPREADSHEET}}table`,
  [`${OFFICE_TYPE}theme+xml`]: `{${DRAWING}/main}theme`,
  [`${OFFICE_TYPE}drawing+xml`]: `{${DRAWING}/spreadsheetDrawing}wsDr`,
  [`${OFFICE_TYPE}drawingml.chart+xml`]: `{${DRAWING}/chart}chartSpace`,
  [`${OFFICE_TYPE}extended-properties+xml`]: `{${OFFICE}/extended-properties}Properties`,
  [`${PACKAGE_TYPE}core-properties+xml`]: `{${PACKAGE}/metadata/core-properties}coreProperties`,
  [`${PACKAGE_TYPE}relationships+xml`]: `{${PACKAGE}/relationships}Relationships`,
};
const TYPES_PART = '[Content_Types].xml';
const TYPES_ROOT = `{${PACKAGE}/content-types}Types`;

/** Notes stand in VML as well, which has no schema: `tests/ecma-376/README.md`. */
const VML_TYPE = `${OFFICE_TYPE}vmlDrawing`;

/**
 * The XML of a part as a reader of the 1st edition takes it: without attributes that the markup itself allows to be ignored
 * (part 5, 10.1: Ignorable; an element of such a kind is refused, since none is written), and without `xml:space`, which is
 * XML's own (XML 1.0, 2.10) and which spreadsheets put on texts, though the schemas do not name it.
 */
function withoutIgnorable(xml: string): string {
  const [said, list = ''] = /\smc:Ignorable="([^"]*)"/.exec(xml) ?? [''];
  const attributes = [...list.split(/\s+/).filter((prefix) => prefix !== ''), 'xml:space']
    .map((name) => (name.includes(':') ? name : `${name}:[\\w.-]+`))
    .join('|');
  return xml.replace(said, '').replaceAll(new RegExp(`\\s(?:${attributes})="[^"]*"`, 'g'), '');
}

const qualified = ({ namespaceUri, name }: XmlElement) => `{${namespaceUri}}${name}`;

interface ContentTypes {
  readonly byExtension: ReadonlyMap<string, string>;
  readonly byPart: ReadonlyMap<string, string>;
}

async function contentTypes(xml: Uint8Array | undefined): Promise<ContentTypes> {
  const entries = xml === undefined ? [] : childrenOf(await parseXml(strFromU8(xml)));
  const of = (kind: string, key: string) =>
    new Map(
      entries
        .filter((entry) => entry['#name'] === kind)
        .map(({ $ = {} }) => [$[key] ?? '', $['ContentType'] ?? '']),
    );
  return { byExtension: of('Default', 'Extension'), byPart: of('Override', 'PartName') };
}

/** The part that a list of relations belongs to; empty for that of the whole package. */
function ownerOf(relations: string): string {
  const { dir, base } = posix.parse(relations);
  return posix.join(posix.dirname(dir), base.replace(/\.rels$/, ''));
}

async function strayRelations(
  name: string,
  xml: Uint8Array,
  parts: ReadonlySet<string>,
): Promise<readonly string[]> {
  const owner = ownerOf(name);
  const stray = childrenOf(await parseXml(strFromU8(xml)))
    .filter(({ $ = {} }) => $['TargetMode'] !== 'External')
    .map(({ $ = {} }) => $['Target'] ?? '')
    .filter((target) => !parts.has(posix.join('/', posix.dirname(owner), target).slice(1)))
    .map((target) => `a relation to ${target}, where no part is`);
  const isAlone = !name.startsWith('_rels/') && !parts.has(owner);
  return isAlone ? [`relations of ${owner}, which is no part`, ...stray] : stray;
}

export class PackageParts {
  private readonly schema = new XmlSchema(ECMA_376);
  /** Roots of the parts that were held to a schema, as {namespace}name. */
  readonly seen = new Set<string>();

  /** Everything in a workbook that the standard does not allow, each with its part. */
  async faultsOf(workbook: Uint8Array): Promise<readonly string[]> {
    const files = Object.entries(unzipSync(workbook)).filter(([name]) => !name.endsWith('/'));
    const parts = new Set(files.map(([name]) => name));
    const types = await contentTypes(files.find(([name]) => name === TYPES_PART)?.[1]);
    const missing = [...types.byPart.keys()]
      .filter((name) => !parts.has(name.slice(1)))
      .map((name) => `${name}: a type of no part`);
    const found = await Promise.all(
      files.map(async ([name, xml]) => {
        const extension = /[^.]*$/.exec(name)![0];
        const type = types.byPart.get(`/${name}`) ?? types.byExtension.get(extension);
        const faults = this.faultsOfPart(name, type, xml);
        const stray =
          extension === 'rels' && faults.length === 0 ? await strayRelations(name, xml, parts) : [];
        return [...faults, ...stray].map((fault) => `${name}: ${fault}`);
      }),
    );
    return [...missing, ...found.flat()];
  }

  private faultsOfPart(name: string, type: string | undefined, xml: Uint8Array): readonly string[] {
    if (type === VML_TYPE) return [];
    const expected = name === TYPES_PART ? TYPES_ROOT : ROOTS[type ?? ''];
    if (expected === undefined) return [`of the type ${type ?? '(none)'}, which has no schema`];
    let root = '';
    const faults = this.schema.faultsOf(withoutIgnorable(strFromU8(xml)), (document) => {
      root = qualified(document.root);
    });
    this.seen.add(root);
    return faults.length > 0 || root === expected ? faults : [`${root} where ${expected} belongs`];
  }
}
