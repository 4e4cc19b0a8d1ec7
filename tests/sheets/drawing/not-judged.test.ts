/** The names behind the picture, by which it is told whether it is still true, where a verdict is an error. */
import { expect, it } from 'vitest';
import { calculate } from '../../../src/sheets/calculate/calculate';
import { drawingArea, drawingName } from '../../../src/sheets/drawing/layout';
import { area } from '../../../src/sheets/plan/area';
import { columnArea } from '../../../src/sheets/schedule/layout';
import { sharedCopy } from '../../../src/sheets/shared-copy';
import { scheduleNames } from '../../../src/sheets/station/naming';

const ROWS = 6;
const names = scheduleNames();
const layout = { names, references: 'cells', rows: ROWS } as const;

it('a run whose verdict is an error stands there all the same', () => {
  const { plans } = sharedCopy(
    {
      title: 'Hut',
      runs: [
        { run: 'Radio', peak: 1, length: 2 },
        { run: 'Lamp', peak: 1, length: 2 },
        { run: 'Fan', peak: 1, length: 2 },
      ],
      extras: ['drawing'],
    },
    { rows: ROWS },
  );
  const level = columnArea('level', ROWS);
  const failing = {
    area: area(level.row + 1, level.column),
    cells: [[{ formula: '=NA()' }]],
  };
  const sheets = calculate(
    plans.map((plan) =>
      plan.name === names.sheet ? { ...plan, blocks: [...plan.blocks, failing] } : plan,
    ),
  );
  const { row, column } = drawingArea('name', layout);
  const told = Array.from({ length: 4 }, (_, at) =>
    sheets.at(drawingName(names), row + at, column),
  );
  expect(told).toEqual(['Radio', 'Lamp', 'Fan', '']);
});
