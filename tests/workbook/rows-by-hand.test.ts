/**
 * Rows that a person puts into or takes out of a shared copy in LibreOffice, which knows nothing of the sheets behind: no
 * run may be given another's answer. What could be is said over the headings instead.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { writeWorkbook } from '../../src/hosts/xlsx/write';
import { BUILT_WORDS } from '../../src/sheets/as-built/formulas';
import {
  asBuiltName,
  BUILT_ROW,
  builtColumn,
  type BuiltKey,
} from '../../src/sheets/as-built/layout';
import { columnOf, ROW } from '../../src/sheets/schedule/layout';
import { COLUMN_KEYS } from '../../src/sheets/station/schedule-keys';
import { sharedCopy } from '../../src/sheets/shared-copy';
import type { ScheduleRun } from '../../src/sheets/station/run';
import { scheduleNames } from '../../src/sheets/station/naming';
import { levelOf, WORD } from '../../src/sheets/station/verdicts';
import { cellsOf, type WorkbookCells } from './cells';
import { withRowsChanged, type RowChange } from './libreoffice-hands';

const RUNS: readonly ScheduleRun[] = [
  { run: 'Tower trunk', length: '6 ft' },
  { run: 'Siren', fedFrom: 'Tower trunk', peak: '10 A', length: 12 },
  { run: 'Gauge', fedFrom: 'Tower trunk', peak: '800 mA', length: '40 ft' },
  { run: 'Van main', length: '4 ft' },
  { run: 'Van radio', fedFrom: 'Van main', peak: 20, length: '10 ft' },
  { run: 'Case', peak: '12 A', length: 6 },
];
const SHEET = scheduleNames().sheet;
const BUILT_SHEET = asBuiltName(scheduleNames());
/** Runs that the copy has room for. */
const ROOM = 12;
/** Where "Gauge" stands; a row put in there comes between it and "Siren". */
const MIDDLE = ROW.first + 2;
/** What is typed of the fuse of "Siren", by its row, and read of its cable. */
const READINGS = [{}, { voltsIn: 12.9, voltsOut: 12.2, amps: 10 }];
const FUSES = [{}, { kind: 'high-breaking', breaks: 15_000 }];
const ANSWERS = ['verdict', 'size', 'fuse', 'dropShare'] as const;

let copies: Readonly<
  Record<
    'before' | 'above' | 'between' | 'out' | 'belowAll' | 'sorted' | 'entries' | 'entriesSorted',
    WorkbookCells
  >
>;

beforeAll(async () => {
  const { plans, values } = sharedCopy({ title: 'By hand', runs: RUNS }, { rows: ROOM });
  const written = await writeWorkbook(plans, values);
  const at = (row: number, change: RowChange['change']) => ({ sheet: SHEET, row, change });
  const changed = withRowsChanged(written, {
    above: at(ROW.first, 'insert'),
    between: at(MIDDLE, 'insert'),
    out: at(MIDDLE, 'remove'),
    belowAll: at(
      ROW.first + ROOM,
      new Map([
        [columnOf('run'), 'Late lamp'],
        [columnOf('peak'), '2 A'],
        [columnOf('length'), '9 ft'],
      ]),
    ),
  });
  const withEntries = sharedCopy(
    {
      title: 'By hand',
      runs: RUNS,
      protection: { fuses: FUSES },
      extras: ['asBuilt'],
      asBuilt: { runs: READINGS },
    },
    { rows: ROOM },
  );
  const sorting = { rows: ROOM, columns: COLUMN_KEYS.length, by: columnOf('run') };
  const entries = await writeWorkbook(withEntries.plans, withEntries.values);
  const { entriesSorted } = withRowsChanged(entries, { entriesSorted: at(ROW.first, sorting) });
  const { sorted } = withRowsChanged(written, { sorted: at(ROW.first, sorting) });
  copies = {
    sorted: await cellsOf(sorted!),
    entries: await cellsOf(entries),
    entriesSorted: await cellsOf(entriesSorted!),
    before: await cellsOf(written),
    above: await cellsOf(changed['above']!),
    between: await cellsOf(changed['between']!),
    out: await cellsOf(changed['out']!),
    belowAll: await cellsOf(changed['belowAll']!),
  };
}, 300_000);

/** The answers of every named run of a copy. */
function answers(copy: WorkbookCells) {
  const found = new Map<string, readonly unknown[]>();
  for (let row = ROW.first; row < ROW.first + RUNS.length + 1; row += 1) {
    const name = copy.at(SHEET, row, columnOf('run'));
    if (typeof name !== 'string') continue;
    found.set(
      name,
      ANSWERS.map((key) => {
        const value = copy.at(SHEET, row, columnOf(key));
        return typeof value === 'number' ? Number(value.toPrecision(9)) : value;
      }),
    );
  }
  return found;
}

const saidOnTop = (copy: WorkbookCells) =>
  Array.from({ length: 40 }, (_, column) => copy.at(SHEET, ROW.title, column)).join(' ');
const warned = (copy: WorkbookCells) => saidOnTop(copy).includes('A row was put in or taken out');

describe('a row of a shared copy', () => {
  it('above the first run leaves every answer as it was', () => {
    expect(answers(copies.before).size).toBe(RUNS.length);
    expect(answers(copies.above)).toEqual(answers(copies.before));
    expect(warned(copies.above)).toBe(false);
  });

  it.each([
    ['put in among the runs', 'between', RUNS.length],
    ['taken out of them', 'out', RUNS.length - 1],
  ] as const)('%s is told, and no run seems answered', (_, key, runs) => {
    const found = answers(copies[key]);
    expect(found.size).toBe(runs);
    for (const [run, [verdict]] of found) {
      const word = typeof verdict === 'string' ? verdict : '';
      expect(['unclear', 'fails', 'danger'], `${run}: ${word}`).toContain(levelOf(word));
    }
    expect(warned(copies[key])).toBe(true);
    expect(warned(copies.before)).toBe(false);
  });

  it('sorted with all others keeps its answer, and is told where Protection has another run', () => {
    const [before, after] = [answers(copies.entries), answers(copies.entriesSorted)];
    expect([...after.keys()]).toEqual(RUNS.map(({ run }) => run).sort());
    for (const [run, answer] of after) {
      const [verdict, ...figures] = answer;
      // What is typed for "Siren" stands beside "Gauge" now.
      if (run === 'Siren' || run === 'Gauge') {
        expect(verdict).toContain(WORD.entriesAstray);
        expect(figures).toEqual(before.get(run)!.slice(1));
      } else expect(answer).toEqual(before.get(run));
    }
    expect(warned(copies.entriesSorted)).toBe(false);
    expect(answers(copies.sorted).get('Siren')).toBeDefined();
    expect(Object.fromEntries(answers(copies.sorted))).toEqual(
      Object.fromEntries(answers(copies.before)),
    );
  });

  it('is told by no other readings where the runs are sorted', () => {
    const told = (copy: WorkbookCells) =>
      RUNS.map((_, index) => {
        const here = (key: BuiltKey) =>
          copy.at(BUILT_SHEET, BUILT_ROW.first + index, builtColumn(key));
        return [here('run'), here('beyond') ?? '', here('verdict')] as const;
      }).filter(([, , verdict]) => verdict !== '' && verdict !== null);
    const onTop = (copy: WorkbookCells) => copy.at(BUILT_SHEET, BUILT_ROW.summary, 0);
    const [[siren, beyond, verdict]] = told(copies.entries) as [ReturnType<typeof told>[number]];
    expect([siren, verdict]).toEqual(['Siren', BUILT_WORDS.look]);
    expect(beyond).toBeGreaterThan(20);
    expect(onTop(copies.entries)).toMatch(/^1 of 6 runs measured/);
    const remedy = `row ${BUILT_ROW.first + 2} is for "Siren": move its entries there, or write "Gauge" under For run`;
    expect(told(copies.entriesSorted)).toEqual([['Gauge', '', remedy]]);
    expect(onTop(copies.entriesSorted)).toContain(`Not judged: ${remedy}. 0 of 6 runs measured`);
  });

  it('written below the last one with formulas is told, and the others stand', () => {
    expect(answers(copies.belowAll)).toEqual(answers(copies.before));
    expect(saidOnTop(copies.belowAll)).toContain(
      `What stands below row ${ROW.first + ROOM} has no answer: there is room for ${ROOM} runs`,
    );
    expect(saidOnTop(copies.before)).not.toContain('What stands below');
  });
});
