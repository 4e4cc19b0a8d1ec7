/**
 * Runs that a spreadsheet sorts, while what is typed of their fuses stays on Protection: none is right by another's fuse,
 * and whoever takes the list in finds each fuse at its run.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stationOf } from '../../src/lists/grids';
import { entriesFor } from '../../src/lists/run-entries';
import { scheduleSheets } from '../../src/sheets/new-schedule';
import { stationValues } from '../../src/sheets/station-values';
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
