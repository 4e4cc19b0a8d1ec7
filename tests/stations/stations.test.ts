/** Stations of the scenario, judged by hand, beside what the sheets say of them. */
import { describe, expect, test } from 'vitest';
import { LEVELS, levelOf, type Level } from '../../src/sheets/station/verdicts';
import { stationValues } from '../../src/sheets/station-values';
import { contentOf, type Station } from './station';
import { STATIONS } from './stations';

const RED: ReadonlySet<Level> = new Set(['danger', 'fails', 'unclear']);

interface JudgedRow {
  readonly where: string;
  readonly expected: Level;
  readonly said: Level;
  readonly verdict: string;
}

function judgedRows(name: string, station: Station): readonly JudgedRow[] {
  const { runs } = stationValues(contentOf(station));
  return station.runs.map(({ run, expected }, row) => {
    const verdict = String(runs[row]!.verdict);
    return {
      where: `${name}, row ${row + 1}, ${run ?? ''}`,
      expected,
      said: levelOf(verdict),
      verdict,
    };
  });
}

const told = ({ where, expected, said, verdict }: JudgedRow) =>
  `${where}: by hand ${expected}, the sheet ${said} (${verdict})`;

const isFalseRed = ({ expected, said }: JudgedRow) => !RED.has(expected) && RED.has(said);
const isFalseGreen = ({ expected, said }: JudgedRow) =>
  (RED.has(expected) && !RED.has(said)) || (expected === 'check' && said === 'ok');
/** Not wrong, but not exact either: another red, or only a check of what is ok. */
const isOtherwise = (row: JudgedRow) =>
  row.expected !== row.said && !isFalseRed(row) && !isFalseGreen(row);

const names = Object.keys(STATIONS);
const allRuns = Object.values(STATIONS).flatMap(({ runs }) => runs);

test('there are twelve stations of 5 to 40 runs', () => {
  expect(names).toHaveLength(12);
  for (const [name, { runs }] of Object.entries(STATIONS)) {
    expect(runs.length, name).toBeGreaterThanOrEqual(5);
    expect(runs.length, name).toBeLessThanOrEqual(40);
  }
});

test('every run has a level and a reason', () => {
  for (const { run, expected, because } of allRuns) {
    expect(LEVELS, run).toContain(expected);
    expect(because.length, run).toBeGreaterThan(10);
  }
});

test.each(LEVELS)('at least three runs are %s', (level) => {
  expect(allRuns.filter(({ expected }) => expected === level).length).toBeGreaterThanOrEqual(3);
});

describe('the sheets beside the judgement by hand', () => {
  test.each(names)('%s', (name) => {
    const rows = judgedRows(name, STATIONS[name]!);
    const falseReds = rows.filter(isFalseRed).map(told);
    const falseGreens = rows.filter(isFalseGreen).map(told);
    const otherwise = rows.filter(isOtherwise).map(told);
    console.log(
      [
        `${name}: ${rows.length} runs, ${falseReds.length} false red, ${falseGreens.length} false green, ${otherwise.length} of another level`,
        ...falseReds.map((line) => `  false red: ${line}`),
        ...falseGreens.map((line) => `  false green: ${line}`),
        ...otherwise.map((line) => `  other level: ${line}`),
      ].join('\n'),
    );
    expect(rows).toHaveLength(STATIONS[name]!.runs.length);
    expect(falseReds).toEqual([]);
    expect(falseGreens).toEqual([]);
  });
});
