import ExcelJS from 'exceljs';
import { beforeAll, describe, expect, it } from 'vitest';
import { readRuns } from '../../src/lists/read-runs';
import { INSTALLATIONS } from '../../src/core/ampacity';
import { LENGTH_UNITS } from '../../src/core/length';
import { SERIES } from '../../src/core/size';
import { CHEMISTRIES } from '../../src/core/tables/resting-volts';
import { MATERIALS } from '../../src/core/tables/materials';
import { VERDICT_WORDS } from '../../src/core/verdict';
import { DEMO } from '../../src/sheets/station/demo';
import { RULE_KEYS, type RuleKey } from '../../src/sheets/station/house-rules';
import { scheduleNames } from '../../src/sheets/station/naming';
import { columnOf, ROW } from '../../src/sheets/schedule/layout';
import { WORD } from '../../src/sheets/station/verdicts';
import { SCHEDULE_COLUMNS } from '../../src/sheets/schedule/columns';
import { cellsOf, type WorkbookCells } from './cells';
import { compareStation, summary, toldDifferences, total, type Comparison } from './comparison';
import { generatedStations } from './generated-stations';
import { recalculated, type Files } from './libreoffice';
import type { StationContent } from '../../src/sheets/station/content';
import { stationValues } from '../../src/sheets/station-values';
import type { SupplyKey } from '../../src/sheets/station/supply-keys';
import { sharedFile } from '../../src/hosts/xlsx/shared-file';

const PATIENCE_MS = 600_000;

async function written(stations: readonly StationContent[], rows?: number): Promise<Files> {
  const files: Record<string, Uint8Array> = {};
  for (const [index, content] of stations.entries()) {
    const options = rows === undefined ? {} : { rows };
    files[`station${index}`] = await sharedFile(content, options);
  }
  return files;
}

async function judged(stations: readonly StationContent[], files: Files) {
  const after = recalculated(files);
  const cells: WorkbookCells[] = [];
  for (const index of stations.keys()) cells.push(await cellsOf(after[`station${index}`]!));
  return cells;
}

function expectNone(of: string, comparison: Comparison): void {
  console.info(summary(of, comparison));
  expect(toldDifferences(comparison.differences)).toEqual([]);
}

/** Whatever is set aside, no run that the functions object to is ok in the workbook. */
function expectOnTheSafeSide({ setAside }: Comparison): void {
  for (const { where, ours, theirs } of setAside) {
    if (where.endsWith(SCHEDULE_COLUMNS.verdict.heading) && ours !== VERDICT_WORDS.ok) {
      expect(theirs, where).not.toBe(VERDICT_WORDS.ok);
    }
  }
}

describe('a workbook that needs no add-in', { timeout: PATIENCE_MS }, () => {
  it('carries the values of the functions for viewers that do not calculate', async () => {
    const bytes = (await written([DEMO]))['station0']!;
    expectNone('values that travel along', compareStation(DEMO, await cellsOf(bytes)));
  });

  it('computes the demonstration as the functions do, and keeps its inputs', async () => {
    const files = recalculated(await written([DEMO]));
    const bytes = files['station0']!;
    const cells = await cellsOf(bytes);
    expectNone('demonstration', compareStation(DEMO, cells, leftUndone(cells)));
    // The same file saved by another program is read as well as our own.
    const report = await readRuns(bytes, 'saved.xlsx');
    expect(report.runs).toEqual(DEMO.runs);
    expect(report.rules).toMatchObject(DEMO.rules ?? {});
    expect(report.supply).toMatchObject(DEMO.supply ?? {});
    expect(report.duty).toEqual(DEMO.duty);
  });

  it('computes a thousand runs of every kind as the functions do', async () => {
    const rows = 100;
    const stations = generatedStations({ stations: 10, rows, watts: false });
    const cells = await judged(stations, await written(stations, rows + 4));
    const comparison = total(
      stations.map((content, index) => compareStation(content, cells[index]!)),
    );
    expectNone('1,000 generated runs', comparison);
    // What is set aside are branches that cannot serve their loads together, and there it errs on the safe side.
    expect(comparison.setAside.length).toBeLessThan(comparison.compared / 500);
    expectOnTheSafeSide(comparison);
  });

  it('computes loads of steady power as the functions do, but for what it says it leaves undone', async () => {
    const rows = 60;
    const stations = generatedStations({ stations: 4, rows, watts: true });
    const cells = await judged(stations, await written(stations, rows));
    const comparison = total(
      stations.map((content, index) =>
        compareStation(content, cells[index]!, leftUndone(cells[index]!)),
      ),
    );
    expectNone('loads in watts', comparison);
  });
});

describe('a cleared cell', { timeout: PATIENCE_MS }, () => {
  it('of the source volts or the target never leaves a row ok', async () => {
    const workbook = new ExcelJS.Workbook();
    const bytes = await sharedFile(DEMO, { rows: DEMO.runs.length });
    await workbook.xlsx.load(bytes as unknown as ExcelJS.Buffer);
    const names = scheduleNames();
    const sheet = workbook.getWorksheet(names.sheet)!;
    const cleared = (['volts', 'target'] as const).map((key, index) => {
      const row = ROW.first + index * 2;
      sheet.getCell(row + 1, columnOf(key) + 1).value = null;
      return row;
    });
    const written = new Uint8Array(await workbook.xlsx.writeBuffer());
    const cells = await cellsOf(recalculated({ cleared: written })['cleared']!);
    for (const row of cleared) {
      expect(cells.at(names.sheet, row, columnOf('verdict'))).toBe(WORD.voltsMissing);
    }
    // The row between them keeps what it had.
    expect(cells.at(names.sheet, ROW.first + 1, columnOf('size'))).toBe('14 AWG');
  });
});

/** The volts that the workbook says its last round still moved. */
function leftUndone(cells: WorkbookCells): number {
  const { row, column } = LEFT_UNDONE;
  const sheet = scheduleNames().workingsSheet;
  expect(cells.at(sheet, row, column - 1)).toBe('Last round moved, V');
  const volts = cells.at(sheet, row, column);
  expect(volts).toBeTypeOf('number');
  return volts as number;
}
const LEFT_UNDONE = { row: 2, column: 4 };

/** Every house rule with other values: each of its choices, or a number. */
const OTHER_RULES: Readonly<Record<RuleKey, readonly (string | number)[]>> = {
  unit: LENGTH_UNITS.filter((unit) => unit !== 'ft'),
  volts: [11.8],
  target: [0.05],
  series: SERIES.filter((series) => series !== 'AWG'),
  material: MATERIALS.filter((material) => material !== 'copper'),
  tempC: [60],
  insulationC: [60, 90],
  installed: INSTALLATIONS.filter((installed) => installed !== 'cable'),
  ambientC: [45],
  conductors: [9],
  duty: ['bursts'],
};

const OTHER_SUPPLY: readonly (readonly [SupplyKey, string | number])[] = [
  ...CHEMISTRIES.filter((chemistry) => chemistry !== 'lead-acid').map(
    (chemistry) => ['chemistry', chemistry] as const,
  ),
  ['ampHours', 40],
  ['lowCharge', 0.5],
  ['milliohms', 20],
  ['cells', 12],
  ['panelVolts', 34],
  ['coldestC', -30],
  ['sunHours', 5],
];

/** The demonstration, and a run that would take a size that is not kept in stock. */
const STEERED: StationContent = {
  ...DEMO,
  runs: [...DEMO.runs, { run: 'Odd size', peak: 60, length: 14 }],
};

describe('the cells of a shared workbook', { timeout: PATIENCE_MS }, () => {
  interface Change {
    readonly told: string;
    readonly name: string;
    readonly value: string | number;
    readonly content: StationContent;
  }
  const names = scheduleNames();
  const changes: readonly Change[] = [
    ...RULE_KEYS.flatMap((key) =>
      OTHER_RULES[key].map((value) => ({
        told: `${key} ${value}`,
        name: names.rule[key],
        value,
        content: {
          ...STEERED,
          title: `${key} ${value}`,
          rules: { ...STEERED.rules, [key]: value },
        },
      })),
    ),
    ...OTHER_SUPPLY.map(([key, value]) => ({
      told: `${key} ${value}`,
      name: names.supply[key],
      value,
      content: {
        ...STEERED,
        title: `${key} ${value}`,
        supply: { ...STEERED.supply, [key]: value },
      },
    })),
  ];
  let comparisons: readonly Comparison[] = [];

  /** Types a value into a named cell of the written file; what the formulas came to stays as it was. */
  async function retyped(bytes: Uint8Array, { name, value }: Change): Promise<Uint8Array> {
    const workbook = new ExcelJS.Workbook();
    await workbook.xlsx.load(bytes as unknown as ExcelJS.Buffer);
    const { ranges } = workbook.definedNames.getRanges(name);
    const [, sheet = '', address = ''] = /^'?(.*?)'?!(.*)$/.exec(ranges[0] ?? '') ?? [];
    workbook.getWorksheet(sheet)!.getCell(address.replaceAll('$', '')).value = value;
    return new Uint8Array(await workbook.xlsx.writeBuffer());
  }

  beforeAll(async () => {
    const original = await sharedFile(STEERED, { rows: STEERED.runs.length });
    const files: Record<string, Uint8Array> = {};
    for (const [index, change] of changes.entries()) {
      files[`station${index}`] = await retyped(original, change);
    }
    const cells = await judged(
      changes.map(({ content }) => content),
      files,
    );
    comparisons = changes.map(({ content }, index) =>
      compareStation(content, cells[index]!, leftUndone(cells[index]!)),
    );
    console.info(summary(`${changes.length} changed rules and supplies`, total(comparisons)));
  }, PATIENCE_MS);

  it.each(changes.map((change, index) => [change.told, index] as const))(
    'steer it: %s',
    (_, index) => {
      const { content } = changes[index]!;
      expect(toldDifferences(comparisons[index]!.differences)).toEqual([]);
      expectOnTheSafeSide(comparisons[index]!);
      const { runs, supply } = stationValues(content);
      const before = stationValues(STEERED);
      expect({ runs, supply }).not.toEqual({ runs: before.runs, supply: before.supply });
    },
  );
});
