/**
 * The manifest asks for the API sets that the code needs, no more and no less: every member of Excel and of
 * CustomFunctions that the code touches is looked up in the platform's typings, which name its set.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { beforeAll, describe, expect, it } from 'vitest';
import { named, parseXml, type XmlElement } from '../../xml-tree';

const root = fileURLToPath(new URL('../../../', import.meta.url));
/** Loading every type of the project takes a busy machine a while. */
const SLOW_MS = 240_000;

/** Members by "Owner.member", with the sets that their typings name, such as "ExcelApi 1.9". */
type Uses = ReadonlyMap<string, readonly string[]>;

function setsIn(tags: readonly ts.JSDocTagInfo[]): readonly string[] {
  const text = tags.map((tag) => ts.displayPartsToString(tag.text)).join('\n');
  // A parameter that came later (alwaysInsert of a table row) is given by no call of ours.
  const ofUse = text.replace(/\d+\.\d+ for adding `\w+` parameter/g, '');
  return [...ofUse.matchAll(/\[Api set: ([^\]]+)\]/g)].flatMap(([, list = '']) => {
    const set = /^\w+/.exec(list)?.[0] ?? '';
    // Such as "ExcelApi 1.1 for get, 1.8 for set": the higher one counts.
    return [...list.matchAll(/\d+\.\d+/g)].map(([version]) => `${set} ${version}`);
  });
}

/** Collects every member of one namespace of the platform that the files use. */
function usesOf(namespace: string, files: readonly string[]): Uses {
  const read = ts.readConfigFile(`${root}tsconfig.json`, (path) => ts.sys.readFile(path));
  const { options } = ts.parseJsonConfigFileContent(read.config, ts.sys, root);
  const program = ts.createProgram(files, options);
  const checker = program.getTypeChecker();
  const uses = new Map<string, readonly string[]>();

  const note = (symbol: ts.Symbol | undefined, signature?: ts.Signature) => {
    const declaration = signature?.declaration ?? symbol?.declarations?.[0];
    if (symbol === undefined || declaration === undefined) return;
    const owners: string[] = [];
    for (let node: ts.Node = declaration.parent; !ts.isSourceFile(node); node = node.parent) {
      if ('name' in node && node.name) owners.unshift((node.name as ts.Identifier).text);
    }
    if (owners[0] !== namespace) return;
    const tags = signature?.getJsDocTags() ?? symbol.getJsDocTags(checker);
    uses.set([...owners.slice(1), symbol.name].join('.'), setsIn(tags));
  };

  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node)) {
      const { parent } = node;
      const called = ts.isPropertyAccessExpression(parent) && parent.name === node ? parent : node;
      const isCall = ts.isCallExpression(called.parent) && called.parent.expression === called;
      const signature = isCall ? checker.getResolvedSignature(called.parent) : undefined;
      note(checker.getSymbolAtLocation(node), signature);
    }
    // { zoom: ... } and const { font } = ...: the member is the one of the type, not the local name.
    if (ts.isObjectLiteralExpression(node)) {
      const type = checker.getContextualType(node);
      for (const { name } of node.properties) {
        if (name && ts.isIdentifier(name)) note(type && checker.getPropertyOfType(type, name.text));
      }
    }
    if (ts.isObjectBindingPattern(node)) {
      const type = checker.getTypeAtLocation(node);
      for (const element of node.elements) {
        const name = element.propertyName ?? element.name;
        if (ts.isIdentifier(name)) note(checker.getPropertyOfType(type, name.text));
      }
    }
    // ErrorCode[name]: every member that the index may name.
    if (ts.isElementAccessExpression(node)) {
      const type = checker.getTypeAtLocation(node);
      for (const part of type.isUnion() ? type.types : [type]) note(part.symbol);
    }
    ts.forEachChild(node, visit);
  };
  for (const file of files) visit(program.getSourceFile(file)!);
  return uses;
}

/** The highest version of a set, as [1, 9]; members without a set cost nothing. */
function highest(uses: Uses, set: string): string {
  const versions = [...uses.values()].flat().flatMap((named) => {
    const [name, version = ''] = named.split(' ');
    return name === set ? [version.split('.').map(Number)] : [];
  });
  versions.sort(([oneMajor = 0, oneMinor = 0], [major = 0, minor = 0]) =>
    oneMajor === major ? oneMinor - minor : oneMajor - major,
  );
  return versions.at(-1)?.join('.') ?? 'none';
}

let manifest: XmlElement;
beforeAll(async () => {
  manifest = await parseXml(readFileSync(`${root}manifest.xml`, 'utf8'));
});

function required(set: string): string | undefined {
  return named(manifest, 'Set').find((element) => element.$?.['Name'] === set)?.$?.['MinVersion'];
}

describe('the members of Excel that the host uses', () => {
  let uses: Uses;
  beforeAll(() => {
    uses = usesOf('Excel', ts.sys.readDirectory(`${root}src/hosts/excel`, ['.ts']));
  }, SLOW_MS);

  it('are found, whichever way they are written', () => {
    expect(uses.get('Worksheet.pageLayout')).toEqual(['ExcelApi 1.9']);
    expect(uses.get('Range.dataValidation')).toEqual(['ExcelApi 1.8']);
    // Destructured, in an object literal, as an overloaded call, as an event.
    expect(uses.get('RangeFormat.font')).toEqual(['ExcelApi 1.1']);
    expect(uses.get('PageLayoutZoomOptions.horizontalFitToPages')).toEqual(['ExcelApi 1.9']);
    expect(uses.get('ConditionalFormatCollection.add')).toEqual(['ExcelApi 1.6']);
    expect(uses.get('WorksheetCollection.onChanged')).toEqual(['ExcelApi 1.9']);
  });

  it('are all in numbered sets, none in preview and none of one platform alone', () => {
    const odd = [...uses].filter(([, sets]) =>
      sets.some((set) => !/^ExcelApi \d+\.\d+$/.test(set)),
    );
    expect(odd).toEqual([]);
  });

  it('need exactly the set that the manifest asks for', () => {
    expect(highest(uses, 'ExcelApi')).toBe(required('ExcelApi'));
  });
});

describe('the members of CustomFunctions that the functions use', () => {
  it(
    'need exactly the set that the manifest asks for',
    () => {
      const files = ['excel-boundary.ts', 'associate.ts'].map(
        (name) => `${root}src/functions/${name}`,
      );
      const uses = usesOf('CustomFunctions', files);
      expect([...uses.keys()]).toEqual(
        expect.arrayContaining(['associate', 'Error', 'ErrorCode.notAvailable']),
      );
      expect(highest(uses, 'CustomFunctionsRuntime')).toBe(required('CustomFunctionsRuntime'));
    },
    SLOW_MS,
  );
});
