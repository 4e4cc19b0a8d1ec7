import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { readRuns, NO_FEEDERS, UnreadableFile, MOST_RUNS } from '../../src/lists/read-runs';

const utf8 = (text: string) => new TextEncoder().encode(text);
const read = (text: string) => readRuns(utf8(text), 'runs.csv');

const PLAIN = 'Name,Current (A),Length (m)\nHut trunk,24,7\nCamera,2.5,45\n';
const PLAIN_RUNS = [
  { run: 'Hut trunk', peak: 24, length: 7 },
  { run: 'Camera', peak: 2.5, length: 45 },
];

function utf16(text: string, littleEndian: boolean, mark: boolean): Uint8Array {
  const units = (mark ? '\uFEFF' : '') + text;
  const bytes = new Uint8Array(units.length * 2);
  const view = new DataView(bytes.buffer);
  [...units].forEach((_, at) => view.setUint16(at * 2, units.charCodeAt(at), littleEndian));
  return bytes;
}

describe('a list of runs as text', () => {
  it('is read by its headings, and keeps the unit of its lengths', async () => {
    const report = await read(PLAIN);
    expect(report.runs).toEqual(PLAIN_RUNS);
    expect(report.rules).toEqual({ unit: 'm' });
    expect(report.understood).toEqual([
      { heading: 'Name', as: 'Run' },
      { heading: 'Current (A)', as: 'Peak load', unit: 'A' },
      { heading: 'Length (m)', as: 'One-way length', unit: 'm' },
    ]);
    expect([report.leftOver, report.problems, report.remarks]).toEqual([[], [], [NO_FEEDERS]]);
  });

  it.each([
    ['semicolons', PLAIN.replaceAll(',', ';')],
    ['tabs', PLAIN.replaceAll(',', '\t')],
    ['bars', PLAIN.replaceAll(',', '|')],
    ['semicolons and decimal commas', PLAIN.replaceAll(',', ';').replace('2.5', '2,5')],
    ['quotes', 'Name,Current (A),Length (m)\n"Hut trunk","24","7"\n"Camera","2,5","45"\n'],
    ['the ends of lines of other systems', PLAIN.replaceAll('\n', '\r\n')],
    ['the ends of lines of old systems', PLAIN.replaceAll('\n', '\r')],
    ['mixed ends of lines', PLAIN.replace('\n', '\r\n')],
    ['no last end of line', PLAIN.trimEnd()],
    ['blank lines', PLAIN.replaceAll('\n', '\n\n,,\n')],
    ['lines above its headings', `River flood watch\n\nAs of spring\n${PLAIN}`],
    ['the separator said first', `sep=;\n${PLAIN.replaceAll(',', ';')}`],
  ])('may have %s', async (_, text) => {
    expect((await read(text)).runs).toEqual(PLAIN_RUNS);
  });

  const ACCENTED = PLAIN.replace('Hut trunk', 'Hütte – Nº 1');
  const cp1252 = Uint8Array.from([...ACCENTED].map((c) => (c === '–' ? 0x96 : c.charCodeAt(0))));
  it.each([
    ['UTF-8', utf8(ACCENTED), undefined],
    ['UTF-8 with a mark', utf8(`\uFEFF${ACCENTED}`), undefined],
    ['Windows-1252', cp1252, 'Windows-1252'],
    ['UTF-16, low byte first, with a mark', utf16(ACCENTED, true, true), 'UTF-16'],
    ['UTF-16, high byte first, with a mark', utf16(ACCENTED, false, true), 'UTF-16'],
    ['UTF-16, low byte first', utf16(ACCENTED, true, false), 'UTF-16'],
    ['UTF-16, high byte first', utf16(ACCENTED, false, false), 'UTF-16'],
  ])('may be %s', async (_, bytes, encoding) => {
    const report = await readRuns(bytes, 'runs.csv');
    expect(report.runs.map(({ run }) => run)).toEqual(['Hütte – Nº 1', 'Camera']);
    expect(report.remarks).toEqual(
      encoding === undefined
        ? [NO_FEEDERS]
        : [`Its characters were read as ${encoding}.`, NO_FEEDERS],
    );
  });

  it('understands units in headings and behind numbers', async () => {
    const report = await read(
      'Name,Current mA,Length ft,Supply (V),Max drop (%),Joints (mΩ),Min V,Wire (mm²)\n' +
        'a,350,3,12.8,3,1.5,10.8,6\n' +
        'b,2 A,"1,5 m",24 V,2%,0.002 ohm,11 V,10 AWG\n' +
        "c,60 W,6',12000 mV,0.5 %,,,#8\n",
    );
    expect(report.runs).toEqual([
      {
        run: 'a',
        peak: 0.35,
        length: 3,
        volts: 12.8,
        target: 0.03,
        joints: 1.5,
        leastVolts: 10.8,
        ownSize: '6 mm2',
      },
      {
        run: 'b',
        peak: 2,
        length: 1.5 / 0.3048,
        volts: 24,
        target: 0.02,
        joints: 2,
        leastVolts: 11,
        ownSize: '10 AWG',
      },
      { run: 'c', peak: 60, kind: 'W', length: 6, volts: 12, target: 0.005, ownSize: '8 AWG' },
    ]);
    expect(report.problems).toEqual([]);
  });

  it('converts lengths where another unit is wanted, and says so', async () => {
    const report = await readRuns(utf8('Amps,Length [ft]\n5,10\n'), 'runs.csv', {
      lengthUnit: 'm',
    });
    expect(report.runs).toEqual([{ peak: 5, length: 3.048 }]);
    expect(report.lengthUnit).toBe('m');
    expect(report.remarks).toEqual(['Lengths were converted from ft to m.']);
  });

  it('says which unit it took where none is named', async () => {
    const report = await read('Amps,Length\n5,10\n');
    expect(report.rules).toEqual({ unit: 'ft' });
    expect(report.remarks).toEqual(['"Length" names no unit; its figures were taken for ft.']);
  });

  it('halves a length that counts both ways, and says so', async () => {
    const report = await read('Amps,Round trip (m)\n5,10\n');
    expect(report.runs).toEqual([{ peak: 5, length: 5 }]);
    expect(report.remarks).toEqual([
      '"Round trip (m)" counts both ways; half of it is the one-way length.',
    ]);
  });

  it('takes loads in amps and in watts from two columns', async () => {
    const report = await read('Name,Amps,Watts,Length (m)\na,5,,1\nb,,60,2\n');
    expect(report.runs).toEqual([
      { run: 'a', peak: 5, length: 1 },
      { run: 'b', peak: 60, kind: 'W', length: 2 },
    ]);
  });

  it('keeps what it cannot read as it stands, and tells the line', async () => {
    const report = await read(
      'Name,Amps,Length (m),Size,Colour\n' +
        'a,abc,7,12 AWG,red\n' +
        '"two\nlines",5,"1,250",3.7,\n' +
        'only a name,,,,\n' +
        'too,many,cells,in,this,row\n',
    );
    expect(report.runs).toEqual([
      { run: 'a', peak: 'abc', length: 7, ownSize: '12 AWG' },
      { run: 'two\nlines', peak: 5, length: '1,250', ownSize: '3.7' },
    ]);
    expect(report.leftOver.map(({ heading }) => heading)).toEqual(['Colour']);
    expect(report.problems.map(({ line, taken }) => [line, taken])).toEqual([
      [2, true],
      [3, true],
      [3, true],
      [5, false],
      [6, false],
    ]);
    expect(report.problems.map(({ why }) => why).join('\n')).toMatchInlineSnapshot(`
      "Amps: "abc" is not a number
      Length (m): "1,250" may be 1.25 or 1250; write it without a mark for thousands
      Size: 3.7 is not an AWG number; for square millimetres write "3.7 mm2"
      it has neither a load nor a length
      it has more cells than there are headings; put a text with commas in it, or a decimal comma, in quotes"
    `);
  });

  it('loses only the line whose quote is never closed', async () => {
    const report = await read('Name,Amps,Length (m)\na,1,2\nb,"2,3\nc,3,4\n"d,4,5\n');
    expect(report.runs.map(({ run }) => run)).toEqual(['a', 'c']);
    expect(report.problems).toEqual([
      { line: 3, text: 'b,"2,3', why: 'a quote is opened and never closed', taken: false },
      { line: 5, text: '"d,4,5', why: 'a quote is opened and never closed', taken: false },
    ]);
  });

  it('loses no rows between two stray quotes', async () => {
    const report = await read('Name,Amps,Length (m)\na,"2,3\nb,3,4\nc,4,5\nd,"5,6\ne,6,7\n');
    expect(report.runs.map(({ run }) => run)).toEqual(['b', 'c', 'e']);
    expect(report.problems.map(({ line, taken }) => [line, taken])).toEqual([
      [2, false],
      [5, false],
    ]);
    const within = await read('Name,Amps,Length (m)\n"the "long" one",3,4\n');
    expect(within.runs).toEqual([{ run: 'the "long" one', peak: 3, length: 4 }]);
  });

  it('gives text back exactly, whatever stands in it', async () => {
    const text = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 30 });
    const clean = text
      .map((given) => given.replace(/[\0\r\uFEFF]/g, '').trim())
      .filter((given) => given !== '');
    const run = fc.record({
      run: clean,
      load: clean,
      peak: fc.double({ min: 0.001, max: 1000, noNaN: true }),
      length: fc.double({ min: 0.001, max: 99, noNaN: true }),
    });
    await fc.assert(
      fc.asyncProperty(
        fc.array(run, { minLength: 1, maxLength: 8 }),
        fc.constantFrom(',', ';', '\t'),
        async (runs, delimiter) => {
          const csv = Papa.unparse(runs, { delimiter }).replace('length', 'length (ft)');
          expect((await read(csv)).runs).toEqual(runs);
        },
      ),
    );
  });
});

describe('a file that is no list', () => {
  it.each([
    ['empty', new Uint8Array(), /^"runs.csv" is empty\.$/],
    ['blank', utf8(' \n\n'), /holds nothing but blanks/],
    ['without headings', utf8('1,2,3\n4,5,6\n'), /no list of runs .* row of headings is needed/],
    ['of something else', utf8('Colour,Price\nred,3\n'), /no list of runs/],
    ['headings only', utf8('Name,Amps,Length\n'), /headings and no runs/],
    [
      'a picture',
      Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 13]),
      /neither a workbook .* nor a text/,
    ],
    [
      'endless',
      utf8('Amps,Length\n' + '5,10\n'.repeat(50_000)),
      new RegExp(`lists 50000 runs; at most ${MOST_RUNS}`),
    ],
    ['huge', new Uint8Array(31_000_000), /31 MB/],
  ])('%s: is refused with a sentence', async (_, bytes, sentence) => {
    const refusal = await readRuns(bytes, 'runs.csv').catch((error: unknown) => error);
    expect(refusal).toBeInstanceOf(UnreadableFile);
    expect((refusal as Error).message).toMatch(sentence);
    expect((refusal as Error).message).not.toContain('\n');
  });
});
