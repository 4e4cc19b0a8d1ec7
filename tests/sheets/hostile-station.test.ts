/** A station of 300 runs with every kind of mistake at once: each row says what is wrong, the others are computed. */
import { describe, expect, test } from 'vitest';
import { CellError } from '../../src/functions/cell';
import { calculate } from '../../src/sheets/calculate/calculate';
import { scheduleSheets } from '../../src/sheets/new-schedule';
import { sharedCopy } from '../../src/sheets/shared-copy';
import {
  readStationValues,
  stationValues,
  type RunValues,
  type StationValues,
} from '../../src/sheets/station-values';
import type { StationContent } from '../../src/sheets/station/content';
import { scheduleNames } from '../../src/sheets/station/naming';
import { FIX_WORDS, LEVELS, levelOf, verdictsIn } from '../../src/sheets/station/verdicts';
import { distance, RELATIVE, told } from '../closeness';
import { HOSTILE, MISTAKE_KINDS, stationOf, WITHOUT_LOOPS } from './hostile-station';

const NOTHING_TAKEN = { sheets: new Set<string>(), names: new Set<string>() };
const content = stationOf(HOSTILE.map(({ run }) => run));
const values = stationValues(content);

/** What of a row does not depend on what else the battery gives. */
const OF_ITSELF = [
  'runAmps',
  'suggested',
  'setBy',
  'size',
  'dropVolts',
  'dropShare',
  'pathDrop',
  'ampacity',
  'fuse',
  'heat',
  'verdict',
  'mend',
] as const satisfies readonly (keyof RunValues)[];

function withoutAddIn(station: StationContent): StationValues {
  const { plans } = sharedCopy(station, { rows: station.runs.length });
  return readStationValues(calculate(plans), station, scheduleNames());
}

/** A row's verdict is words of ours, its level the number of the gravest. */
function expectSaid({ verdict, level }: RunValues, where: string) {
  expect(typeof verdict, `${where}: ${told(verdict)}`).toBe('string');
  expect(verdictsIn(String(verdict)), where).not.toEqual([]);
  expect(level, where).toBe(LEVELS.indexOf(levelOf(String(verdict))) + 1);
}

describe('a station of 300 runs with every kind of mistake', () => {
  test('has each of them several times, and well rows between them', () => {
    expect(HOSTILE).toHaveLength(300);
    expect(MISTAKE_KINDS).toBeGreaterThan(40);
    expect(HOSTILE.filter(({ says }) => says.length > 0).length).toBeGreaterThan(2 * MISTAKE_KINDS);
    expect(HOSTILE.filter(({ says }) => says.length === 0).length).toBeGreaterThan(80);
  });

  test('says in each row what is wrong', () => {
    for (const [row, { run, says }] of HOSTILE.entries()) {
      const shown = values.runs[row]!;
      const where = `row ${row + 1}, ${JSON.stringify(run)}: ${told(shown.verdict)}`;
      expectSaid(shown, where);
      const found = verdictsIn(String(shown.verdict));
      if (says.length === 0) expect(found, where).toEqual(['ok']);
      else
        expect(
          says.some((key) => found.includes(key)),
          where,
        ).toBe(true);
      expect(typeof values.protection.rows[row]!.words, where).toBe('string');
    }
  });

  test('names the cell of an entry that cannot be used', () => {
    let named = 0;
    for (const { entries, mend, verdict } of values.runs) {
      if (!verdictsIn(String(verdict)).includes('checkEntries') || mend instanceof CellError)
        continue;
      expect(String(entries)).toMatch(/^, [A-Z]/);
      expect(String(mend)).toContain(FIX_WORDS.look);
      named += 1;
    }
    expect(named).toBeGreaterThan(50);
  });

  test('computes the well rows as though the others were not there', () => {
    const well = HOSTILE.flatMap(({ says }, row) => (says.length === 0 ? [row] : []));
    const alone = stationValues(stationOf(well.map((row) => HOSTILE[row]!.run)));
    for (const [at, row] of well.entries()) {
      for (const key of OF_ITSELF) {
        const [here, there] = [values.runs[row]![key], alone.runs[at]![key]];
        const where = `row ${row + 1}, ${key}: ${told(here)} beside others, ${told(there)} alone`;
        expect(distance(here, there), where).toBeLessThanOrEqual(RELATIVE);
      }
      for (const key of ['loadVolts', 'lowVolts'] as const) {
        expect(typeof values.runs[row]![key], `row ${row + 1}, ${key}`).toBe('number');
      }
    }
  });

  test('is planned in both forms', () => {
    expect(scheduleSheets(content, 'table', NOTHING_TAKEN).length).toBeGreaterThan(2);
    for (const [row, run] of withoutAddIn(content).runs.entries()) {
      expectSaid(run, `row ${row + 1}: ${told(run.verdict)}`);
      if (levelOf(String(values.runs[row]!.verdict)) !== 'ok') {
        expect(levelOf(String(run.verdict)), `row ${row + 1}`).not.toBe('ok');
      }
    }
  });

  test('is judged alike in the copy without the add-in, loops and long chains aside', () => {
    const station = stationOf(WITHOUT_LOOPS.map(({ run }) => run));
    const ours = stationValues(station).runs;
    for (const [row, { verdict }] of withoutAddIn(station).runs.entries()) {
      const where = `row ${row + 1}: ${told(verdict)}, with the add-in ${told(ours[row]!.verdict)}`;
      expect(levelOf(String(verdict)), where).toBe(levelOf(String(ours[row]!.verdict)));
    }
  });
});

describe('a mistake', () => {
  test('keeps a loop to its own rows without the add-in', () => {
    const { runs } = withoutAddIn(
      stationOf([
        { run: 'Well', peak: 2, length: 2 },
        { run: 'Self', fedFrom: 'Self', peak: 2, length: 2 },
      ]),
    );
    expect(runs[0]!.verdict).toBe('ok');
  });

  test('shows no error in the last column', () => {
    for (const { mend } of values.runs) expect(mend).not.toBeInstanceOf(CellError);
  });

  test('keeps a length past all counting to its own row', () => {
    const runs = [
      { run: 'Trunk', length: 2 },
      { run: 'Radio', fedFrom: 'Trunk', peak: 5, length: 1 },
    ];
    const beside = stationValues(stationOf([...runs, { run: 'Far', peak: 2, length: 1e308 }]));
    expect(beside.runs[0]!.verdict).toBe('ok');
  });
});

/** House rules and supplies that no station can be computed by. */
const SENSELESS: readonly Readonly<Record<string, string | number>>[] = [
  { volts: 0 },
  { volts: -12 },
  { volts: 'many' },
  { target: 3 },
  { target: 0 },
  { unit: 'furlong' },
  { series: 'thick ones' },
  { material: 'string' },
  { tempC: 'warm' },
  { tempC: 5000 },
  { insulationC: 10 },
  { ambientC: 'hot' },
  { ambientC: 200 },
  { conductors: 0 },
  { installed: 'somehow' },
];

test.each(SENSELESS)('house rules of %o make no row ok and none an error', (rules) => {
  const { runs } = stationValues({
    title: 'Senseless rules',
    rules,
    supply: { chemistry: 'lead-acid', ampHours: 50 },
    runs: [
      { run: 'Trunk', length: 2 },
      { run: 'Radio', fedFrom: 'Trunk', peak: 5, length: 2 },
      { run: 'Lamp', peak: 40, kind: 'W', length: 3 },
    ],
  });
  for (const [row, run] of runs.entries()) {
    expectSaid(run, `row ${row + 1}: ${told(run.verdict)}`);
    expect(['ok', 'check']).not.toContain(levelOf(String(run.verdict)));
  }
});
