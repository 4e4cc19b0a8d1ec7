/** Entries that were not understood are never taken for the unsafe meaning. */
import ExcelJS from 'exceljs';
import { describe, expect, it } from 'vitest';
import { parseSize } from '../../src/core/size';
import { isRefusal } from '../../src/core/outcome';
import { readNumber } from '../../src/functions/parameter';
import { readRuns } from '../../src/lists/read-runs';
import { stationValues } from '../../src/sheets/station-values';
import { levelOf } from '../../src/sheets/station/verdicts';

const read = (text: string) => readRuns(new TextEncoder().encode(text), 'runs.csv');

async function readSheet(rows: readonly (readonly unknown[])[], formats: [string, string][] = []) {
  const workbook = new ExcelJS.Workbook();
  const sheet = workbook.addWorksheet('Cables');
  sheet.addRows(rows.map((row) => [...row]));
  for (const [cell, format] of formats) sheet.getCell(cell).numFmt = format;
  return readRuns(new Uint8Array(await workbook.xlsx.writeBuffer()), 'runs.xlsx');
}

const whys = ({ problems }: Awaited<ReturnType<typeof read>>) =>
  problems.map(({ line, why }) => `${line}: ${why}`);

describe('"Own fuse" in a list', () => {
  it.each([
    ['no', ['no', 'No', 'NONE', 'n', 'false', 'FALSE', '0', '-', '–', 'no fuse', ' No  fuse ']],
    ['yes', ['yes', 'Y', 'true', 'TRUE', '1']],
  ])('means %s', async (word, spellings) => {
    const report = await read(
      `Amps,Length,Own fuse\n${spellings.map((said) => `5,3,"${said}"\n`).join('')}`,
    );
    expect(report.runs.map(({ fused }) => fused)).toEqual(spellings.map(() => word));
    expect(report.problems).toEqual([]);
  });

  it('is read from boolean and number cells too', async () => {
    const report = await readSheet([
      ['Amps', 'Length', 'Fused'],
      [5, 3, false],
      [5, 3, true],
      [5, 3, 0],
      [5, 3, 1],
      [5, 3, null],
    ]);
    expect(report.runs.map(({ fused }) => fused)).toEqual(['no', 'yes', 'no', 'yes', undefined]);
    expect(report.problems).toEqual([]);
  });

  it('is named and stays as it stands where it means neither', async () => {
    const report = await read('Amps,Length,Own fuse\n5,3,perhaps\n5,3,10 A\n5,3,nope\n');
    expect(report.runs.map(({ fused }) => fused)).toEqual(['perhaps', '10 A', 'nope']);
    expect(whys(report)).toEqual([
      '2: Own fuse: "perhaps" is neither yes nor no',
      '3: Own fuse: "10 A" is neither yes nor no',
      '4: Own fuse: "nope" is neither yes nor no',
    ]);
    expect(report.problems.every(({ taken }) => taken)).toBe(true);
  });
});

describe('amps or watts', () => {
  it('are understood in words', async () => {
    const report = await read('Peak,Length,A or W,Name\n5,3,watts,a\n5,3,Amp,b\n5,3,VA,c\n');
    expect(report.runs.map(({ kind }) => kind)).toEqual(['W', 'A', 'VA']);
    expect(whys(report)).toEqual(['4: A or W: "VA" is neither A (amps) nor W (watts)']);
  });

  it('are neither where unit and word contradict each other', async () => {
    for (const columns of ['Kind,Current (A)', 'Current (A),Kind']) {
      const row = columns.startsWith('Kind') ? 'W,24' : '24,W';
      const report = await read(`${columns},Length\n${row},3\n`);
      expect(report.runs).toEqual([{ peak: '24 A', kind: 'W', length: 3 }]);
      expect(whys(report)).toEqual(['2: the load is in A, and its row says W']);
      expect(isRefusal(readNumber('24 A'))).toBe(true);
    }
    expect((await read('Peak,Kind,Length\n60 W,W,3\n')).runs[0]).toMatchObject({ kind: 'W' });
    expect((await read('Peak,Kind,Length\n60 W,A,3\n')).runs[0]).toMatchObject({ peak: '60 W' });
  });
});

describe('a wire size that cannot be told', () => {
  const SENTENCE = 'the number 0 may be a blank cell; for 1/0 AWG write "1/0" or "0 AWG"';

  it('is refused for the number 0, in a sheet and in a text', async () => {
    const sheet = await readSheet([
      ['Amps', 'Length', 'Size'],
      [5, 3, 0],
      [5, 3, '0 AWG'],
      [5, 3, '1/0'],
      [5, 3, '0'],
    ]);
    const text = await read('Amps,Length,Size (AWG)\n5,3,0\n5,3,0 AWG\n5,3,1/0\n');
    expect(whys(sheet)).toEqual([`2: Size: ${SENTENCE}`]);
    expect(whys(text)).toEqual([`2: Size (AWG): ${SENTENCE}`]);
    expect(sheet.runs.slice(1).map(({ ownSize }) => ownSize)).toEqual(Array(3).fill('1/0 AWG'));
    expect(text.runs.slice(1).map(({ ownSize }) => ownSize)).toEqual(Array(2).fill('1/0 AWG'));
    for (const [run] of [sheet.runs, text.runs]) {
      expect(isRefusal(parseSize(run!.ownSize!))).toBe(true);
      const { runs } = stationValues({ title: '', runs: [run!] });
      expect(levelOf(String(runs[0]!.verdict))).not.toBe('ok');
    }
  });

  it('is not handed on as another size', async () => {
    const report = await read('Amps,Length,Area (mm²)\n5,3,2/0\n5,3,"0,01"\n5,3,500\n');
    expect(report.problems).toHaveLength(3);
    for (const { ownSize } of report.runs) expect(isRefusal(parseSize(ownSize!))).toBe(true);
  });
});

describe('a figure in the wrong column', () => {
  it('is not handed on as a number', async () => {
    const report = await read('Name,Peak,Length (m),Joints (mΩ)\na,3%,3,1\nb,5,2%,1\nc,5,2,60 W\n');
    expect(whys(report)).toEqual([
      '2: Peak: "3%" is not a number in a unit of this column',
      '3: Length (m): "2%" is not a number in a unit of this column',
      '4: Joints (mΩ): "60 W" is not a number in a unit of this column',
    ]);
    const [a, b, c] = report.runs;
    for (const text of [a?.peak, b?.length, c?.joints]) {
      expect(isRefusal(readNumber(text!))).toBe(true);
    }
  });

  it('is named where no schedule takes it', async () => {
    const report = await read('Name,Amps,Length,Supply (V)\na,-3,-1,0\n');
    expect(report.runs).toEqual([{ run: 'a', peak: -3, length: -1, volts: 0 }]);
    expect(whys(report)).toEqual([
      '2: Amps: -3 is less than 0',
      '2: Length: -1 is less than 0',
      '2: Supply (V): 0 is not above 0',
    ]);
  });
});

describe('a column of drop targets', () => {
  const targets = async (...given: readonly string[]) => {
    const rows = given.map((said) => `,5,3,"${said}"\n`).join('');
    const report = await read(`Fed from,Amps,Length (m),Max drop\n${rows}`);
    return { report, targets: report.runs.map(({ target }) => target) };
  };

  it('is in percent where every bare number of it is between 0.5 and 20', async () => {
    const { report, targets: read3 } = await targets('3', '2', '0,5', '20', '', '4 %');
    expect(read3).toEqual([0.03, 0.02, 0.005, 0.2, undefined, 0.04]);
    expect(report.problems).toEqual([]);
    expect(report.remarks).toEqual([
      'Bare numbers under "Max drop" were taken for percent: 3 is 3 %.',
    ]);
    expect(report.understood.at(-1)).toEqual({
      heading: 'Max drop',
      as: 'Drop target',
      unit: '%',
    });
  });

  it('is in shares where every bare number is one', async () => {
    const { report, targets: shares } = await targets('0.03', '0.02', '3%');
    expect(shares).toEqual([0.03, 0.02, 0.03]);
    expect([report.problems, report.remarks]).toEqual([[], []]);
  });

  it('is refused with a hint where it is neither', async () => {
    const { report, targets: mixed } = await targets('3', '0.03', '0.3', '25', '0', '-2');
    expect(whys(report)).toEqual([
      '2: Max drop: 3 is not below 0.5; 3 means 300 %; write 3% or 0.03',
      '4: Max drop: 0.3 may be 30 % or 0.3 %; write it with its sign',
      '5: Max drop: 25 is not below 0.5; 3 means 300 %; write 3% or 0.03',
      '6: Max drop: 0 is not above 0; 3 means 300 %; write 3% or 0.03',
      '7: Max drop: -2 is not above 0; 3 means 300 %; write 3% or 0.03',
    ]);
    expect(mixed).toEqual([3, 0.03, '0.3?', 25, 0, -2]);
    expect(report.remarks).toEqual([]);
  });

  it('is what its cells show in a sheet', async () => {
    const rows = [
      ['Amps', 'Length', 'Max drop'],
      [5, 3, 0.03],
      [5, 3, 2],
    ];
    const report = await readSheet(rows, [['C2', '0 %']]);
    expect(report.runs.map(({ target }) => target)).toEqual([0.03, 0.02]);
    expect(report.problems).toEqual([]);
  });
});

describe('headings that look like ours', () => {
  it('are named as left out, with what to do', async () => {
    const report = await read(
      'Name,Amps,Length (m),Fuse,From where,Feeds,Verdict,Wiire size\na,5,3,10,b,c,ok,12\n',
    );
    expect(report.runs).toEqual([{ run: 'a', peak: 5, length: 3 }]);
    expect(report.leftOver.map(({ heading, why }) => `${heading}: ${why}`)).toEqual([
      'Fuse: the schedule computes it; whether a run has a fuse of its own stands under "Own fuse", yes or no',
      'From where: not a heading this list is read by; if it names the run that feeds this one, head it "Fed from"',
      'Feeds: not a heading this list is read by; which run feeds this one stands under "Fed from"',
      'Verdict: the schedule computes it',
      'Wiire size: not a heading this list is read by; if it is "My wire", head it so',
    ]);
    expect(report.computedAnew).toEqual([]);
  });

  it('mean what people mean by them where a computed column of ours is called so', async () => {
    const report = await read('Name,Amps,Length (m),Wire\na,5,3,12\n');
    expect(report.runs).toEqual([{ run: 'a', peak: 5, length: 3, ownSize: '12 AWG' }]);
    expect(report.leftOver).toEqual([]);
  });

  it('mean what people mean by them where only a working of ours is called so', async () => {
    const report = await read('Name,Amps,Length (m),Feeder\na,5,3,\nb,5,3,a\n');
    expect(report.runs[1]).toEqual({ run: 'b', peak: 5, length: 3, fedFrom: 'a' });
    expect(report.leftOver).toEqual([]);
  });
});

describe('feeders of a list', () => {
  const LIST = 'Name,Fed from,Amps,Length\nVan main,Battery,,4\n';

  it('may be the battery by its name, as well as blank', async () => {
    const { runs, problems } = await read(`${LIST}b, BATTERY ,5,3\nc,,5,3\nd,panel,5,3\n`);
    expect(runs.map(({ fedFrom }) => fedFrom)).toEqual([undefined, undefined, undefined, 'panel']);
    expect(problems).toEqual([]);
    const named = await read('Name,Fed from,Amps,Length\nBattery,,,1\nb,battery,5,3\n');
    expect(named.runs[1]).toMatchObject({ fedFrom: 'battery' });
  });

  it('are asked for where the list has no run of that name', async () => {
    const report = await read(
      `${LIST}b,Van mian,5,3\nc,Nowhere,5,3\nd,batery,5,3\ne,VAN MAIN,5,3\n`,
    );
    expect(whys(report)).toEqual([
      '3: Fed from: no run or source of the list is called "Van mian"; did you mean Van main?',
      '4: Fed from: no run or source of the list is called "Nowhere"',
      '5: Fed from: no run or source of the list is called "batery"; did you mean battery?',
    ]);
    expect(report.runs.map(({ fedFrom }) => fedFrom).slice(1)).toEqual([
      'Van mian',
      'Nowhere',
      'batery',
      'VAN MAIN',
    ]);
  });
});
