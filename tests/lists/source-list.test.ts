/** Sources that lists describe or name. */
import ExcelJS from 'exceljs';
import { describe, expect, it } from 'vitest';
import { readRuns, readSources, UnreadableFile } from '../../src/lists/read-runs';
import { stationValues } from '../../src/sheets/station-values';
import { sharedFile } from '../../src/hosts/xlsx/shared-file';
import { DEMO } from '../../src/sheets/station/demo';
import { savedAs } from '../workbook/libreoffice';

const bytes = (text: string) => new TextEncoder().encode(text);
const sourcesIn = (text: string) => readSources(bytes(text), 'sources.csv');

const LIST = [
  'Name,Kind,Volts,Chemistry,Capacity (Ah),Internal resistance (mΩ),Low charge,Most amps,Above that it,Battery on its output',
  'Hut bank,Battery,12.6,LEAD-ACID,120 Ah,14,20 %,,,',
  'Roof panel,panel,,,,,,,,Hut bank',
  'Bench,Power supply,13.8 V,,,,,25 A,trips,',
].join('\n');

const AS_ON_THE_SHEET = [
  {
    name: 'Hut bank',
    kind: 'battery',
    volts: 12.6,
    chemistry: 'lead-acid',
    ampHours: 120,
    milliohms: 14,
    lowCharge: 0.2,
  },
  { name: 'Roof panel', kind: 'panel', charges: 'Hut bank' },
  { name: 'Bench', kind: 'power supply', volts: 13.8, mostAmps: 25, whenOver: 'trips' },
];

describe('a file of sources', () => {
  it('has one a row, its cells as those of the Supply sheet', async () => {
    expect(await sourcesIn(LIST)).toEqual({
      sources: AS_ON_THE_SHEET,
      problems: [],
      leftOver: [],
    });
  });

  it('may stand as the Supply sheet does, a column a source', async () => {
    const rows = LIST.split('\n').map((line) => line.split(','));
    const turned = rows[0]!.map((_, column) => rows.map((cells) => cells[column]).join(','));
    expect((await sourcesIn(turned.join('\n'))).sources).toEqual(AS_ON_THE_SHEET);
  });

  it('may have semicolons and decimal commas', async () => {
    const { sources } = await sourcesIn('Name;Kind;Volts\nBench;power supply;13,8\n');
    expect(sources).toEqual([{ name: 'Bench', kind: 'power supply', volts: 13.8 }]);
  });

  it('tells what it cannot use, and takes the rest as it stands', async () => {
    const { sources, problems, leftOver } = await sourcesIn(
      'Name,Kind,Volts,Ah,Low charge,Colour\nDynamo,pedals,6,-3,120 %,red\nCase,battery,12800 mV,,20,\n',
    );
    expect(problems.map(({ line, why }) => `${line}: ${why}`)).toEqual([
      '2: Kind of source: "pedals" is not one of battery, power supply, panel, charger, alternator',
      '2: Capacity: -3 is not above 0',
      '2: Low charge: 1.2 is more than 1; 80 means 8000 %; write 80% or 0.8',
      '3: Source volts: "12800 mV" is not a number in the unit of this column',
    ]);
    expect(leftOver).toEqual(['Colour']);
    expect(sources[1]).toEqual({
      name: 'Case',
      kind: 'battery',
      volts: '12800 mV',
      lowCharge: 0.2,
    });
  });

  it('has room for eight', async () => {
    const rows = Array.from({ length: 10 }, (_, index) => `Pack ${index + 1},battery`);
    const { sources, problems } = await sourcesIn(['Name,Kind', ...rows].join('\n'));
    expect(sources).toHaveLength(8);
    expect(problems.map(({ line, why, taken }) => [line, why, taken])).toEqual([
      [10, 'the Supply sheet has room for 8 sources', false],
      [11, 'the Supply sheet has room for 8 sources', false],
    ]);
  });

  it('says so where it has none', async () => {
    await expect(sourcesIn('Run,Amps\nLamp,2\n')).rejects.toThrow(UnreadableFile);
    await expect(sourcesIn('')).rejects.toThrow('is empty');
  });
});

describe('a list of runs', () => {
  const RUNS = [
    'Name,Fed from,Source,Amps,Length (ft)',
    'Hut trunk,,Hut bank,,7',
    'Relay,Hut trunk,Hut bank,14,5',
    'Iron,,bench,5,6',
    'Lamp,,Case battery,2,6',
  ].join('\n');

  it('names the source of a run where no other feeds it', async () => {
    const { sources } = await sourcesIn(LIST);
    const report = await readRuns(bytes(RUNS), 'runs.csv', { sources });
    expect(report.problems).toEqual([]);
    expect(report.runs.map(({ fedFrom }) => fedFrom)).toEqual([
      'Hut bank',
      'Hut trunk',
      'bench',
      'Case battery',
    ]);
    expect(report.sources).toEqual([...AS_ON_THE_SHEET, { name: 'Case battery' }]);
    expect(report.remarks).toContain(
      'Named as sources, to be described on the Supply sheet: Case battery.',
    );
    const verdicts = stationValues({ title: 'Runs', ...report }).runs.map(({ verdict }) => verdict);
    expect(verdicts.slice(0, 3)).toEqual(['ok', 'ok', 'ok']);
    expect(verdicts[3]).toContain('source not described');
  });

  it('takes the sources of another sheet of its workbook', async () => {
    const workbook = new ExcelJS.Workbook();
    for (const [name, text] of [
      ['Supply', LIST],
      ['Runs', RUNS],
    ] as const) {
      const sheet = workbook.addWorksheet(name);
      for (const line of text.split('\n')) {
        sheet.addRow(line.split(',').map((cell) => (/^[\d.]+$/.test(cell) ? Number(cell) : cell)));
      }
    }
    const report = await readRuns(new Uint8Array(await workbook.xlsx.writeBuffer()), 'runs.xlsx');
    expect(report.sources).toEqual([...AS_ON_THE_SHEET, { name: 'Case battery' }]);
  });
});

it('the Supply sheet of a copy, saved as .csv by LibreOffice, is such a file', async () => {
  const copy = await sharedFile(DEMO, { rows: DEMO.runs.length });
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.load(copy as unknown as ExcelJS.Buffer);
  // A .csv has the first sheet alone.
  for (const sheet of workbook.worksheets) {
    if (sheet.name !== 'Supply') workbook.removeWorksheet(sheet.id);
  }
  const supply = new Uint8Array(await workbook.xlsx.writeBuffer());
  const { sources } = await readSources(savedAs({ supply }, 'csv')['supply']!, 'supply.csv');
  expect(sources.map(({ name, kind }) => [name, kind])).toEqual(
    DEMO.sources?.map(({ name, kind }) => [name, kind]),
  );
  for (const [place, source] of (DEMO.sources ?? []).entries()) {
    const { volts, ampHours, mostAmps } = source;
    expect(sources[place]).toMatchObject({
      ...(volts !== undefined && { volts }),
      ...(ampHours !== undefined && { ampHours }),
      ...(mostAmps !== undefined && { mostAmps }),
    });
  }
});
