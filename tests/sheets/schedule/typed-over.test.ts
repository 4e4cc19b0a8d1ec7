/** What is typed where the schedule works something out: no row stays ok by a wire, a fuse or volts that hang on nothing. */
import { describe, expect, it } from 'vitest';
import type { Cell } from '../../../src/functions/cell';
import { sharedCopy } from '../../../src/sheets/shared-copy';
import { calculate } from '../../../src/sheets/calculate/calculate';
import { layBlocks } from '../../../src/sheets/plan/lay-blocks';
import type { SheetPlan } from '../../../src/sheets/plan/plan';
import { SCHEDULE_COLUMNS } from '../../../src/sheets/schedule/columns';
import { columnOf, ROW } from '../../../src/sheets/schedule/layout';
import { SHOWN_KEYS, type ColumnKey } from '../../../src/sheets/station/schedule-keys';
import { FIX_WORDS, LEVELS, WORD } from '../../../src/sheets/station/verdicts';

const RUNS = ['Pump', 'Lamp', 'Radio'].map((run) => ({
  run,
  peak: 10,
  length: 20,
  ownSize: '8 AWG',
}));
// Few spare rows: laid out cell by cell, each of them is a formula of its own.
const ROOM = { rows: RUNS.length + 2 };
const { plans } = sharedCopy({ title: 'Typed over', runs: RUNS, supply: { milliohms: 20 } }, ROOM);
const SHEET = plans.find(({ name }) => name === 'Run schedule')!;

/** The sheet with one cell typed, whatever stood there. */
function typed(plan: SheetPlan, row: number, column: number, value: string | number | null) {
  const blocks = layBlocks(plan.blocks).map(({ row: down, column: across, content }) => ({
    area: { row: down, column: across, rows: 1, columns: 1 },
    cells: [[down === row && across === column ? value : content]],
  }));
  return { ...plan, blocks };
}

function after(key: ColumnKey, value: string | number | null) {
  const row = ROW.first + 1;
  const sheet = typed(SHEET, row, columnOf(key), value);
  const values = calculate(plans.map((plan) => (plan === SHEET ? sheet : plan)));
  const at = (of: ColumnKey, down = row): Cell => values.at(SHEET.name, down, columnOf(of));
  const crew: string[] = [];
  const list = plans.find(({ name }) => name === 'Crew sheet')!;
  for (const cell of layBlocks(list.blocks)) {
    crew.push(String(values.at(list.name, cell.row, cell.column)));
  }
  return { at, head: String(values.at(SHEET.name, ROW.title, columnOf('size'))), crew };
}

const FIGURES = SHOWN_KEYS.filter(
  (key) => SCHEDULE_COLUMNS[key].kind === 'computed' && key !== 'verdict' && key !== 'mend',
);

describe('a run that is sound', () => {
  it('is ok until something is typed over', () => {
    const { at, head, crew } = after('load', 'nothing of note');
    expect([at('verdict'), at('level'), at('mend'), head]).toEqual(['ok', LEVELS.length, '', '']);
    expect(crew.join('\n')).not.toContain(WORD.typedOver);
  });

  const WRITTEN: Partial<Record<ColumnKey, string | number>> = { size: '18 AWG', setBy: 'drop' };
  it.each(FIGURES)('is unclear once %s is typed, and the column is named', (key) => {
    for (const value of [WRITTEN[key] ?? 12, null]) {
      const { at, crew } = after(key, value);
      expect(at('verdict')).toBe(WORD.typedOver);
      expect(LEVELS[Number(at('level')) - 1]).toBe('unclear');
      expect(at('mend')).toBe(`${FIX_WORDS.putBack}${SCHEDULE_COLUMNS[key].heading}`);
      expect(crew.join('\n')).toContain(WORD.typedOver);
      // The others are judged as before.
      expect([at('verdict', ROW.first), at('verdict', ROW.first + 2)]).toEqual(['ok', 'ok']);
    }
  });

  it.each(['ohms', 'pathVolts', 'judged'] as const)(
    'is not ok once %s, by which it is judged out of sight, is cleared',
    (key) => {
      const { at } = after(key, null);
      expect(at('verdict')).toBe(WORD.checkEntries);
    },
  );

  it.each(['all is well', WORD.tooFewVolts, null])(
    'keeps its level where its verdict is typed over by %s, and the head says so',
    (value) => {
      const { at, head, crew } = after('verdict', value);
      expect(at('level')).toBe(LEVELS.length);
      expect(head).toContain('1 verdict was typed over');
      expect(crew.join('\n')).not.toContain(WORD.tooFewVolts);
    },
  );
});

it('a run that is not ok is no better for "ok" typed over its verdict', () => {
  const runs = [{ run: 'Pump', peak: 30, length: 20, ownSize: '18 AWG' }];
  const thin = sharedCopy({ title: 'Thin', runs, supply: { milliohms: 20 } }, ROOM);
  const sheet = thin.plans.find(({ name }) => name === SHEET.name)!;
  const changed = typed(sheet, ROW.first, columnOf('verdict'), WORD.ok);
  const values = calculate(thin.plans.map((plan) => (plan === sheet ? changed : plan)));
  expect(values.at(SHEET.name, ROW.first, columnOf('level'))).toBe(1);
  expect(values.at(SHEET.name, ROW.title, columnOf('size'))).toContain('1 verdict was typed over');
});
