/** What "Fed from" offers: a list that a person picks from, so that no name has to be typed twice. */
import { expect, test } from 'vitest';
import { calculate } from '../../../src/sheets/calculate/calculate';
import { feederChoicesArea } from '../../../src/sheets/schedule/layout';
import { scheduleNames } from '../../../src/sheets/station/naming';
import type { StationContent } from '../../../src/sheets/station/content';
import { addInSheets } from '../../../src/sheets/book';

const names = scheduleNames();
const ROWS = 12;

function offered(content: StationContent): string[] {
  const layout = { names, references: 'cells', rows: ROWS } as const;
  const sheets = calculate(addInSheets(layout, content));
  const { row, column, rows } = feederChoicesArea(layout);
  return Array.from({ length: rows }, (_, at) =>
    String(sheets.at(names.sheet, row + at, column) ?? ''),
  );
}

const named = (content: StationContent) => offered(content).filter((name) => name !== '');

test('the runs in their order, then the sources by name', () => {
  const content: StationContent = {
    title: 'Hut',
    runs: [
      { run: 'Trunk', length: 2 },
      { run: 'Lamp', peak: 1, length: 3 },
    ],
    sources: [
      { name: 'Hut battery', kind: 'battery' },
      { name: 'Roof', kind: 'panel' },
      { name: 'Bench', kind: 'power supply' },
    ],
  };
  expect(named(content)).toEqual(['Trunk', 'Lamp', 'Hut battery', 'Roof', 'Bench']);
});

test('a first source without a name is offered as the battery, others without one are not', () => {
  const content: StationContent = {
    title: 'Hut',
    runs: [{ run: 'Lamp', peak: 1, length: 3 }],
    sources: [{ kind: 'battery' }, { kind: 'battery' }, { name: 'Roof', kind: 'panel' }],
  };
  expect(named(content)).toEqual(['Lamp', 'battery', 'Roof']);
});

test('an empty schedule offers its sources, and a gap among the runs stays one', () => {
  const sources = [{ name: 'Hut battery', kind: 'battery' }];
  expect(named({ title: 'Hut', runs: [], sources })).toEqual(['Hut battery']);
  const runs = [{ run: 'A', length: 1 }, {}, { run: 'B', length: 1 }];
  expect(offered({ title: 'Hut', runs, sources }).slice(0, 5)).toEqual([
    'A',
    '',
    'B',
    'Hut battery',
    '',
  ]);
});
