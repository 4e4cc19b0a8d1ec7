/** `--json`: one document for scripts, and nothing else on standard output. */
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ENDED, runTerminal } from '../../src/command/command';
import { countedByLevel, FIGURES, runLevel } from '../../src/command/figures';
import { jsonDocument, jsonText, type JsonDocument } from '../../src/command/json';
import { CellError } from '../../src/functions/cell';
import { readRuns } from '../../src/lists/read-runs';
import { stationValues } from '../../src/sheets/station-values';
import { SUPPLY_KEYS } from '../../src/sheets/station/supply-keys';

const LIST =
  'Name,Fed from,Current (A),Length (ft),Colour,Wire,Own fuse\n' +
  'Van main,battery,,6,red,,\n' +
  'Van set A,Van main,10,8,blue,10 AWG,yes\n' +
  'Van set B,Van mian,10,8,,,perhaps\n' +
  'too,many,cells,in,this,row,at,all\n' +
  '"Odd\u0085",,abc,3,,,\n';

let room: string;
/** What the list came to, once for all that is asked of it. */
let well: Awaited<ReturnType<typeof run>>;
let told: JsonDocument;
beforeAll(async () => {
  room = mkdtempSync(join(tmpdir(), 'loomsheet-json-'));
  writeFileSync(join(room, 'runs.csv'), LIST);
  well = await run(at('runs.csv'), at('out.xlsx'));
  told = JSON.parse(well.printed) as JsonDocument;
});
afterAll(() => rmSync(room, { recursive: true, force: true }));

const at = (name: string) => join(room, name);

async function run(...args: readonly string[]) {
  const printed: string[] = [];
  const complaints: string[] = [];
  const ended = await runTerminal([...args, '--json'], {
    print: (line) => printed.push(line),
    complain: (line) => complaints.push(line),
  });
  return { ended, printed: printed.join('\n'), complaints: complaints.join('\n') };
}

describe('the document for scripts', () => {
  it('is all that is printed, and holds every run with the figures of the schedule', async () => {
    expect([well.ended, well.complaints]).toEqual([ENDED.well, '']);
    const document = told;
    expect(Object.keys(document)).toEqual(['runs', 'supply', 'sources', 'notes']);

    const content = await readRuns(readFileSync(at('out.xlsx')), 'out.xlsx');
    const { runs, supply } = stationValues({ title: '', ...content });
    expect(document.runs.map(({ run: name }) => name)).toEqual(content.runs.map((one) => one.run));
    for (const [index, values] of runs.entries()) {
      const figures = document.runs[index]!;
      expect(Object.keys(figures).sort()).toEqual(
        ['run', 'level', 'why', ...Object.keys(FIGURES)].sort(),
      );
      expect(figures.level).toBe(runLevel(values));
      for (const [figure, column] of Object.entries(FIGURES)) {
        const cell = values[column];
        const isNull = cell === '' || cell instanceof CellError;
        expect(figures[figure as keyof typeof FIGURES], figure).toBe(isNull ? null : cell);
      }
    }
    expect(Object.keys(document.supply)).toEqual([...SUPPLY_KEYS, 'why']);
    for (const key of SUPPLY_KEYS) {
      const cell = supply.cells[key];
      if (typeof cell === 'number') expect(document.supply[key]).toBe(cell);
    }
    // The list says nothing of the battery, so one is assumed and none is stated.
    expect([document.supply.chemistry, document.supply.stated]).toEqual([null, 'no']);
    expect(document.supply.cells).toBe(6);
  });

  it('says why a figure is null', () => {
    const [main, setA, setB, odd] = told.runs;
    expect(setA).toMatchObject({ run: 'Van set A', amps: 10, size: '10 AWG', why: null });
    expect(main).toMatchObject({ run: 'Van main', amps: 10, why: null });
    expect(setB).toMatchObject({ amps: null, level: 'unclear' });
    expect(setB?.why).toMatch(/^fed from "Van mian", which is not in the list/);
    expect(odd).toMatchObject({ run: 'Odd\u0085', amps: null, level: 'unclear' });
    expect(odd?.why).toMatch(/abc" is not a number/);
  });

  it('notes what was not understood, with its line', () => {
    const { notes } = told;
    expect(notes.map(({ line, heading, taken, why }) => [line, heading, taken, why])).toEqual([
      [4, null, true, 'Own fuse: "perhaps" is neither yes nor no'],
      [
        4,
        null,
        true,
        'Fed from: no run or source of the list is called "Van mian"; did you mean Van main?',
      ],
      [5, null, false, expect.stringMatching(/more cells than there are headings/)],
      [6, null, true, 'Current (A): "abc" is not a number'],
      [null, 'Colour', null, expect.stringMatching(/^not a heading/)],
    ]);
    expect(notes[2]?.text).toBe('too | many | cells | in | this | row | at | all');
  });

  it('steers no terminal', () => {
    const { printed } = well;
    expect(printed).toContain('Odd\\u0085');
    // eslint-disable-next-line no-control-regex
    expect(printed).not.toMatch(/[\u0000-\u0009\u000B-\u001F\u007F-\u009F]/);
  });

  it('says nothing where the list cannot be read or the command is not understood', async () => {
    const unread = await run(at('none.csv'), at('unwritten.xlsx'));
    expect([unread.ended, unread.printed]).toEqual([ENDED.unread, '']);
    const misused = await run(at('runs.csv'), at('unwritten.xlsx'), '--rules', 'colour=red');
    expect([misused.ended, misused.printed]).toEqual([ENDED.misused, '']);
    expect(existsSync(at('unwritten.xlsx'))).toBe(false);
  });

  it('stays a document where the workbook cannot be written', async () => {
    const { ended, printed, complaints } = await run(at('runs.csv'), at('nowhere/out.xlsx'));
    expect(ended).toBe(ENDED.unwritten);
    expect((JSON.parse(printed) as JsonDocument).runs).toHaveLength(4);
    expect(complaints).toMatch(/could not be written/);
  });

  it('names each cause of errors once', async () => {
    const report = await readRuns(new TextEncoder().encode('Amps,Length\n5,3\n'), 'a.csv');
    const content = { title: '', runs: report.runs };
    const station = stationValues(content);
    const [values] = station.runs;
    const failed = {
      ...station,
      runs: [
        {
          ...values!,
          size: new CellError('#N/A', 'no size'),
          ampacity: new CellError('#N/A', 'no size'),
          fuse: new CellError('#REF!', ''),
        },
      ],
    };
    const document = jsonDocument(content, failed, report);
    expect(document.runs[0]).toMatchObject({
      run: null,
      size: null,
      fuse: null,
      why: 'no size; #REF!',
    });
    expect(JSON.parse(jsonText(document))).toEqual(document);
  });

  it('counts one run as one', () => {
    const { runs } = stationValues({ title: '', runs: [{ peak: 'abc', length: 3 }] });
    expect(countedByLevel(runs)).toBe('1 run: 0 danger, 0 fails, 1 unclear, 0 check, 0 ok');
    expect(countedByLevel([])).toBe('0 runs: 0 danger, 0 fails, 0 unclear, 0 check, 0 ok');
  });
});
