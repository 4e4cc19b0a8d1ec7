import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { GIVEN_HEADINGS } from '../../src/lists/column-map';
import { readRuns } from '../../src/lists/read-runs';
import { ENDED, runTerminal } from '../../src/command/command';
import { FIGURES } from '../../src/command/figures';
import { RULE_KEYS } from '../../src/sheets/station/house-rules';
import { stationValues } from '../../src/sheets/station-values';
import { LEVELS, levelOf } from '../../src/sheets/station/verdicts';
import { everythingIn, parseXml } from '../xml-tree';

const LIST =
  'Name,Current (A),Length (ft),Colour,Wire\n' +
  'Hut trunk,24,7,red,\n' +
  'Relay set,14,5,blue,10 AWG\n' +
  'Van set A,22,40,,14 AWG\n' +
  'too,many,cells,in,this,row\n' +
  'Odd,abc,3,,\n';

let room: string;
beforeEach(() => {
  room = mkdtempSync(join(tmpdir(), 'loomsheet-terminal-'));
  writeFileSync(join(room, 'runs.csv'), LIST);
});
afterEach(() => rmSync(room, { recursive: true, force: true }));

async function run(...args: readonly string[]) {
  const printed: string[] = [];
  const complaints: string[] = [];
  const ended = await runTerminal(args, {
    print: (line) => printed.push(line),
    complain: (line) => complaints.push(line),
  });
  return { ended, printed: printed.join('\n'), complaints: complaints.join('\n') };
}

const at = (name: string) => join(room, name);
const readBack = (name: string) => readRuns(readFileSync(at(name)), name);

describe('the schedule from a terminal', () => {
  it('writes the sheets that --with names, and no other', async () => {
    const { ended, complaints } = await run(at('runs.csv'), at('with.xlsx'), '--with', 'wire-list');
    expect([ended, complaints]).toEqual([ENDED.well, '']);
    expect((await readBack('with.xlsx')).extras).toEqual(['wireList']);
    // A workbook that has the sheet is written without it where it is not asked for.
    await run(at('with.xlsx'), at('again.xlsx'));
    expect((await readBack('again.xlsx')).extras).toBeUndefined();
  });

  it('writes the drawing as a picture by --svg, and as a sheet by --with', async () => {
    const svg = at('hut.svg');
    const { ended, printed } = await run(
      ...[at('runs.csv'), at('hut.xlsx'), '--svg', svg, '--with', 'drawing,fuse-map,drop-chart'],
    );
    expect(ended).toBe(ENDED.well);
    expect(printed).toContain(`Written: ${at('hut.xlsx')}, ${svg}`);
    expect((await readBack('hut.xlsx')).extras).toEqual(['fuseMap', 'drawing', 'dropChart']);
    const root = await parseXml(readFileSync(svg, 'utf8'));
    const texts = everythingIn(root).flatMap((element) =>
      element['#name'] === 'text' ? [element._] : [],
    );
    expect(texts).toEqual(expect.arrayContaining(['Hut trunk', 'Relay set', 'Van set A']));
  });

  it('writes no picture under a name that is none of one, and says where it could not', async () => {
    const misused = await run(at('runs.csv'), at('out.xlsx'), '--svg', at('hut.png'));
    expect(misused.ended).toBe(ENDED.misused);
    expect(misused.complaints).toContain('has to end in .svg');
    const unwritten = await run(at('runs.csv'), at('out.xlsx'), '--svg', at('none/hut.svg'));
    expect(unwritten.ended).toBe(ENDED.unwritten);
    expect(unwritten.complaints).toContain('hut.svg" could not be written');
  });

  it('says which sheets --with knows', async () => {
    const { ended, complaints } = await run(at('runs.csv'), at('out.xlsx'), '--with', 'wire,list');
    expect(ended).toBe(ENDED.misused);
    expect(complaints).toContain('"wire" is no sheet that --with knows. It knows: wire-list');
    expect(existsSync(at('out.xlsx'))).toBe(false);
  });

  it('writes the workbook, prints the verdicts and what was not understood', async () => {
    const { ended, printed, complaints } = await run(at('runs.csv'), at('out.xlsx'));
    expect([ended, complaints]).toEqual([ENDED.well, '']);
    const back = await readBack('out.xlsx');
    const content = { ...back, title: 'runs' };
    const { runs } = stationValues(content);
    for (const [index, { size, verdict }] of runs.entries()) {
      const line = printed.split('\n').find((one) => one.startsWith(content.runs[index]!.run!));
      if (typeof size === 'string') expect(line).toContain(size);
      expect(line).toContain(verdict);
    }
    expect(printed).toMatch(
      /^Van set A +22\.0 +40 +14 AWG .*over ampacity; no fuse fits; drop over target/m,
    );
    const levels = runs.map(({ verdict }) => levelOf(String(verdict)));
    const counts = LEVELS.map(
      (level) => `${levels.filter((one) => one === level).length} ${level}`,
    );
    expect(printed).toContain(`\n\n4 runs: ${counts.join(', ')}\n`);
    expect(levels).toContain('danger');
    expect(levels).toContain('unclear');
    expect(printed).toContain('"Current (A)" as Peak load, in A');
    expect(printed).toMatch(/"Colour": not a heading/);
    expect(printed).toMatch(/line 5, NOT taken: .*too \| many \| cells/);
    expect(printed).toMatch(/line 6, taken as it stands: .*"abc" is not a number/);
    expect(back.runs.map(({ run: name }) => name)).toEqual([
      'Hut trunk',
      'Relay set',
      'Van set A',
      'Odd',
    ]);
    expect(back.title).toBe('runs');
    expect(readdirSync(room).sort()).toEqual(['out.xlsx', 'runs.csv']);
  });

  it('sets house rules and a title', async () => {
    const { ended } = await run(
      at('runs.csv'),
      at('out.xlsx'),
      '--rules',
      'unit=m',
      'target=2%',
      'installed=engine space',
      '--title',
      'Hut and van',
      '--rules=series=MM2',
    );
    expect(ended).toBe(ENDED.well);
    const { rules, title, runs } = await readBack('out.xlsx');
    expect(rules).toMatchObject({
      unit: 'm',
      target: 0.02,
      installed: 'engine space',
      series: 'mm2',
    });
    expect(title).toBe('Hut and van');
    expect(runs[0]?.length).toBeCloseTo(7 * 0.3048, 12);
  });

  it('takes in its own workbook again, with its rules and supply', async () => {
    await run(at('runs.csv'), at('one.xlsx'), '--rules', 'tempC=50', '--title', 'Once');
    expect((await run(at('one.xlsx'), at('two.xlsx'))).ended).toBe(ENDED.well);
    expect(readFileSync(at('two.xlsx')).equals(readFileSync(at('one.xlsx')))).toBe(true);
  });

  it('takes sources from a file of their own', async () => {
    writeFileSync(
      at('sources.csv'),
      'Name,Kind,Volts,Most amps,Colour\nBench,power supply,13.8,8,red\nPond,pedals,,,\n',
    );
    writeFileSync(at('bench.csv'), 'Name,Source,Amps,Length (ft)\nSet,Bench,9,4\n');
    const { ended, printed, complaints } = await run(
      at('bench.csv'),
      at('out.xlsx'),
      '--sources',
      at('sources.csv'),
    );
    expect(ended).toBe(ENDED.well);
    expect(printed).toMatch(/Set .* supply overloaded/);
    expect(complaints.split('\n')).toEqual([
      'sources.csv, line 3: Kind of source: "pedals" is not one of battery, power supply, panel, charger, alternator',
      'sources.csv: "Colour" is no heading of the Supply sheet',
    ]);
    const again = await readRuns(readFileSync(at('out.xlsx')), 'out.xlsx');
    expect(again.sources?.[0]).toMatchObject({ name: 'Bench', kind: 'power supply', mostAmps: 8 });
  });

  const ODD = 'Name,From where,Amps,How far,Colour\nBoard,,24,7 ft,red\nRadio,Board,14,5 ft,\n';

  it('says what a column that was not understood holds, and how to take it in', async () => {
    writeFileSync(at('odd.csv'), ODD);
    const { ended, printed } = await run(at('odd.csv'), at('out.xlsx'));
    expect(ended).toBe(ENDED.well);
    expect(printed).toContain('every run is taken to start at the source');
    expect(printed).toContain('"From where" holds "Board": --map "From where=Fed from"');
    expect(printed).toContain('"How far" holds "7 ft", "5 ft": --map "How far=One-way length"');
    expect(printed).toMatch(/"Colour" holds "red"\n.*--map "Colour=Notes"; --help names/);
  });

  it('takes columns in as they are mapped', async () => {
    writeFileSync(at('odd.csv'), ODD);
    const maps = ['From where=Fed from', 'How far=One-way length', 'Colour=leave out'];
    const { ended, printed } = await run(
      at('odd.csv'),
      at('out.xlsx'),
      ...maps.flatMap((pair) => ['--map', pair]),
    );
    expect(ended).toBe(ENDED.well);
    expect(printed).not.toContain('--map');
    expect(printed).not.toContain('start at the source');
    expect((await readBack('out.xlsx')).runs).toEqual([
      { run: 'Board', peak: 24, length: 7 },
      { run: 'Radio', fedFrom: 'Board', peak: 14, length: 5 },
    ]);
  });

  it('says which headings there are where none of them is a load or a length', async () => {
    writeFileSync(at('odd.csv'), 'Thing,How much,How far\nRadio,22 A,10 ft\n');
    const unread = await run(at('odd.csv'), at('out.xlsx'));
    expect(unread.ended).toBe(ENDED.unread);
    expect(unread.complaints).toMatch(/"How far" holds "10 ft": --map "How far=One-way length"/);
    const { ended } = await run(
      ...[at('odd.csv'), at('out.xlsx'), '--map', 'How far=One-way length'],
      ...['--map', 'How much=Peak load', '--map', 'Thing=Run'],
    );
    expect(ended).toBe(ENDED.well);
    expect((await readBack('out.xlsx')).runs).toEqual([{ run: 'Radio', peak: 22, length: 10 }]);
  });

  it('says that a file of sources cannot be read, and does not overwrite it', async () => {
    const missing = await run(at('runs.csv'), at('out.xlsx'), '--sources', at('none.csv'));
    expect(missing.ended).toBe(ENDED.unread);
    expect(missing.complaints).toMatch(/none\.csv" could not be read/);
    const over = await run(at('runs.csv'), at('a.xlsx'), '--sources', at('a.xlsx'));
    expect([over.ended, over.complaints]).toEqual([
      ENDED.misused,
      expect.stringMatching(/overwrite the sources/),
    ]);
  });

  it.each([
    [['--rules', 'colour=red'], /"colour=red" is no house rule.*unit, volts, target/],
    [['--rules', 'unit=yards'], /unit: "yards" is not one of/],
    [['--rules', 'volts=many'], /volts: "many" is not a number/],
    [['--rules', 'target=3'], /target: 3 is not below 0\.5; 3 means 300 %/],
    [['--rules', 'duty=often'], /duty: .*continuous/],
    [['--rules', 'volts'], /"volts" is no house rule\. Write name=value/],
    [['--map', 'Colours=Notes'], /no column "colours"; did you mean "Colour"\? .*"Name"/],
    [['--map', 'Colour=Paint'], /"Paint" is no column that a list gives.*Run, Fed from/],
    [['--map', 'Colour'], /"Colour" maps nothing.*--map "From where=Fed from"/],
    [['--map', 'Colour=Run', '--map', 'Wire=Run'], /"Colour" and "Wire" cannot both be "Run"/],
    [['--map', 'Colour=Run', '--map', 'colour=Load'], /"colour" is mapped twice/],
    [['--speed'], /speed/],
    [['third.csv'], /Give two names/],
  ])('refuses %j and writes nothing', async (args, sentence) => {
    const { ended, complaints } = await run(at('runs.csv'), at('out.xlsx'), ...args);
    expect(ended).toBe(ENDED.misused);
    expect(complaints).toMatch(sentence);
    expect(complaints).toContain('--help');
    expect(existsSync(at('out.xlsx'))).toBe(false);
  });

  it('refuses to overwrite its list, or to write anything but a workbook', async () => {
    expect((await run(at('runs.csv'), at('runs.csv'))).ended).toBe(ENDED.misused);
    expect((await run(at('runs.csv'), at('out.csv'))).ended).toBe(ENDED.misused);
    expect((await run(at('a.xlsx'), at('.') + '/a.xlsx')).complaints).toMatch(/overwrite the list/);
    expect(readFileSync(at('runs.csv'), 'utf8')).toBe(LIST);
  });

  it('says that a list cannot be read, and that a workbook cannot be written', async () => {
    const missing = await run(at('none.csv'), at('out.xlsx'));
    expect([missing.ended, missing.complaints]).toEqual([
      ENDED.unread,
      expect.stringMatching(/none\.csv" could not be read/),
    ]);
    writeFileSync(at('empty.csv'), '');
    const empty = await run(at('empty.csv'), at('out.xlsx'));
    expect([empty.ended, empty.complaints]).toEqual([ENDED.unread, '"empty.csv" is empty.']);
    mkdirSync(at('taken.xlsx'));
    for (const place of ['taken.xlsx', 'nowhere/out.xlsx']) {
      const unwritten = await run(at('runs.csv'), at(place));
      expect([unwritten.ended, unwritten.complaints]).toEqual([
        ENDED.unwritten,
        expect.stringMatching(/could not be written/),
      ]);
    }
    expect(readdirSync(room).sort()).toEqual(['empty.csv', 'runs.csv', 'taken.xlsx']);
  });

  it('lets no text of the list steer the terminal', async () => {
    writeFileSync(at('odd.csv'), 'Name,Amps,Length\n\u001b[2Jwiped,1,2\n');
    const { printed } = await run(at('odd.csv'), at('out.xlsx'));
    expect(printed).toContain('?[2Jwiped');
    // eslint-disable-next-line no-control-regex
    expect(printed).not.toMatch(/[\u0000-\u0009\u000B-\u001F]/);
  });

  it('helps, naming every rule', async () => {
    const { ended, printed } = await run('--help');
    expect(ended).toBe(ENDED.well);
    for (const key of RULE_KEYS) expect(printed).toMatch(new RegExp(`^ {2}${key} `, 'm'));
    expect(printed).toMatch(/also when runs in it are not ok/);
    for (const level of LEVELS) expect(printed).toMatch(new RegExp(`\\b${level}: \\w`));
    for (const field of [
      '--json',
      '--sources',
      '--map',
      ...GIVEN_HEADINGS,
      ...Object.keys(FIGURES),
      ...['runs', 'supply', 'sources', 'notes'].map((part) => `\n  ${part} `),
    ]) {
      expect(printed).toContain(field);
    }
    for (const line of printed.split('\n')) expect(line.length, line).toBeLessThanOrEqual(120);
  });

  it('is what npm runs', { timeout: 120_000 }, () => {
    const npm = (...args: string[]) =>
      spawnSync('npm', ['run', '--silent', 'schedule', '--', ...args], { encoding: 'utf8' });
    const well = npm(at('runs.csv'), at('out.xlsx'), '--rules', 'unit=ft', 'target=5%');
    expect([well.status, well.stderr]).toEqual([ENDED.well, '']);
    expect(well.stdout).toContain(`Written: ${at('out.xlsx')}`);
    const ill = npm(at('none.csv'), at('out2.xlsx'));
    expect([ill.status, ill.stdout]).toEqual([ENDED.unread, '']);
    expect(ill.stderr).toMatch(/could not be read/);
  });

  it('writes its workbook in silence where the reader of its table has gone', async () => {
    const rows = Array.from({ length: 300 }, (_, index) => `Lamp ${index},2,${5 + (index % 9)}\n`);
    writeFileSync(at('long.csv'), `Name,Current (A),Length (ft)\n${rows.join('')}`);
    for (const closed of ['stdout', 'stderr'] as const) {
      const list = closed === 'stdout' ? at('long.csv') : at('none.csv');
      const tsx = join('node_modules', 'tsx', 'dist', 'cli.mjs');
      const child = spawn(
        process.execPath,
        [tsx, join('src', 'command', 'main.ts'), list, at(`${closed}.xlsx`)],
        { stdio: ['ignore', 'pipe', 'pipe'] },
      );
      child[closed].destroy();
      let heard = '';
      const open = closed === 'stdout' ? child.stderr : child.stdout;
      open.on('data', (data: Buffer) => (heard += data.toString()));
      const [code] = (await once(child, 'close')) as [number | null];
      expect([code, heard]).toEqual([closed === 'stdout' ? ENDED.well : ENDED.unread, '']);
    }
    expect((await readBack('stdout.xlsx')).runs).toHaveLength(300);
  });
});
