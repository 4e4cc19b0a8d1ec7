/** The crew's page: what it says is what a plain walk over the station's own values says. */
import { describe, expect, it } from 'vitest';
import { gridTable } from '../../../src/lists/raw-grid';
import { findList } from '../../../src/lists/table';
import { CellError, type Cell } from '../../../src/functions/cell';
import { calculate } from '../../../src/sheets/calculate/calculate';
import {
  CREW_KEYS,
  CREW_ROW,
  crewColumn,
  lineCount,
  type CrewKey,
} from '../../../src/sheets/crew/layout';
import { printing } from '../../../src/sheets/crew/sheet';
import { ARROW, BOX, LINE_CHARS, NOT_COMPUTED } from '../../../src/sheets/crew/formulas';
import type { SheetPlan } from '../../../src/sheets/plan/plan';
import { columnOf, ROW } from '../../../src/sheets/schedule/layout';
import { sharedCopy } from '../../../src/sheets/shared-copy';
import { scheduleSheets } from '../../../src/sheets/new-schedule';
import { stationValues } from '../../../src/sheets/station-values';
import type { StationContent } from '../../../src/sheets/station/content';
import { DEMO } from '../../../src/sheets/station/demo';
import { scheduleNames } from '../../../src/sheets/station/naming';
import { LEVELS } from '../../../src/sheets/station/verdicts';
import { generatedStations } from '../generated-stations';
import { SOURCE_STATIONS } from '../source-stations';

const names = scheduleNames();

type Line = Readonly<Record<CrewKey, string | number>>;

function linesOf(plans: readonly SheetPlan[], rows: number): readonly Line[] {
  const sheets = calculate(plans);
  const shown = (cell: Cell) => {
    if (cell instanceof CellError) throw new Error(`${cell.code} on the page`);
    return typeof cell === 'number' ? cell : String(cell ?? '');
  };
  return Array.from(
    { length: lineCount({ names, references: 'cells', rows }) },
    (_, line) =>
      Object.fromEntries(
        CREW_KEYS.map((key) => [
          key,
          shown(sheets.at(names.crewSheet, CREW_ROW.first + line, crewColumn(key))),
        ]),
      ) as unknown as Line,
  );
}

/** A run of the page: its own line, and those below it. */
interface Entry {
  readonly figures: Line;
  readonly below: readonly Line[];
}

function entriesOf(lines: readonly Line[]): readonly Entry[] {
  const entries: { figures: Line; below: Line[] }[] = [];
  let isOver = false;
  for (const line of lines) {
    if (line.done === BOX) {
      expect(isOver).toBe(false);
      entries.push({ figures: line, below: [] });
    } else if (CREW_KEYS.every((key) => line[key] === '')) isOver = true;
    else entries.at(-1)!.below.push(line);
  }
  return entries;
}

/** What the page must say, from the values of the schedule: places of runs in order, gravest first. */
function expectedOrder(content: StationContent) {
  const { runs } = stationValues(content);
  const unclear = LEVELS.indexOf('unclear') + 1;
  const levels = runs.map(({ level }, place) => ({
    place,
    level: level instanceof CellError ? unclear : level,
  }));
  return LEVELS.flatMap((_, index) => levels.filter(({ level }) => level === index + 1));
}

const copyOf = (content: StationContent, rows: number) => sharedCopy(content, { rows }).plans;

const STATIONS: readonly StationContent[] = [
  DEMO,
  ...SOURCE_STATIONS,
  ...generatedStations({ stations: 4, rows: 30, watts: true }),
];

describe.each(STATIONS.map((content, index) => [`${index} ${content.title}`, content] as const))(
  'the crew sheet of %s',
  (_, content) => {
    const rows = content.runs.length + 12;
    const entries = entriesOf(linesOf(copyOf(content, rows), rows));
    const values = stationValues(content).runs;
    const order = expectedOrder(content);

    it('has every run once, the gravest on top, those alike as the schedule has them', () => {
      expect(entries).toHaveLength(order.length);
      const nameOf = (place: number) => {
        const name = content.runs[place]!.run?.trim() ?? '';
        return name === '' ? `row ${place + 1 + ROW.first}` : name.slice(0, 15);
      };
      expect(entries.map(({ figures }) => String(figures.run).slice(0, 15))).toEqual(
        order.map(({ place }) => nameOf(place)),
      );
    });

    it('says how grave, what and which fix in full words below each that is not ok', () => {
      for (const [index, { below }] of entries.entries()) {
        const { place, level } = order[index]!;
        const word = LEVELS[Number(level) - 1]!;
        if (word === 'ok') {
          expect(below).toEqual([]);
          continue;
        }
        expect(String(below[0]!.run).toLowerCase()).toBe(word);
        const { verdict, mend } = values[place]!;
        const wanted = `${String(verdict)}${mend === '' ? '' : `. Fix: ${String(mend)}`}`;
        const said = below.map(({ route }) => route).join(' ');
        if (said.endsWith('…')) {
          expect(wanted.startsWith(said.slice(0, -1))).toBe(true);
          expect(below.length).toBe(5);
        } else expect(said).toBe(wanted.replace(/ +/g, ' '));
        for (const { route } of below)
          expect(String(route).length).toBeLessThanOrEqual(LINE_CHARS + 1);
      }
    });

    it('has wire, fuse and volts of the schedule, and where the fuse stands', () => {
      for (const [index, { figures }] of entries.entries()) {
        const { size, fuse, loadVolts } = values[order[index]!.place]!;
        const run = content.runs[order[index]!.place]!;
        if (typeof size === 'string' && size !== '') expect(figures.wire).toBe(size);
        if (typeof loadVolts === 'number') expect(figures.volts).toBeCloseTo(loadVolts, 9);
        else expect(figures.volts).toBe('?');
        if (typeof fuse === 'number') {
          expect(String(figures.fuse).startsWith(`${fuse} A `)).toBe(true);
          expect(String(figures.fuse).includes('both ends')).toBe(run.endFused === 'yes');
        }
        if (run.fused === 'no') expect(figures.fuse).toMatch(/^none$|upstream$|far end$/);
        if (typeof run.unfused === 'number' && typeof fuse === 'number') {
          expect(figures.fuse).toContain(` after ${Math.round(run.unfused * 100) / 100} `);
        }
      }
    });

    it('counts as the schedule counts', () => {
      const sheets = calculate(copyOf(content, rows));
      const said = String(sheets.at(names.crewSheet, CREW_ROW.summary, 0));
      for (const [index, level] of LEVELS.entries()) {
        const count = order.filter((run) => run.level === index + 1).length;
        expect(said).toContain(`${count} ${level}`);
      }
    });
  },
);

describe('the crew sheet', () => {
  it('stands first in a copy and last in the workbook with the add-in', () => {
    expect(sharedCopy(DEMO).plans[0]!.name).toBe(names.crewSheet);
    const taken = { sheets: new Set<string>(), names: new Set<string>() };
    const inserted = scheduleSheets(DEMO, 'table', taken);
    expect(inserted[0]!.name).toBe(names.sheet);
    expect(inserted.at(-1)!.name).toBe(names.crewSheet);
  });

  it('says what is at either end: the first source, the load, what it feeds', () => {
    const content: StationContent = {
      title: 'Ends',
      sources: [{ name: 'Hut bank', kind: 'battery' }],
      runs: [
        { run: 'Trunk', length: 3 },
        { run: 'Lamps', fedFrom: 'Trunk', load: 'Three lamps', peak: 3, length: 4 },
        { run: 'Set', fedFrom: 'Trunk', peak: 5, length: 4 },
      ],
    };
    const entries = entriesOf(linesOf(copyOf(content, 5), 5));
    const routes = new Map(entries.map(({ figures }) => [figures.run, figures.route]));
    expect(routes.get('Trunk')).toBe(`Hut bank${ARROW}Lamps and 1 more`);
    expect(routes.get('Lamps')).toBe(`Trunk${ARROW}Three lamps`);
    expect(routes.get('Set')).toBe(`Trunk${ARROW}its load`);
  });

  it.each([
    ['all of its lines', 0, ''],
    ['one more than them', 1, ''],
    ['three fewer', -3, 'Widen the print area: 3 lines stand below it.'],
  ])('says what stands below its print of %s', (_, more, said) => {
    const runs = ['Pump', 'Lamp', 'Radio'].map((run) => ({ run, peak: 40, length: 90 }));
    const plans = copyOf({ title: 'Print', runs }, 5);
    const lines = linesOf(plans, 5).filter(({ route }) => route !== '').length;
    expect(lines).toBeGreaterThan(2 * runs.length);
    const printed = plans.map((plan) =>
      plan.name === names.crewSheet ? printing(plan, lines + more) : plan,
    );
    expect(calculate(printed).at(names.crewSheet, CREW_ROW.warning, 0)).toBe(said);
  });

  it('writes out what just fits its line, and ends in dots what does not', () => {
    const fits = LINE_CHARS - `Hut${ARROW}`.length;
    const runs = [fits, fits + 1].map((chars, at) => ({
      ...{ run: `R${at}`, peak: 3, length: 2 },
      load: 'x'.repeat(chars),
    }));
    const content = { title: 'Routes', sources: [{ name: 'Hut', kind: 'battery' }], runs };
    const said = entriesOf(linesOf(copyOf(content, 4), 4)).map(({ figures }) => figures.route);
    expect(said).toEqual([`Hut${ARROW}${'x'.repeat(fits)}`, `Hut${ARROW}${'x'.repeat(fits - 1)}…`]);
  });

  it('has lengths as typed, and the unit of the house where none was', () => {
    const lengths = [22, '22', '2.5 m', '8\' 6"', "8' 6", '18 in', undefined];
    const runs = lengths.map((length, index) => ({
      ...{ run: `R${index}`, peak: 3 },
      ...(length !== undefined && { length }),
    }));
    const content: StationContent = { title: 'Lengths', rules: { unit: 'ft' }, runs };
    const entries = entriesOf(linesOf(copyOf(content, 8), 8));
    const said = new Map(entries.map(({ figures }) => [figures.run, figures.length]));
    expect(runs.map(({ run }) => said.get(run))).toEqual([
      '22 ft',
      '22 ft',
      '2.5 m',
      '8\' 6"',
      "8' 6",
      '18 in',
      '?',
    ]);
  });

  it('shows nothing where there are no runs', () => {
    const content = { title: 'Nothing yet', runs: [] };
    expect(entriesOf(linesOf(copyOf(content, 20), 20))).toEqual([]);
  });

  it('does not leave out a run whose row lost its formulas', () => {
    const content = { title: 'Lost', runs: [{ run: 'Lost', peak: 3, length: 4 }] };
    const plans = copyOf(content, 4).map((plan) =>
      plan.name !== names.sheet
        ? plan
        : {
            ...plan,
            blocks: [
              ...plan.blocks,
              ...(['place', 'finding', 'verdict', 'level', 'mend'] as const).map((key) => ({
                area: { row: ROW.first, column: columnOf(key), rows: 1, columns: 1 },
                cells: [[null]],
              })),
            ],
          },
    );
    const [entry] = entriesOf(linesOf(plans, 4));
    expect(entry!.figures.run).toBe('Lost');
    expect(entry!.below.map(({ route }) => route).join(' ')).toBe(NOT_COMPUTED);
  });

  it('gives each run its line where all of a long list is wrong at length', () => {
    const runs = Array.from({ length: 200 }, (_, index) => ({
      run: `Run ${index}`,
      fedFrom: 'a run of this name that stands nowhere',
      load: 'Lamp',
      peak: 200,
      length: 300,
      ownSize: '20 AWG',
    }));
    const entries = entriesOf(linesOf(copyOf({ title: 'Bad', runs }, 200), 200));
    expect(entries.map(({ figures }) => figures.run)).toEqual(runs.map(({ run }) => run));
  });

  it('is no list of runs to whoever takes lists in', () => {
    const { plans, values } = sharedCopy(DEMO);
    const [crew] = plans;
    const grid = Array.from({ length: 60 }, (_, row) =>
      CREW_KEYS.map((key) => {
        const given = crew!.blocks.find(
          ({ area: of, cells }) => cells !== undefined && of.row === row && of.column === 0,
        )?.cells?.[0]?.[crewColumn(key)];
        const constant = typeof given === 'object' ? null : (given ?? null);
        const value = constant ?? values.at(crew!.name, row, crewColumn(key));
        return value instanceof CellError ? value.code : value;
      }),
    );
    const table = gridTable({ sheetName: crew!.name, values: grid, computed: [] });
    expect(table.rows.length).toBeGreaterThan(DEMO.runs.length);
    expect(findList([table])).toBeUndefined();
  });
});
