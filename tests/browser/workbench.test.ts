import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/functions/catalogue';
import type { Grid } from '../../src/hosts/workbench/grid';
import { cellAddress } from '../../src/sheets/plan/area';
import { DEMO } from '../../src/sheets/station/demo';
import { stationValues } from '../../src/sheets/station-values';
import {
  readSchedule,
  type ReadRow,
  type ScheduleReading,
} from '../../src/sheets/schedule/reading';
import type { SheetPlan } from '../../src/sheets/plan/plan';
import { call, callNumber } from '../functions/call';
import { HOSTILE, hostileCases } from '../hosts/workbench/hostile-cases';
import { launchBrowser } from './browser';
import { openWorkbench, type WorkbenchPage } from './workbench-page';
import { newSchedule } from '../../src/sheets/new-schedule';

let browser: Browser;
let workbench: WorkbenchPage;

beforeAll(async () => {
  browser = await launchBrowser();
  workbench = await openWorkbench(browser);
});

afterAll(async () => {
  await browser?.close();
});

async function schedule(): Promise<ScheduleReading & { readonly sheetName: string }> {
  const grid = await workbench.activeGrid();
  const reading = readSchedule(grid.values);
  if (reading === undefined) throw new Error(`${grid.sheetName} is not a schedule.`);
  return { ...reading, sheetName: grid.sheetName };
}

function rowNamed(reading: ScheduleReading, name: string): ReadRow {
  const row = reading.rows.find(({ values }) => values.run === name);
  if (row === undefined) throw new Error(`no run ${name}`);
  return row;
}

const at = (reading: ScheduleReading, row: ReadRow, key: keyof typeof reading.columnOf) =>
  cellAddress(row.row, reading.columnOf[key]!);

describe('the workbench as it opens', () => {
  test('shows every run of the demonstration with a verdict', async () => {
    const { rows } = await schedule();
    expect(rows.map(({ values }) => values.run)).toEqual(DEMO.runs.map(({ run }) => run));
    const verdicts = rows.map(({ values }) => values.verdict);
    expect(verdicts).toContain('ok');
    expect(verdicts.some((verdict) => String(verdict).includes('drop over target'))).toBe(true);
  });

  test('shows the numbers that the functions give', async () => {
    const { rows } = await schedule();
    const unit = DEMO.rules?.unit ?? 'ft';
    let compared = 0;
    // What of its target is left for each run, by the wires above it.
    const rooms = stationValues(DEMO).runs.map(({ room }) => room);
    for (const [index, { values }] of rows.entries()) {
      if (typeof values.runAmps !== 'number' || values.size === '#N/A') continue;
      compared += 1;
      const { runAmps, length, volts, target, size } = values;
      const room = rooms[index];
      const joints = values.joints ?? undefined;
      // The house rules of the demonstration: 30 degC, and the usual limit for fuses of small wires.
      const wire = [undefined, 30, joints] as const;
      // Through the chassis of the van, 2 milliohms.
      const back = values.returns === 'chassis' ? 2 : undefined;
      const limit = [...Array<undefined>(6), 'NFPA 70 240.4(D)', back] as const;
      const numbers = {
        // The grid keeps fifteen digits of a product.
        dropVolts: expect.closeTo(
          runAmps * callNumber('RUN_OHMS', length, unit, size, ...wire, back),
          12,
        ) as number,
        ampacity: call('AMPACITY', size),
        suggested: call('MINGAUGE', runAmps, length, unit, volts, room, ...wire, ...limit),
        setBy: call('GAUGE_LIMIT', runAmps, length, unit, volts, room, ...wire, ...limit),
      };
      const { dropVolts, ampacity, suggested, setBy } = values;
      expect({ dropVolts, ampacity, suggested, setBy }, String(values.run)).toEqual(numbers);
      const judged = call(
        'RUN_VERDICT',
        runAmps,
        length,
        unit,
        volts,
        target,
        size,
        ...wire,
        ...Array<undefined>(6),
        back,
      );
      // The sheet says the gravest first.
      for (const word of judged === 'ok' ? [] : String(judged).split('; ')) {
        expect(values.verdict).toContain(word);
      }
    }
    expect(compared).toBeGreaterThan(10);
  });

  test('breaks no rule of its own and asks no other host for anything', () => {
    expect(workbench.trouble).toEqual({ violations: [], strayRequests: [], pageErrors: [] });
  });
});

describe('a run edited by hand', () => {
  test('changes its verdict and its colour when the length is typed over', async () => {
    const page = await openWorkbench(browser);
    const grid = await page.activeGrid();
    const reading = readSchedule(grid.values)!;
    const row = rowNamed(reading, 'Case 3 lamp');
    const verdict = at(reading, row, 'verdict');
    expect(await page.read(grid.sheetName, verdict)).toBe('ok');
    expect(await page.highlight(grid.sheetName, verdict)).toBeNull();

    await page.type(grid.sheetName, at(reading, row, 'length'), '400');
    await expect.poll(() => page.read(grid.sheetName, at(reading, row, 'length'))).toBe('400');
    await page.write(grid.sheetName, at(reading, row, 'ownSize'), '16 AWG');
    // What was typed before may still be on its way: the calculation that ends first is not the last.
    await expect.poll(() => page.read(grid.sheetName, verdict)).toBe('drop over target');
    await expect.poll(() => page.highlight(grid.sheetName, verdict)).not.toBeNull();
    const overTarget = await page.highlight(grid.sheetName, at(reading, row, 'pathDrop'));
    expect(overTarget).not.toBeNull();

    await page.write(grid.sheetName, at(reading, row, 'length'), 12);
    await expect.poll(() => page.read(grid.sheetName, verdict)).toBe('ok');
    await expect.poll(() => page.highlight(grid.sheetName, verdict)).toBeNull();
    await page.page.close();
  });

  test('says under the grid why a size is no size, even behind arithmetic, until it is mended', async () => {
    const reading = await schedule();
    const row = rowNamed(reading, 'Case 1 set');
    const own = at(reading, row, 'ownSize');
    const drop = at(reading, row, 'dropVolts');
    await workbench.write(reading.sheetName, own, '2.5');
    expect(await workbench.read(reading.sheetName, drop)).toBe('#VALUE!');
    await workbench.select(reading.sheetName, drop);
    await expect
      .poll(() => workbench.statusText())
      .toContain('for square millimetres write "2.5 mm2"');
    await workbench.write(reading.sheetName, own, '2.5 mm2');
    expect(await workbench.read(reading.sheetName, drop)).toBeTypeOf('number');
    await expect.poll(() => workbench.statusText()).toBe('');
    await workbench.write(reading.sheetName, own, '12 AWG');
  });

  test('leaves none of our formulas to the grid’s engine, which is slow with them', async () => {
    const reading = await schedule();
    const length = at(reading, rowNamed(reading, 'Case 3 lamp'), 'length');
    const most = await workbench.page.evaluate(
      async ([sheet, cell]) => {
        const page = window.loomWorkbench!;
        const { api } = (page.host as unknown as { readonly grid: Grid }).grid;
        let told = 0;
        let formulas = 0;
        const listener = api.addEvent(api.Event.CommandExecuted, ({ params }) => {
          const { stageInfo } = (params ?? {}) as {
            stageInfo?: { totalFormulasToCalculate: number };
          };
          if (stageInfo === undefined) return;
          told += 1;
          formulas = Math.max(formulas, stageInfo.totalFormulasToCalculate);
        });
        await page.writeCell(sheet, cell, 13);
        await page.writeCell(sheet, cell, 12);
        listener.dispose();
        return { told, formulas };
      },
      [reading.sheetName, length] as const,
    );
    expect(most.told).toBeGreaterThan(0);
    expect(most.formulas).toBe(0);
  });

  test('says under the grid what belongs into a cell', async () => {
    const reading = await schedule();
    await workbench.select(reading.sheetName, at(reading, reading.rows[0]!, 'length'));
    await expect.poll(() => workbench.statusText()).toContain('Source to load along the route');
  });

  test('keeps a size such as 1/0 a text when it is typed', async () => {
    const reading = await schedule();
    const row = rowNamed(reading, 'Van feed');
    const own = at(reading, row, 'ownSize');
    await workbench.type(reading.sheetName, own, '1/0');
    await expect.poll(() => workbench.read(reading.sheetName, own)).toBe('1/0');
    await expect
      .poll(() => workbench.read(reading.sheetName, at(reading, row, 'size')))
      .toBe('1/0');
    await workbench.write(reading.sheetName, own, null);
  });
});

describe('inserting sheets', () => {
  const insert = (plans: readonly SheetPlan[]) =>
    workbench.page.evaluate(
      (given) =>
        window.loomWorkbench!.host.insert(given).then(
          () => null,
          (fault: Error) => fault.message,
        ),
      plans as SheetPlan[],
    );
  const taken = async () => {
    const names = await workbench.page.evaluate(async () => {
      const found = await window.loomWorkbench!.host.taken();
      return { sheets: [...found.sheets], names: [...found.names] };
    });
    return { sheets: new Set(names.sheets), names: new Set(names.names) };
  };

  test('a second schedule takes another name, and both go on computing', async () => {
    const first = (await schedule()).sheetName;
    expect(await insert(newSchedule('demo', 'cells', await taken()))).toBeNull();
    const second = await schedule();
    expect(second.sheetName).not.toBe(first);
    expect(await workbench.sheetNames()).toEqual(expect.arrayContaining([first, second.sheetName]));
    const row = second.rows[0]!;
    const drop = at(second, row, 'dropVolts');
    const before = await workbench.read(first, drop);
    // The grid sums a tree in another order than the evaluation that filled the new sheet.
    expect(await workbench.read(second.sheetName, drop)).toBeCloseTo(Number(before), 12);
    await workbench.write(second.sheetName, at(second, row, 'length'), 70);
    expect(await workbench.read(second.sheetName, drop)).not.toBe(before);
    expect(await workbench.read(first, drop)).toBe(before);
  });

  test('a failure half-way leaves the workbook as it was', async () => {
    const before = { sheets: await workbench.sheetNames(), taken: await taken() };
    const [plan] = newSchedule('empty', 'cells', before.taken);
    const clash = { ...plan!, name: 'Clash' };
    const said = await insert([plan!, clash]);
    expect(said).toMatch(/^The sheet could not be added, and the workbook is as it was: /);
    expect({ sheets: await workbench.sheetNames(), taken: await taken() }).toEqual(before);
  });

  test('a taken sheet name is refused', async () => {
    const [name] = await workbench.sheetNames();
    const [plan] = newSchedule('empty', 'cells', await taken());
    expect(await insert([{ ...plan!, name: name!.toUpperCase() }])).toContain('already');
  });
});

describe('every function in the browser', () => {
  test.each(CATALOGUE.map((entry) => [entry.id, entry] as const))(
    '%s answers a blank, an error, a boolean and a text as it does when called directly',
    async (id, entry) => {
      const cases = hostileCases(entry);
      const sheet = `Hostile ${id}`;
      const plan: SheetPlan = {
        name: sheet,
        columnWidths: [],
        blocks: [
          {
            area: { row: 0, column: 0, rows: 1, columns: HOSTILE.length },
            cells: [HOSTILE.map(({ content }) => content)],
          },
          ...cases.map(({ row, formula }) => ({
            area: { row, column: 0, rows: 1, columns: 1 },
            cells: [[{ formula }]],
          })),
        ],
        names: [],
        entries: [],
        highlights: [],
        notes: [],
        frozenRows: 0,
        frozenColumns: 0,
        print: { landscape: false, area: { row: 0, column: 0, rows: 1, columns: 1 }, footer: '' },
      };
      const addresses = cases.map(({ row, expected }) =>
        expected.map((cells, down) => cells.map((_, across) => cellAddress(row + down, across))),
      );
      const answers = await workbench.page.evaluate(
        async ([given, wanted]) => {
          const { host, readCell } = window.loomWorkbench!;
          await host.insert([given]);
          return wanted.map((rows) =>
            rows.map((cells) => cells.map((address) => readCell(given.name, address))),
          );
        },
        [plan, addresses] as const,
      );
      expect(cases.map(({ name }, index) => [name, answers[index]])).toEqual(
        cases.map(({ name, expected }) => [name, expected]),
      );
    },
  );
});
