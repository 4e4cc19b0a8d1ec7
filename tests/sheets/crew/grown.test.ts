/** Runs added to the schedule's table past the rows that the Protection sheet has: their fuses are told all the same. */
import { expect, it } from 'vitest';
import { calculate } from '../../../src/sheets/calculate/calculate';
import { saidOfRun } from '../../../src/sheets/crew/said';
import { area } from '../../../src/sheets/plan/area';
import { protectionElsewhere } from '../../../src/sheets/protection/layout';
import { columnReferences } from '../../../src/sheets/schedule/layout';
import { sharedCopy } from '../../../src/sheets/shared-copy';
import { scheduleNames } from '../../../src/sheets/station/naming';
import type { ScheduleRun } from '../../../src/sheets/station/run';
import { COLUMN_KEYS } from '../../../src/sheets/station/schedule-keys';

const names = scheduleNames();
const ROWS = 6;

/** 253 A in a dead short. */
const BANK = { name: 'Bank', kind: 'battery', chemistry: 'lead-acid', milliohms: 50 } as const;
const RUNS: readonly ScheduleRun[] = ['Radio', 'Lamp', 'Fan', 'Pump'].map((run) => ({
  run,
  peak: 1,
  length: 2,
  unfused: 0.1,
}));

it.each([
  ['', 'blade'],
  ['bolt-in', 'bolt-in'],
])('the kind is then that of the house: “%s”', (fuseKind, kind) => {
  const { plans } = sharedCopy(
    { title: 'Hut', sources: [BANK], runs: RUNS, protection: { fuseKind } },
    { rows: ROWS },
  );
  // The table has all four runs, the Protection sheet rows for two.
  const cells = { names, references: 'cells', rows: ROWS } as const;
  const grown = { names, references: 'table', rows: 2 } as const;
  const [inTable, inCells] = [columnReferences(grown, true), columnReferences(cells, true)];
  const said = RUNS.map((_, index) =>
    COLUMN_KEYS.reduce(
      (formula, key) => formula.replaceAll(inTable[key], inCells[key]),
      saidOfRun(grown, String(index + 1)).fuse,
    ),
  );
  for (const formula of said) expect(formula).toContain(protectionElsewhere('kind', grown));
  const aside = area(0, 300, RUNS.length, 1);
  const sheets = calculate(
    plans.map((plan) =>
      plan.name === names.crewSheet
        ? {
            ...plan,
            blocks: [
              ...plan.blocks,
              { area: aside, cells: said.map((formula) => [{ formula: `=${formula}` }]) },
            ],
          }
        : plan,
    ),
  );
  expect(RUNS.map((_, row) => sheets.at(names.crewSheet, row, 300))).toEqual(
    RUNS.map(() => `2 A ${kind} after 0.1 ft`),
  );
});
