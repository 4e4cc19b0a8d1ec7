/** What lies over the cells of a written workbook: parts that name one another, and the words for who cannot see them. */
import ExcelJS from 'exceljs';
import { strFromU8, unzipSync } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import { sharedFile } from '../../../src/hosts/xlsx/shared-file';
import { oneLine } from '../../../src/drawing/one-line';
import { stationDiagram } from '../../../src/sheets/station-diagram';
import { DEMO } from '../../../src/sheets/station/demo';
import { everythingIn, named, parseXml, type XmlElement } from '../../xml-tree';

const CONTENT = { ...DEMO, extras: ['drawing', 'dropChart', 'fuseMap'] } as const;

let bytes: Uint8Array;
let files: Readonly<Record<string, Uint8Array>>;
const xml = (name: string): Promise<XmlElement> => {
  const content = files[name];
  if (content === undefined) throw new Error(`no ${name} in the file`);
  return parseXml(strFromU8(content));
};

beforeAll(async () => {
  bytes = await sharedFile(CONTENT);
  files = unzipSync(bytes);
}, 60_000);

/** The relations of a part, by their ids. */
async function relationsOf(part: string): Promise<ReadonlyMap<string, string>> {
  const [, folder, file] = /^(.*)\/([^/]+)$/.exec(part)!;
  const root = await xml(`${folder}/_rels/${file}.rels`);
  return new Map(
    (root.$$ ?? []).map(({ $ = {} }) => [
      $['Id']!,
      new URL($['Target']!, `file:///${part}`).pathname.slice(1),
    ]),
  );
}

/** The sheets of the file that have a drawing, with the drawing's part. */
async function drawingsIn(): Promise<readonly string[]> {
  const found: string[] = [];
  for (const part of Object.keys(files).filter((name) =>
    /^xl\/worksheets\/sheet\d+\.xml$/.test(name),
  )) {
    const drawing = named(await xml(part), 'drawing')[0];
    if (drawing === undefined) continue;
    found.push((await relationsOf(part)).get(drawing.$!['r:id']!)!);
  }
  return found;
}

describe('a written workbook with a drawing and a chart', () => {
  it('is read by the library, and leaves nothing out that is there without them', async () => {
    const workbook = new ExcelJS.Workbook();
    await workbook.xlsx.load(bytes as unknown as ExcelJS.Buffer);
    const sheets = workbook.worksheets.map(({ name }) => name);
    expect(sheets).toEqual(expect.arrayContaining(['Drawing', 'Drop chart', 'Fuse map']));
  });

  it('is the same each time', async () => {
    expect(await sharedFile(CONTENT)).toEqual(bytes);
  });

  it('has a drawing for each, every part of which is in the file with its type', async () => {
    const drawings = await drawingsIn();
    expect(drawings).toHaveLength(2);
    const types = everythingIn(await xml('[Content_Types].xml')).map(({ $ = {} }) => $['PartName']);
    for (const part of drawings) {
      expect(types).toContain(`/${part}`);
      const numbers = everythingIn(await xml(part)).flatMap((element) =>
        element['#name'] === 'xdr:cNvPr' ? [element.$!['id']] : [],
      );
      expect(new Set(numbers).size).toBe(numbers.length);
    }
  });

  it('draws every mark of the figure as a shape, in one group that is told in words', async () => {
    const { figure } = oneLine(stationDiagram(DEMO));
    const all = (await Promise.all((await drawingsIn()).map(xml))).flatMap(everythingIn);
    const shapes = all.filter((element) => element['#name'] === 'xdr:sp');
    expect(shapes).toHaveLength(figure.marks.length);
    const texts = all.flatMap((element) => (element['#name'] === 'a:t' ? [element._ ?? ''] : []));
    expect(texts).toEqual(
      expect.arrayContaining(['Hut trunk', 'DANGER 2', '12 AWG, 5 ft, −0.25 V']),
    );
    const group = all.find((element) => element['#name'] === 'xdr:nvGrpSpPr');
    expect(group?.$$?.[0]?.$?.['descr']).toBe(figure.description);
    for (const { $ = {} } of all) {
      for (const value of Object.values($)) expect(value).not.toMatch(/NaN|undefined|Infinity/);
    }
  });

  it('has a chart that points at the table of its own sheet', async () => {
    const part = (await drawingsIn()).find((name) =>
      strFromU8(files[name]!).includes('graphicFrame'),
    )!;
    const [chart] = [...(await relationsOf(part)).values()];
    const all = everythingIn(await xml(chart!));
    const points = all.flatMap((element) => (element['#name'] === 'c:f' ? [element._] : []));
    expect(points).toHaveLength(9);
    // 24 loads: 26 runs without two that only feed others.
    for (const at of points) expect(at).toMatch(/^'Drop chart'!\$[A-D]\$(4|5:\$[A-D]\$28)$/);
    const cached = all.filter((element) => element['#name'] === 'c:v').map(({ _ }) => _);
    const said = all.flatMap((element) => (element['#name'] === 'a:t' ? [element._] : []));
    expect(said).toEqual([
      'Drop of each load against its target',
      'Load at the end of the way',
      'Share of the source volts',
    ]);
    expect(cached).toEqual(expect.arrayContaining(['Relay set', 'Lost, over target', '0.03']));
  });
});
