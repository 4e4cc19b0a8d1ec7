/**
 * LibreOffice as the judge of written copies: it calculates them anew, and every formula cell of every sheet, workings
 * and data included, must come to what our own evaluation of the same formula says, errors by their kind.
 */
import ExcelJS from 'exceljs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Cell } from '../../src/functions/cell';
import { writeWorkbook } from '../../src/hosts/xlsx/write';
import { readRuns } from '../../src/lists/read-runs';
import { calculate } from '../../src/sheets/calculate/calculate';
import { areaAddress, area, quotedSheetName } from '../../src/sheets/plan/area';
import { layBlocks } from '../../src/sheets/plan/lay-blocks';
import type { SheetPlan } from '../../src/sheets/plan/plan';
import { columnOf, ROW } from '../../src/sheets/schedule/layout';
import { sharedCopy } from '../../src/sheets/shared-copy';
import { stationValues } from '../../src/sheets/station-values';
import type { StationContent } from '../../src/sheets/station/content';
import { EXTRA_KEYS } from '../../src/sheets/station/extras';
import { DEMO } from '../../src/sheets/station/demo';
import { scheduleNames } from '../../src/sheets/station/naming';
import { LEVELS, WORD } from '../../src/sheets/station/verdicts';
import { distance, RELATIVE, told } from '../closeness';
import { generatedStations } from '../sheets/generated-stations';
import { protectionStations } from '../sheets/protection-stations';
import { SOURCE_STATIONS } from '../sheets/source-stations';
import { PARTS_IN_A_HURRY } from '../sheets/parts/parts-in-a-hurry';
import { TYPED_RUNS } from '../sheets/typed-quantities';
import { cellsOf, type WorkbookCells } from './cells';
import { recalculated } from './libreoffice';

const PATIENCE_MS = 600_000;

/** Loads in watts at source volts that are no number. */
const WITHOUT_VOLTS: StationContent['runs'] = [
  { run: 'Unsure', peak: '6.2 W', volts: 'many', length: '3 ft', leastVolts: 10.8 },
  { run: 'Unsure and unmeasured', peak: '6.2 W', volts: 'many', leastVolts: 10.8 },
];

/** Names with marks that stand for other letters where a spreadsheet looks them up. */
const MARKED: StationContent['runs'] = [
  { run: 'Spur 1', peak: 1, length: '2 ft' },
  { run: 'Spur ?', length: '8 ft' },
  { run: '~Lead*', length: '8 ft' },
  { run: 'On the spur', fedFrom: 'spur ?', peak: 4, length: '5 ft' },
  { run: 'On the lead', fedFrom: ' ~Lead*', peak: 4, length: '5 ft' },
  { run: 'On none', fedFrom: 'Spur *', peak: 4, length: '5 ft' },
];

/** Stations that between them use every choice of every rule, loads in watts, and every way that a fuse can fail. */
const { thin1, generated2 } = protectionStations();
const STATIONS: Readonly<Record<string, StationContent>> = {
  demo: DEMO,
  finished: { ...DEMO, extras: EXTRA_KEYS },
  ...Object.fromEntries(
    [0, 1].map((index) => [
      `amps${index}`,
      joined([
        ...generatedStations({ stations: 10, rows: 8, watts: false }).slice(
          index * 5,
          index * 5 + 5,
        ),
        ...(index === 0
          ? [{ title: 'Typed', runs: [...TYPED_RUNS, ...WITHOUT_VOLTS, ...MARKED] }]
          : []),
      ]),
    ]),
  ),
  watts: {
    ...generatedStations({ stations: 2, rows: 48, watts: true })[1]!,
    extras: EXTRA_KEYS,
    parts: PARTS_IN_A_HURRY,
  },
  sources: SOURCE_STATIONS[0]!,
  hurried: SOURCE_STATIONS[1]!,
  thin: thin1!,
  fuses: generated2!,
};

/** One list of several, under the rules of the first; the runs of each keep names of their own. */
function joined(stations: readonly StationContent[]): StationContent {
  const renamed = (name: string | undefined, index: number) =>
    name === undefined || name === 'panel' ? name : `${name}, ${index + 1}`;
  return {
    ...stations[0]!,
    runs: stations.flatMap(({ runs }, index) =>
      runs.map((run) => {
        const name = renamed(run.run, index);
        const feeder = renamed(run.fedFrom, index);
        return {
          ...run,
          ...(name === undefined ? {} : { run: name }),
          ...(feeder === undefined ? {} : { fedFrom: feeder }),
        };
      }),
    ),
  };
}

interface Judged {
  readonly compared: number;
  readonly differing: readonly string[];
  readonly farthest: number;
}

/** Every formula cell of the plans, as we evaluate it and as the recalculated workbook has it. */
function judge(plans: readonly SheetPlan[], cells: WorkbookCells): Judged {
  const ours = calculate(plans);
  const differing: string[] = [];
  let [compared, farthest] = [0, 0];
  for (const plan of plans) {
    for (const { row, column, content } of layBlocks(plan.blocks)) {
      if (typeof content !== 'object' || content === null) continue;
      compared += 1;
      const own: Cell = ours.at(plan.name, row, column);
      const theirs = cells.at(plan.name, row, column);
      const far = distance(own, theirs);
      if (far <= RELATIVE) farthest = Math.max(farthest, far);
      else {
        const where = `${quotedSheetName(plan.name)}!${areaAddress(area(row, column))}`;
        differing.push(`${where} ${content.formula.slice(0, 120)}: ${told(own)} / ${told(theirs)}`);
      }
    }
  }
  return { compared, differing, farthest };
}

describe('a copy that needs no add-in', { timeout: PATIENCE_MS }, () => {
  const copies = Object.fromEntries(
    Object.entries(STATIONS).map(([name, content]) => [
      name,
      sharedCopy(content, { rows: content.runs.length + 2 }),
    ]),
  );
  const written: Record<string, Uint8Array> = {};
  let after: Readonly<Record<string, Uint8Array>> = {};

  beforeAll(async () => {
    for (const [name, { plans, values }] of Object.entries(copies)) {
      written[name] = await writeWorkbook(plans, values);
    }
    written['cleared'] = await withCellsCleared(written['demo']!);
    after = recalculated(written);
  }, PATIENCE_MS);

  it.each(Object.keys(STATIONS))('is calculated by LibreOffice as by us: %s', async (name) => {
    const { compared, differing, farthest } = judge(
      copies[name]!.plans,
      await cellsOf(after[name]!),
    );
    console.info(
      `LibreOffice, ${name}: ${compared} cells compared, ${differing.length} differ; ` +
        `greatest relative difference of numbers ${farthest.toExponential(1)}`,
    );
    expect(compared).toBeGreaterThan(1500);
    expect(differing.slice(0, 20)).toEqual([]);
  });

  it('keeps its inputs when another program saves it', async () => {
    const report = await readRuns(after['demo']!, 'saved.xlsx');
    expect(report.runs).toEqual(DEMO.runs);
    expect(report.rules).toMatchObject(DEMO.rules ?? {});
    expect(report.sources).toEqual(DEMO.sources);
    expect(report.duty).toEqual(DEMO.duty);
  });

  it('carries the values of the functions for viewers that do not calculate', async () => {
    const cells = await cellsOf(written['demo']!);
    const { runs } = stationValues(DEMO);
    const names = scheduleNames();
    for (const [row, run] of runs.entries()) {
      for (const key of ['runAmps', 'size', 'fuse', 'lowVolts', 'verdict'] as const) {
        const theirs = cells.at(names.sheet, ROW.first + row, columnOf(key));
        expect(distance(run[key], theirs), `${row} ${key}`).toBe(0);
      }
    }
  });

  // Runs that feed no other: those below would have to wait for them.
  const CLEARED = { volts: ROW.first + 2, target: ROW.first + 4 } as const;

  /** Typed over formulas, in rows that are ok without. */
  const TYPED_OVER = {
    size: { row: ROW.first + 3, value: '18 AWG' },
    verdict: { row: ROW.first + 9, value: 'as the shop said' },
  } as const;

  /** The demonstration with the source volts of one row and the target of another emptied by hand, and formulas lost. */
  async function withCellsCleared(bytes: Uint8Array): Promise<Uint8Array> {
    const workbook = new ExcelJS.Workbook();
    await workbook.xlsx.load(bytes as unknown as ExcelJS.Buffer);
    const sheet = workbook.getWorksheet(scheduleNames().sheet)!;
    for (const key of ['volts', 'target'] as const) {
      sheet.getCell(CLEARED[key] + 1, columnOf(key) + 1).value = null;
    }
    for (const [key, { row, value }] of Object.entries(TYPED_OVER)) {
      sheet.getCell(row + 1, columnOf(key as keyof typeof TYPED_OVER) + 1).value = value;
    }
    return new Uint8Array(await workbook.xlsx.writeBuffer());
  }

  it('never leaves a row ok whose source volts or target were cleared', async () => {
    const cells = await cellsOf(after['cleared']!);
    const at = (row: number, key: 'verdict' | 'fuse') =>
      cells.at(scheduleNames().sheet, row, columnOf(key));
    for (const row of Object.values(CLEARED)) expect(at(row, 'verdict')).toBe(WORD.voltsMissing);
    // The row between them keeps what it had.
    expect(at(ROW.first + 3, 'fuse')).toBe(3);
  });

  it('is not ok where a wire was typed over its formula, and tells a verdict that was', async () => {
    const cells = await cellsOf(after['cleared']!);
    const { sheet } = scheduleNames();
    expect(cells.at(sheet, TYPED_OVER.size.row, columnOf('verdict'))).toBe(WORD.typedOver);
    expect(cells.at(sheet, TYPED_OVER.verdict.row, columnOf('level'))).toBe(LEVELS.length);
    expect(cells.at(sheet, ROW.title, columnOf('size'))).toContain('1 verdict was typed over');
  });
});
