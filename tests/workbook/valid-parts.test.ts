/** Every part of written workbooks is valid against the schemas of ECMA-376, of which Excel is the strictest reader. */
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import { sharedFile } from '../../src/hosts/xlsx/shared-file';
import { DEMO } from '../../src/sheets/station/demo';
import { EXTRA_KEYS } from '../../src/sheets/station/extras';
import type { StationContent } from '../../src/sheets/station/content';
import { PackageParts } from './package-parts';

/** Texts that break XML, a formula, a name or a header where they are not written with care. */
const HOSTILE_TEXTS = [
  '</t></si><c r="A1"/>',
  ']]><!-- & &amp; &#0; %',
  '\u0000\u0008\u001f\ufffe\uffff',
  'half \ud83d of a pair, \udca1 the other',
  '_x0000_ and _x005F_',
  '=HYPERLINK("x","y")',
  '\'quoted\' "twice" &P &[Page]',
  '  spaces kept  \n\ttwo lines\r\n',
  'نهر ↔ \u202e reversed 💡',
  // As much as a cell of Excel holds.
  'long '.repeat(6553),
];

const everything = { extras: EXTRA_KEYS };
const CONTENTS: Readonly<Record<string, StationContent>> = {
  'the demonstration with every sheet': { ...DEMO, ...everything },
  'an empty schedule': { title: '', runs: [], ...everything },
  'one run': { title: 'One', runs: [{ run: 'Lamp', peak: 1, length: 2 }], ...everything },
  'metric sizes and lengths': { ...DEMO, rules: { ...DEMO.rules, series: 'mm2', unit: 'm' } },
  'hostile texts': {
    title: HOSTILE_TEXTS.join(' '),
    runs: HOSTILE_TEXTS.map((text) => ({
      run: text,
      load: text,
      peak: 2,
      length: text,
      ownSize: text,
      notes: text,
    })),
    sources: HOSTILE_TEXTS.slice(0, 3).map((name) => ({ name, kind: 'battery' })),
    ...everything,
  },
};

let parts: PackageParts;
let small: Uint8Array;

beforeAll(async () => {
  parts = new PackageParts();
  small = await sharedFile({ ...CONTENTS['one run']!, extras: ['dropChart'] });
});

/** The file of one run and a chart, with one part changed. */
function changed(name: string, change: (xml: string) => string): Uint8Array {
  const files = unzipSync(small);
  const before = strFromU8(files[name]!);
  const after = change(before);
  expect(after).not.toBe(before);
  return zipSync({ ...files, [name]: strToU8(after) });
}

describe('a written workbook is valid in every part:', () => {
  it.each(Object.entries(CONTENTS))('%s', async (_name, content) => {
    expect(await parts.faultsOf(await sharedFile(content))).toEqual([]);
  });

  it('every kind of part that is written was among them', () => {
    expect([...parts.seen].map((root) => root.replace(/^.*\}/, '')).sort()).toEqual([
      ...[
        'Properties',
        'Relationships',
        'Types',
        'chartSpace',
        'comments',
        'coreProperties',
        'sst',
      ],
      ...['styleSheet', 'theme', 'workbook', 'worksheet', 'wsDr'],
    ]);
  });
});

describe('what is refused:', () => {
  const sheet = 'xl/worksheets/sheet1.xml';
  const charts = () => Object.keys(unzipSync(small)).find((name) => /chart/i.test(name))!;

  it.each<[string, string, (xml: string) => string, RegExp]>([
    [
      'an attribute that is no number',
      sheet,
      (xml) => xml.replace(/<row r="\d+"/, '<row r="first"'),
      /sheet1\.xml: .*'first' is not a valid value/,
    ],
    [
      'parts of a sheet in another order',
      sheet,
      (xml) => xml.replace(/(<sheetData>.*<\/sheetData>)(.*)(<\/worksheet>)/s, '$2$1$3'),
      /This element is not expected/,
    ],
    [
      'a cell of a kind that does not exist',
      sheet,
      (xml) => xml.replace(/ t="s"/, ' t="text"'),
      /'text' is not an element of the set/,
    ],
    [
      'an extension that nobody may ignore',
      sheet,
      (xml) => xml.replace(/ mc:Ignorable="[^"]*"/, ''),
      /dyDescent.* is not allowed/,
    ],
    ['a part that is not well formed', sheet, (xml) => xml.slice(0, -3), /sheet1\.xml: /],
    [
      'a name that is none',
      'xl/workbook.xml',
      (xml) => xml.replace(/<definedName name="[^"]*"/, '<definedName'),
      /'name' is required/,
    ],
    [
      'a look of a wrong kind',
      'xl/styles.xml',
      (xml) => xml.replace(/patternType="solid"/, 'patternType="thick"'),
      /styles\.xml: .*thick/,
    ],
    [
      'a relation to nothing',
      'xl/_rels/workbook.xml.rels',
      (xml) => xml.replace('Target="styles.xml"', 'Target="looks.xml"'),
      /a relation to looks\.xml, where no part is/,
    ],
    [
      'a part of another type',
      '[Content_Types].xml',
      (xml) => xml.replace('spreadsheetml.styles+xml', 'spreadsheetml.sharedStrings+xml'),
      /styleSheet where .*sst belongs/,
    ],
    [
      'a type of no part',
      '[Content_Types].xml',
      (xml) => xml.replace('/xl/styles.xml', '/xl/looks.xml'),
      /looks\.xml: a type of no part/,
    ],
    [
      'a time that is none',
      'docProps/core.xml',
      (xml) => xml.replace(/2000-01-01T/, '1 January 2000, '),
      /core\.xml: .*is not a valid value/,
    ],
  ])('%s', async (_what, name, change, said) => {
    expect((await parts.faultsOf(changed(name, change))).join('\n')).toMatch(said);
  });

  it('a chart whose parts stand in another order', async () => {
    const moved = changed(charts(), (xml) =>
      xml.replace(/(<c:barDir[^>]*>)(<c:grouping[^>]*>)/, '$2$1'),
    );
    expect((await parts.faultsOf(moved)).join('\n')).toMatch(
      /grouping.* This element is not expected/,
    );
  });
});
