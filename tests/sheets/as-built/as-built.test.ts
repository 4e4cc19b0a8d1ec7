/** The As built sheet: rows worked by hand, the same findings as the core's, and what cannot be used said in its row. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgeJoints, JOINT_FINDINGS } from '../../../src/core/joints';
import { toMetres, type LengthUnit } from '../../../src/core/length';
import { isRefusal } from '../../../src/core/outcome';
import { parseSize, type ConductorSize } from '../../../src/core/size';
import type { Material } from '../../../src/core/tables/materials';
import { findFunction } from '../../../src/functions/catalogue';
import { CellError, type Cell } from '../../../src/functions/cell';
import { writeWorkbook } from '../../../src/hosts/xlsx/write';
import { readRuns } from '../../../src/lists/read-runs';
import { calculate } from '../../../src/sheets/calculate/calculate';
import { BUILT_WORDS, BUILT_WRONG } from '../../../src/sheets/as-built/formulas';
import { builtCells } from '../../../src/sheets/as-built/cells';
import {
  asBuiltName,
  BUILT_KEYS,
  BUILT_ROW,
  BUILT_SHOWN_KEYS,
  builtColumn,
  type BuiltKey,
} from '../../../src/sheets/as-built/layout';
import { scheduleSheets } from '../../../src/sheets/new-schedule';
import type { SheetPlan } from '../../../src/sheets/plan/plan';
import { columnOf, ROW } from '../../../src/sheets/schedule/layout';
import { sharedCopy } from '../../../src/sheets/shared-copy';
import type { Readings } from '../../../src/sheets/station/as-built';
import type { StationContent } from '../../../src/sheets/station/content';
import { DEMO } from '../../../src/sheets/station/demo';
import { scheduleNames } from '../../../src/sheets/station/naming';
import { generatedStations } from '../generated-stations';

const names = scheduleNames();
const NOTHING_TAKEN = { sheets: new Set<string>(), names: new Set<string>() };

type Row = Readonly<Record<BuiltKey, string | number>>;

function rowsIn(
  plans: readonly SheetPlan[],
  runs: number,
): { rows: readonly Row[]; summary: string } {
  const sheets = calculate(plans);
  const shown = (cell: Cell) => {
    if (cell instanceof CellError) throw new Error(`${cell.code} on the As built sheet`);
    return typeof cell === 'number' ? cell : String(cell ?? '');
  };
  const sheet = asBuiltName(names);
  const rows = Array.from(
    { length: runs },
    (_, run) =>
      Object.fromEntries(
        BUILT_KEYS.map((key) => [
          key,
          shown(sheets.at(sheet, BUILT_ROW.first + run, builtColumn(key))),
        ]),
      ) as Row,
  );
  return { rows, summary: shown(sheets.at(sheet, BUILT_ROW.summary, 0)) as string };
}

const wanted = (content: StationContent): StationContent => ({ ...content, extras: ['asBuilt'] });
const rowsOf = (content: StationContent, extraRows = 1) => {
  const rows = content.runs.length + extraRows;
  return rowsIn(sharedCopy(wanted(content), { rows }).plans, rows);
};

/** A run of 12 AWG copper, 6 ft one way, at 20 degrees; 3 milliohms are planned for its joints. */
const CABLE: StationContent = {
  title: 'Case',
  rules: { unit: 'ft', volts: 12.6, tempC: 20 },
  runs: [{ run: 'Radio', peak: 10, length: 6, joints: 3, ownSize: '12 AWG' }],
};
const measured = (readings: Readings, cells?: NonNullable<StationContent['asBuilt']>['cells']) =>
  rowsOf({ ...CABLE, asBuilt: { runs: [readings], ...(cells && { cells }) } });

// NFPA 70 chapter 9 table 8 has 1.93 ohms for 1000 ft of solid 12 AWG at 75 degrees; at 20 degrees by its own note 2 that is
// 1.93 / (1 + 0.00323 * -55)^-1 = 1.587. Twelve feet of it: 19.05 milliohms.
const WIRE_MILLIOHMS = 19.05;

describe('rows worked by hand', () => {
  it('tell a bad crimp: what is lost beyond wire and planned joints is far over the limit', () => {
    // 0.45 V at 10 A is 45 milliohms, 26 beyond the wire. At worst 0.43 V at 10.1 A and a wire of 20 milliohms: 22.6, over
    // the 3 planned and 5 on top. 26 milliohms at 10 A are 2.6 W.
    const { rows, summary } = measured({ voltsIn: 12.9, voltsOut: 12.45, amps: 10 });
    const row = rows[0]!;
    expect(row.drop).toBeCloseTo(0.45, 9);
    expect(row.beyond).toBeCloseTo(45 - WIRE_MILLIOHMS, 1);
    expect(row.planned).toBe(3);
    expect(row.limit).toBe(8);
    expect(row.least).toBeCloseTo(430 / 10.1 - 1.05 * WIRE_MILLIOHMS, 1);
    expect(row.most).toBeCloseTo(470 / 9.9 - 0.95 * WIRE_MILLIOHMS, 1);
    expect(row.expected).toBeCloseTo((10 * (WIRE_MILLIOHMS + 3)) / 1000, 3);
    expect(row.heat).toBeCloseTo(((45 - WIRE_MILLIOHMS) / 1000) * 100, 2);
    expect(row.verdict).toBe(BUILT_WORDS.look);
    expect(summary).toBe(
      '1 of 1 runs measured: 1: look at the joints, 0: cannot tell, 0: less than the wire, 0: joints sound',
    );
  });

  it('tell sound joints where even the worst is within the limit', () => {
    // 0.22 V at 10 A: 22 milliohms, 3 beyond the wire. At worst 0.24 V at 9.9 A and a wire of 18.1: 6.1, under 8.
    const row = measured({ voltsIn: 12.9, voltsOut: 12.68, amps: 10 }).rows[0]!;
    expect(row.most).toBeCloseTo(240 / 9.9 - 0.95 * WIRE_MILLIOHMS, 1);
    expect(row.verdict).toBe(BUILT_WORDS.sound);
  });

  it('cannot tell by few amps and a coarse meter, and could by a finer one', () => {
    // 0.03 V at 1.2 A: 25 milliohms, and between nothing and 27.4 beyond the wire, as 0.01 to 0.05 V were lost.
    const readings = { voltsIn: 12.9, voltsOut: 12.87, amps: 1.2 };
    const { rows } = measured(readings);
    // 50 / 1.1 - 0.95 * 19.05 is 27.357, and the wire is known to a hundredth.
    expect(rows[0]!.verdict).toMatch(
      /^cannot tell: between 0 and 27\.[34] mΩ; more amps, or a finer meter$/,
    );
    // To a millivolt and a hundredth of an amp: at most 0.032 V at 1.19 A, 8.8 beyond; with 10 mOhm allowed it is sound.
    const finer = measured(readings, { voltsStep: 0.001, ampsStep: 0.01, excess: 10 });
    expect(finer.rows[0]!.verdict).toBe(BUILT_WORDS.sound);
  });

  it('cannot tell at all where the meter may have read no current', () => {
    const row = measured({ voltsIn: 12.9, voltsOut: 12.89, amps: 0.1 }).rows[0]!;
    expect(row.most).toBe('no limit');
    expect(row.verdict).toBe(
      'cannot tell: between 0 and any number of mΩ; more amps, or a finer meter',
    );
  });

  it('know a run that resists less than its wire', () => {
    // 0.1 V at 10 A are 10 milliohms where the wire has 19: it is not the wire that the schedule has.
    const { rows, summary } = measured({ voltsIn: 12.9, voltsOut: 12.8, amps: 10 });
    expect(rows[0]!.verdict).toBe(BUILT_WORDS.less);
    expect(summary).toContain('1: less than the wire');
  });

  it('take the wire as warm as the house rules say where no temperature of the day is given', () => {
    const warm = { ...CABLE, rules: { ...CABLE.rules, tempC: 45 } };
    const readings = { voltsIn: 12.9, voltsOut: 12.45, amps: 10 };
    // As the sheet comes, and with the cell cleared.
    for (const cells of [{}, { tempC: '' }]) {
      const row = rowsOf({ ...warm, asBuilt: { runs: [readings], cells } }).rows[0]!;
      // Copper has 0.393 % more a degree: 25 degrees more are 9.8 % more.
      expect(row.beyond).toBeCloseTo(45 - WIRE_MILLIOHMS * 1.09825, 1);
    }
  });

  it('take the wire as warm as it was', () => {
    // Copper has 0.393 % more a degree: at 45 degrees 9.8 % more than at 20.
    const row = measured({ voltsIn: 12.9, voltsOut: 12.45, amps: 10 }, { tempC: 45 }).rows[0]!;
    expect(row.wireMilliohms).toBeCloseTo(WIRE_MILLIOHMS * 1.09825, 1);
    // On a hilltop in winter: 30 degrees less than 20 are 11.8 % less.
    const cold = measured({ voltsIn: 12.9, voltsOut: 12.45, amps: 10 }, { tempC: -10 }).rows[0]!;
    expect(cold.wireMilliohms).toBeCloseTo(WIRE_MILLIOHMS * 0.8821, 1);
    expect(cold.verdict).toBe(BUILT_WORDS.look);
  });

  it('count one conductor, and the chassis among what is planned', () => {
    const back = { ...CABLE, rules: { ...CABLE.rules, chassis: 2 } };
    const { rows } = rowsOf({
      ...back,
      runs: [{ ...CABLE.runs[0]!, returns: 'chassis' }],
      asBuilt: { runs: [{ voltsIn: 12.9, voltsOut: 12.75, amps: 10 }] },
    });
    expect(rows[0]!.wireMilliohms).toBeCloseTo(WIRE_MILLIOHMS / 2, 1);
    expect(rows[0]!.planned).toBeCloseTo(5, 9);
  });
});

it('shows each figure of its head with its unit', () => {
  for (const [key, { style }] of Object.entries(builtCells(names.rule)))
    expect(style?.numberFormat, key).toMatch(/mΩ|V|A|°C|%/);
});

describe('what cannot be used', () => {
  const full = { voltsIn: 12.9, voltsOut: 12.45, amps: 10 };
  it.each([
    ['volts out above volts in', { voltsIn: 12.4, voltsOut: 12.5, amps: 10 }, BUILT_WRONG.swapped],
    ['volts below none', { ...full, voltsOut: -12.4 }, BUILT_WRONG.backwards],
    ['no volts at the source', { ...full, voltsIn: 0 }, BUILT_WRONG.backwards],
    ['no current', { ...full, amps: 0 }, BUILT_WRONG.noAmps],
    ['a current backwards', { ...full, amps: -3 }, BUILT_WRONG.noAmps],
    ['one reading missing', { voltsIn: 12.9, amps: 10 }, BUILT_WRONG.missing],
    ['a date alone', { date: '2026-05-16' }, BUILT_WRONG.missing],
    ['a reading in words', { ...full, amps: 'ten' }, BUILT_WRONG.notRead],
  ] as const)('%s is said in its row, with no verdict', (_, readings, word) => {
    const { rows, summary } = measured(readings);
    expect(rows[0]).toMatchObject({ verdict: word, beyond: '', least: '', most: '', finding: '' });
    expect(summary).toContain('0 of 1 runs measured');
    expect(summary).toContain('Not usable: 1');
  });

  it('readings without a run beside them, and a run without a wire', () => {
    const { rows } = rowsOf({
      ...CABLE,
      runs: [{ run: 'Motor', peak: 400, length: 900 }],
      asBuilt: { runs: [full, full] },
    });
    expect(rows.map(({ verdict }) => verdict)).toEqual([BUILT_WRONG.noWire, BUILT_WRONG.noRun]);
  });

  it.each([
    { excess: 'much' },
    { voltsStep: -1 },
    { ampsStep: 'x' },
    { wireDoubt: -0.1 },
    { tempC: 'warm' },
    { tempC: -300 },
  ])('a head that says %o', (cells) => {
    expect(measured(full, cells).rows[0]!.verdict).toBe(BUILT_WRONG.badHead);
  });

  it('is nothing where nothing was measured', () => {
    expect(measured({}).rows[0]).toMatchObject({ verdict: '', beyond: '', run: 'Radio' });
  });

  it('is nothing where there is no run', () => {
    const runs = [CABLE.runs[0]!, {}];
    const [, cleared, below] = rowsOf({ ...CABLE, runs }, 1).rows;
    for (const row of [cleared!, below!]) {
      expect(BUILT_SHOWN_KEYS.filter((key) => row[key] !== '')).toEqual([]);
    }
  });
});

describe('readings and the run that they are said to be for', () => {
  // As worked by hand above: 12 AWG with a bad crimp.
  const bad = { voltsIn: 12.9, voltsOut: 12.45, amps: 10 };
  const runs = [CABLE.runs[0]!, { run: 'Siren', peak: 10, length: 6, ownSize: '12 AWG' }];
  const rowsWith = (readings: readonly Readings[], of = runs) =>
    rowsOf({ ...CABLE, runs: of, asBuilt: { runs: readings } });
  const first = BUILT_ROW.first + 1;

  it.each(['Radio', 'radio', ' RADIO '])('are judged where they are said for %j', (forRun) => {
    const { rows, summary } = rowsWith([{ ...bad, forRun }]);
    expect(rows[0]).toMatchObject({ finding: BUILT_WORDS.look, verdict: BUILT_WORDS.look });
    expect(summary).toMatch(/^1 of 2 runs measured: 1: look at the joints/);
  });

  it('say for whom they are without being told', () => {
    expect(rowsWith([bad]).rows[0]).toMatchObject({ forRun: 'Radio', verdict: BUILT_WORDS.look });
    expect(rowsWith([{}, bad]).rows.map(({ forRun }) => forRun)).toEqual(['', 'Siren', '']);
  });

  it.each([
    [
      'another run',
      'Siren',
      `row ${first} is for "Siren": move its entries there, or write "Radio" under For run`,
    ],
    [
      'no run of the list',
      'Gauge',
      `row ${first} is for "Gauge": move its entries there, or write "Radio" under For run`,
    ],
    ['nobody', '', `row ${first}: write "Radio" under For run`],
    ['nobody, with a space', ' ', `row ${first}: write "Radio" under For run`],
  ])('are not judged where they are for %s, in its row and on top', (_, forRun, told) => {
    for (const readings of [bad, { date: '2026-05-16' }, { ...bad, voltsIn: 'much' }]) {
      const { rows, summary } = rowsWith([{ ...readings, forRun }]);
      const nothing = { drop: '', expected: '', beyond: '', least: '', most: '', heat: '' };
      expect(rows[0]).toMatchObject({ ...nothing, finding: '', verdict: told });
      expect(rows[1]).toMatchObject({ finding: '', verdict: '' });
      expect(summary).toContain(`Not judged: ${told}. 0 of 2 runs measured`);
    }
  });

  it('count where they are several, the first one told on top', () => {
    const { rows, summary } = rowsWith([
      { ...bad, forRun: 'Siren' },
      { ...bad, forRun: 'Radio' },
    ]);
    expect(summary).toContain(`Not judged: 2 rows; ${String(rows[0]!.verdict)}. 0 of 2`);
    expect(summary).toContain('Not usable: 2');
  });

  it('want a name where the run has none, and another row where no run stands', () => {
    const nameless = [{ peak: 10, length: 6, ownSize: '12 AWG' }];
    expect(rowsWith([bad], nameless).rows[0]!.verdict).toBe(
      `row ${first}: give the run a name, and write it under For run`,
    );
    expect(rowsWith([{ ...bad, forRun: 'Radio' }], nameless).rows[0]!.verdict).toBe(
      `row ${first} is for "Radio": move its entries there`,
    );
    const below = rowsWith([{}, {}, { ...bad, forRun: 'Radio' }]);
    const told = `row ${first + 2} is for "Radio": move its entries there`;
    expect(below.rows[2]!.verdict).toBe(told);
    expect(below.summary).toContain(`Not judged: ${told}. 0 of 2`);
    expect(rowsWith([{}, {}, bad]).rows[2]!.verdict).toBe(BUILT_WRONG.noRun);
  });

  it('name a run beside nothing that was measured: nothing is said', () => {
    const { rows, summary } = rowsWith([{ forRun: 'Siren' }]);
    expect(rows[0]).toMatchObject({ forRun: 'Siren', verdict: '', finding: '' });
    expect(summary).toMatch(/^0 of 2 runs measured/);
  });
});

/** Readings about as far off as a good and a bad cable are. */
const readingsArbitrary = fc
  .record({
    amps: fc.constantFrom(0.1, 0.4, 1.2, 3, 8.5, 12, 22, 60),
    milliohms: fc.constantFrom(0, 2, 6, 9, 15, 30, 80, 300),
    voltsIn: fc.constantFrom(12.1, 12.9, 13.8, 27.2),
  })
  .map(({ amps, milliohms, voltsIn }): Readings => ({
    amps,
    voltsIn,
    voltsOut: Number((voltsIn - (amps * milliohms) / 1000).toFixed(2)),
  }));

it('finds what the core finds, and JOINT_MILLIOHMS beyond the wire, for readings of every kind of station', () => {
  const joint = findFunction('JOINT_MILLIOHMS')!;
  const stations = generatedStations({ stations: 12, rows: 24, watts: false });
  const seen = new Map<string, number>();
  for (const [index, station] of stations.entries()) {
    const runs = fc.sample(readingsArbitrary, { numRuns: station.runs.length, seed: 77 + index });
    const cells = { excess: 5, voltsStep: 0.01, ampsStep: 0.1, wireDoubt: 0.05, tempC: 41 };
    const content = wanted({ ...station, asBuilt: { runs, cells } });
    const plans = scheduleSheets(content, 'cells', NOTHING_TAKEN);
    const { rows } = rowsIn(plans, runs.length);
    const copied = rowsOf(content).rows.slice(0, runs.length);
    const sheets = calculate(plans);
    const rules = Object.fromEntries(
      plans
        .flatMap(({ name, names: defined }) => defined.map((one) => ({ sheet: name, ...one })))
        .filter(({ name }) => name.startsWith('LoomRules_'))
        .map(({ sheet, name, area }) => [name.slice(10), sheets.at(sheet, area.row, area.column)]),
    );
    const schedule = plans[0]!;
    for (const [at, row] of rows.entries()) {
      // With the add-in and without.
      expect(copied[at]).toEqual(row);
      if (row.finding === '') continue;
      const given = runs[at] as Readonly<Record<'amps' | 'voltsIn' | 'voltsOut', number>>;
      const size = sheets.at(schedule.name, ROW.first + at, columnOf('size')) as string;
      // Both of the others count two conductors: half the length is one.
      const back = sheets.at(schedule.name, ROW.first + at, columnOf('back'));
      const listed = sheets.at(schedule.name, ROW.first + at, columnOf('oneWay')) as number;
      const oneWay = typeof back === 'number' ? listed / 2 : listed;
      const material = (rules['material'] ?? 'copper') as Material;
      const unit = rules['unit'] as LengthUnit;
      const run = {
        ...given,
        size: parseSize(size) as ConductorSize,
        lengthM: toMetres(oneWay, unit),
        material,
        tempC: cells.tempC,
      };
      const doubt = { voltsStep: 0.01, ampsStep: 0.1, wireShare: 0.05 };
      const judged = judgeJoints(run, doubt, Number(row.planned) + cells.excess);
      if (isRefusal(judged)) throw new Error(judged.why);
      expect(Number(row.beyond)).toBeCloseTo(judged.milliohms, 6);
      expect(Number(row.least)).toBeCloseTo(judged.leastMilliohms, 6);
      if (judged.mostMilliohms === undefined) expect(row.most).toBe('no limit');
      else expect(Number(row.most)).toBeCloseTo(judged.mostMilliohms, 6);
      // The sheet says one thing more of what is sound: that it resists less than its wire can.
      const isLess = row.finding === BUILT_WORDS.less;
      expect(isLess ? JOINT_FINDINGS.sound : row.finding).toBe(judged.finding);
      expect(isLess).toBe(judged.finding === JOINT_FINDINGS.sound && judged.mostMilliohms! < 0);
      const [[called]] = joint.evaluate(
        [given.voltsIn, given.voltsOut, given.amps, oneWay, unit, size, material, cells.tempC].map(
          (value) => [[value]],
        ),
      ) as [[Cell]];
      expect(Number(row.beyond)).toBeCloseTo(called as number, 6);
      seen.set(String(row.finding), (seen.get(String(row.finding)) ?? 0) + 1);
    }
  }
  console.info(
    `Findings compared: ${[...seen].map(([word, count]) => `${count} ${word}`).join(', ')}`,
  );
  for (const word of Object.values(BUILT_WORDS))
    expect(seen.get(word) ?? 0, word).toBeGreaterThan(5);
});

describe('the demonstration', () => {
  it('has three measured cables: one sound, one with a bad crimp, one of which nothing can be told', () => {
    const { rows } = rowsOf(DEMO, 0);
    const told = rows.filter(({ verdict }) => verdict !== '');
    expect(told.map(({ run, finding }) => [run, finding])).toEqual([
      ['Van set B', BUILT_WORDS.sound],
      ['Van pump', BUILT_WORDS.unsure],
      ['Case 1 set', BUILT_WORDS.look],
    ]);
  });

  it('gives its readings back from a file', async () => {
    const { plans, values } = sharedCopy(wanted(DEMO), { rows: 30 });
    const report = await readRuns(await writeWorkbook(plans, values), 'copy.xlsx');
    expect(report.runs).toEqual(DEMO.runs);
    expect(report.extras).toEqual(['asBuilt']);
    expect(report.asBuilt?.runs).toEqual(DEMO.asBuilt?.runs);
    expect(report.remarks.join(' ')).not.toContain(`"${asBuiltName(names)}" has a list`);
  });
});
