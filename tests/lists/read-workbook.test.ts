import ExcelJS from 'exceljs';
import { describe, expect, it } from 'vitest';
import { NO_FEEDERS, readRuns, UnreadableFile } from '../../src/lists/read-runs';
import { writeWorkbook } from '../../src/hosts/xlsx/write';
import { DEMO } from '../../src/sheets/station/demo';
import { scheduleSheets } from '../../src/sheets/new-schedule';
import type { StationContent } from '../../src/sheets/station/content';

const NOTHING_TAKEN = { sheets: new Set<string>(), names: new Set<string>() };

function written(content: StationContent): Promise<Uint8Array> {
  return writeWorkbook(scheduleSheets(content, 'cells', NOTHING_TAKEN));
}

async function foreign(
  rows: readonly (readonly unknown[])[],
  dress?: (sheet: ExcelJS.Worksheet) => void,
) {
  const workbook = new ExcelJS.Workbook();
  workbook.addWorksheet('Cover').getCell('A1').value = 'Plan of the hut';
  const sheet = workbook.addWorksheet('Cables');
  sheet.addRows(rows.map((row) => [...row]));
  dress?.(sheet);
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}

/** What a person may have typed, good and bad. */
const TYPED: StationContent = {
  title: '=not a formula',
  rules: {
    unit: 'cm',
    volts: 24.5,
    target: 0.025,
    series: 'mm2',
    insulationC: 90,
    ambientC: 41,
    duty: 'bursts',
  },
  supply: { chemistry: 'LiFePO4', ampHours: 50, milliohms: 4, cells: 8, panelTarget: 0.01 },
  protection: { startC: 85, limitC: 250 },
  duty: [
    { load: 'Radio', amps: [4, 0.4, 0], shares: [0.1, 0.9, null] },
    { load: '', amps: [null, 2, null], shares: [null, 0.5, null] },
  ],
  runs: [
    { run: '=1+1', load: '@home', fedFrom: '-12', peak: 5, length: 120 },
    { run: 'only a name' },
    { load: 'only a load' },
    {
      run: 'bad',
      peak: 'abc',
      length: 'x m',
      volts: 'many',
      target: 'low',
      ownSize: 'thick',
      joints: '?',
    },
    {
      run: '_x0041_ & <b> "q" \u0001',
      load: 'two\nlines',
      peak: 0,
      length: 0,
      kind: 'W',
      fused: 'no',
    },
    {
      run: 'own',
      peak: 12,
      length: 300.25,
      volts: 12,
      target: 0.03,
      joints: 1.5,
      ownSize: '1/0 AWG',
      leastVolts: 11,
    },
    { run: 'negative', peak: -3, length: -1 },
  ],
};

describe('a workbook of ours', () => {
  it.each([
    ['the demonstration', DEMO],
    ['whatever a person may type', TYPED],
  ])('gives back every input: %s', async (_, content) => {
    const report = await readRuns(await written(content), 'shared.xlsx');
    expect(report.runs).toEqual(content.runs);
    expect(report.rules).toMatchObject(content.rules ?? {});
    expect(report.supply).toMatchObject(content.supply ?? {});
    expect(report.duty).toEqual(content.duty);
    expect(report.protection).toMatchObject(content.protection ?? {});
    expect(report.title).toBe(content.title);
    const again = await readRuns(
      await written({ ...report, title: report.title ?? '' }),
      'again.xlsx',
    );
    expect(again).toEqual(report);
  });

  it('says nothing of rules and supply that still follow their formulas', async () => {
    const { rules, sources = [] } = await readRuns(await written(DEMO), 'shared.xlsx');
    expect(sources).toHaveLength(DEMO.sources?.length ?? 0);
    expect(Object.keys(rules)).not.toContain('ambientC');
    for (const key of ['cells', 'usable', 'peakAmps', 'fullRest']) {
      expect(sources.flatMap((source) => Object.keys(source))).not.toContain(key);
    }
  });

  it('is converted where another length unit is wanted', async () => {
    const report = await readRuns(await written(DEMO), 'shared.xlsx', { lengthUnit: 'm' });
    expect(report.runs[0]).toMatchObject({ run: 'Hut trunk', length: 7 * 0.3048 });
    expect(report.rules.unit).toBe('m');
    expect(report.remarks).toContain('Lengths were converted from ft to m.');
  });
});

describe('any workbook with a list', () => {
  it('is searched for it, sheet by sheet', async () => {
    const bytes = await foreign(
      [
        ['Cables of the hut'],
        [],
        ['No', 'To', 'Amps', 'Length m', 'Max drop', 'Wire', 'Colour'],
        [1, 'Relay', 14, 5, 0.03, 10, 'blue'],
        ['', '', '', '', '', '', 'a word'],
        [
          2,
          'Lamp',
          { formula: '1+1', result: 2 },
          { formula: '4-4', result: 0 },
          null,
          '6 mm²',
          null,
        ],
      ],
      (sheet) => {
        sheet.getCell('E4').numFmt = '0%';
      },
    );
    const report = await readRuns(bytes, 'hut.xlsx');
    expect(report.runs).toEqual([
      { run: '1', load: 'Relay', peak: 14, length: 5, target: 0.03, ownSize: '10 AWG' },
      { run: '2', load: 'Lamp', peak: 2, length: 0, ownSize: '6 mm2' },
    ]);
    expect(report.leftOver.map(({ heading }) => heading)).toEqual(['Colour']);
    expect(report.problems).toEqual([
      {
        line: 5,
        text: '|  |  |  |  |  | a word',
        why: 'nothing under a heading that was understood',
        taken: false,
      },
    ]);
    expect(report.remarks).toEqual([
      'Read from the sheet "Cables".',
      'Bare numbers under "Wire" were taken for AWG numbers.',
      NO_FEEDERS,
    ]);
  });

  it('may show percentages, rich and linked text, truth, errors and dates', async () => {
    const bytes = await foreign(
      [
        ['Name', 'Amps', 'Length (m)', 'Max drop (%)', 'Size'],
        [{ richText: [{ text: 'Hut ' }, { text: 'trunk' }] }, 5, 7, 0.03, '1/0'],
        [
          { text: 'Linked', hyperlink: '#Cover!A1' },
          true,
          { error: '#N/A' },
          3,
          new Date(Date.UTC(2000, 0, 1)),
        ],
      ],
      (sheet) => {
        sheet.getCell('D2').numFmt = '0.0 %';
        sheet.getCell('E3').numFmt = 'yyyy-mm-dd';
      },
    );
    const report = await readRuns(bytes, 'hut.xlsx');
    expect(report.runs).toEqual([
      { run: 'Hut trunk', peak: 5, length: 7, target: 0.03, ownSize: '1/0 AWG' },
      { run: 'Linked', peak: 'TRUE', length: '#N/A', target: 0.03, ownSize: '2000-01-01' },
    ]);
    expect(report.problems.map(({ why }) => why)).toEqual([
      'Amps: "true" is not a number',
      'Length (m): "#N/A" is not a number',
      'Size: "2000-01-01" is a date; a spreadsheet may have made it of 1/0 or 2/0',
    ]);
  });
});

function oleWith(text: string): Uint8Array {
  const bytes = new Uint8Array(2048);
  bytes.set([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);
  [...text].forEach((character, at) => bytes.set([character.charCodeAt(0), 0], 1024 + 2 * at));
  return bytes;
}

describe('a workbook that cannot be read', () => {
  it.each([
    ['cut off', async () => (await written(DEMO)).subarray(0, 5000), /damaged, or no workbook/],
    [
      'with a hole',
      async () => (await written(DEMO)).map((byte, at) => (at > 3000 && at < 9000 ? 0 : byte)),
      /damaged, or no workbook/,
    ],
    [
      'a zip of nothing',
      () => Uint8Array.from([0x50, 0x4b, 0x03, 0x04, 0, 0]),
      /damaged, or no workbook/,
    ],
    [
      'of old spreadsheets',
      () => oleWith('Workbook'),
      /old spreadsheets \(\.xls\)\. Save it as \.xlsx/,
    ],
    ['under a password', () => oleWith('EncryptedPackage'), /locked with a password/],
    [
      'without a list',
      () =>
        foreign([
          ['Colour', 'Price'],
          ['red', 3],
        ]),
      /no list of runs that could be found/,
    ],
    ['with headings only', () => foreign([['Amps', 'Length']]), /headings and no runs under them/],
  ])('%s: is refused with a sentence', async (_, make, sentence) => {
    const refusal = await readRuns(await make(), 'a b.xlsx').catch((error: unknown) => error);
    expect(refusal).toBeInstanceOf(UnreadableFile);
    expect((refusal as Error).message).toMatch(sentence);
    expect((refusal as Error).message).toMatch(/^"a b\.xlsx" /);
  });
});
