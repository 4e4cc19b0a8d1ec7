/** Workbooks that earlier versions wrote are still read: each lies beside what was typed into it. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readRuns, type RunsReport } from '../../src/lists/read-runs';
import { extrasOf, type StationContent } from '../../src/sheets/station/content';
import { stationValues } from '../../src/sheets/station-values';

const folder = new URL('written/', import.meta.url);
const versions = readdirSync(folder)
  .filter((name) => name.endsWith('.xlsx'))
  .map((name) => name.slice(0, -'.xlsx'.length));

describe.each(versions)('a workbook of version %s', (version) => {
  const typed = JSON.parse(
    readFileSync(new URL(`${version}.json`, folder), 'utf8'),
  ) as StationContent;
  const read = (): Promise<RunsReport> =>
    readRuns(readFileSync(new URL(`${version}.xlsx`, folder)), `${version}.xlsx`);

  it('is read whole: every entry that was typed, and nothing left over', async () => {
    const report = await read();
    const { title, runs, rules, sources, duty, extras, asBuilt } = report;
    expect({ title, runs, rules, sources, duty, extras, asBuilt }).toMatchObject(typed);
    expect(runs.map((run) => Object.keys(run).sort())).toEqual(
      typed.runs.map((run) => Object.keys(run).sort()),
    );
    expect(report.leftOver).toEqual([]);
    expect(report.questions).toEqual([]);
  });

  it('is judged: every run, by what was typed', async () => {
    const { runs, rules, supply, sources, duty, protection, ...rest } = await read();
    const content = { runs, rules, supply, duty, protection, ...extrasOf(rest), title: 'again' };
    const { runs: judged } = stationValues({ ...content, ...(sources && { sources }) });
    expect(judged.map(({ verdict }) => typeof verdict)).toEqual(runs.map(() => 'string'));
    const byHand = stationValues(typed).runs;
    expect(judged.map(({ verdict, size }) => [String(verdict), String(size)])).toEqual(
      byHand.map(({ verdict, size }) => [String(verdict), String(size)]),
    );
  });
});

it('the present version is among them', () => {
  const { version } = JSON.parse(
    readFileSync(new URL('../../package.json', import.meta.url), 'utf8'),
  ) as { version: string };
  expect(versions).toContain(version);
});
