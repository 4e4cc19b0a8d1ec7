/** What a written copy of a long list takes: each formula stands in it a few times, however many rows it is filled down to. */
import { unzipSync } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import { sharedFile } from '../../../src/hosts/xlsx/shared-file';
import { ROW } from '../../../src/sheets/schedule/layout';
import { sharedCopy } from '../../../src/sheets/shared-copy';
import { EXTRA_KEYS } from '../../../src/sheets/station/extras';
import type { ScheduleRun } from '../../../src/sheets/station/run';

const RUNS = 1000;

/** Seven runs a branch, three or four of them one behind the other. */
const runs: readonly ScheduleRun[] = Array.from({ length: RUNS }, (_, at) => ({
  run: `Gauge ${at + 1}`,
  ...(at % 7 === 0 ? {} : { fedFrom: `Gauge ${at % 7 > 3 ? at - (at % 7) + 3 : at}` }),
  peak: (at % 9) + 0.5,
  length: 3 + (at % 17),
}));

const FORMULA = /<f(?<shared> t="shared")?[^>]*>(?<text>[^<]+)<\/f>/g;

describe(`a copy of ${RUNS} runs`, () => {
  let bytes: Uint8Array;
  let sheets: readonly string[];

  beforeAll(async () => {
    bytes = await sharedFile({ runs, title: 'River gauges' });
    sheets = Object.entries(unzipSync(bytes))
      .filter(([name]) => name.startsWith('xl/worksheets/sheet'))
      .map(([, content]) => new TextDecoder().decode(content));
  }, 120_000);

  it('takes two megabytes, and twenty-five unpacked', () => {
    expect(bytes.length).toBeLessThan(2 * 1024 ** 2);
    expect(sheets.reduce((sum, { length }) => sum + length, 0)).toBeLessThan(25_000_000);
  });

  it('shares no formula that names another sheet', () => {
    const shared = sheets.flatMap((xml) =>
      [...xml.matchAll(FORMULA)].flatMap(({ groups }) =>
        groups?.['shared'] === undefined ? [] : [groups['text']!],
      ),
    );
    expect(shared.length).toBeGreaterThan(200);
    expect(shared.filter((text) => text.includes('!'))).toEqual([]);
  });

  it('writes long formulas out in one row of 64 at most', () => {
    const long = sheets.flatMap((xml) =>
      [...xml.matchAll(FORMULA)].filter(({ groups }) => groups!['text']!.length > 200),
    );
    const filled = sharedCopy({ runs, title: '' }).plans.flatMap(({ blocks }) =>
      blocks.flatMap(({ fill = [], area }) => fill.map(() => area.rows)),
    );
    const most = filled.reduce((sum, rows) => sum + rows / 64 + 2, 0);
    expect(long.length).toBeLessThan(most);
  });
});

it('has formulas that name no other sheet but in short columns, on every sheet', () => {
  const { plans } = sharedCopy({ runs: runs.slice(0, 5), title: '', extras: EXTRA_KEYS });
  const naming = plans.flatMap(({ name, blocks }) =>
    blocks.flatMap(({ fill = [] }) =>
      fill.flatMap((formula) =>
        formula?.includes('!') === true && formula.length > 100 ? [`${name}: ${formula}`] : [],
      ),
    ),
  );
  expect(naming).toEqual([]);
});

it('defines the columns that formulas point at, each once, and no others', () => {
  const { plans } = sharedCopy({ runs: runs.slice(0, 5), title: '', extras: EXTRA_KEYS });
  const formulas = plans.flatMap(({ blocks }) =>
    blocks.flatMap(({ fill = [], cells = [] }) => [
      ...fill,
      ...cells.flat().map((cell) => (typeof cell === 'object' ? (cell?.formula ?? null) : null)),
    ]),
  );
  const used = new Set(
    formulas.flatMap((formula) => formula?.match(/Loom(?:Column|Workings)_\w+/g) ?? []),
  );
  const defined = plans.flatMap(({ names }) => names.map(({ name }) => name));
  const ofColumns = defined.filter((name) => /^Loom(?:Column|Workings)_/.test(name));
  expect([...ofColumns].sort()).toEqual([...used].sort());
  expect(used.size).toBeGreaterThan(40);
});

it('carries the values of columns in sight, and of those that colours go by', () => {
  const { plans, values } = sharedCopy({ runs: runs.slice(0, 5), title: '' });
  const schedule = plans.find(({ name }) => name === 'Run schedule')!;
  const row = ROW.first;
  const carried = Array.from({ length: schedule.columnWidths.length }, (_, column) =>
    values.at(schedule.name, row, column),
  );
  const hidden = new Set(schedule.hiddenColumns);
  const carriedHidden = carried.flatMap((value, column) =>
    hidden.has(column) && value !== null ? [column] : [],
  );
  expect(
    carried.filter((value, column) => !hidden.has(column) && value !== null).length,
  ).toBeGreaterThan(10);
  expect(carriedHidden.length).toBeGreaterThan(0);
  expect(carriedHidden.length).toBeLessThan(10);
});
