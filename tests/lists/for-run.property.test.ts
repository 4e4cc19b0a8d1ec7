/**
 * Runs that a spreadsheet sorts, while what is typed of their fuses stays on Protection and their readings on As built: none
 * is right by another's, and whoever takes the list in finds each at its run.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stationOf } from '../../src/lists/grids';
import { entriesFor } from '../../src/lists/run-entries';
import { scheduleSheets } from '../../src/sheets/new-schedule';
import { stationValues } from '../../src/sheets/station-values';
import { BUILT_WORDS } from '../../src/sheets/as-built/formulas';
import { asBuiltName, BUILT_ROW, builtColumn } from '../../src/sheets/as-built/layout';
import type { Readings } from '../../src/sheets/station/as-built';
import { scheduleNames } from '../../src/sheets/station/naming';
import type { StationContent } from '../../src/sheets/station/content';
import type { NamesInUse } from '../../src/sheets/station/naming';
import type { FuseEntries } from '../../src/sheets/station/protection';
import type { ScheduleRun } from '../../src/sheets/station/run';
import { levelOf, verdictsIn } from '../../src/sheets/station/verdicts';
import { openGrids } from './open-grids';

const FREE: NamesInUse = { sheets: new Set(), names: new Set() };
const NAME = 'Run schedule';

const RUNS: readonly ScheduleRun[] = [
  { run: 'Hut main', length: 2 },
  { run: 'Siren', fedFrom: 'Hut main', peak: 10, length: 8 },
  { run: 'Gauge', fedFrom: 'Hut main', peak: 1, length: 12 },
  { run: 'Lamp', fedFrom: 'Hut main', peak: 2, length: 4, fused: 'no' },
  { run: 'Van radio', peak: 20, length: 5 },
  { run: 'Case', peak: 6, length: 3 },
];
const FUSES: readonly FuseEntries[] = [
  {},
  { kind: 'high-breaking' },
  { breaks: 100 },
  {},
  { ratedVolts: 58, i2t: 2000 },
  {},
];
const BASE = {
  title: 'Watch',
  supply: { chemistry: 'LiFePO4', ampHours: 100, milliohms: 20 },
} as const;

/** As a sort leaves it: the runs in another order, the fuses where they were with the names beside them. */
function sorted(order: readonly number[]): StationContent {
  return {
    ...BASE,
    runs: order.map((place) => RUNS[place]!),
    protection: {
      fuses: FUSES.map((fuse, place) =>
        Object.keys(fuse).length === 0 ? fuse : { ...fuse, forRun: RUNS[place]!.run! },
      ),
    },
  };
}

const PLACES = RUNS.map((_, place) => place);
const order = fc.shuffledSubarray(PLACES, { minLength: RUNS.length });

function verdicts(content: StationContent) {
  const { runs } = stationValues(content);
  return new Map(
    content.runs.map(({ run }, index) => [
      run!,
      { verdict: String(runs[index]!.verdict), fix: String(runs[index]!.mend) },
    ]),
  );
}

describe('runs that are sorted away from what is typed of their fuses', () => {
  const unsorted = verdicts({ ...BASE, runs: RUNS, protection: { fuses: FUSES } });

  it('are as they were, or told with what to do', () => {
    expect([...unsorted.values()].map(({ verdict }) => levelOf(verdict))).toContain('danger');
    expect([...unsorted.values()].map(({ verdict }) => levelOf(verdict))).toContain('ok');
    fc.assert(
      fc.property(order, (places) => {
        for (const [index, [run, { verdict, fix }]] of [...verdicts(sorted(places))].entries()) {
          const place = PLACES[places[index]!]!;
          const isMoved = place !== index;
          const hasOwn = Object.keys(FUSES[place]!).length > 0;
          const hasOthers = Object.keys(FUSES[index]!).length > 0;
          if (isMoved && (hasOwn || hasOthers)) {
            expect(verdictsIn(verdict), run).toContain('entriesAstray');
            // A branch that needs a fuse of its own is told that first.
            expect(fix).toMatch(/Protection row \d+|its own fuse of/);
          } else if (verdict !== unsorted.get(run)!.verdict) {
            expect(['danger', 'fails', 'unclear'], `${run}: ${verdict}`).toContain(
              levelOf(verdict),
            );
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  it('names the row, the other run and this one', () => {
    const [, first] = [...verdicts(sorted([0, 2, 1, 3, 4, 5]))];
    expect(first![0]).toBe('Gauge');
    expect(first![1].fix).toBe(
      'Protection row 15 is for "Siren": move its entries there, or write "Gauge" under For run',
    );
  });

  it('have their fuses again where the list is taken in', () => {
    fc.assert(
      fc.property(order, (places) => {
        const read = stationOf(openGrids(scheduleSheets(sorted(places), 'cells', FREE)), NAME)!;
        const fuses = read.protection?.fuses ?? [];
        expect(read.runs.map((_, index) => fuses[index] ?? {})).toEqual(
          places.map((place) => FUSES[place]),
        );
      }),
      { numRuns: 15 },
    );
  });

  it('stay in doubt where nobody can say whose the fuse is', () => {
    const fuses = [
      { kind: 'blade', forRun: 'Nobody' },
      { kind: 'bolt-in', forRun: '' },
    ];
    const content = { ...BASE, runs: RUNS, protection: { fuses } };
    const read = stationOf(openGrids(scheduleSheets(content, 'cells', FREE)), NAME)!;
    expect(read.protection?.fuses).toEqual(fuses);
    const found = verdicts({ ...BASE, ...read });
    for (const run of ['Hut main', 'Siren']) {
      expect(verdictsIn(found.get(run)!.verdict)).toContain('entriesAstray');
    }
  });

  it('are found by their names on Protection, which a renaming follows', () => {
    const grids = openGrids(
      scheduleSheets({ ...BASE, runs: RUNS, protection: { fuses: FUSES } }, 'cells', FREE),
    );
    const found = entriesFor(grids, NAME, ' siren ');
    expect(found).toHaveLength(1);
    const [{ sheetName, row, column }] = found as [(typeof found)[number]];
    expect(grids.find((grid) => grid.sheetName === sheetName)!.values[row]![column]).toBe('Siren');
    expect(entriesFor(grids, NAME, 'Case')).toEqual([]);
  });
});

describe('runs that are sorted away from their readings', () => {
  // Each is told otherwise by its own readings than by those of the next.
  const CABLES: readonly ScheduleRun[] = [
    { run: 'Radio', peak: 10, length: 6, ownSize: '12 AWG', joints: 3 },
    { run: 'Siren', peak: 10, length: 6, ownSize: '12 AWG', joints: 3 },
    { run: 'Gauge', peak: 1, length: 40, ownSize: '14 AWG', joints: 3 },
    { run: 'Lamp', peak: 2, length: 12, ownSize: '14 AWG', joints: 3 },
    { run: 'Case', peak: 6, length: 9, ownSize: '12 AWG', joints: 3 },
  ];
  const READINGS: readonly Readings[] = [
    { voltsIn: 12.9, voltsOut: 12.45, amps: 10, by: 'workshop' },
    { voltsIn: 12.9, voltsOut: 12.68, amps: 10 },
    {},
    { voltsIn: 12.9, voltsOut: 12.83, amps: 1.2, date: '2026-05-16' },
    {},
  ];
  const measured = (runs: readonly ScheduleRun[], readings: readonly Readings[]) =>
    ({
      title: 'Watch',
      rules: { unit: 'ft', tempC: 20 },
      runs,
      extras: ['asBuilt'],
      asBuilt: { runs: readings },
    }) satisfies StationContent;
  const named = READINGS.map((one, place) =>
    Object.keys(one).length === 0 ? one : { ...one, forRun: CABLES[place]!.run! },
  );
  const sortedCables = (order: readonly number[]) =>
    measured(
      order.map((place) => CABLES[place]!),
      named,
    );
  const gridsOf = (content: StationContent) => openGrids(scheduleSheets(content, 'cells', FREE));
  const sheet = asBuiltName(scheduleNames());
  const cellsOf = (content: StationContent, key: Parameters<typeof builtColumn>[0]) => {
    const { values } = gridsOf(content).find(({ sheetName }) => sheetName === sheet)!;
    return content.runs.map((_, index) =>
      String(values[BUILT_ROW.first + index]![builtColumn(key)] ?? ''),
    );
  };
  const unsorted = cellsOf(measured(CABLES, READINGS), 'finding');
  const order = fc.shuffledSubarray([0, 1, 2, 3, 4], { minLength: CABLES.length });

  it('are told by their own or not at all, and the row says whose its readings are', () => {
    expect(unsorted).toEqual([BUILT_WORDS.look, BUILT_WORDS.sound, '', BUILT_WORDS.unsure, '']);
    fc.assert(
      fc.property(order, (places) => {
        const content = sortedCables(places);
        const findings = cellsOf(content, 'finding');
        const told = cellsOf(content, 'verdict');
        for (const [index, place] of places.entries()) {
          expect(findings[index]).toBe(place === index ? unsorted[place] : '');
          if (place === index || named[index]!.forRun === undefined) continue;
          expect(told[index]).toBe(
            `row ${BUILT_ROW.first + index + 1} is for "${CABLES[index]!.run!}": move its entries there, or write "${CABLES[place]!.run!}" under For run`,
          );
        }
      }),
      { numRuns: 40 },
    );
  });

  it('have them again where the list is taken in', () => {
    fc.assert(
      fc.property(order, (places) => {
        const read = stationOf(gridsOf(sortedCables(places)), NAME)!;
        expect(read.runs.map((_, index) => read.asBuilt?.runs?.[index] ?? {})).toEqual(
          places.map((place) => READINGS[place]),
        );
      }),
      { numRuns: 15 },
    );
  });

  it('have theirs again where others stay in doubt', () => {
    // Two say that they are for "Gauge"; "Lamp" and "Radio" have changed places.
    const readings = [
      { amps: 1, forRun: 'Gauge' },
      { amps: 2, forRun: 'Gauge' },
      { amps: 3, forRun: 'Lamp' },
      { amps: 4, forRun: 'Gauge' },
      { amps: 5, forRun: 'case ' },
    ];
    const read = stationOf(gridsOf(measured(CABLES, readings)), NAME)!;
    // What is for "Lamp" cannot go there, where one for "Gauge" has to stay.
    expect(read.asBuilt?.runs).toEqual([...readings.slice(0, 4), { amps: 5 }]);
    const free = [{ amps: 1, forRun: 'Gauge' }, { amps: 2, forRun: 'Gauge' }, {}, {}, named[0]!];
    // With nothing of its own in the way, "Gauge" still cannot have both; "Radio" cannot have its own back then, either.
    expect(stationOf(gridsOf(measured(CABLES, free)), NAME)!.asBuilt?.runs).toEqual(free);
    const apart = [{}, { amps: 1, forRun: 'Gauge' }, {}, { amps: 2, forRun: 'Gauge' }, named[0]!];
    expect(stationOf(gridsOf(measured(CABLES, apart)), NAME)!.asBuilt?.runs).toEqual([
      READINGS[0],
      apart[1],
      {},
      apart[3],
    ]);
  });

  it('keep what is said of nobody as it is', () => {
    const readings = [
      { ...READINGS[0]!, forRun: 'Nobody' },
      { ...READINGS[1]!, forRun: '' },
    ];
    const read = stationOf(gridsOf(measured(CABLES, readings)), NAME)!;
    expect(read.asBuilt?.runs).toEqual(readings);
    expect(cellsOf({ ...measured(CABLES, []), ...read }, 'finding').join('')).toBe('');
  });

  it('have those of their place where an old sheet says nothing of runs', () => {
    const old = gridsOf(sortedCables([1, 0, 2, 3, 4])).map((grid) => {
      const without = <Of>(cells: readonly Of[]) =>
        grid.sheetName === sheet ? cells.toSpliced(builtColumn('forRun'), 1) : [...cells];
      return {
        ...grid,
        // The labels and values of the head stand left of the column.
        values: grid.values.map(without),
        computed: grid.computed.map(without),
      };
    });
    const read = stationOf(old, NAME)!;
    expect(read.asBuilt?.runs).toEqual(READINGS.slice(0, 4));
    expect(cellsOf({ ...measured(CABLES, []), ...read }, 'forRun')).toEqual([
      'Siren',
      'Radio',
      '',
      'Lamp',
      '',
    ]);
  });

  it('are found by their names, which a renaming follows, beside those of their fuses', () => {
    const content = {
      ...measured(CABLES, READINGS),
      protection: { fuses: [{}, { breaks: 1500 }] },
    };
    const grids = gridsOf(content);
    const found = entriesFor(grids, NAME, 'SIREN');
    expect(found.map(({ sheetName }) => sheetName)).toEqual(['Protection', sheet]);
    for (const { sheetName, row, column } of found) {
      expect(grids.find((grid) => grid.sheetName === sheetName)!.values[row]![column]).toBe(
        'Siren',
      );
    }
    expect(entriesFor(grids, NAME, 'Case')).toEqual([]);
  });
});
